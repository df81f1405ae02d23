// A preview a page at a time: what a window draws of it, and how much more there is.
import type { Said } from '../said';
import { NOTE_ROW_STATES, type NoteRowState, type NotesPreview, type NotesView } from '../../contract';

/** An assumption with the rows it holds for; none: it is about the file as a whole. */
export interface SharedAssumption extends Pick<Said, 'sentence' | 'id' | 'choices' | 'chosen'> {
  readonly rows: number[];
  /** How many rows it holds for. */
  readonly of: number;
}

/** Of the rows of an assumption so many are named. */
const MOST_NAMED = 8;

/** The same assumption of many rows is said once, with its rows. Order of first appearance. */
export function shareAssumptions(assumptions: NotesPreview['assumptions']): SharedAssumption[] {
  const shared = new Map<string, { -readonly [Field in keyof SharedAssumption]: SharedAssumption[Field] }>();
  for (const { row, sentence, ...otherwise } of assumptions) {
    const there = shared.get(sentence) ?? { sentence, rows: [], of: 0, ...otherwise };
    shared.set(sentence, there);
    if (row === null) continue;
    there.of += 1;
    if (there.rows.length < MOST_NAMED) there.rows.push(row);
  }
  return [...shared.values()];
}

/** How many rows there are of each state. */
export function countStates(rows: NotesPreview['rows']): Record<NoteRowState, number> {
  const counts = Object.fromEntries(NOTE_ROW_STATES.map((state) => [state, 0])) as Record<
    NoteRowState,
    number
  >;
  for (const { state } of rows) counts[state] += 1;
  return counts;
}

/** How many rows stay aside for each reason: a row counts for the first that can be mended, else for its first. */
function countReasons(problems: NotesPreview['problems']): { reason: string; rows: number }[] {
  const first = new Map<number, string>();
  const mendedFirst = problems.toSorted((a, b) => Number(a.column === null) - Number(b.column === null));
  for (const { row, reason } of mendedFirst) if (!first.has(row)) first.set(row, reason);
  const counts = new Map<string, number>();
  for (const reason of first.values()) counts.set(reason, (counts.get(reason) ?? 0) + 1);
  return [...counts].map(([reason, rows]) => ({ reason, rows }));
}

/** What is looked up again and again in one reading, worked out once: a page reads no more than it shows. */
export interface Paged {
  readonly columns: NotesPreview['columns'];
  readonly rows: Readonly<Record<NoteRowState | 'all', NotesPreview['rows']>>;
  readonly problems: NotesPreview['problems'];
  /** Those that block come first, then what is urgent, then row by row. */
  readonly questions: NotesPreview['questions'];
  readonly remarks: NonNullable<NotesPreview['remarks']>;
  readonly shared: readonly SharedAssumption[];
  readonly counts: Omit<NonNullable<NotesPreview['pages']>, 'shared'>;
}

function unanswered(
  remarks: NonNullable<NotesPreview['remarks']>,
): Pick<NonNullable<NotesPreview['pages']>, 'telling' | 'doubted' | 'unread'> {
  const unread = remarks.filter(({ readAs }) => readAs === null);
  const telling = unread.filter(({ tells }) => tells).length;
  const doubted = unread.filter((one) => one.doubted).length;
  return {
    telling: remarks.filter(({ tells }) => tells).length,
    doubted: remarks.filter((one) => one.doubted).length,
    unread: { telling, doubted, others: unread.length - telling - doubted },
  };
}

/** A preview made ready to be looked at in pages. */
export function paged({
  columns,
  rows,
  problems,
  questions,
  assumptions,
  remarks = [],
}: NotesPreview): Paged {
  const first = questions.filter(({ blocks, urgent }) => blocks || urgent === true);
  const others = questions.filter(({ blocks, urgent }) => !blocks && urgent !== true);
  const byState = Object.fromEntries(
    NOTE_ROW_STATES.map((one) => [one, rows.filter(({ state }) => state === one)]),
  ) as Record<NoteRowState, NotesPreview['rows']>;
  const shared = shareAssumptions(assumptions);
  const counts = {
    rows: countStates(rows),
    problems: problems.length,
    reasons: countReasons(problems),
    questions: questions.length,
    assumptions: shared.length,
    remarks: remarks.length,
    ...unanswered(remarks),
  };
  return {
    columns,
    rows: { ...byState, all: rows },
    problems,
    questions: [...first, ...others],
    remarks,
    shared,
    counts,
  };
}

/** What a view draws. */
export function pageOf(
  { columns, rows, problems, questions, remarks, shared, counts }: Paged,
  view: NotesView,
): NotesPreview {
  const cut = <Item>(items: readonly Item[], { from, most }: NotesView['rows']): Item[] =>
    items.slice(from, from + most);
  return {
    columns,
    rows: cut(rows[view.state ?? 'all'], view.rows),
    problems: problems.slice(0, view.problems.most),
    questions: questions.slice(0, view.questions.most),
    assumptions: [],
    remarks: cut(remarks, view.remarks),
    pages: { ...counts, shared: cut(shared, view.assumptions) },
  };
}

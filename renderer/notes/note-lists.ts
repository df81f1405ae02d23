// What the screen lists, worked out of a preview: pure functions, no React.
import type { NotesPreview, Reply } from '../../core/contract';

export type Row = NotesPreview['rows'][number];
export type RowState = Row['state'];
export type Problem = NotesPreview['problems'][number];
export type Question = NotesPreview['questions'][number];
export type Pages = NonNullable<NotesPreview['pages']>;

export const ROW_STATES: readonly RowState[] = ['new', 'changes', 'aside', 'already here', 'empty'];

/** "1 jar", "3 jars". */
export const count = (number: number, one: string, many = `${one}s`): string =>
  `${number.toLocaleString('en-GB')} ${number === 1 ? one : many}`;

/** "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? (parts[0] ?? '') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** Rows in a few words: "rows 3, 8 and 12", "rows 3, 8, 12 and 40 more". @param of how many there are with those not listed */
export function rowsSaid(rows: readonly number[], of = rows.length): string {
  const shown = rows.map(String);
  const rest = of - shown.length;
  const parts = rest > 0 ? [...shown, `${rest.toLocaleString('en-GB')} more`] : shown;
  return `${of === 1 ? 'row' : 'rows'} ${listed(parts)}`;
}

/** Of many rows so many are named. */
const ROWS_NAMED = 8;
/** "Row 3", "Rows 3, 8 and 12", at the beginning of what is said of them. */
export function saidOfRows(rows: readonly number[]): string {
  const said = rowsSaid(rows.slice(0, ROWS_NAMED), rows.length);
  return `${said.charAt(0).toUpperCase()}${said.slice(1)}`;
}

/** "44 jars, 46 seedings and 2 sources came in. 1 jar was changed." */
export function resultSentence(
  result: Pick<Reply<'notes.bringIn'>, 'jars' | 'seedings' | 'sources' | 'changed'>,
): string {
  const changed =
    result.changed === 0
      ? ''
      : `${count(result.changed, 'jar')} ${result.changed === 1 ? 'was' : 'were'} changed as you answered.`;
  if (changed !== '' && result.jars + result.seedings + result.sources === 0) return changed;
  if (result.jars + result.seedings + result.sources === 0)
    return 'Nothing new came in: everything in this file is here already, or stays aside.';
  const parts = [
    result.jars > 0 ? count(result.jars, 'jar') : '',
    result.seedings > 0 ? count(result.seedings, 'seeding') : '',
    result.sources > 0 ? count(result.sources, 'source') : '',
  ].filter(Boolean);
  return `${listed(parts)} came in.${changed === '' ? '' : ` ${changed}`}`;
}

/** "Bring in 3 rows", "Change 1 jar", or both in one. */
export function bringInLabel(fresh: number, changes: number): string {
  if (changes === 0) return `Bring in ${count(fresh, 'row')}`;
  const change = `change ${count(changes, 'jar')}`;
  return fresh === 0 ? `Change ${count(changes, 'jar')}` : `Bring in ${count(fresh, 'row')}, ${change}`;
}

/** Of the questions that are open, the one whose answer would bring in more rows than are in hand; null: none would. */
export function leadingQuestion(
  questions: readonly Question[],
  answers: Readonly<Record<string, string>>,
  inHand: number,
): Question | null {
  const [most] = questions
    .filter(
      ({ id, choices, brings = 0 }) => answers[id] === undefined && choices.length > 0 && brings > inHand,
    )
    .toSorted((one, other) => (other.brings ?? 0) - (one.brings ?? 0));
  return most ?? null;
}

/** What stays open after a file came in, and what answers it. Null where nothing does. */
export function openSentence(questions: readonly Question[]): string | null {
  const { open, remarks } = openAndRemarks(questions);
  const parts = [
    open.length > 0
      ? `${count(open.length, 'question')} ${open.length === 1 ? 'stays' : 'stay'} open; bring the file in again to answer ${open.length === 1 ? 'it' : 'them'}.`
      : '',
    remarks.length > 0 ? `${count(remarks.length, 'remark')} to look over.` : '',
  ].filter(Boolean);
  return parts.length === 0 ? null : parts.join(' ');
}

/** What can still be answered, and what is without choices only to be looked over. */
export function openAndRemarks(questions: readonly Question[]): {
  readonly open: readonly AskedTogether[];
  readonly remarks: readonly AskedTogether[];
} {
  const together = askedTogether(questions);
  return {
    open: together.filter(({ question }) => question.choices.length > 0),
    remarks: together.filter(({ question }) => question.choices.length === 0),
  };
}

/** The same question about several rows: asked once, and answered for all of them. */
export interface AskedTogether {
  readonly question: Question;
  readonly ids: readonly string[];
  /** None: it is about the file as a whole. */
  readonly rows: readonly number[];
}

/** Questions that say the same, have the same choices and were answered alike, as one; in the order of the first of each. */
export function askedTogether(
  questions: readonly Question[],
  answers: Readonly<Record<string, string>> = {},
): AskedTogether[] {
  const found = new Map<string, { question: Question; ids: string[]; rows: number[] }>();
  for (const question of questions) {
    const { id, row, sentence, choices, blocks, urgent } = question;
    const key = JSON.stringify([sentence, choices, blocks, urgent, answers[id], row === null ? id : null]);
    const there = found.get(key) ?? { question, ids: [], rows: [] };
    found.set(key, there);
    there.ids.push(id);
    if (row !== null) there.rows.push(row);
  }
  return [...found.values()];
}

/** Problems of a row together, rows in order. */
export function byRow<P extends Problem>(
  problems: readonly P[],
): { readonly row: number; readonly problems: readonly P[] }[] {
  const rows = new Map<number, P[]>();
  for (const problem of problems) {
    const list = rows.get(problem.row);
    if (list) list.push(problem);
    else rows.set(problem.row, [problem]);
  }
  return [...rows].toSorted(([one], [other]) => one - other).map(([row, list]) => ({ row, problems: list }));
}

/** Rows that stay aside for one reason. */
export interface AsideFor<P extends Problem> {
  readonly reason: string;
  readonly rows: ReturnType<typeof byRow<P>>;
}

/** Rows by the first reason that they have; what only waits for other rows comes last. */
export function byReason<P extends Problem>(problems: readonly P[]): AsideFor<P>[] {
  const first = new Map<number, string>();
  for (const { row, reason } of problems) if (!first.has(row)) first.set(row, reason);
  const rows = byRow(problems);
  const groups = [...new Set(first.values())].map((reason) => ({
    reason,
    rows: rows.filter(({ row }) => first.get(row) === reason),
  }));
  const waits = (group: AsideFor<P>): boolean =>
    group.rows.every((row) => row.problems.every(({ column }) => column === null));
  return groups.toSorted((one, other) => Number(waits(one)) - Number(waits(other)));
}

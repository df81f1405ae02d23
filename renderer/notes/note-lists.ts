// What the screen lists, worked out of a preview: pure functions, no React.
import type { NotesPreview } from '../../core/contract';

export type Row = NotesPreview['rows'][number];
export type RowState = Row['state'];
export type Problem = NotesPreview['problems'][number];
export type Question = NotesPreview['questions'][number];
export type Pages = NonNullable<NotesPreview['pages']>;

export const ROW_STATES: readonly RowState[] = ['new', 'changes', 'aside', 'already here', 'empty'];

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

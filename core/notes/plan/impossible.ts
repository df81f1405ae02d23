// Rows that the rule book leaves aside: what can't be, and what is asked about first.
import type { NotesInput, PlannedChange, PlannedJar, RowRefused } from '../notes-plan';
import { planJar } from './plan-jar';
import { isAdded, type NoteRow } from '../rows/note-row';
import { answerOf, filled } from '../rows/row-cells';
import { problem, question } from '../notes-says';
import { seedsFirst, waitForSeeds } from './seed-order';

const YES = 'it was so';

/** Whether the keeper said that what is asked about a row was so. */
export const saidSo = (line: number, answers: NotesInput['answers']): boolean =>
  answerOf(answers, 'word', line) === YES;

function leave(row: NoteRow, { sentence, asks }: RowRefused): void {
  row.log.problem(problem.rule(sentence), filled(row.cells, 'seed')[0], [
    asks ? `word:${row.row.line}` : null,
  ]);
  if (asks)
    row.log.ask('word', question.wasItSo(sentence), [
      [YES, 'Yes, it was so: bring it in'],
      ['leave', 'Leave the row aside'],
    ]);
}

/**
 * Leaves aside the new rows that break a rule, and those that wait for them. What is left may still break one.
 * @returns the rows that are left with the jar of each, seeds first; its sources as they are called in the notes
 */
export function leaveImpossible(
  rows: readonly NoteRow[],
  byId: ReadonlyMap<string, NoteRow>,
  input: NotesInput,
): Map<NoteRow, PlannedJar> {
  let left = new Map<NoteRow, PlannedJar>();
  for (;;) {
    const before = left;
    left = new Map();
    // What is left aside changes no other row's jar.
    for (const row of seedsFirst(rows.filter(isAdded), byId))
      left.set(row, before.get(row) ?? planJar(row, byId, ({ name }) => name, input));
    const refused = new Map((input.refuse?.([...left.values()], []) ?? []).map((one) => [one.id, one]));
    const aside = [...left.keys()].filter((row) => refused.has(row.id));
    if (aside.length === 0) return left;
    for (const row of aside) leave(row, refused.get(row.id) as RowRefused);
    waitForSeeds(rows, byId);
  }
}

/**
 * Leaves aside the changes that break a rule beside the new jars.
 * @param rowOf the row that a change is of
 * @returns those that are left
 */
export function possibleChanges(
  jars: readonly PlannedJar[],
  changes: readonly PlannedChange[],
  rowOf: (change: PlannedChange) => NoteRow | undefined,
  input: NotesInput,
): PlannedChange[] {
  let left = [...changes];
  while (input.refuse && left.length > 0) {
    const refused = new Map(input.refuse(jars, left).map((one) => [one.id, one]));
    const aside = left.filter(({ planned }) => refused.has(planned.id));
    if (aside.length === 0) return left;
    for (const change of aside) {
      const row = rowOf(change);
      if (row) leave(row, refused.get(change.planned.id) as RowRefused);
    }
    left = left.filter(({ planned }) => !refused.has(planned.id));
  }
  return left;
}

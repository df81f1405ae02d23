// What rows say in words, listed for the keeper to read: what may tell of spoilage first. Only an answer is a fact.
import type { NotesPreview } from '../../contract';
import type { READ_AS } from '../../ledger/facts/seen-facts';
import { tellsOfSpoiling } from '../../safety/remarks';
import type { NotesInput, NotesPlan, PlannedJar } from '../notes-plan';
import { saidFine } from '../rows/outcomes';

type ReadAs = (typeof READ_AS)[number];
type Listed = NonNullable<NotesPreview['remarks']>[number];

const FIELDS = ['texture', 'smell', 'colour'] as const;

/** How the keeper reads the words of a row; null: not answered. */
export function rowReadAs(answers: NotesInput['answers'], line: number): ReadAs | null {
  const given = answers[`remark:${line}`]?.trim().toLowerCase();
  return given === 'fine' || given === 'look' || given === 'discard' ? given : null;
}

/** How a row's words are read where they may tell of spoilage: as its remarks were answered, or a question about such words. */
export const suspiciousReadAs = (answers: NotesInput['answers'], line: number): ReadAs | null =>
  rowReadAs(answers, line) ?? (saidFine(answers, line) ? 'fine' : null);

function remarkOf({ line, label, fields, outcome }: PlannedJar, answers: NotesInput['answers']): Listed[] {
  const words = [
    ...FIELDS.flatMap((field) => ({ field, text: outcome?.[field] ?? null })),
    { field: 'note' as const, text: fields.note },
  ].flatMap(({ field, text }) => (text === null ? [] : [{ field, text }]));
  if (words.length === 0) return [];
  const readAs = rowReadAs(answers, line);
  const stops =
    suspiciousReadAs(answers, line) === null && words.some(({ field, text }) => tellsOfSpoiling(text, field));
  return [{ id: `remark:${line}`, row: line, label, text: words.map(({ text }) => text).join(' · '), stops, readAs }];
} // prettier-ignore

/** Words of all rows that come in, what stops a jar first. @param look asked for each row whether it was cancelled */
export const remarksOfPlan = (
  { jars, changes }: NotesPlan,
  answers: NotesInput['answers'],
  look: () => void,
): Listed[] =>
  [...jars, ...changes.map(({ planned }) => planned)]
    .flatMap((planned) => {
      look();
      return remarkOf(planned, answers);
    })
    .toSorted((a, b) => Number(b.stops) - Number(a.stops) || a.row - b.row);

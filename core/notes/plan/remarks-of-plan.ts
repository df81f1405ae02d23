// What rows say in words, listed for the keeper to read: what may tell of spoilage first. Only an answer is a fact.
import type { NotesPreview } from '../../contract';
import type { READ_AS } from '../../ledger/facts/seen-facts';
import { saysInWords } from '../../safety/in-words';
import { tellsOfSpoiling } from '../../safety/remarks';
import type { NotesInput, NotesPlan, PlannedJar } from '../notes-plan';
import { ALL_SUSPICIOUS, saidFine } from '../rows/outcomes';

type ReadAs = (typeof READ_AS)[number];
type Listed = NonNullable<NotesPreview['remarks']>[number];

const FIELDS = ['texture', 'smell', 'colour'] as const;

const given = (answers: NotesInput['answers'], id: string): ReadAs | null => {
  const said = answers[id]?.trim().toLowerCase();
  return said === 'fine' || said === 'look' || said === 'discard' ? said : null;
};

/**
 * How the keeper reads the words of a row: as that row was answered, else as all such rows were ('remark:suspicious',
 * 'remark:others'); null: not answered.
 * @param suspicious whether a plain word of spoilage stands in them
 */
export const rowReadAs = (answers: NotesInput['answers'], line: number, suspicious: boolean): ReadAs | null =>
  given(answers, `remark:${line}`) ?? given(answers, suspicious ? ALL_SUSPICIOUS : 'remark:others');

/** How a row's words are read where they may tell of spoilage: as its remarks were answered, or a question about such words. */
export const suspiciousReadAs = (answers: NotesInput['answers'], line: number): ReadAs | null =>
  rowReadAs(answers, line, true) ?? (saidFine(answers, line) ? 'fine' : null);

function remarkOf({ line, label, fields, outcome }: PlannedJar, answers: NotesInput['answers']): Listed[] {
  const words = [
    ...FIELDS.flatMap((field) => ({ field, text: outcome?.[field] ?? null })),
    { field: 'note' as const, text: fields.note },
  ].flatMap(({ field, text }) => (text === null || !saysInWords(text) ? [] : [{ field, text }]));
  if (words.length === 0) return [];
  const tells = words.some(({ field, text }) => tellsOfSpoiling(text, field));
  const readAs = tells ? suspiciousReadAs(answers, line) : rowReadAs(answers, line, false);
  const stops = tells && readAs === null;
  return [{ id: `remark:${line}`, row: line, label, text: words.map(({ text }) => text).join(' · '), tells, stops, readAs }];
} // prettier-ignore

/**
 * Words of all rows that come in, those that tell of spoilage first, answered or not.
 * @param look asked for each row whether it was cancelled
 */
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
    .toSorted((a, b) => Number(b.tells) - Number(a.tells) || a.row - b.row);

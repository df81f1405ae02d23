// What rows say in words, listed for the keeper to read: what may tell of spoilage first. Only an answer is a fact.
import type { NotesPreview } from '../../contract';
import type { READ_AS } from '../../ledger/facts/seen-facts';
import { inDoubtBecause } from '../../safety/doubts';
import { leftInWords } from '../../safety/in-words';
import { readRemark } from '../../safety/remark-words';
import { tellsOfSpoiling } from '../../safety/remarks';
import type { NotesInput, NotesPlan, PlannedJar } from '../notes-plan';
import { ALL_SUSPICIOUS, saidOfSpoilage } from '../rows/outcomes';
import { isOddWarmth } from '../rows/row-facts';

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
 * @param say what they say: a plain word of spoilage; or the program itself doubts something of the row, and no answer for many
 * speaks for it
 */
export function rowReadAs(
  answers: NotesInput['answers'],
  line: number,
  say: 'spoilage' | 'doubted' | 'other',
): ReadAs | null {
  const own = given(answers, `remark:${line}`);
  if (own !== null || say === 'doubted') return own;
  return given(answers, say === 'spoilage' ? ALL_SUSPICIOUS : 'remark:others');
}

/**
 * Whether the program itself leaves something of a row in doubt: a power cut, a slow start, a pH above 4.6, an unusual warmth, or
 * words that it asks about. That all others are fine does not speak for such a row.
 */
export function doubtedRow({ outcome, fields, hold }: PlannedJar): boolean {
  const beside = { jar: fields.note, hold: null, batch: null };
  const celsius = hold?.planned?.value ?? null;
  return (
    inDoubtBecause(outcome, null, beside) !== null ||
    (celsius !== null && isOddWarmth(celsius)) ||
    [fields.note, ...FIELDS.map((field) => outcome?.[field] ?? null)].some(
      (text) => text !== null && readRemark(text).asks.length > 0,
    )
  );
}

/** An answer about spoilage as an answer to its remark: neither is asked after the other. */
const AS_READ = { fine: 'fine', spoiled: 'discard', 'not said': null } as const;

/** How a row's words are read where they may tell of spoilage: as its remarks were answered, or a question about such words. */
export const suspiciousReadAs = (answers: NotesInput['answers'], line: number): ReadAs | null =>
  rowReadAs(answers, line, 'spoilage') ?? AS_READ[saidOfSpoilage(answers, line) ?? 'not said'];

function remarkOf(planned: PlannedJar, answers: NotesInput['answers']): Listed[] {
  const { line, label, fields, outcome } = planned;
  const words = [
    ...FIELDS.flatMap((field) => ({ field, text: outcome?.[field] ?? null })),
    { field: 'note' as const, text: fields.note },
  ].flatMap(({ field, text }) => {
    const left = text === null ? null : leftInWords(text, field);
    return text === null || left === null ? [] : [{ field, text, left }];
  });
  if (words.length === 0) return [];
  const tells = words.some(({ field, text }) => tellsOfSpoiling(text, field));
  const doubted = !tells && doubtedRow(planned);
  const readAs = tells
    ? suspiciousReadAs(answers, line)
    : rowReadAs(answers, line, doubted ? 'doubted' : 'other');
  const stops = tells && readAs === null;
  // What tells of spoilage is shown whole, should what is left of it not tell it any more.
  const heard = ({ field, text, left }: (typeof words)[number]): boolean =>
    tellsOfSpoiling(text, field) === tellsOfSpoiling(left, field);
  const text = words.map((one) => (heard(one) ? one.left : one.text)).join(' · ');
  return [{ id: `remark:${line}`, row: line, label, text, tells, doubted, stops, readAs }];
}

/** The words of a row that stop its jar until the keeper answers them; null where none do. */
export function stoppingRemark(planned: PlannedJar, answers: NotesInput['answers']): string | null {
  const [remark] = remarkOf(planned, answers);
  return remark?.stops ? remark.text : null;
}

/**
 * Words of all rows that come in, those that tell of spoilage first, then those of rows in doubt, answered or not.
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
    .toSorted(
      (a, b) => Number(b.tells) - Number(a.tells) || Number(b.doubted) - Number(a.doubted) || a.row - b.row,
    );

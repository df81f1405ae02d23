// What is told of rows and of the file as a whole: the preview's lines, changed rows, and what holds for all jars.
import { dayName } from '../../text/rough-days';
import type { NotesPreview } from '../../contract';
import { MEASURES, plain, tidy, type KitchenMeasure } from '../../quantities/quantities';
import { filled } from '../rows/row-cells';
import { finalVolume } from '../rows/row-facts';
import { SYSTEMS, type Conventions } from '../conventions/file-habits';
import type { Layout } from '../layout/column-meanings';
import type { Question, Said } from '../said';
import { labelOf, type NoteRow, putTo, seedNames } from '../rows/note-row';
import { assumed, question, quoted } from '../notes-says';

/** Line numbers in words, at most a dozen. */
function lines(rows: readonly NoteRow[]): string {
  const numbers = [...new Set(rows.map((row) => row.row.line))];
  const shown = numbers.slice(0, 12).join(', ');
  return numbers.length > 12
    ? `rows ${shown} and ${numbers.length - 12} more`
    : `${numbers.length === 1 ? 'row' : 'rows'} ${shown}`;
}

/** How spoons and cups were read: one sentence for each measure, with the words it was written in. */
export function spoonsSaid(
  rows: readonly NoteRow[],
  { spoons, spoonsReason }: Conventions,
): { said: Said[]; question: Question | null } {
  const measures = new Map<KitchenMeasure, string[]>();
  for (const { name, word } of rows.flatMap((row) => row.log.measures)) {
    const there = measures.get(name) ?? [];
    measures.set(name, there);
    // "T" and "t" are different spoons, "Tbsp" and "tbsp." are one.
    const bare = word.replace(/\.$/, '');
    const same = (other: string): boolean =>
      other === bare || (bare.length > 1 && plain(other) === plain(bare));
    if (!there.some(same)) there.push(bare);
  }
  const said = [...measures].map(([name, words]): Said => ({
    row: null,
    sentence: assumed.spoons(
      words,
      `${spoons === 'Australia' ? 'Australian' : spoons} ${name}`,
      String(Number(MEASURES[spoons][name].toFixed(2))),
      spoonsReason,
    ),
  }));
  const [first] = [...measures.values()].flat();
  if (first === undefined || !spoonsReason.startsWith('that is the spoon chosen'))
    return { said, question: null };
  return {
    said,
    question: {
      id: 'spoons',
      row: null,
      sentence: question.spoons(first),
      choices: SYSTEMS.map((system) => ({ value: system, label: system })),
      blocks: false,
    },
  };
}

/** Whose spoons and cups the amounts of rows are in; null: there are none. */
export const writtenIn = (rows: readonly NoteRow[], { spoons }: Conventions): Conventions['spoons'] | null =>
  rows.some((row) => row.log.measures.length > 0) ? spoons : null;

/** What was assumed of many jars at once. */
export function fileLevelSays(rows: readonly NoteRow[], layout: Layout): Said[] {
  const said: Said[] = [];
  const plus = rows.filter(
    (row) =>
      row.facts &&
      finalVolume(
        row.facts,
        row.seeds.map(({ amount }) => amount),
      ).finalVolumeKnown === 'milk plus seed',
  );
  if (plus.length > 0) said.push({ row: null, sentence: assumed.milkPlusSeed(plus.length, lines(plus)) });
  if (layout.columns.some(({ meaning }) => meaning === 'volume') && rows.length > 0)
    said.push({ row: null, sentence: assumed.volume() });
  const capital = rows
    .flatMap(({ cells }) => filled(cells, 'jar'))
    .find(({ text }) => /^\p{Lu}$/u.test(tidy(text)));
  if (capital) said.push({ row: null, sentence: assumed.smallLetters(tidy(capital.text)) });
  const batches = new Set(rows.map(({ identity }) => `${dayName(identity)}|${plain(identity.word ?? '')}`));
  if (batches.size > 0 && rows.length > batches.size)
    said.push({ row: null, sentence: assumed.oneBatch(batches.size) });
  const holds = new Map<string, NoteRow[]>();
  for (const row of rows) {
    if (!row.facts || (row.facts.hours === null && row.facts.temperature === null)) continue;
    const key = `${dayName(row.identity)}|${plain(row.identity.word ?? '')}|${row.facts.hours}|${row.facts.temperature?.value.toFixed(2)}`;
    putTo(holds, key, row);
  }
  const shared = [...holds.values()].filter((group) => group.length > 1).flat();
  if (shared.length > 0) said.push({ row: null, sentence: assumed.sharedHold(lines(shared)) });
  return said;
}

/** @param changes whether an answer changes the jar it is. */
export function previewRow(row: NoteRow, changes: boolean): NotesPreview['rows'][number] {
  const seeds = seedNames(row).map(quoted);
  const label = row.identity.day === null ? null : labelOf(row);
  const base = { row: row.row.line, label, seeds };
  if (changes)
    return { ...base, state: 'changes', says: 'Its jar is in the ledger and changes as you answered.' };
  if (row.here !== null)
    return { ...base, state: 'already here', says: 'This row is in the ledger already.' };
  if (row.repeats !== null) return { ...base, state: 'already here', says: assumed.repeated(row.repeats) };
  if (row.clash !== null && !row.taken)
    return { ...base, state: 'already here', says: row.log.questions[0]?.sentence ?? '' };
  if (row.log.problems.length > 0)
    return { ...base, state: 'aside', says: row.log.problems[0]?.sentence ?? '' };
  return {
    ...base,
    state: 'new',
    says: `${label ?? ''}${seeds.length > 0 ? ` from ${seeds.join(' and ')}` : ''}`,
  };
}

/** What a reply may be long beyond what it is about, and for each character of that (bytes of JSON). */
const REPLY = { least: 60_000, perCharacter: 8 } as const;

/** Bytes that a text takes in JSON, at most. */
function bytesOf(text: string): number {
  let bytes = 2;
  for (let at = 0; at < text.length; at += 1) {
    const code = text.charCodeAt(at);
    bytes += code < 0x20 ? 6 : code === 0x22 || code === 0x5c ? 2 : code < 0x80 ? 1 : 3;
  }
  return bytes;
}
const roughly = (value: unknown): number =>
  typeof value === 'string'
    ? bytesOf(value)
    : Array.isArray(value)
      ? value.reduce<number>((sum, one) => sum + 1 + roughly(one), 2)
      : typeof value === 'object' && value !== null
        ? Object.entries(value).reduce((sum, [name, one]) => sum + name.length + 4 + roughly(one), 2)
        : 8;

/**
 * The preview no longer than a view can hold: of more than fits the first are listed, what stands in the way of the file
 * before what is only said, and how many more there are is said.
 * @param length characters of the file
 */
export function withinBudget(preview: NotesPreview, length: number): NotesPreview {
  let left: number = REPLY.least + REPLY.perCharacter * length;
  const fitting = <Item>(items: readonly Item[]): Item[] => {
    let count = 0;
    for (; count < items.length; count += 1) {
      const bytes = roughly(items[count]) + 1;
      if (bytes > left) break;
      left -= bytes;
    }
    return items.slice(0, count);
  };
  const columns = fitting(preview.columns);
  const blocking = preview.questions.filter(({ blocks, urgent }) => blocks || urgent === true);
  const others = preview.questions.filter(({ blocks, urgent }) => !blocks && urgent !== true);
  const first = fitting(blocking);
  const problems = fitting(preview.problems);
  const questions = [...first, ...fitting(others)];
  const rows = fitting(preview.rows);
  const assumptions = fitting(preview.assumptions);
  const more: Said[] = [
    ['problems', preview.problems.length - problems.length] as const,
    ['questions', preview.questions.length - questions.length] as const,
    ['rows', preview.rows.length - rows.length] as const,
    ['assumptions', preview.assumptions.length - assumptions.length] as const,
  ].flatMap(([what, count]) => (count > 0 ? [{ row: null, sentence: assumed.notListed(what, count) }] : []));
  return { columns, rows, problems, questions, assumptions: [...more, ...assumptions] };
}

/** Where each of several sheets begins, by the rows that are counted through all of them. */
export const sheetsCounted = (
  begins: readonly { readonly sheet: string; readonly line: number }[],
): Said[] => (begins.length > 0 ? [{ row: null, sentence: assumed.sheetsCounted(begins) }] : []);

/**
 * Which sheet of a workbook holds the notes; goes into `answers` as 'sheet'.
 * @param all the answer for all sheets that are laid out alike, and these
 */
export const sheetQuestion = (
  sheets: readonly string[],
  all: string,
  alike: readonly string[],
): NotesPreview['questions'][number] => ({
  id: 'sheet',
  row: null,
  sentence: question.sheet(sheets.length),
  choices: [
    ...(alike.length > 0 ? [{ value: all, label: question.sheetsAlike(alike) }] : []),
    ...sheets.slice(0, 50).map((sheet) => ({ value: sheet, label: sheet })),
  ],
  blocks: true,
});

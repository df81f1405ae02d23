// What the cells prove outweighs any hint: every word for a column, two words for it, and any unit letter above the same
// cells give the same jars; so do rows in any order and blank rows and columns anywhere.
import * as fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { NoteColumn } from '../../core/contract';
import { headingPhrases, LANGUAGES } from '../../core/notes/layout/heading-phrases';
import { headingMeaning, headingSaysDays, headingUnit } from '../../core/notes/layout/headings';
import { readTable } from '../../core/notes/table/text-table';
import { ALL_KEEPERS } from './all-keepers';
import { read, type Read } from './read';
import { inTurn, runs } from '../runs';

type Sheet = readonly { readonly meaning: NoteColumn; readonly heading: string; readonly cells: readonly string[] }[];
const column = (meaning: NoteColumn, heading: string, ...cells: string[]): Sheet[number] => ({ meaning, heading, cells });

const SHEETS: Readonly<Record<string, Sheet>> = {
  'a kitchen of spoons': [
    column('date', 'Date', '10/15/25', '10/15/25', '10/19/25', '10/23/25', '11/2/25'),
    column('jar', 'Jar', 'a', 'b', 'a', 'a', 'a'),
    column('seed', 'Seed', '10 capsules Blue Tin', '8 capsules Blue Tin', '10/15/25 b', '10/19/25 a', '10/23/25 a'),
    column('amount', 'Amount', '', '', '4 tablespoons', '3T', '2 tbsp'),
    column('milk', 'Milk', '1 qt whole milk', '1 qt whole milk', '1 qt half & half', '1 qt whole milk', '1 qt whole milk'),
    column('addition', 'Fiber', '2T acacia fibre', '2 tbsp oat bran', '', '3 Tbsp. potato starch', '2T oat bran'),
    column('hours', 'Hours', '30', '36h', '34', '38', '36'),
    column('temperature', 'Temp', '101F', '100 F', '99°F', '100F', '102 F'),
    column('set', 'Set', 'firm', 'very firm', 'soft', 'firm', 'runny'),
    column('ph', 'pH', '4.4', '4.28', '', '4.50', '4.42'),
    column('note', 'Notes', 'short jar', 'smooth', '', 'a little whey on top', 'fine'),
  ],
  'a kitchen of millilitres': [
    column('label', 'Label', '2026-01-05 a', '2026-01-05 b', '2026-01-09 a', '2026-01-13 a', '2026-01-20 a'),
    column('seed', 'Seed', '8 caps Meadow Pot', 'from the club', '2026-01-05 b', '2026-01-09 a', '2026-01-05 a + 2026-01-13 a'),
    column('amount', 'Amount', '', '30 ml', '45 ml', '60 ml', '20 ml + 20 ml'),
    column('milk', 'Milk', 'whole milk', 'skim milk', 'whole milk', 'whole milk', 'whole milk'),
    column('milk amount', 'Milk amount', '1 l', '1000 ml', '950 ml', '1 l', '0.5 l'),
    column('addition', 'Fibre', 'inulin', 'oat bran', '', 'inulin', 'inulin'),
    column('addition amount', 'Fibre amount', '10 g', '12 g', '', '8 g', '9 g'),
    column('hours', 'Hours', '30 h', '36 h', '34 h', '38 h', '36 h'),
    column('temperature', 'Temp', '38 °C', '37.5 °C', '38 °C', '39 °C', '38 °C'),
    column('texture', 'Texture', 'smooth', 'grainy', '', 'smooth', 'lumpy'),
    column('smell', 'Smell', 'mild', 'nutty', 'mild', '', 'mild'),
    column('vessel', 'Vessel', 'short glass', 'tall glass', 'short glass', 'short glass', 'tall glass'),
  ],
  'a kitchen with a clock': [
    column('date', 'Date', '25.10.2025', '26.10.2025', '30.10.2025', '03.11.2025', '07.11.2025'),
    column('seed', 'Seed', '8 caps Meadow Pot', '25.10.2025', '26.10.2025', '30.10.2025', '03.11.2025'),
    column('amount', 'Amount', '', '3 EL', '3 EL', '2 EL', '3 EL'),
    column('start', 'Start', '19:00', '18:30', '20:00', '19:15', '21:00'),
    column('end', 'End', '26.10.2025 19:00', '27.10.2025 18:30', '31.10.2025 20:00', '04.11.2025 19:15', '08.11.2025 21:00'),
    column('temperature', 'Temp', '38', '38', '37', '39', '38'),
    column('tang', 'Tang', 'mild', 'clear', 'mild', 'sharp', 'mild'),
  ],
}; // prettier-ignore

const csv = (sheet: Sheet): string => {
  const quoted = (cell: string): string => `"${cell.replaceAll('"', '""')}"`;
  const rows = (sheet[0]?.cells ?? []).map((_, at) => sheet.map(({ cells }) => quoted(cells[at] ?? '')).join(','));
  return [sheet.map(({ heading }) => quoted(heading)).join(','), ...rows].join('\n');
};

/** The jars as facts: what a heading is called is not one of them. */
function jarsOf(notes: Read): unknown {
  const names = new Map(notes.plan.jars.map((jar) => [jar.id, `${jar.madeOn} ${jar.letter}`]));
  return notes.plan.jars
    .map(({ id, madeOn, letter, hold, fields, additions, seedings, outcome }) => ({
      madeOn, letter, hold: hold && { hours: hold.hours, celsius: hold.planned?.value.toFixed(2) }, additions: additions.map(({ name, actual }) => [name, actual?.value]),
      milk: [fields.milk, fields.milkAmount?.value, fields.vessel], set: outcome && [outcome.setWord, outcome.ph, outcome.signs, outcome.texture, outcome.smell, outcome.tang, outcome.spoiledSaid], generation: notes.generations.get(id),
      seedings: seedings.map(({ fromRow, source, amount }) => [fromRow === null ? source : names.get(fromRow), amount?.value, amount?.unit]),
    }))
    .toSorted((a, b) => `${a.madeOn} ${a.letter}`.localeCompare(`${b.madeOn} ${b.letter}`)); // prettier-ignore
}
const under = (sheet: Sheet, meaning: NoteColumn, heading: string): string =>
  csv(sheet.map((one) => (one.meaning === meaning ? { ...one, heading } : one)));

const cases = Object.entries(SHEETS).flatMap(([name, sheet]) =>
  sheet.map(({ meaning }) => [`${name}: ${meaning}`, sheet, meaning] as const),
);
const phrasesOf = (meaning: NoteColumn): readonly string[] =>
  meaning === 'ignore' ? [] : headingPhrases(meaning);
/** Those readings that differ from the sheet's own. */
function otherwise(sheet: Sheet, meaning: NoteColumn, headings: readonly string[]): string[] {
  const whole = JSON.stringify(jarsOf(read(csv(sheet))));
  return headings.filter((heading) => {
    try {
      return JSON.stringify(jarsOf(read(under(sheet, meaning, heading)))) !== whole;
    } catch {
      return true;
    }
  });
}

describe('headings', () => {
  it.each(LANGUAGES.flatMap(({ example }) => Object.entries(example)))('%s means %s', (heading, meaning) => {
    expect(headingMeaning(heading)).toEqual({ meaning, sure: 3 });
  });

  it.each(Object.entries(SHEETS))('%s is read at all', (_name, sheet) => {
    const notes = read(csv(sheet));
    expect(notes.preview.columns.map(({ meaning }) => meaning)).toEqual(sheet.map(({ meaning }) => meaning));
    expect([notes.plan.jars.length, notes.preview.problems]).toEqual([5, []]);
  });

  it.each(cases)('any word for it: %s', (_name, sheet, meaning) => {
    expect(otherwise(sheet, meaning, phrasesOf(meaning))).toEqual([]);
  });

  it.each(cases)('two words for it: %s', (_name, sheet, meaning) => {
    const phrases = phrasesOf(meaning);
    const pairs = phrases.flatMap((phrase, at) => {
      const other = phrases[(at * 7 + 3) % phrases.length] ?? '';
      return inTurn([`${phrase}/${other}`, `${phrase} (${other})`, `${phrase} | ${other}`], at);
    });
    expect(otherwise(sheet, meaning, pairs)).toEqual([]);
  });

  it.each(cases)('any unit letter beside it: %s', (_name, sheet, meaning) => {
    const heading = sheet.find((one) => one.meaning === meaning)?.heading ?? '';
    const units = ['c', 'C', 'f', 'F', 'g', 'l', 'L', 'h', 'H', 't', 'T', 'm', 'ml', 'oz', '°C', '°F', '%', 'd', 'min', 'tbsp'];
    expect(otherwise(sheet, meaning, units.flatMap((unit) => [`${heading} (${unit})`, `${heading} ${unit}`, `${heading} [${unit}]`]))).toEqual([]);
  });

  const typed: readonly NoteColumn[] = ['date', 'hours', 'temperature'];
  const swaps = Object.entries(SHEETS).flatMap(([name, sheet]) =>
    sheet.flatMap((one, at) => sheet.slice(at + 1).filter((other) => typed.includes(one.meaning) && typed.includes(other.meaning)).map((other) => [`${name}: ${one.meaning} and ${other.meaning}`, sheet, one, other] as const)),
  );
  it.each(swaps)('headings that stand above each other’s cells: %s', (_name, sheet, one, other) => {
    const cells = (column: Sheet[number], unit: string): Sheet[number] => ({ ...column, cells: column.cells.map((cell) => (/^\d+$/.test(cell) ? `${cell}${unit}` : cell)) });
    const sure = sheet.map((column) => (column.meaning === 'hours' ? cells(column, ' h') : column.meaning === 'temperature' ? cells(column, ' °C') : column));
    const swapped = sure.map((column) => (column.meaning === one.meaning ? { ...column, heading: other.heading } : column.meaning === other.meaning ? { ...column, heading: one.heading } : column));
    expect(jarsOf(read(csv(swapped)))).toEqual(jarsOf(read(csv(sure))));
  });
});

describe('rows and columns', () => {
  it.each(Object.entries(SHEETS))('rows in any order, blank rows and columns anywhere: %s', (_name, sheet) => {
    const whole = jarsOf(read(csv(sheet)));
    const order = sheet[0]?.cells.map((_, at) => at) ?? [];
    fc.assert(
      fc.property(
        fc.shuffledSubarray(order, { minLength: order.length }),
        fc.array(fc.nat(order.length), { maxLength: 3 }),
        fc.array(fc.nat(sheet.length), { maxLength: 3 }),
        (rows, blankRows, blankColumns) => {
          const places = blankRows.reduce<number[]>((all, at) => all.toSpliced(at, 0, -1), rows);
          const shown = sheet.map((one) => ({ ...one, cells: places.map((at) => one.cells[at] ?? '') }));
          const blank = { meaning: 'ignore' as const, heading: '', cells: places.map(() => '') };
          const wide = blankColumns.reduce<Sheet>((all, at) => all.toSpliced(at, 0, blank), shown);
          expect(jarsOf(read(csv(wide)))).toEqual(whole);
        },
      ),
      { numRuns: runs(20) },
    );
  });
});

/** Sheets whose every line counts: a row that names a line of its own, a remark that goes on in the line below. */
const LINES_COUNT = /^(?:seeds by the row they stand in|remarks that go on in the line below)/;
/** A heading that tells its unit, is told again further down, or is one of several levels, can't stand alone in other words. */
const rewordable = (heading: string, rows: readonly (readonly string[])[], answers: Readonly<Record<string, string>>): boolean => {
  const found = headingMeaning(heading);
  return (
    found?.sure === 3 && found.others === undefined && found.apart === undefined && found.meaning !== 'ignore' && headingUnit(heading) === null &&
    !headingSaysDays(heading) && !/[^\p{L}\s?]/u.test(heading) && answers[`unit:${heading}`] === undefined &&
    rows.flat().filter((cell) => cell.trim() === heading.trim()).length === 1
  );
}; // prettier-ignore

// Where spaces hold columns apart there are no blank ones.
const PARTED = ALL_KEEPERS.filter(({ text }) => readTable(text).separator !== ' ');
describe.each(PARTED)('$name', ({ name, text, today, answers = {} }) => {
  const { separator, rows } = readTable(text);
  const cells = rows.map((row) => [...row.cells]);
  const more = { ...(today === undefined ? {} : { today }), answers };
  const jars = (table: readonly (readonly string[])[]): unknown => jarsOf(read(Papa.unparse(table.map((row) => [...row]), { delimiter: separator }), more));
  it('blank rows and columns, and a heading in another word, change no jar', () => {
    const whole = jars(cells);
    expect(jars(cells.map((row) => ['', ...row]))).toEqual(whole);
    if (!LINES_COUNT.test(name)) expect(jars(cells.flatMap((row) => [row, row.map(() => '')]))).toEqual(whole);
    const headings = cells.findIndex((row) => row.filter((cell) => headingMeaning(cell)?.sure === 3).length >= 3);
    const open = (cells[headings] ?? []).flatMap((heading, at) => (rewordable(heading, cells, answers) ? [at] : []));
    for (const at of inTurn(open, name.length)) {
      const heading = cells[headings]?.[at] ?? '';
      const phrases = phrasesOf(headingMeaning(heading)?.meaning ?? 'ignore').filter((phrase) => headingMeaning(phrase)?.others === undefined && headingUnit(phrase) === null);
      for (const phrase of inTurn(phrases.slice(0, 8), text.length))
        expect([heading, phrase, jars(cells.map((row, line) => (line === headings ? row.toSpliced(at, 1, phrase) : row)))]).toEqual([heading, phrase, whole]);
    }
  });
});

describe('every cell is used, asked about, or named as kept', () => {
  const EXTRA = ['Set by (h)', 'pH 12h', 'Start pH', 'Mood', 'Rating', 'Room temp', 'Taste', 'Price', 'Notes 2', 'Jar size', 'Bath', 'Time in', 'Out at', 'Time', 'Second seed',
    'Result', 'Final volume', 'Whey', 'Milk amount', 'Milk volume', 'Spoiled', 'Weather', 'Batch', 'Name', 'Colour', 'Days', 'Amount of milk', 'Source', 'Extra', '', 'pH at end', 'Check', '2', 'x']; // prettier-ignore
  const CELL = fc.oneof(
    fc.integer({ min: 100, max: 999 }).map((number) => `zq${number}`),
    fc.constantFrom('7.3', '19:40', '26 Oct 19:40', '21.5 °C', '333 g', '477 ml', '5.75', 'no', 'sharp', 'a lot', 'quite nice, really', '12 €', '3/10', '44 h', '2025-10-31', 'pink spots', 'a?', '8 of 10', 'thin', '+2'),
  );
  it.each(Object.entries(SHEETS))('%s, with columns and cells of any kind put in', (_name, sheet) => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.constantFrom(...EXTRA), fc.array(CELL, { minLength: 5, maxLength: 5 }), fc.nat(sheet.length)), { minLength: 1, maxLength: 3 }),
        (extra) => {
          const wide = extra.reduce<Sheet>((all, [heading, cells, at]) => all.toSpliced(at, 0, column('note', heading, ...cells)), sheet);
          let notes: Read;
          try {
            notes = read(csv(wide));
          } catch {
            return; // a refusal is a sentence
          }
          const { preview, plan } = notes;
          const of = (row: number): string =>
            [...preview.problems, ...preview.questions, ...preview.assumptions].filter((one) => one.row === row || one.row === null).map(({ sentence }) => sentence).join('\n');
          const lost = extra.flatMap(([heading, cells]) =>
            cells.filter((cell, at) => {
              const row = at + 2;
              const jars = plan.jars.filter(({ line }) => line === row);
              const aside = preview.problems.some((problem) => problem.row === row);
              const figure = /\d+(?:\.\d+)?/.exec(cell)?.[0] ?? cell;
              const used = `${JSON.stringify(jars)}\n${of(row)}`.toLowerCase();
              const clean = cell.toLowerCase();
              // A plain "no" to a question, and a word that is one of the program's own, are used as they stand.
              const inParts = clean.split(/[\s,]+/).every((word) => used.includes(word));
              return !aside && !inParts && !used.includes(figure) && !['no', 'a lot'].includes(clean);
            }).map((cell) => `${heading}: ${cell}`),
          );
          expect(lost).toEqual([]);
        },
      ),
      { numRuns: runs(75) },
    );
  });

  it('a day with its time and an end tell the hours', () => {
    const notes = read('Date,Jar,Seed,End\n2025-10-15 19:00,a,8 caps Blue Tin,2025-10-17 07:00\n2025-10-20 18:30,a,2025-10-15 a,next day 18:30\n2025-10-24 18:30,a,2025-10-20 a,late\n');
    expect(notes.plan.jars.map(({ hold }) => hold?.hours ?? null)).toEqual([36, 24, null]);
    expect(notes.preview.questions.filter(({ row }) => row === 4).map(({ sentence }) => sentence).join()).toMatch(/late/);
  });

  it.each(['Set by (h)', 'Set after', 'pH 12h', 'pH after 8 h', 'early pH'])('“%s” is named as kept', (heading) => {
    const notes = read(`Date,Jar,Seed,Set,pH,${heading}\n2025-10-15,a,8 caps Blue Tin,firm,4.4,5.1\n2025-10-20,a,2025-10-15 a,firm,4.3,5.2\n`);
    expect(notes.preview.assumptions.map(({ sentence }) => sentence).join('\n')).toContain(`“${heading}”`);
    expect(notes.plan.jars.map(({ fields }) => fields.note)).toEqual([`${heading}: 5.1`, `${heading}: 5.2`]);
  });

  it('forty days that are possible one way only outweigh the heading', () => {
    const day = (at: number): string => new Date(Date.UTC(2025, 8, 1 + at)).toISOString().slice(0, 10).split('-').toReversed().join('.');
    for (const heading of ['datum/date', 'Date (mm/dd)', 'mm/dd/yyyy', 'm/d date']) {
      const rows = Array.from({ length: 40 }, (_, at) => `${day(at)},${at === 0 ? '8 caps Blue Tin' : day(at - 1)}`);
      expect(read(`${heading},Seed\n${rows.join('\n')}\n`).plan.jars.length).toBe(40);
    }
  });
});

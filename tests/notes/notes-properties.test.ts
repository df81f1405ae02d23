// What must hold for any file: the order of rows, the separator and the quoting change nothing; every text is kept.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import * as fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { readTable } from '../../core/notes/table/text-table';
import { notesText } from '../../main/files/notes-file';
import { generationsOf, read, type Read } from './read';
import { ALL_KEEPERS } from './all-keepers';
import { withoutApostrophe } from '../../core/tables/table-text';
import { runs } from '../runs';

const KITCHEN = readFileSync(join(import.meta.dirname, 'kitchen-notes.csv'), 'utf8');
const table = Papa.parse<string[]>(KITCHEN.trim(), { newline: '\r\n' }).data;
const [head = [], ...body] = table;

/** The family without lines: what is to be the same whatever the file's form. */
const family = (notes: Read): unknown => {
  const names = new Map(notes.plan.jars.map((jar) => [jar.id, `${jar.madeOn} ${jar.letter}`]));
  const generations = generationsOf(notes.plan);
  return notes.plan.jars
    .map(({ id, line: _line, noted: _noted, seedings, ...jar }) => ({
      ...jar,
      generation: generations.get(id),
      seedings: seedings.map(({ fromRow, ...seeding }) => ({ ...seeding, from: fromRow === null ? null : names.get(fromRow) })),
    }))
    .toSorted((a, b) => a.label.localeCompare(b.label));
};
const whole = family(read(KITCHEN));

describe('the form of a file', () => {
  it('rows in any order give the same family', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(body, { minLength: body.length }), (rows) => {
        expect(family(read(Papa.unparse([head, ...rows])))).toEqual(whole);
      }),
      { numRuns: runs(13) },
    );
  });

  it('columns in any order give the same family', () => {
    fc.assert(
      fc.property(fc.shuffledSubarray(head.map((_, index) => index), { minLength: head.length }), (order) => {
        expect(family(read(Papa.unparse(table.map((row) => order.map((index) => row[index] ?? '')))))).toEqual(whole);
      }),
      { numRuns: runs(8) },
    );
  });

  it('any separator, quoting and line end give the same family', () => {
    fc.assert(
      fc.property(fc.constantFrom(',', ';', '\t', '|'), fc.boolean(), fc.constantFrom('\n', '\r\n', '\r'), (delimiter, quotes, newline) => {
        expect(family(read(Papa.unparse(table, { delimiter, quotes, newline })))).toEqual(whole);
      }),
      { numRuns: runs(12) },
    );
  });

  it('cells are those of papaparse, for any cells', () => {
    fc.assert(
      fc.property(
        fc.array(fc.array(fc.string({ maxLength: 8 }).map((text) => text.replaceAll(/[\r\u2028\u2029]/g, '')), { minLength: 3, maxLength: 3 }), { minLength: 1, maxLength: 8 }),
        fc.constantFrom(',', ';', '\t', '|'),
        (rows, delimiter) => {
          const text = `sep=${delimiter}\n${Papa.unparse(rows, { delimiter, quotes: true, newline: '\n' })}`;
          // But for the apostrophe that keeps a cell from being a formula, which is no part of it.
          const plain = rows.map((cells) => cells.map(withoutApostrophe));
          expect(readTable(text).rows.map(({ cells }) => cells)).toEqual(plain);
        },
      ),
    );
  });

  it('says the line of the file that a row starts on', () => {
    expect(readTable('a,b\n"x\ny",1\n\n"z",2\n').rows.map(({ line }) => line)).toEqual([1, 2, 4, 5]);
  });
});

const macRoman = (plain: string): Uint8Array => {
  // From the published Mac OS Roman table: ö 9A, ü 9F, ä 8A, Ö 85, ° A1.
  const codes: Record<string, number> = { ö: 0x9a, ü: 0x9f, ä: 0x8a, Ö: 0x85, '°': 0xa1 };
  return Uint8Array.from(plain, (character) => codes[character] ?? character.charCodeAt(0));
};

describe('encodings', () => {
  const text = 'Datum;Glas;Menge\n15.10.2025;a;½ Tasse Öl für Käse, 38 °C\n';
  const utf16 = (littleEndian: boolean, mark: boolean): Uint8Array => {
    const bytes = Buffer.from((mark ? '\uFEFF' : '') + text, 'utf16le');
    return littleEndian ? bytes : bytes.swap16();
  };
  it.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with its mark', Buffer.from(`\uFEFF${text}`)],
    ['UTF-16 LE', utf16(true, true)],
    ['UTF-16 BE', utf16(false, true)],
    ['UTF-16 LE without its mark', utf16(true, false)],
    ['UTF-16 BE without its mark', utf16(false, false)],
    ['Windows-1252', Buffer.from(text, 'latin1')],
  ] as const)('%s', (_name, bytes) => {
    expect(notesText('x.csv', bytes).text.replace('\uFEFF', '')).toBe(text);
  });
  it('a few words of Windows-1252 in a file of plain letters', () => {
    expect(notesText('x.csv', Buffer.from('Date,Seed\n1 May,½ cup of a\n', 'latin1')).text).toBe('Date,Seed\n1 May,½ cup of a\n');
  });
  it('Mac Roman', () => {
    const plain = text.replace('½ ', '');
    expect(notesText('x.csv', macRoman(plain)).text).toBe(plain);
  });
});

describe('nothing is dropped in silence', () => {
  it.each([['kitchen notes', KITCHEN] as const, ...ALL_KEEPERS.map(({ name, text }) => [name, text] as const)])('%s', (_name, text) => {
    const notes = read(text);
    const said = [...notes.preview.problems, ...notes.preview.questions, ...notes.preview.assumptions].map(({ sentence }) => sentence).join('\n');
    const headings = notes.preview.columns.map(({ meaning }) => meaning);
    for (const { line, cells } of readTable(text).rows) {
      const jar = notes.byLine.get(line);
      if (!jar) continue;
      const kept = JSON.stringify(notes.plan.jars.filter((one) => one.line === line)).toLowerCase();
      cells.forEach((cell, index) => {
        const meaning = headings[index];
        // Where each thing stands beside its name, the name is its heading.
        const words = said.includes('Each thing stands beside its own name') ? cell.trim().replace(/^[^:]{1,40}: /, '') : cell.trim();
        if (words === '' || meaning === 'date' || meaning === 'jar' || meaning === 'label' || meaning === 'seed') return;
        if (meaning === 'hours' && jar.hold?.hours !== null && jar.hold !== null) return; // its number is checked elsewhere
        if (['none', 'n/a', '"', '""'].includes(words)) return;
        // A figure stands as it was typed or as its number; words stand in a field, in the note, or in a sentence.
        const whole = kept.includes(JSON.stringify(words).slice(1, -1).toLowerCase()) || said.includes(words);
        const parts = words.toLowerCase().replaceAll('&', 'and').replaceAll('-and-', ' and ').split(/[\s+(),]+/).filter((word) => !['of', 'and', 'each', 'ph', 'h', 'hrs', 'std.'].includes(word));
        const inParts = parts.every((word) => kept.includes(word.replace(',', '.')) || kept.includes(word) || said.toLowerCase().includes(word) || kept.includes(String(Number.parseFloat(word))));
        expect(whole || inParts ? '' : `${line}: ${words}`).toBe('');
      });
    }
  });
});

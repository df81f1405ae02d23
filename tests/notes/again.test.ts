// The same bytes again, a longer file, a jar entered by mistake, and texts that are none: against real ledger files.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { contract, type Reply, type Result } from '../../core/contract';
import { refusals, refusalSentence } from '../../core/sentences';
import { Session } from '../../main/session';
import { runs } from '../runs';

let folder: string;
let session: Session;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'jarline-again-'));
  session = new Session({
    file: join(folder, 'ledger.sqlite'), mode: 'create', now: '2026-03-01T09:00:00+01:00', timeZone: 'Europe/Berlin', version: '0',
  }); // prettier-ignore
});
afterEach(() => {
  session.close();
  rmSync(folder, { recursive: true });
});

type Name = 'notes.bringIn' | 'notes.preview' | 'family.get' | 'history.list' | 'jar.mistake';
function ask<N extends Name>(name: N, input: unknown): Result<Reply<N>> {
  const result = session.answer(name, contract[name].input.parse(input));
  if (result.ok) contract[name].reply.parse(result.value);
  return result as Result<Reply<N>>;
}
function value<N extends Name>(name: N, input: unknown): Reply<N> {
  const result = ask(name, input);
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return result.value;
}
const bytes = (text: string | Uint8Array) => ({
  file: { name: 'notes.csv', bytes: typeof text === 'string' ? new TextEncoder().encode(text) : text },
});
const bring = (text: string): Reply<'notes.bringIn'> => value('notes.bringIn', bytes(text));
const acts = (): number => value('history.list', { record: null, before: null, limit: 200 }).acts.length;
const jars = (): Reply<'family.get'>['jars'] => value('family.get', {}).jars;

describe('the same file again', () => {
  const HEAD = 'Date,Jar,Seed,Amount\n';
  const TAUGHT = [
    // A bare name is a product on the first day only; later rows of the same name must not wait for a second time.
    ['a bare name', `${HEAD}2025-10-15,a,Blue Tin,\n2025-10-23,a,2025-10-15 a,3 tbsp\n2025-10-30,a,Blue Tin,\n`],
    ['a name with "and" in it', `${HEAD}2025-10-15,a,Salt and Sun,\n2025-10-15,b,8 caps Salt and Sun,\n2025-10-30,a,Salt and Sun,\n`],
    ['a name beside another', `${HEAD}2025-10-15,a,Blue Tin,\n2025-10-30,a,Blue Tin + Meadow Pot,\n2025-11-03,a,Meadow Pot,\n`],
    ['somebody’s culture', `${HEAD}2025-10-15,a,Rosa's starter,\n2025-10-23,a,Rosa's starter,3 tbsp\n2025-10-30,b,2025-10-15 a,3 tbsp\n`],
    ['a gram of powder', `${HEAD}2025-10-15,a,Meadow Pot,2 g\n2025-10-23,a,2 g Meadow Pot powder,\n2025-10-30,a,Meadow Pot,\n`],
    ['figures', `${HEAD}2025-10-15,a,Blue Tin 2,\n2025-10-23,a,Blue Tin 2,\n2025-10-23,b,2 x Blue Tin 2,\n2025-11-02,a,Blue Tin 2,\n`],
  ] as const;
  it.each(TAUGHT)('adds nothing, not even an act: %s', (_name, text) => {
    bring(text);
    const before = [jars(), acts()];
    expect(bring(text)).toMatchObject({ jars: 0, seedings: 0, sources: 0, changed: 0 });
    expect([jars(), acts()]).toEqual(before);
    // A row more adds that row.
    expect(bring(`${text}2025-12-01,a,4 caps Third Thing,\n`).jars).toBe(1);
    expect(acts()).toBe(Number(before[1]) + 1);
  });

  it('adds nothing for any rows of a small kitchen', () => {
    const day = fc.integer({ min: 1, max: 9 }).map((number) => `2025-10-0${number}`);
    const name = fc.constantFrom('Blue Tin', 'Meadow Pot', 'Rosa’s starter', "Rosa's starter", 'Salt and Sun', 'from the club', 'Tin 3');
    const seed = fc.oneof(
      name, name.map((one) => `8 caps ${one}`), name.map((one) => `2 g ${one}`), fc.tuple(name, name).map((two) => two.join(' + ')),
      fc.tuple(day, fc.constantFrom('a', 'b', '')).map((two) => two.join(' ').trim()), fc.constantFrom('previous batch', 'b', 'same day a', ''),
    ); // prettier-ignore
    const row = fc.tuple(day, fc.constantFrom('a', 'b', 'c', ''), seed, fc.constantFrom('', '3 tbsp', '3', '8 caps')).map((cells) => cells.join(','));
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 8 }), (rows) => {
        session.close();
        rmSync(folder, { recursive: true });
        folder = mkdtempSync(join(tmpdir(), 'jarline-again-'));
        session = new Session({ file: join(folder, 'ledger.sqlite'), mode: 'create', now: '2026-03-01T09:00:00+01:00', timeZone: 'Europe/Berlin', version: '0' });
        const input = { ...bytes(`${HEAD}${rows.join('\n')}\n`), answers: { 'unit:Amount': 'tbsp' } };
        const first = ask('notes.bringIn', input);
        if (!first.ok) return;
        const before = acts();
        expect(value('notes.bringIn', input)).toMatchObject({ jars: 0, seedings: 0, sources: 0, changed: 0 });
        expect(acts()).toBe(before);
      }),
      { numRuns: runs(20) },
    );
  });

  it('is told by heading and cell, not by what they are taken to mean', () => {
    const text = `Date,Jar,Seed,Amount,Zing\n2025-10-15,a,10 capsules Blue Tin,,4.4\n2025-10-23,a,2025-10-15 a,3 tbsp,4.3\n`;
    bring(text);
    for (const meaning of ['ph', 'note', 'ignore', 'vessel'])
      expect(value('notes.bringIn', { ...bytes(text), mapping: { Zing: meaning } })).toMatchObject({ jars: 0, changed: 0 });
    expect(acts()).toBe(1);
  });

  it('finds the rows of a file by their index', () => {
    bring(`${HEAD}2025-10-15,a,Blue Tin,\n`);
    const plan = session.ledger.db
      .prepare(
        `EXPLAIN QUERY PLAN SELECT n.key, n.cells_sha, n.occurrence FROM note_file f CROSS JOIN note_row n ON n.file = f.key
          WHERE f.name = ? ORDER BY n.key`,
      )
      .all('notes.csv') as { detail: string }[];
    expect(plan.map(({ detail }) => detail).join('\n')).toMatch(/SEARCH n USING (?:COVERING )?INDEX/);
    expect(plan.map(({ detail }) => detail).join('\n')).not.toMatch(/SCAN n/);
  });
});

describe('a jar entered by mistake', () => {
  it('is no seed of a longer file', () => {
    const text = 'Date,Jar,Seed,Amount\n2025-10-15,a,8 caps Blue Tin,\n2025-10-15,b,8 caps Blue Tin,\n';
    bring(text);
    const wrong = jars().find(({ letter }) => letter === 'a');
    value('jar.mistake', { id: wrong?.id, why: 'never made' });
    const longer = bring(`${text}2025-10-23,a,2025-10-15 a,3 tbsp\n2025-10-23,b,2025-10-15 b,3 tbsp\n`);
    expect(longer.jars).toBe(1);
    expect(longer.problems.map(({ row, sentence }) => [row, sentence])).toEqual([
      [4, expect.stringContaining('“2025-10-15 a” was not found')],
    ]);
    expect(jars().every(({ seeds }) => seeds.every(({ jar }) => jar !== wrong?.id))).toBe(true);
  });
});

describe('texts that are none', () => {
  const HEAD = 'Date,Jar,Seed,Amount,Milk,Fiber,Hours,Temp,Set,pH,Notes';
  const CELLS = ['2025-10-15', 'a', '8 caps Blue Tin', '3 tbsp', '1 qt whole milk', '2T oat bran', '36', '101F', 'firm', '4.4', 'fine'];
  const ODD = ['1e400', '1e999 ml', '9'.repeat(400), `${'9'.repeat(400)} CFU`, '-1e400', '\uD800', 'a\uDC00b', '\uFEFF', 'x\uFEFFy', '\u0000', '\u0007', 'NaN', 'Infinity', '10^99', '10^99 CFU', '1/0', '0/0',
    'a'.repeat(30), '🫙'.repeat(160), '\u202E', '=1+1', '2025-13-45', '99999', '1e5', '٣', '５', '...', '""', "'", '\\', '%', '12:99', '-0', '½½½']; // prettier-ignore
  it.each(ODD.map((odd) => [JSON.stringify(odd).slice(0, 40), odd] as const))('%s in any cell ends in a sentence or a reading', (_name, odd) => {
    for (let column = 0; column < CELLS.length; column += 1) {
      const cells = CELLS.map((cell, at) => (at === column ? odd : cell));
      const result = ask('notes.bringIn', bytes(`${HEAD}\n${cells.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(',')}\n2025-10-16,b,8 caps Blue Tin,,,,,,,,\n`));
      if (!result.ok) expect([column, Object.keys(refusals).filter((code) => code !== 'unexpected')]).toEqual([column, expect.arrayContaining([result.error.code])]);
    }
  });

  it.each(['day order', 'cell:2:Date', 'cell:2:Jar', 'cell:2:Amount', 'unit:Amount', 'set:2', 'spoons'])('an odd answer to %s', (id) => {
    for (const odd of ODD.filter((text) => text.length <= 500)) {
      const result = ask('notes.bringIn', { ...bytes(`${HEAD}\n${CELLS.join(',')}\n`), answers: { [id]: odd } });
      expect(result.ok || result.error.code).not.toBe('unexpected');
    }
  });

  it.each([
    ['CR only', (text: string) => text.replaceAll('\n', '\r')],
    ['CR LF', (text: string) => text.replaceAll('\n', '\r\n')],
    ['mixed line ends', (text: string) => text.replace('\n', '\r\n').replace(/\n(?=2025-10-16)/, '\r')],
    ['a mark of byte order in the middle', (text: string) => text.replace('\n2025-10-15', '\n\uFEFF2025-10-15')],
    ['a mark before a heading', (text: string) => `\uFEFF\uFEFF${text}`],
  ])('%s reads the same', (_name, change) => {
    const text = `${HEAD}\n${CELLS.join(',')}\n2025-10-16,b,2025-10-15 a,3 tbsp,,,,,,,\n`;
    expect(value('notes.preview', bytes(change(text))).rows).toEqual(value('notes.preview', bytes(text)).rows);
  });

  it.each([
    ['a NUL among the bytes', Uint8Array.of(0x44, 0x61, 0, 0x74, 0x65)],
    ['UTF-16 with a lone surrogate and a NUL', new Uint8Array(Buffer.from('Date,Jar,Seed\n2025-10-15,a\uD800\u0000,8 caps Blue Tin\n', 'utf16le'))],
    ['half a character at the end', Uint8Array.of(...Buffer.from('Date,Jar,Seed\n2025-10-15,a,8 caps Blue Tin'), 0xc3)],
    ['UTF-7', new Uint8Array(Buffer.from('Date,Jar,Seed\n2025-10-15,a,8 caps +AMQ-\n'))],
    ['UTF-32', new Uint8Array(Buffer.from([...'Date,Jar\n'].flatMap((letter) => [letter.charCodeAt(0), 0, 0, 0])))],
    ['noise', Uint8Array.from({ length: 999 }, (_, at) => 1 + ((at * 7919) % 255))],
  ])('%s is never “unexpected”', (_name, odd) => {
    const result = ask('notes.preview', bytes(odd));
    expect(result.ok || result.error.code).not.toBe('unexpected');
  });

  it('quotes a cell to two hundred characters at most', () => {
    for (let column = 0; column < CELLS.length; column += 1) {
      const cells = CELLS.map((cell, at) => (at === column ? 'why '.repeat(2000) : cell));
      const reply = value('notes.preview', bytes(`${HEAD}\n${cells.join(',')}\n`));
      const texts = [...reply.problems.flatMap(({ sentence, cell }) => [sentence, cell ?? '']), ...[...reply.questions, ...reply.assumptions].map(({ sentence }) => sentence), ...reply.rows.map(({ says }) => says)];
      for (const text of texts) expect((text.match(/why ?/g) ?? []).length).toBeLessThanOrEqual(50);
    }
  });
});

describe('what was chosen about columns', () => {
  const HEAD = 'Day,Pot,Stuff,Num\n2026-01-05,a,8 caps Blue Tin,3\n';
  const choices = { mapping: { Stuff: 'seed', Num: 'addition amount' }, answers: { 'unit:Num': 'g' } };
  const preview = (text: string, answers = {}): Reply<'notes.preview'> =>
    value('notes.preview', { ...bytes(text), answers });
  const told = ({ columns }: Reply<'notes.preview'>) => columns.map(({ meaning }) => meaning);

  it('holds for the next file with the same headings, is said, and is dropped with one answer', () => {
    const longer = `${HEAD}2026-01-12,a,2026-01-05 a,4\n`;
    const alone = told(preview(longer));
    value('notes.bringIn', { ...bytes(HEAD), ...choices });
    const next = preview(longer);
    expect(told(next)).toEqual(['date', 'jar', 'seed', 'addition amount']);
    const said = next.assumptions.find(({ id }) => id === 'kept choices');
    for (const chosen of ['“Stuff” tells what seeded the jar', '“Num” is in g']) expect(said?.sentence).toContain(chosen);
    expect([told(preview(longer, { 'kept choices': 'drop' })), alone[3]]).toEqual([alone, alone[3]]);
    // What is said of this file goes before what was said of another.
    const own = value('notes.preview', { ...bytes(longer), mapping: { Num: 'note' } });
    expect(told(own)).toEqual(['date', 'jar', 'seed', 'note']);
    expect(told(preview(longer.replace('Stuff', 'Things')))).not.toContain('addition amount');
  });
});

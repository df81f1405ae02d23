// Time in step with size, proven by counting and never by a clock: how many characters regular expressions pass over, how
// long the texts are that they are let loose on, and how many characters a search for a mark passes over.
import { afterEach, describe, expect, it } from 'vitest';
import { KeptStages, readNotes, type NotesInput, type NotesReading } from '../../core/notes/notes-door';
import { warmthOf } from '../../core/growth/warm-hours';
import { readTable } from '../../core/notes/table/text-table';
import { counting } from './counted-work';
import { hash, EMPTY } from './read';

const HEAD = 'Date,Jar,Seed,Amount,Milk,Fiber,Hours,Temp,Set,pH,Notes\n';
const CELLS = ['2025-10-15', 'a', '8 caps Blue Tin', '', '1 qt whole milk', '2T acacia fibre', '36', '101F', 'firm', '4.4', 'fine'];
const row = (at: number, change: (cells: string[]) => void = () => undefined): string => {
  const cells = [...CELLS];
  const month = String(1 + (at % 12)).padStart(2, '0');
  cells[0] = `20${10 + (Math.floor(at / 336) % 15)}-${month}-${String(1 + (Math.floor(at / 12) % 28)).padStart(2, '0')}`;
  cells[1] = `a${at}`;
  change(cells);
  return `${cells.join(',')}\n`;
};
const rows = (size: number, change?: (cells: string[], at: number) => void): string =>
  HEAD + Array.from({ length: Math.ceil(size / 80) }, (_, at) => row(at, (cells) => change?.(cells, at))).join('');
const inCell = (column: number, text: string): string =>
  HEAD + row(1, (cells) => void (cells[column] = `"${text}"`)) + row(2);

const FILLERS: Readonly<Record<string, string>> = {
  letters: 'x', spaces: ' ', digits: '1', brackets: '(', negations: 'no ', denied: 'no pink ', list: 'a,', sum: 'a + ', lines: 'a\n',
  days: '2025-10-15 b and ', amounts: '3 tbsp + ', points: '1.', dashes: '-', questions: '?', accents: 'é', marks: 'e\u0301', quotes: '""',
}; // prettier-ignore

const SHAPES: Readonly<Record<string, (size: number) => string>> = {
  'blank lines': (size) => `${HEAD}${row(1)}${'\n'.repeat(size)}`,
  'lines of separators': (size) => HEAD + row(1) + ',,,,\n'.repeat(size / 5),
  'one line of separators': (size) => `${HEAD}${row(1)}${','.repeat(size)}`,
  'a quote that never closes': (size) => rows(size).replace('fine', '"fine'),
  'two stray quotes': (size) => rows(size, (cells, at) => void (at % 50 === 7 && (cells[1] = `"${cells[1]}`))),
  'a stray quote in every row': (size) => rows(size, (cells) => void (cells[10] = '"fine')),
  'quotes only': (size) => '"'.repeat(size),
  'quotes and separators': (size) => '",'.repeat(size / 2),
  'whole rows': (size) => rows(size),
  'lines that are no jars': (size) => `${HEAD}${row(1)}${'a\n'.repeat(size / 2)}`,
  'days without a year': (size) => rows(size, (cells) => void (cells[0] = cells[0]?.slice(5).replace('-', '/') ?? '')),
  'one label': (size) => rows(size, (cells, at) => { cells[0] = '2025-10-15'; cells[1] = 'a'; cells[10] = `${at}`; }),
  'no letters': (size) => rows(size, (cells, at) => { cells[0] = '2025-10-15'; cells[1] = ''; cells[10] = `${at}`; }),
  'the previous jar': (size) => rows(size, (cells) => { cells[0] = '2025-10-15'; cells[2] = 'previous'; }),
  'one letter for all': (size) => rows(size, (cells) => { cells[1] = 'a'; cells[2] = 'a'; }),
  'sections': (size) => HEAD + '2025-10-15\nb,c\n'.repeat(size / 15),
  'headings again and again': (size) => HEAD.repeat(size / 60),
  'many columns': (size) => `Date,Jar,Seed${',Note'.repeat(size / 7)}\n2025-10-15,a,8 caps Blue Tin${',x'.repeat(size / 7)}\n`,
  'many seeds': (size) => `Date,Jar,Amount${',Seed'.repeat(size / 7)}\n2025-10-15,a,3${',b'.repeat(size / 7)}\n`,
  'columns of spaces': (size) => `a  b  c${' '.repeat(30)}\n`.repeat(size / 38),
  ...Object.fromEntries(
    Object.entries(FILLERS).flatMap(([name, filler]) =>
      ['a day', 'a jar', 'a seed', 'an amount', 'a milk', 'a fibre', 'hours', 'a temperature', 'a set word', 'a pH', 'a note'].map(
        // Half the size: one cell of it is as long as the longest that a pattern may have to go back in, twice over.
        (cell, column) => [`a long cell of ${name} for ${cell}`, (size: number) => inCell(column, filler.repeat(size / filler.length / 2))] as const,
      ),
    ),
  ),
}; // prettier-ignore

const ASKED: Omit<NotesInput, 'text'> = {
  file: 'notes.csv', mapping: {}, answers: {}, today: '2026-03-01', preferences: { spoons: 'US' }, ledger: EMPTY, hash,
}; // prettier-ignore

const patterns = RegExp.prototype;
const strings = String.prototype;
const { exec } = patterns;
const { indexOf } = strings;
const lists = Array.prototype;
const { push } = lists;
const put = (
  counting: Pick<RegExp, 'exec'> | null,
  searching: typeof indexOf | null,
  pushing: typeof push | null,
): void => {
  Object.defineProperty(patterns, 'exec', { value: counting?.exec ?? exec, writable: true, configurable: true });
  Object.defineProperty(strings, 'indexOf', { value: searching ?? indexOf, writable: true, configurable: true });
  Object.defineProperty(lists, 'push', { value: pushing ?? push, writable: true, configurable: true });
};
afterEach(() => put(null, null, null));

/** Patterns for one character after the other, which never go back. */
const STRAIGHT = new Set([
  '[^\\s,]', '[^\\s;]', '[^\\s|]', '^\\uFEFF', '\\r\\n?', '[\\u2028\\u2029\\v\\f]', '[\\0-\\x08\\x0e-\\x1f\\x7f]', '\\S', '^[ -~]*$', ' {2,}', '[\\u0300-\\u036f]', 'ł', 'ø', 'æ', 'ß',
  '[‐‑‒–—―−]', '⁄', "[‘’‛′]", '[“”„‟″«»]', '\\s+', '[\\r\\n]+', ' ?([,;+&/]) ?', '""',
]); // prettier-ignore

interface Counted {
  /** Characters that patterns and searches passed over. */
  readonly passed: number;
  /** The longest text that a pattern went through which might have to go back in it. */
  readonly longest: number;
  /** The most things that were put into a list at once: of more than some hundred thousand that fails. */
  readonly together: number;
  readonly reply: number;
}

const readText = (text: string, more: Partial<NotesInput>): NotesReading => readNotes({ ...ASKED, text, ...more });

/** Reads a text while every pattern and every search is counted. */
function counted(text: string, more: Partial<NotesInput> = {}): Counted {
  let passed = 0;
  let longest = 0;
  let together = 0;
  function count(this: RegExp, within: string): RegExpExecArray | null {
    const from = this.global || this.sticky ? this.lastIndex : 0;
    const found = exec.call(this, within);
    // A sticky pattern looks at one place only.
    const to = found ? found.index + found[0].length : this.sticky ? from + 1 : within.length;
    passed += Math.max(1, to - from);
    // In this order: what a pattern is made of takes long to tell.
    if (to - from > longest && !STRAIGHT.has(this.source)) longest = to - from;
    return found;
  }
  function search(this: string, wanted: string, from = 0): number {
    const found = indexOf.call(this, wanted, from);
    passed += (found < 0 ? this.length : found) - from;
    return found;
  }
  function pushed(this: unknown[], ...given: unknown[]): number {
    if (given.length > together) together = given.length;
    return given.length === 1 ? push.call(this, given[0]) : push.apply(this, given);
  }
  put({ exec: count }, search, pushed);
  try {
    const reading = readText(text, more);
    return { passed, longest, together, reply: JSON.stringify(reading.ok ? reading.preview : reading.params).length };
  } finally {
    put(null, null, null);
  }
}

describe('what reading costs grows as the file does', () => {
  it.each(Object.entries(SHAPES))('%s', (_name, shape) => {
    const [small, large] = [counted(shape(12_000)), counted(shape(48_000))];
    // Four times the size: four times the work, and a little for what is rounded.
    expect(large.passed / small.passed).toBeLessThan(4.6);
    expect(large.longest).toBeLessThanOrEqual(10_000);
    expect(large.together).toBeLessThanOrEqual(5_000);
    expect(large.reply).toBeLessThan(65_536 + 8 * shape(48_000).length);
  });
});

it('lines with nothing in them are counted, and no list of them is made', () => {
  // A look for each of four separators and one to read it by; the counting counts a look twice.
  const [LINES, PASSES] = [100_000, 11];
  for (const line of ['\n', ',,,,\n', ' \t \n']) {
    const text = HEAD + row(1) + line.repeat(LINES) + row(2);
    const [work, table] = counting((counted) => {
      const read = readTable(text);
      return [counted(), read] as const;
    });
    expect([table.rows.at(-1)?.line, table.rows.length, table.moreEmpty]).toEqual([LINES + 3, 103, LINES - 100]);
    expect(work).toBeLessThan(PASSES * LINES);
  }
});

it('a probe that read each second for days is read', () => {
  const profile = Array.from({ length: 200_000 }, (_, second) => ({ hour: second / 3600, celsius: 37 + (second % 3) }));
  expect(warmthOf(profile)).toMatchObject({ coolest: 37, warmest: 39 });
});

describe('an answer', () => {
  const text = `${HEAD.trim()},Xyzzy\n${Array.from({ length: 200 }, (_, at) =>
    row(at, (cells) => {
      const day = `2025-${String(1 + Math.floor(at / 20)).padStart(2, '0')}-${String(1 + (at % 20)).padStart(2, '0')}`;
      cells.splice(0, 4, day, 'ab'[at % 2] ?? '', at < 2 ? '8 caps Blue Tin' : at % 50 === 7 ? 'b' : 'prev', at < 2 ? '' : '3');
      cells[7] = '';
      cells[10] = at % 20 === 3 ? 'fizzy?' : 'fine';
    }).replace('\n', ',38\n'),
  ).join('')}`;
  const ANSWERS = {
    'bubbles:5': 'fine', 'cell:9:Hours': '30', 'cell:9:Date': '2025-01-09', 'means:Xyzzy': 'temperature', 'unit:Amount': 'tbsp', 'spoons': 'metric',
    'letter alone': 'last before', 'changed:4': 'another',
  }; // prettier-ignore

  /** Read without what was kept, once for each set of answers. */
  const anew = new Map<string, NotesReading>();
  const readAnew = (answers: NotesInput['answers']): NotesReading => {
    const key = JSON.stringify(answers);
    const reading = anew.get(key) ?? readText(text, { answers });
    anew.set(key, reading);
    return reading;
  };

  it.each(Object.entries(ANSWERS))('%s, then all, read on from what is kept as they are read anew', (id, answer) => {
    const stages = new KeptStages();
    for (const answers of [{}, { [id]: answer }, ANSWERS, {}]) {
      expect(readText(text, { answers, stages })).toEqual(readAnew(answers));
    }
  });

  it('about one row has nothing read again but how the rows hang together', () => {
    const stages = new KeptStages();
    const first = counted(text, { stages });
    for (const answers of [{ 'bubbles:5': 'fine' }, { 'bubbles:5': 'fine', 'bubbles:25': 'spoiled' }])
      expect(counted(text, { answers, stages }).passed / first.passed).toBeLessThan(1 / 3);
  });
});

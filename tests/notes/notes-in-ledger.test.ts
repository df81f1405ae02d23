// Bringing notes into real ledger files: once, twice, longer, changed, cancelled, undone.
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Reply, Result } from '../../core/contract';
import { contract } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import type { Job } from '../../main/ledger/job';
import { Refused } from '../../main/refusal';
import { Session } from '../../main/session';
import { demoSession } from '../ledger/ledger-files';
import { counting } from './counted-work';
import { ODD_KEEPERS } from './odd-keepers';
import { OTHER_KEEPERS } from './other-keepers';
import { VARIED } from './varied';

const KITCHEN = readFileSync(join(import.meta.dirname, 'kitchen-notes.csv'), 'utf8').replaceAll('\r\n', '\n');
let folder: string;
let session: Session;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'jarline-notes-'));
  session = new Session({
    file: join(folder, 'ledger.sqlite'), mode: 'create', now: '2026-03-01T09:00:00+01:00', timeZone: 'Europe/Berlin', version: '0',
  }); // prettier-ignore
});
afterEach(() => {
  session.close();
  rmSync(folder, { recursive: true });
});

const file = (text: string | Uint8Array, name = 'notes.csv'): { path: string } => {
  const path = join(folder, name);
  writeFileSync(path, text);
  return { path };
};
type More = { answers?: Record<string, string>; mapping?: Record<string, string> };
const ask = <N extends 'notes.bringIn' | 'notes.preview' | 'family.get' | 'history.list' | 'batch.record' | 'act.undo'>(name: N, input: unknown, job?: Job): Result<Reply<N>> => {
  const result = session.answer(name, contract[name].input.parse(input), job);
  if (result.ok) contract[name].reply.parse(result.value);
  return result as Result<Reply<N>>;
};
const bring = (text: string | Uint8Array, more: More = {}, name = 'notes.csv'): Reply<'notes.bringIn'> => {
  const result = ask('notes.bringIn', { file: file(text, name), ...more });
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return result.value;
};
const family = (): Reply<'family.get'> => {
  const result = ask('family.get', {});
  if (!result.ok) throw new Error(refusalSentence(result.error));
  return result.value;
};
/** The family without ids: labels, generations, seeds by label, shares. */
const shape = (): unknown => {
  const { jars } = family();
  const label = new Map(jars.map((jar) => [jar.id, `${jar.madeOn} ${jar.letter}`]));
  return jars
    .map(({ id: _id, label: _label, cautions, seeds, ...jar }) => ({
      ...jar,
      cautions: cautions.length,
      seeds: seeds.map((seed) => ({ ...seed, jar: seed.jar === null ? null : label.get(seed.jar) })).toSorted((a, b) => JSON.stringify(a).localeCompare(JSON.stringify(b))),
    }))
    .toSorted((a, b) => `${a.madeOn} ${a.letter}`.localeCompare(`${b.madeOn} ${b.letter}`));
};
const acts = (): number => {
  const result = ask('history.list', { record: null, before: null, limit: 200 });
  return result.ok ? result.value.acts.length : -1;
};

const cells = (line: string): string[] => (line.match(/("([^"]*)"|[^,]*)(,|$)/g) ?? []).map((cell) => cell.replace(/,$/, '').replace(/^"|"$/g, ''));

describe('kitchen notes in a ledger', () => {
  it('adds 44 jars in one act, and nothing the second time', () => {
    const first = bring(KITCHEN);
    expect([first.jars, first.sources, first.seedings]).toEqual([44, 2, 51]);
    expect(first.problems.map(({ row }) => row)).toEqual([47, 47]);
    expect(family().jars.length).toBe(44);
    expect(acts()).toBe(1);
    const again = bring(KITCHEN);
    expect([again.jars, again.sources, again.seedings]).toEqual([0, 0, 0]);
    expect(again.problems.map(({ row }) => row)).toEqual([47, 47]);
    expect(acts()).toBe(1);
  });

  it('is the same file with other separators, quotes, spaces, case and order of rows', () => {
    bring(KITCHEN);
    const [head = '', ...rows] = KITCHEN.trimEnd().split('\n');
    const other = [head, ...rows.toReversed()].map((line) => cells(line).slice(0, 11).map((cell) => `"${cell.toUpperCase()} "`).join(';')).join('\r\n');
    const again = bring(other, {}, 'other-name.csv');
    expect(again.jars).toBe(0);
    expect(again.questions.filter(({ id }) => id.startsWith('changed'))).toEqual([]);
    expect(acts()).toBe(1);
  });

  it('a longer version adds only the new rows, wherever they stand, and ends as if brought in at once', () => {
    const lines = KITCHEN.trimEnd().split('\n');
    for (const cut of [4, 10, 21, 40]) {
      bring(lines.slice(0, cut).join('\n'));
    }
    expect(bring(KITCHEN).jars).toBe(6);
    expect(family().jars.length).toBe(44);
    const piecewise = shape();
    session.close();
    session = new Session({ file: join(folder, 'whole.sqlite'), mode: 'create', now: '2026-03-01T09:00:00+01:00', timeZone: 'Europe/Berlin', version: '0' });
    bring(KITCHEN);
    expect(piecewise).toEqual(shape());
    const inserted = [...lines.slice(0, 3), '10/16/25,a,10/15/25 a,2 tbsp,1 qt whole milk,,36,100F,firm,,', ...lines.slice(3)];
    expect(bring(inserted.join('\n')).jars).toBe(1);
  });

  it('a changed row is asked about and changes nothing', () => {
    bring(KITCHEN);
    const before = shape();
    const changed = bring(KITCHEN.replace('10/23/25,c,10/15/25 b,2 tbsp,1 qt whole milk,3 Tbsp. potato starch,36h', '10/23/25,c,10/15/25 b,2 tbsp,1 qt whole milk,3 Tbsp. potato starch,30h'));
    expect(changed.jars).toBe(0);
    const question = changed.questions.find(({ row, id }) => row === 7 && id.startsWith('changed'));
    expect(question?.sentence).toMatch(/hours 30 here, 36 in the ledger/);
    expect(shape()).toEqual(before);
    expect(acts()).toBe(1);
  });

  it('row 47 comes in once it is mended, with what hangs on it, and stays in afterwards', () => {
    const longer = `${KITCHEN.trimEnd()}\n2/20/26,a,2/12/26 a,3 tbsp,1 qt whole milk,,36,100F,firm,,\n`;
    const first = bring(longer);
    expect(first.jars).toBe(44);
    expect(first.problems.find(({ row }) => row === 48)?.sentence).toMatch(/waits for row 47/);
    const second = bring(longer, { answers: { 'cell:47:Started from': '2/3/26 b', 'cell:47:Temp': '101F' } });
    expect([second.jars, second.problems]).toEqual([2, []]);
    expect(bring(longer).jars).toBe(0);
    expect(family().jars.length).toBe(46);
  });

  it('undo takes the whole file back; then it comes in again', () => {
    bring(KITCHEN);
    expect(ask('act.undo', { act: null }).ok).toBe(true);
    expect(family().jars.length).toBe(0);
    expect(bring(KITCHEN).jars).toBe(44);
  });

  it('cancelling rolls the whole file back', () => {
    let steps = 0;
    const cancelled = ask('notes.bringIn', { file: file(KITCHEN) }, {
      look: () => undefined,
      step: () => {
        steps += 1;
        if (steps > 2) throw new Refused('cancelled');
      },
    });
    expect(cancelled.ok || cancelled.error.code).toBe('cancelled');
    expect(family().jars.length).toBe(0);
    expect(acts()).toBe(0);
  });

  it('whether it was cancelled is looked at through every step: between two looks no pass does much for each row', () => {
    const day = (n: number): string => new Date(Date.UTC(2000, 0, 1) + n * 86_400_000).toISOString().slice(0, 10);
    const lines = (rows: number): string =>
      Array.from({ length: rows }, (_, n) => `${day(n)},a,${n === 0 ? 'Blue Tin' : `${day(n - 1)} a`},45 ml,900 ml,36 h,38 C,firm,4.3,note ${n}`).join('\n'); // prettier-ignore
    const notes = (rows: number) => file(`date,jar,seed,amount,volume,hours,temperature,set,ph,note\n${lines(rows)}\n`);
    // What is worked out once for all files is no part of it.
    ask('notes.preview', { file: notes(3) });
    const rows = 600;
    const long: string[] = [];
    let [looks, last] = [0, 0];
    const done = counting((counted) => {
      const look = (): void => {
        looks += 1;
        // What a row costs all in all is some thousands.
        if (counted() - last > 90 * rows) long.push(new Error('a look').stack ?? '');
        last = counted();
      };
      last = counted();
      return ask('notes.bringIn', { file: notes(rows) }, { step: look, look });
    });
    expect(done).toMatchObject({ ok: true, value: { jars: rows } });
    expect(looks).toBeGreaterThan(30 * rows);
    // What columns mean is told from a sample of rows, the same for a file of any length.
    expect(long.filter((where) => !where.includes('readLayout'))).toEqual([]);
    expect(long.length).toBeLessThan(2);
  });

  it('a jar of the same label recorded by hand is asked about, and its children still find it', () => {
    ask('batch.record', {
      madeOn: '2025-10-15', word: null, note: null, holds: [], sameLabelMeant: false, draft: null,
      jars: [{ letter: 'B', state: 'made', vessel: null, finalVolume: null, finalVolumeKnown: null, milk: null, milkAmount: null, milkPackage: null, countPerMl: null, onShelf: null, goneOn: null, note: null, hold: null, additions: [], seedings: [], outcome: null }],
    }); // prettier-ignore
    expect(family().jars.length).toBe(1);
    const reply = bring(KITCHEN);
    expect(reply.jars).toBe(43);
    expect(reply.questions.find(({ row }) => row === 3)?.sentence).toMatch(/already in the ledger/);
    const { jars } = family();
    const byHand = jars.find(({ letter, madeOn }) => letter === 'b' && madeOn === '2025-10-15');
    expect(jars.filter(({ seeds }) => seeds.some(({ jar }) => jar === byHand?.id)).length).toBe(3);
  });
});

describe('files that leave things out', () => {
  const reopen = (now: string): void => {
    session.close();
    session = new Session({ file: join(folder, 'ledger.sqlite'), mode: 'open', now, timeZone: 'Europe/Berlin', version: '0' });
  };

  it('days without a year stay what they were when the file comes in again a year later', () => {
    const text = 'Date,Jar,Seed,Amount\n15 Oct,a,10 capsules Blue Tin,\n3 Feb,a,15 Oct a,3 tbsp\n';
    expect(bring(text).jars).toBe(2);
    expect(family().jars.map(({ madeOn }) => madeOn)).toEqual(['2025-10-15', '2026-02-03']);
    reopen('2027-05-01T09:00:00+02:00');
    expect(bring(text).jars).toBe(0);
    expect(bring(`${text}20 Feb,a,3 Feb a,3 tbsp\n`).jars).toBe(1);
    expect(family().jars.map(({ madeOn }) => madeOn)).toEqual(['2025-10-15', '2026-02-03', '2026-02-20']);
  });

  it('jars without letters keep the letters they were given, also when rows are put between', () => {
    const rows = ['2025-10-15,10 capsules Blue Tin,,36', '2025-10-15,8 capsules Blue Tin,,36', '2025-10-23,2025-10-15 a,3 tbsp,36'];
    const text = (lines: readonly string[]): string => `Date,Seed,Amount,Hours\n${lines.join('\n')}\n`;
    expect(bring(text(rows)).jars).toBe(3);
    expect(bring(text(rows)).jars).toBe(0);
    expect(bring(text([rows[0] ?? '', '2025-10-15,6 capsules Blue Tin,,36', ...rows.slice(1)])).jars).toBe(1);
    expect(family().jars.filter(({ madeOn }) => madeOn === '2025-10-15').map(({ letter, seeds }) => `${letter} ${seeds[0]?.amount?.value}`)).toEqual(['a 10', 'b 8', 'c 6']);
  });

  it('a second file finds the jars and sources of the first', () => {
    bring('Date,Jar,Seed,Amount\n2025-10-15,a,10 capsules Blue Tin,\n');
    const second = bring('Date,Jar,Seed,Amount\n2025-10-23,a,2025-10-15 a,3 tbsp\n2025-10-23,b,4 capsules blue tin,\n', {}, 'spring.csv');
    expect([second.jars, second.seedings, second.sources, second.problems]).toEqual([2, 2, 0, []]);
    expect(family().jars.map(({ generation }) => generation.deepest)).toEqual([1, 2, 1]);
  });

  it('a received culture makes generations "at least"', () => {
    const reply = bring('Date,Jar,Seed,Amount\n2025-10-15,a,from the neighbouring club,3 tbsp\n2025-10-23,a,2025-10-15 a,3 tbsp\n');
    expect(reply.assumptions.some(({ id, chosen }) => id?.startsWith('source:') === true && chosen === 'culture')).toBe(true);
    expect(family().jars.map(({ generation }) => [generation.deepest, generation.atLeast])).toEqual([[2, true], [3, true]]);
  });

  it('a column can be rematched', () => {
    const text = 'Date,Jar,Seed,Amount,Zing\n2025-10-15,a,10 capsules Blue Tin,,4.4\n2025-10-23,a,2025-10-15 a,3 tbsp,4.3\n';
    bring(text, { mapping: { Zing: 'note' } });
    expect(family().jars.map(({ ph }) => ph)).toEqual([null, null]);
    ask('act.undo', { act: null });
    bring(text, { mapping: { Zing: 'ph' } });
    expect(family().jars.map(({ ph }) => ph)).toEqual([4.4, 4.3]);
  });
});

describe('any file twice, and in two parts', () => {
  it.each([...VARIED, ...OTHER_KEEPERS, ...ODD_KEEPERS].map((one) => [one.name, one] as const))('%s', (_name, { text, answers, jars, lastLine }) => {
    const more = { answers: { ...answers } };
    const count = Object.keys(jars).length;
    expect(bring(text, more).jars).toBe(count);
    const before = shape();
    const again = bring(text, more);
    expect([again.jars, again.questions.filter(({ id }) => /^(?:changed|same label)/.test(id))]).toEqual([0, []]);
    expect(acts()).toBe(1);
    expect(shape()).toEqual(before);
    // The last line taken away, then put back.
    if (lastLine === 'clash') return;
    const part = lastLine ? { answers: { ...answers, 'day order': lastLine } } : more;
    expect(ask('act.undo', { act: null }).ok).toBe(true);
    const lines = text.replaceAll(/\r\n?/g, '\n').trimEnd().split('\n');
    bring(`${lines.slice(0, -1).join('\n')}\n`, part);
    bring(text, part);
    expect(shape()).toEqual(before);
  });
});

describe('the invented ledger', () => {
  it('takes no notes in', () => {
    session.close();
    session = demoSession();
    const before = [family().jars.length, acts()];
    const refused = ask('notes.bringIn', { file: file(KITCHEN) });
    expect(refused.ok || refusalSentence(refused.error)).toBe('This is the invented ledger. Leave it and bring your notes into a ledger of your own; nothing was changed.');
    expect([family().jars.length, acts()]).toEqual(before);
  });
});

describe('files that can’t come in', () => {
  it('asks about days that could be read both ways, and takes the answer', () => {
    const text = 'Date,Jar,Seed,Amount\n03/04/25,a,10 capsules Blue Tin,\n05/06/25,a,03/04/25 a,3 tbsp\n';
    const refused = ask('notes.bringIn', { file: file(text) });
    expect(refused.ok || refused.error.code).toBe('ambiguous');
    expect(refused.ok || refusalSentence(refused.error)).toMatch(/03\/04\/25.*day order.*day first, month first/);
    const preview = ask('notes.preview', { file: file(text) });
    expect(preview.ok && preview.value.questions[0]?.blocks).toBe(true);
    bring(text, { answers: { 'day order': 'day first' } });
    expect(family().jars.map(({ madeOn }) => madeOn)).toEqual(['2025-04-03', '2025-06-05']);
  });

  it('asks for the unit of bare amounts', () => {
    const text = 'Date,Jar,Seed,Amount\n2025-04-03,a,10 capsules Blue Tin,\n2025-06-05,a,2025-04-03 a,3\n';
    const refused = ask('notes.bringIn', { file: file(text) });
    expect(refused.ok || refused.error.code).toBe('ambiguous');
    bring(text, { answers: { 'unit:Amount': 'tbsp', spoons: 'US' } });
    expect(family().jars[1]?.seeds[0]?.amount?.value).toBeCloseTo(44.36, 2);
  });

  it.each([
    ['a zip', Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0), 'notes is a spreadsheet'],
    ['a PDF', new TextEncoder().encode('%PDF-1.7\n'), 'notes is a document'],
    ['bytes', Uint8Array.of(1, 2, 0, 0, 0, 7, 0, 0, 9), 'notes not text'],
    ['nothing', '', 'notes empty'],
    ['a heading only', 'Date,Jar,Seed\n', 'notes empty'],
    ['prose', 'Started with ten capsules, came out soft.\nUsed jar b for the next ones, firm.\nOat bran next.\n', 'notes not a table'],
    ['no days', 'Jam,Seed,Mood\nplum,from a friend,happy\n', 'notes without days'],
    ['no seeds', 'Date,Jar\n2025-01-01,a\n', 'notes without seeds'],
  ] as const)('%s', (_name, bytes, code) => {
    const refused = ask('notes.bringIn', { file: file(bytes) });
    expect(refused.ok || refused.error.code).toBe(code);
    expect(refused.ok || refusalSentence(refused.error).length).toBeGreaterThan(20);
    expect(acts()).toBe(0);
  });

  it('a file that is not there', () => {
    const refused = ask('notes.bringIn', { file: { path: join(folder, 'none.csv') } });
    expect(refused.ok || refused.error.code).toBe('notes not found');
  });
});

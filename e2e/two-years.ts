// Two years of an invented kitchen as a keeper's sheet, brought into a ledger of as many jars as are asked for, and on top of
// them a batch that stands in warmth and cubes that are kept back. For pictures and for tests of the home screen.
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkInput, checkReply } from '../main/check-call';
import { Session } from '../main/session';
import type { CallName, Input, Reply, Result } from '../core/contract';
import type { WorkerCall } from '../main/ledger/worker-protocol';
import { seededNumbers } from '../tests/families';

/** The moment that the tests of the window take for now. */
const NOW = '2026-05-20T09:00:00+02:00';
const NEWEST = '2026-05-13';
const FIBRES = [
  '2 tbsp potato starch',
  '2 tbsp acacia fibre',
  '1 tbsp oat bran',
  '',
  '2 tbsp chicory inulin',
];
const SET = ['firm', 'firm', 'spoonable', 'very firm', 'firm', 'soft'];

interface Row {
  readonly batch: number;
  readonly letter: string;
  /** A product, or a jar of a batch. */
  readonly seed: string | { readonly batch: number; readonly letter: string };
  readonly rest: string;
}

/** Rows oldest first: a line of weekly batches of three or four, and after a year a second line beside it. */
function rowsOf(jars: number): Row[] {
  const random = seededNumbers(23);
  const rows: Row[] = [];
  const last: (Row['seed'] | null)[] = [null, null];
  for (let batch = 0; rows.length < jars; batch += 1) {
    const line = batch > 50 && batch % 3 === 0 ? 1 : 0;
    const seed = last[line] ?? (line === 0 ? 'Blue Tin' : 'Meadow Pot');
    const many = Math.min(jars - rows.length, random() < 0.25 ? 4 : 3);
    for (let at = 0; at < many; at += 1) {
      const worse = line === 0 && batch > 85 && random() < 0.5;
      const set = random() < 0.08 ? '' : (SET[Math.floor(random() * SET.length)] ?? 'firm');
      const fibre = FIBRES[Math.floor(random() * FIBRES.length)] ?? '';
      const note = batch === 61 && at === 1 ? 'pink streaks, thrown out' : '';
      const rest = ['whole milk', fibre, '30', '38 °C', worse ? 'soft' : set, note].join(',');
      rows.push({ batch, letter: 'abcd'[at] ?? 'a', seed, rest });
    }
    last[line] = { batch, letter: 'abc'[Math.floor(random() * Math.min(many, 3))] ?? 'a' };
  }
  return rows;
}

/** The sheet: a batch each week, the newest a week ago. */
export function sheetOf(jars: number): string {
  const rows = rowsOf(jars);
  const newest = rows.at(-1)?.batch ?? 0;
  const day = (batch: number): string =>
    new Date(Date.parse(`${NEWEST}T12:00Z`) - (newest - batch) * 7 * 86_400_000).toISOString().slice(0, 10);
  return [
    'Date,Jar,Seed,Amount,Milk,Fibre,Hours,Temperature,Set,Notes',
    ...rows.map(({ batch, letter, seed, rest }) =>
      typeof seed === 'string'
        ? [day(batch), letter, seed, '10 capsules', rest].join(',')
        : [day(batch), letter, `${day(seed.batch)} ${seed.letter}`, '3 tbsp', rest].join(','),
    ),
  ].join('\n');
}

/** Adds what stands in the kitchen: cubes of an early jar, and a batch in warmth since the small hours. */
function kitchen(session: Session): void {
  const must = <N extends CallName>(name: N, input: Input<N>): Reply<N> => {
    const checked = checkInput(name, input);
    if (!checked.ok) throw new Error(`${name}: ${JSON.stringify(checked.error)}`);
    const result = checkReply(name, session.answer(name as WorkerCall, checked.value)) as Result<Reply<N>>;
    if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.error)}`);
    return result.value;
  };
  const { jars } = must('family.get', {});
  const newest = jars.filter(({ madeOn, spoiled }) => madeOn === jars.at(-1)?.madeOn && !spoiled);
  const early = jars.find(({ generation, spoiled }) => generation.deepest > 3 && !spoiled) ?? jars[0];
  if (!early || newest.length === 0) return;
  for (const { id } of newest) must('jar.correct', { id, changes: { onShelf: true } });
  must('portion.save', {
    portion: {
      id: null, jar: early.id, part: 'mixed', place: 'freezer', pieces: 12, amount: null, keptOn: early.madeOn ?? NEWEST,
      goneOn: null, reserve: true, note: null,
    },
  }); // prettier-ignore
  const jar = (letter: string) => ({
    letter, vessel: 'quart jar', finalVolume: null, finalVolumeKnown: null, milk: 'whole milk', milkAmount: null, milkPackage: null,
    countPerMl: null, onShelf: true, goneOn: null, note: null, state: 'made' as const, hold: 0, additions: [], outcome: null,
    seedings: [{ fromJar: newest[0]?.id ?? '', portion: null, part: null, source: null, package: null, amount: { value: 45, unit: 'mL' as const, typed: '3 tbsp' } }],
  }); // prettier-ignore
  must('batch.record', {
    madeOn: '2026-05-20', word: null, note: null, sameLabelMeant: false, draft: null, why: 'Invented for the picture.',
    holds: [{ startedAt: '2026-05-20T01:00:00+02:00', endedAt: null, hours: 31, planned: { value: 38, unit: '°C', typed: '38 °C' }, probe: 'bath', readings: [], note: null }],
    jars: ['a', 'b', 'c'].map(jar),
  }); // prettier-ignore
}

/** @returns the path of a new ledger file in a folder of its own, to be removed by the caller */
export function twoYears(jars: number): { file: string; folder: string } {
  const folder = mkdtempSync(join(tmpdir(), 'jarline-two-years-'));
  const file = join(folder, 'jarline.sqlite');
  const session = new Session({ file, mode: 'create', now: NOW, timeZone: 'Europe/Berlin', version: '0.0.0' }); // prettier-ignore
  const path = join(folder, 'sheet.csv');
  // Of a handful there is only the sheet: nothing of it stands in warmth.
  const few = jars <= 3;
  writeFileSync(path, sheetOf(few ? jars : jars - 3));
  const brought = session.answer('notes.bringIn', { file: { path } }, undefined);
  if (!brought.ok) throw new Error(JSON.stringify(brought.error));
  if (!few) kitchen(session);
  session.close();
  return { file, folder };
}

// A probe's export through the call: kept once, undone as a whole, judged by. Invented.
import { copyFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import type { Session } from '../../main/session';
import {
  batchOf,
  fromSource,
  must,
  newFolder,
  newSession,
  plainJar,
  plainSource,
  refusalOf,
  stateOf,
} from '../ledger/ledger-files';
import { DRESSES } from '../growth/exports';
import { ODD } from '../growth/odd-exports'; // prettier-ignore

const BATH = fileURLToPath(new URL('../growth/bath-probe.csv', import.meta.url));

function world(began: string | null = '2026-02-10T19:40:00+01:00') {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  const holds = [{ startedAt: began, endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }];
  const { jars, batch } = must(session, 'batch.record', batchOf('2026-02-10', [plainJar('a', { seedings: [fromSource(source)], hold: 0 })], { holds }));
  const hold = must(session, 'batch.get', { id: batch }).holds[0]?.id ?? '';
  return { session, batch, hold, jar: jars[0] ?? '' };
} // prettier-ignore

const bringIn = (
  session: Session,
  hold: string,
  path: string,
  more: Partial<Input<'readings.bringIn'>> = {},
) => must(session, 'readings.bringIn', { hold, where: 'bath', file: { path }, ...more });
const warmHours = (session: Session, jar: string) =>
  must(session, 'judgement.jar', { jar }).figures.find(({ name }) => name === 'warm hours')?.shown;

describe('an export that is brought in', () => {
  it('is told of, and reaches the judgement of the jars in that hold', () => {
    const { session, hold, jar, batch } = world();
    expect(warmHours(session, jar)).toBeUndefined();
    const told = bringIn(session, hold, BATH);
    expect(told).toMatchObject({ readings: 205, added: 206, minutesAbove45: 0, settledAt: { unit: '°F' } });
    expect(told.leftOut).toHaveLength(1);
    expect(told.gaps).toEqual([
      { from: '2026-02-11T12:20:00+01:00', to: '2026-02-11T14:20:00+01:00', minutes: 120 },
    ]);
    const { low, mid, high } = told.warmHours!;
    expect(low).toBeLessThan(mid);
    expect(mid).toBeLessThan(high);
    expect(warmHours(session, jar)).toBe(`${mid.toFixed(1)} h (${low.toFixed(1)} to ${high.toFixed(1)})`);
    const [kept] = must(session, 'batch.get', { id: batch }).holds;
    expect(kept).toMatchObject({ probe: 'bath' });
    expect(kept?.readings).toHaveLength(205);
    // What leaps is kept beside them, and can be counted again.
    const all = must(session, 'readings.list', { series: told.series }).readings;
    expect(all.filter(({ leftOut }) => leftOut)).toMatchObject([{ c: 91 }]);
  });
  it('adds nothing when it comes again, under another name, or whole after a part of it', () => {
    const { session, hold } = world();
    const folder = newFolder();
    const start = Date.UTC(2026, 1, 10, 19, 40) / 1000;
    const points = Array.from({ length: 200 }, (_, i) => ({ civil: start + i * 600, celsius: 38 }));
    const rows = DRESSES['ISO, °C']!(points, 60).split('\n');
    const [part, whole] = [join(folder, 'part.csv'), join(folder, 'whole.csv')];
    writeFileSync(part, rows.slice(0, 81).join('\n'));
    writeFileSync(whole, rows.join('\n'));
    expect(bringIn(session, hold, part).added).toBe(80);
    expect(bringIn(session, hold, whole)).toMatchObject({ readings: 200, added: 120 });
    const before = stateOf(session);
    copyFileSync(whole, join(folder, 'again.csv'));
    for (const name of ['whole.csv', 'again.csv', 'part.csv'])
      expect(bringIn(session, hold, join(folder, name))).toMatchObject({ act: null, added: 0 });
    expect(stateOf(session)).toBe(before);
  });
  it('is one act: undone, nothing of it is left', () => {
    const { session, hold } = world();
    const before = stateOf(session);
    const told = bringIn(session, hold, BATH);
    expect(must(session, 'act.undo', { act: told.act }).says).toContain('brought in readings of hold');
    expect(stateOf(session)).toBe(before);
    expect(bringIn(session, hold, BATH).added).toBe(206);
  });
  it('of another probe in the same place is a series of its own', () => {
    const { session, hold } = world();
    const other = join(newFolder(), 'edge.csv');
    const points = Array.from({ length: 100 }, (_, i) => ({ civil: Date.UTC(2026, 1, 10, 19, 40) / 1000 + i * 600, celsius: 37 })); // prettier-ignore
    writeFileSync(other, DRESSES['ISO, °C']!(points, 60));
    const [one, two] = [bringIn(session, hold, BATH), bringIn(session, hold, other)];
    expect(one.series).not.toBe(two.series);
    expect(two.added).toBe(100);
  });
  it('of two sensors is brought in once for each place', () => {
    const { session, hold } = world();
    const path = join(newFolder(), 'both.csv');
    writeFileSync(path, ODD['two sensors in rows, seconds apart']!.text);
    const [bath, air] = [bringIn(session, hold, path), bringIn(session, hold, path, { where: 'air' })];
    expect([bath.readings, air.readings]).toEqual([145, 145]);
    expect(bath.series).not.toBe(air.series);
    expect(must(session, 'readings.list', { series: air.series }).readings.every(({ c }) => c === 22)).toBe(
      true,
    );
  });
  it('is refused with what to do where it holds no readings, or no day to place them by', () => {
    const { session, hold } = world(null);
    const folder = newFolder();
    const write = (name: string, text: string): string => {
      writeFileSync(join(folder, name), text);
      return join(folder, name);
    };
    const refused = (path: string) => refusalOf(session, 'readings.bringIn', { hold, where: 'bath', file: { path } }); // prettier-ignore
    expect(refused(write('notes.csv', 'jar,set\n5 Mar a,firm')).sentence).toContain('No readings were found in notes.csv'); // prettier-ignore
    expect(refused(write('empty.csv', '')).code).toBe('export without readings');
    expect(refused(write('times.csv', 'time,temp\n19:40,37\n19:50,38')).sentence).toContain(
      'Note that first',
    );
    expect(refused(join(folder, 'nowhere.csv')).code).toBe('notes not found');
  });
});

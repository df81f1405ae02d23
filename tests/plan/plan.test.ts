// Planning against what is published and written down: waking hours, arithmetic of a transfer, Wilson's interval, RFC 5545.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import ICAL from 'ical.js';
import { describe, expect, it } from 'vitest';
import { calendarFile, calendarText, folded } from '../../core/plan/calendar-file';
import { looksOf } from '../../core/plan/hold-looks';
import {
  cartonAge,
  doublingsFromBoth,
  doublingsFromPieces,
  doublingsFromSeed,
  expectedUneven,
  jarsFilled,
  planJar,
  wilson,
} from '../../core/plan/scaling';
import { usualSet } from '../../core/plan/usual-set';
import { startWindows } from '../../core/plan/waking-hours';
import { restSays, servesSays, startSays } from '../../core/says/plan-says';
import { batchOf, fromSource, must, newFolder, newSession, plainJar, plainSource, refusalOf } from '../ledger/ledger-files'; // prettier-ignore

/** 06:30 to 22:30. */
const USUAL_WAKING = { from: 390, to: 1350 };
const seconds = (moment: string): number => Date.parse(moment) / 1000;

describe('when to start', () => {
  it('puts the looks at 12, 24 and 36 h into waking hours', () => {
    // Starts at 06:30–10:30 or 18:30–22:30 (trade, habits that planning serves; common practice, no source).
    const windows = startWindows(seconds('2026-03-10T11:00:00Z'), 36, USUAL_WAKING, () => 0);
    const times = windows.map(({ from, to }) => [from, to].map((at) => new Date(at * 1000).toISOString().slice(8, 16)));
    expect(times).toEqual([['10T18:30', '10T22:30'], ['11T06:30', '11T10:30'], ['11T18:30', '11T22:30'], ['12T06:30', '12T10:30']]);
  }); // prettier-ignore
  it('goes by the clock on the wall, also in the night it changes', () => {
    // Central European clocks went forward on 29 March 2026 at 01:00 UTC.
    const offsetAt = (at: number): number => (at >= seconds('2026-03-29T01:00:00Z') ? 120 : 60);
    for (const { from, to } of startWindows(seconds('2026-03-28T12:00:00Z'), 36, USUAL_WAKING, offsetAt))
      for (const start of [from, to])
        for (const hour of [0, 12, 24, 36]) {
          const at = start + hour * 3600;
          const minute = ((at / 60 + offsetAt(at)) % 1440 + 1440) % 1440; // prettier-ignore
          expect(minute).toBeGreaterThanOrEqual(USUAL_WAKING.from);
          expect(minute).toBeLessThanOrEqual(USUAL_WAKING.to);
        }
  });
  it('is never for one who is never awake so', () => {
    expect(startWindows(0, 36, { from: 600, to: 660 }, () => 0)).toEqual([]);
  });
});

describe('what goes in', () => {
  it('is the arithmetic of a transfer', () => {
    // 2 tbsp within a quart are 1/32, exactly five doublings; 5 % are 4.321928, 1/100 6.643856 (check-values 0.8 and 11).
    expect(doublingsFromSeed(1 / 32).mid).toBe(5);
    expect(doublingsFromSeed(0.05).mid).toBeCloseTo(4.321928, 6);
    expect(doublingsFromSeed(0.01).mid).toBeCloseTo(6.643856, 6);
    expect(doublingsFromSeed(3 / 64).mid).toBeCloseTo(4.415, 3);
    const jar = planJar('quart', 946.352946, 3 / 64, [{ name: 'oat bran', value: 10, unit: 'g' }]);
    // Three tablespoons (14.78676 mL each).
    expect(jar.seed).toBeCloseTo(3 * 14.78676478125, 6);
    expect(jar.seed + jar.milk).toBeCloseTo(946.352946, 6);
    expect(jar.additions[0]?.value).toBeCloseTo(9.46, 2);
  });
  it('from pieces is known to a factor of three, and ten past best-before, said as doublings', () => {
    // 10 tablets of 1e8 in a quart, to 2e8 per mL: log2(2e8 · 946.35 / 1e9).
    const { low, mid, high } = doublingsFromPieces(946.352946, 1e9, false);
    expect(mid).toBeCloseTo(Math.log2(189.27), 3);
    expect(high - mid).toBeCloseTo(Math.log2(3), 9);
    expect(mid - low).toBeCloseTo(Math.log2(3), 9);
    expect(doublingsFromPieces(946.352946, 1e9, true).mid - mid).toBeCloseTo(Math.log2(10), 9);
  });
  it('from both: what pieces bring beside a seed hardly counts', () => {
    // 3 tbsp at 2e8/mL bring 8.9e9, ten tablets at 1e8 bring 1e9 (trade, arithmetic of a transfer): log2(2e8 · 946.35 / 9.87e9).
    const both = doublingsFromBoth(946.352946, 44.36029434, 1e9, false);
    expect(both?.mid).toBeCloseTo(Math.log2((2e8 * 946.352946) / (2e8 * 44.36029434 + 1e9)), 9);
    expect(both?.low).toBeLessThan(both?.mid ?? 0);
    expect(doublingsFromBoth(946.352946, 0, 1e9, true)).toEqual(doublingsFromPieces(946.352946, 1e9, true));
    expect(doublingsFromBoth(100, 100 / 32, 0, false)?.mid).toBe(5);
    expect(doublingsFromBoth(100, 0, 0, false)).toBeNull();
  });
  it('fills as many jars as the milk at hand does', () => {
    const jars = [1000, 1000, 500].map((volume) => planJar(null, volume, 0, []));
    expect([900, 1000, 1999, 2000, 2500].map((milk) => jarsFilled(jars, milk))).toEqual([0, 1, 1, 2, 3]);
  });
  it('warns of open cartons after 3 days of half-and-half, 5 of milk, and 7 days are not for a hold', () => {
    expect([2, 3, 6].map((days) => cartonAge('half-and-half', days) !== null)).toEqual([false, true, true]);
    expect([4, 5].map((days) => cartonAge('milk', days) !== null)).toEqual([false, true]);
    expect(cartonAge('milk', 7)).toBe('not for a hold');
  });
});

it('how such jars came out is told as the range of most, once there are five', () => {
  expect(usualSet(['firm', 'firm', 'soft', 'firm'])).toBeNull();
  expect(usualSet(['firm', 'soft', 'firm', 'spoonable', 'firm'])).toEqual({
    low: 'soft',
    high: 'firm',
    jars: 5,
  });
  // One in ten at each end is left out.
  expect(usualSet([...Array<'firm'>(10).fill('firm'), 'runny'])).toEqual({
    low: 'firm',
    high: 'firm',
    jars: 11,
  });
});

describe('a plan in words', () => {
  const at = (time: string, day = '2026-03-10') => `${day}T${time}:00+00:00`;
  it('says when to start, and why', () => {
    const windows = [{ from: at('18:30'), to: at('22:30') }, { from: at('06:30', '2026-03-11'), to: at('10:30', '2026-03-11') }];
    expect(startSays(windows, 36, at('11:00'))).toEqual({
      start: 'Start 18:30 to 22:30, or tomorrow 06:30 to 10:30.',
      reason: 'Then the looks at 12, 24 and 36 h fall into the hours you are awake.',
    });
    expect(startSays(windows, 36, at('18:40')).start).toMatch(/^Start now or by 22:30, or/);
    expect(startSays([{ from: at('22:30'), to: at('22:30') }], 32, at('11:00')).start).toBe('Start at 22:30.');
    expect(startSays([], 36, at('11:00')).start).toMatch(/^No start/);
  });
  const jar = { volume: 900, seed: 45, pieces: false, doublings: doublingsFromSeed(1 / 20), expected: null, cost: null, additions: ['oat bran'] };
  const plan = { jars: [jar], first: false, uneven: expectedUneven(false, 0, 3), currency: 'GBP', short: [], filled: null, warnings: [], serves: null };
  it('says what goes in, what is likely, what it costs, and what runs short first', () => {
    expect(restSays(plan)).toEqual([
      'Seed is 1 part in 20, about 4 doublings.',
      'About 5 in 100 jars of a later batch come out uneven or do not set (common practice; your own record is still short).',
      'What a jar costs is not known: its milk has no price.',
    ]);
    const short = [{ what: 'oat bran', needed: 40, has: 12, unit: 'g' }];
    const cost = { minor: 149, atLeast: false };
    const expected = { low: 'soft', high: 'firm', jars: 9 };
    const all = restSays({ ...plan, jars: [{ ...jar, cost, expected }, { ...jar, cost, expected }], short, filled: 1 });
    expect(all[0]).toBe('Oat bran runs short: 40 g needed, 12 g there.');
    expect(all).toContain('The milk at hand fills 1 of 2 jars.');
    expect(all).toContain('With oat bran: soft to firm, as most of your 9 such jars.');
    expect(all).toContain('A jar costs 1.49 GBP, all 2 together 2.98 GBP.');
  });
  it('from pieces says the doublings as a range', () => {
    const doublings = doublingsFromPieces(900, 1e9, false);
    expect(restSays({ ...plan, jars: [{ ...jar, seed: 0, pieces: true, doublings }] })[0]).toMatch(/doubles about 6 to 9 times/);
  });
  it('says which seed still serves when one is back, or what to do where none does', () => {
    expect(servesSays([{ name: '1 Mar a', until: '2026-03-20', still: true }], '2026-03-18')).toMatch(/^When you are back on 18 Mar, 1 Mar a will still serve as seed/);
    expect(servesSays([{ name: '1 Mar a', until: '2026-03-10', still: false }], '2026-03-18')).toMatch(/Freeze some cubes/);
  });
}); // prettier-ignore

it('what comes of it is the keeper’s own record where that is long enough, else a stated belief', () => {
  // Newcombe 1998, Stat Med 17:857-872 (pairs quoted, interval from memory, computed again).
  expect(wilson(81, 263).low).toBeCloseTo(0.2553, 4);
  expect(wilson(81, 263).high).toBeCloseTo(0.3662, 4);
  expect(wilson(15, 148).low).toBeCloseTo(0.0624, 4);
  expect(wilson(15, 148).high).toBeCloseTo(0.1605, 4);
  expect(wilson(0, 20).high).toBeCloseTo(0.1611, 4);
  // 30 % of first batches, later 5 % (common practice, no source).
  expect(expectedUneven(true, 1, 9)).toEqual({ low: null, mid: 0.3, high: null, basis: 'a stated belief' });
  expect(expectedUneven(false, 0, 3).mid).toBe(0.05);
  expect(expectedUneven(false, 5, 20)).toMatchObject({ mid: 0.25, basis: 'your own record' });
});

it('looks are done, due, missed by so much, or to come', () => {
  const states = (now: number, seen: number[] = []) => looksOf(0, 36 * 3600, [seen], now * 3600).map(({ state, lateMinutes }) => [state, lateMinutes]); // prettier-ignore
  expect(states(1)).toEqual([['to come', 0], ['to come', 0], ['to come', 0]]); // prettier-ignore
  expect(states(13)).toEqual([['due', 60], ['to come', 0], ['to come', 0]]); // prettier-ignore
  expect(states(20, [11])).toEqual([['done', 0], ['to come', 0], ['to come', 0]]); // prettier-ignore
  expect(states(38)).toEqual([['missed', 26 * 60], ['missed', 14 * 60], ['due', 120]]); // prettier-ignore
  expect(looksOf(0, null, [], 0).map(({ what }) => what)).toEqual(['look', 'look']);
});

describe('a calendar file', () => {
  it('escapes text as RFC 5545 3.3.11 has it', () => {
    const text = 'Project XYZ Final Review\nConference Room - 3B\nCome Prepared.';
    expect(calendarText(text)).toBe(
      String.raw`Project XYZ Final Review\nConference Room - 3B\nCome Prepared.`,
    );
    expect(calendarText('a:b; c, d\\e')).toBe(String.raw`a:b\; c\, d\\e`);
  });
  it('folds lines at 75 octets, parting no character (3.1)', () => {
    for (const text of ['x'.repeat(300), 'ö'.repeat(120), '🥛'.repeat(50)]) {
      const lines = folded(`SUMMARY:${text}`).split('\r\n');
      for (const line of lines) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      expect(lines.map((line, i) => (i === 0 ? line : line.slice(1))).join('')).toBe(`SUMMARY:${text}`);
      for (const line of lines.slice(1)) expect(line.startsWith(' ')).toBe(true);
    }
  });
  it('has an event for each moment, with a lasting id, in UTC, its lines ended by CRLF', () => {
    const file = calendarFile([{ uid: 'a@b', at: seconds('2026-03-14T18:30:00+01:00'), minutes: 15, summary: 'Look', description: 'x' }], 0); // prettier-ignore
    expect(file.split('\r\n')).toEqual([
      'BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Jarline//Jarline//EN', 'BEGIN:VEVENT', 'UID:a@b', 'DTSTAMP:19700101T000000Z',
      'DTSTART:20260314T173000Z', 'DTEND:20260314T174500Z', 'SUMMARY:Look', 'DESCRIPTION:x', 'END:VEVENT', 'END:VCALENDAR', '',
    ]); // prettier-ignore
  });
});

it('a plan, what a running hold asks for and its calendar come through the calls', () => {
  const session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  // It is 14 March, 18:30.
  const holds = [{ startedAt: '2026-03-14T05:30:00+01:00', endedAt: null, hours: 36, planned: null, probe: null, readings: [], note: null }]; // prettier-ignore
  must(session, 'batch.record', batchOf('2026-03-14', [plainJar('a', { seedings: [fromSource(source)], hold: 0 })], { holds })); // prettier-ignore
  const [hold] = must(session, 'hold.now', {}).holds;
  expect(hold).toMatchObject({ label: '14 Mar', minutesLeft: 23 * 60 });
  expect(hold?.looks.map(({ state, lateMinutes }) => [state, lateMinutes])).toEqual([['due', 60], ['to come', 0], ['to come', 0]]); // prettier-ignore
  const { ics, events } = must(session, 'calendar.get', {});
  expect(events.map(({ at, summary }) => [at, summary])).toEqual([['2026-03-15T05:30:00+01:00', 'Look at 14 Mar, 24 h'], ['2026-03-15T17:30:00+01:00', 'Take out 14 Mar']]); // prettier-ignore
  expect(ics).toContain('DTSTART:20260315T043000Z');
  expect(must(session, 'calendar.get', {}).ics).toBe(ics);
  // Read back by a library that others read calendars with.
  const read = new ICAL.Component(ICAL.parse(ics))
    .getAllSubcomponents('vevent')
    .map((event) => new ICAL.Event(event));
  expect(
    read.map(({ uid, summary, startDate }) => ({ uid, summary, at: startDate.toJSDate().getTime() })),
  ).toEqual(events.map(({ uid, summary, at }) => ({ uid, summary, at: Date.parse(at) })));
  expect(read.every(({ description, endDate, startDate }) => description.length > 0 && endDate.compare(startDate) === 1)).toBe(true); // prettier-ignore
  // Written to a file it may be written over, and nothing else may.
  const folder = newFolder();
  const file = { path: join(folder, 'to come.ics') };
  expect(must(session, 'calendar.write', { file }).events).toBe(events.length);
  expect(readFileSync(file.path, 'utf8')).toBe(ics);
  must(session, 'calendar.write', { file });
  writeFileSync(join(folder, 'letter.txt'), 'Dear all');
  expect(refusalOf(session, 'calendar.write', { file: { path: join(folder, 'letter.txt') } }).code).toBe(
    'file exists',
  );
  expect(refusalOf(session, 'calendar.write', { file: { path: join(folder, 'no', 'such.ics') } }).code).toBe(
    'no folder there',
  );
  expect(refusalOf(newSession(), 'calendar.write', { file }).code).toBe('nothing to come');
  expect(readdirSync(folder).toSorted()).toEqual(['letter.txt', 'to come.ics']);
  must(session, 'package.save', { package: { id: null, of: 'addition', source: null, name: 'Oat bran', size: { value: 15, unit: 'g', typed: '15 g' }, price: null, boughtOn: null, openedOn: null, bestBefore: null, note: null } }); // prettier-ignore
  const plan = must(session, 'plan.batch', { jars: [{ volume: 946 }, { volume: 946 }], milkAtHand: 1000, additions: [{ name: 'oat bran', value: 10, unit: 'g' }], cartons: [{ kind: 'milk', openedOn: '2026-03-05' }] }); // prettier-ignore
  expect(plan.starts[0]).toMatchObject({
    from: '2026-03-14T18:30:00+01:00',
    to: '2026-03-14T22:30:00+01:00',
  });
  expect(plan).toMatchObject({
    filled: 1,
    total: { seed: 88.7 },
    uneven: { basis: 'a stated belief', mid: 0.05 },
  });
  expect(plan.short).toEqual([
    { what: 'milk', needed: 1803.3, has: 1000, unit: 'mL' },
    { what: 'oat bran', needed: 18.9, has: 15, unit: 'g' },
  ]);
  expect(plan.warnings).toHaveLength(1);
  session.close();
});

describe('whether a batch is a first one', () => {
  const said = (seeds: readonly { source: string | null; amount: { value: number; unit: 'mL' | 'pieces' } | null }[]): string => {
    const session = newSession();
    const source = must(session, 'source.save', plainSource('Blue Tin')).id;
    const own = seeds.map(({ source: from, amount }) => ({ source: from === null ? null : source, package: null, amount }));
    const plan = must(session, 'plan.batch', { jars: [{ volume: 900, seeds: own, additions: [] }] });
    return plan.says.rest.join(' ');
  }; // prettier-ignore
  it.each([
    ['spoonfuls of a jar', [{ source: null, amount: { value: 45, unit: 'mL' } }], 'later'],
    ['cubes of one', [{ source: null, amount: { value: 3, unit: 'pieces' } }], 'later'],
    ['a jar, nobody said how much', [{ source: null, amount: null }], 'later'],
    ['cubes with capsules', [{ source: null, amount: { value: 3, unit: 'pieces' } }, { source: 'x', amount: { value: 8, unit: 'pieces' } }], 'later'],
    ['capsules alone', [{ source: 'x', amount: { value: 8, unit: 'pieces' } }], 'first'],
  ] as const)('of %s', (_what, seeds, word) => {
    expect(said(seeds)).toContain(`jars of a ${word} batch`);
  }); // prettier-ignore
});

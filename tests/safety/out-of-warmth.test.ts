// The day a jar came out of warmth, and what a hold that runs asks for next. The clock's own sums; the early look between 6 and
// 12 hours is the project's word for it (common practice, no source).
import { describe, expect, it } from 'vitest';
import { stillRuns } from '../../core/ledger/running';
import { asksNow, looksOf } from '../../core/plan/hold-looks';
import { mayBeInHold, outOfWarmthOn } from '../../core/safety/in-hold';
import { longUnsaid } from '../../core/safety/still-there';
import { clockWords, todayWords } from '../../core/says/today-says';

const hold = (startedAt: string | null, endedAt: string | null, hours: number | null) =>
  ({ startedAt, endedAt, hours, planned: null, probe: null, readings: [] }) as unknown as Parameters<typeof outOfWarmthOn>[0]; // prettier-ignore

describe('a seed’s age counts from the end of its hold', () => {
  it.each([
    ['its end', hold('2026-05-01T18:00:00+02:00', '2026-05-03T06:00:00+02:00', null), '2026-05-03'],
    ['its start and 36 hours', hold('2026-05-01T18:00:00+02:00', null, 36), '2026-05-03'],
    ['its start and 5 hours', hold('2026-05-01T18:00:00+02:00', null, 5), '2026-05-01'],
    ['36 hours alone', hold(null, null, 36), '2026-05-02'],
    ['nothing', hold(null, null, null), '2026-05-01'],
    ['no hold', null, '2026-05-01'],
  ])('known by %s', (_by, one, day) => expect(outOfWarmthOn(one, '2026-05-01')).toBe(day));
});

it('a jar of which nothing tells may be in warmth for two days: holds of 36 hours are common practice (no source)', () => {
  const may = (today: string) =>
    mayBeInHold(null, null, false, '2026-05-18', `${today}T18:00:00+02:00`, today);
  expect(['2026-05-18', '2026-05-19', '2026-05-20'].map(may)).toEqual([true, true, false]);
});

describe('a hold that runs', () => {
  const began = '2026-05-20T01:00:00+02:00';
  const seconds = (moment: string): number => Date.parse(moment) / 1000;
  const words = (now: string, seen: number[] = [], ends: string | null = '2026-05-21T08:00:00+02:00') => {
    const asks = asksNow(seconds(began), ends === null ? null : seconds(ends), [seen], seconds(now));
    return Object.values(todayWords('20 May', began, asks, now)).join(' ');
  };
  it.each([
    ['2026-05-20T03:00:00+02:00', [], '20 May: 29 h left. Look at 12 h, due 13:00.'],
    ['2026-05-20T09:00:00+02:00', [], 'Look at 20 May by 13:00. 23 h left.'],
    ['2026-05-20T09:00:00+02:00', [7.5], '20 May: 23 h left. Look at 24 h, due tomorrow at 01:00.'],
    ['2026-05-20T13:40:00+02:00', [], 'Look at 20 May now. The look at 12 h was due 40 min ago, at 13:00.'],
    // Three hours past its time it is missed (common practice, no source).
    ['2026-05-20T16:20:00+02:00', [], '20 May: 15 h 40 min left. Look at 24 h, due tomorrow at 01:00. Nobody looked at 12 h.'],
    // A look that nobody took is not kept quiet, and not asked for for ever.
    ['2026-05-20T18:40:00+02:00', [], '20 May: 13 h 20 min left. Look at 24 h, due tomorrow at 01:00. Nobody looked at 12 h.'],
    ['2026-05-21T05:00:00+02:00', [12, 24.5], '20 May: 3 h left. Out 08:00.'],
    ['2026-05-21T08:00:30+02:00', [], 'Take 20 May out. The take-out is due now, 08:00.'],
    ['2026-05-21T11:10:00+02:00', [], 'Take 20 May out. The take-out was due 3 h ago, at 08:00.'],
    ['2026-05-22T12:00:00+02:00', [], 'Take 20 May out. The take-out was due 28 h ago, yesterday at 08:00.'],
    // The same moment on another clock.
    ['2026-05-21T09:10:00Z', [], 'Take 20 May out. The take-out was due 3 h ago, at 06:00.'],
  ] as const)('at %s, looked at %j: %s', (now, seen, says) => expect(words(now, [...seen])).toBe(says)); // prettier-ignore
  it('is told by the clock of its own season once it is long past', () => {
    expect(clockWords('2026-02-03T08:00:00+01:00', '2026-07-01T10:00:00+02:00')).toBe('3 Feb at 08:00');
    expect(clockWords('2026-06-30T06:00:00Z', '2026-07-01T10:00:00+02:00')).toBe('yesterday at 08:00');
  });
  it('of which nobody said when it ends tells for how long it has been warm', () => {
    expect(words('2026-05-21T05:00:00+02:00', [12, 24], null)).toBe(
      '20 May is in warmth. In warmth for 28 h.',
    );
  });
  it('has a look once every jar had it', () => {
    const states = (seen: number[][]) => looksOf(0, null, seen, 13 * 3600).map(({ state }) => state);
    expect(states([[7], [12]])).toEqual(['done', 'to come']);
    expect(states([[7], [4]])).toEqual(['due', 'to come']);
    expect(states([[7], []])).toEqual(['due', 'to come']);
    expect(states([])).toEqual(['due', 'to come']);
  });
  it('asks at every minute for exactly one thing, and never for less as it gets later', () => {
    const rank = { 'in warmth': 0, look: 1, 'take-out': 2 } as const;
    let late = 0;
    for (let minute = 0; minute <= 40 * 60; minute++) {
      const asks = asksNow(0, 36 * 3600, [[]], minute * 60);
      expect(asks.minutesLeft).toBe(36 * 60 - minute);
      expect(rank[asks.what] === 2).toBe(minute >= 36 * 60);
      if (asks.what === 'take-out') expect(asks.lateMinutes).toBe(late++);
      else expect(asks.lateMinutes).toBeLessThanOrEqual(180);
    }
  });
  const running = { began, plannedTo: null, hours: 31 };
  it('is spoken of until two days after it should have ended, whatever the offset it was written with', () => {
    expect(stillRuns(running, '2026-05-23T05:59:00Z')).toBe(true);
    expect(stillRuns(running, '2026-05-23T06:00:00Z')).toBe(false);
    expect(stillRuns(running, '2026-05-19T22:59:00Z')).toBe(false);
    expect(stillRuns({ ...running, hours: null }, '2026-05-23T00:00:00+02:00')).toBe(true);
  });
});

it.each([
  ['said to be there', true, '2025-01-01', false],
  ['said to be gone', false, '2025-01-01', false],
  ['nobody said, made last month', null, '2026-04-20', false],
  ['nobody said, made 14 months ago', null, '2025-03-20', true],
  ['nobody said, of a day nobody knows', null, null, true],
] as const)('a jar %s: taken for gone unless it is seen: %#', (_what, onShelf, madeOn, unsaid) =>
  expect(longUnsaid(onShelf, madeOn, '2026-05-20')).toBe(unsaid),
);

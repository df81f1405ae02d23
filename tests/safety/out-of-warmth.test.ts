// The day a jar came out of warmth, and what a hold that runs asks for next. The clock's own sums; the early look between 6 and
// 12 hours is the project's word for it (common practice, no source).
import { describe, expect, it } from 'vitest';
import { nextLook, stillRuns } from '../../core/ledger/running';
import { outOfWarmthOn } from '../../core/safety/in-hold';
import { longUnsaid } from '../../core/safety/still-there';
import { todayWords } from '../../core/says/today-says';

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

describe('a hold that runs', () => {
  const running = { began: '2026-05-20T01:00:00+02:00', plannedTo: null, hours: 31, earlySeen: false };
  const words = (now: string, earlySeen = false) => {
    const look = nextLook({ ...running, earlySeen }, now);
    return todayWords(
      { label: '20 May', began: running.began, ends: '2026-05-21T08:00:00+02:00' },
      look,
      now,
    );
  };
  it('is quiet while nothing is due, asks for the early look, then for the take-out', () => {
    expect(words('2026-05-20T03:00:00+02:00')).toEqual({ title: '20 May is in warmth.', rest: 'Look from 07:00, out tomorrow at 08:00.' }); // prettier-ignore
    expect(words('2026-05-20T09:00:00+02:00')).toEqual({ title: 'Look at 20 May by 13:00.', rest: 'In warmth, out tomorrow at 08:00.' }); // prettier-ignore
    expect(words('2026-05-20T09:00:00+02:00', true)).toEqual({ title: '20 May is in warmth.', rest: 'Out tomorrow at 08:00.' }); // prettier-ignore
    expect(words('2026-05-20T15:00:00+02:00')).toEqual({ title: '20 May is in warmth.', rest: 'Out tomorrow at 08:00.' }); // prettier-ignore
    expect(words('2026-05-21T09:30:00+02:00')).toEqual({
      title: 'Take 20 May out.',
      rest: 'It was due 08:00.',
    });
  });
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

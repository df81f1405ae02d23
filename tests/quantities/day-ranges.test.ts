// Days that are known only roughly: what people say, which days it means, and that what is printed is read as the same.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { middleDay, printRange, readDayRange } from '../../core/quantities/day-ranges';
import { addDays } from '../../core/quantities/typed-days';

const TODAY = '2026-03-14';
const read = (text: string): string | null => {
  const found = readDayRange(text, 'day first', TODAY);
  return found.ok ? `${found.range.from} ${found.range.to}${found.yearAssumed ? ' year assumed' : ''}` : null;
};

describe('days that are known only roughly', () => {
  // What "about" and "mid" reach over: common usage, no source.
  test.each([
    ['about 15 Jan 2026', '2026-01-12 2026-01-18'],
    ['About Jan 15', '2026-01-12 2026-01-18 year assumed'],
    ['ca. 15.1.', '2026-01-12 2026-01-18 year assumed'],
    ['~ 15/1/2026', '2026-01-12 2026-01-18'],
    ['about 2026-01-15', '2026-01-12 2026-01-18'],
    ['about mid January', '2026-01-11 2026-01-20 year assumed'],
    ['mid-January 2025', '2025-01-11 2025-01-20'],
    ['early Dec', '2025-12-01 2025-12-10 year assumed'],
    ['the end of February 2024', '2024-02-21 2024-02-29'],
    ['late feb 2025', '2025-02-21 2025-02-28'],
    ['Jan 2025', '2025-01-01 2025-01-31'],
    ['in January', '2026-01-01 2026-01-31 year assumed'],
    ['1/2025', '2025-01-01 2025-01-31'],
    ['2025-01', '2025-01-01 2025-01-31'],
    ['2025', '2025-01-01 2025-12-31'],
    ['between 3 and 9 Jan', '2026-01-03 2026-01-09 year assumed'],
    ['between 3 Jan and 9 Feb 2026', '2026-01-03 2026-02-09'],
    ['between 28 Dec and 3 Jan 2026', '2025-12-28 2026-01-03'],
    ['3-9 Jan 2026', '2026-01-03 2026-01-09'],
    ['3 Jan – 9 Jan 2026', '2026-01-03 2026-01-09'],
    ['from 3 Jan to 9 Jan 2026', '2026-01-03 2026-01-09'],
    ['3 or 4 Jan 2026', '2026-01-03 2026-01-04'],
    // What was made is made by today.
    ['about 13 Mar', '2026-03-10 2026-03-14 year assumed'],
    ['March 2026', '2026-03-01 2026-03-14'],
    ['November', '2025-11-01 2025-11-30 year assumed'],
  ])('%s', (text, meant) => expect(read(text)).toBe(meant));

  test.each([
    '15 Jan 2026', '2026-01-15', '3/1', 'today', 'soft', '', 'about', 'about noon', 'between 9 and 3 Jan', 'between 30 and 31 Feb',
    '13/2025', '3', 'about 3', 'marble', 'between 9 Jan 2026 and 3 Jan 2026',
  ])('“%s” is none', (text) => expect(read(text)).toBeNull()); // prettier-ignore

  test('what is printed is read as the same, and its middle lies within', () => {
    const days = fc.integer({ min: 0, max: 6000 });
    fc.assert(
      fc.property(days, fc.integer({ min: 0, max: 400 }), fc.constantFrom('day first' as const, 'month first' as const), (first, length, order) => {
        const range = { from: addDays('2005-01-01', first), to: addDays('2005-01-01', first + length) };
        const today = addDays(range.to, 1);
        expect(readDayRange(printRange(range, order), order, today)).toEqual({ ok: true, range, yearAssumed: false });
        const middle = middleDay(range);
        expect(range.from <= middle && middle <= range.to).toBe(true);
      }),
    ); // prettier-ignore
  });
});

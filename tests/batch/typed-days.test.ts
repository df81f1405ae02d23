// Days and times as typed. The calendar facts (leap days) are the Gregorian calendar's (ISO 8601); the readings are
// common practice, no source.
import { describe, expect, it } from 'vitest';
import { addDays, printDay, readDay, readMoment, readTime } from '../../core/quantities/typed-days';

const today = '2026-03-20';
const day = (text: string, order: 'day first' | 'month first' = 'day first', ahead = false) => {
  const read = readDay(text, order, today, ahead);
  return read.ok ? read.day : null;
};

describe('a typed day', () => {
  it.each([
    ['14 Mar', '2026-03-14'],
    ['14 march 2025', '2025-03-14'],
    ['Mar 14', '2026-03-14'],
    ['March 14, 2025', '2025-03-14'],
    ['14.3.26', '2026-03-14'],
    ['14/3', '2026-03-14'],
    ['2026-03-14', '2026-03-14'],
    ['today', '2026-03-20'],
    ['yesterday', '2026-03-19'],
    ['30 Dec', '2025-12-30'],
    ['29 Feb', '2024-02-29'],
  ])('%s is %s', (text, expected) => expect(day(text)).toBe(expected));
  it('follows the preference where both figures could be the day', () => {
    expect(day('3/4/26', 'day first')).toBe('2026-04-03');
    expect(day('3/4/26', 'month first')).toBe('2026-03-04');
  });
  it('takes a figure above 12 as the day in either order', () => {
    expect(day('3/14/26', 'day first')).toBe('2026-03-14');
    expect(day('14/3/26', 'month first')).toBe('2026-03-14');
  });
  it('looks ahead for a best-before day', () => expect(day('10 Jan', 'day first', true)).toBe('2027-01-10'));
  it.each(['', 'soon', '31 Feb', '32/1/26', '13/13/26', '14 Foo', '29 Feb 2025'])('refuses "%s"', (text) =>
    expect(day(text)).toBeNull(),
  );
  it('is printed so that it reads back the same', () => {
    for (const order of ['day first', 'month first'] as const)
      for (let step = 0; step < 800; step += 13) {
        const then = addDays(today, -step);
        expect(readDay(printDay(then, order), order, today)).toMatchObject({ day: then, yearAssumed: false });
      }
  });
});

describe('a typed time', () => {
  it.each([
    ['18:30', 18 * 60 + 30],
    ['6:30 pm', 18 * 60 + 30],
    ['6.30pm', 18 * 60 + 30],
    ['18h30', 18 * 60 + 30],
    ['6 pm', 18 * 60],
    ['12 am', 0],
    ['12:15 pm', 12 * 60 + 15],
    ['7h', 7 * 60],
  ])('%s', (text, minutes) => expect(readTime(text)).toBe(minutes));
  it.each(['36', '25:00', '13 pm', '6:75', 'noonish'])('refuses "%s"', (text) =>
    expect(readTime(text)).toBeNull(),
  );
});

const read = (text: string, on: string | null) => readMoment(text, on, 'day first', today, () => '+01:00');

describe('a typed moment', () => {
  it('takes a bare time on the day given', () =>
    expect(read('18:30', '2026-03-14')).toMatchObject({ moment: '2026-03-14T18:30:00+01:00' }));
  it('takes a day and a time', () => {
    for (const text of [
      '16 Mar 6:30',
      '16 Mar, 6:30',
      '2026-03-16 06:30',
      '2026-03-16T06:30',
      '16/3 6:30 am',
    ])
      expect(read(text, null)).toMatchObject({ moment: '2026-03-16T06:30:00+01:00' });
  });
  it('asks which day rather than guess', () =>
    expect(read('6:30', null)).toEqual({ ok: false, why: 'which day' }));
  it('refuses what is no time', () =>
    expect(read('after lunch', '2026-03-14')).toEqual({ ok: false, why: 'not a time' }));
});

// Exports of probes: the same readings in any dress give the same answer; what leaps is left out, gaps are bridged, the night
// the clocks change is lived once or twice, and where it settles is found. Runs and files are invented; Newton's law gives
// the published times.
import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { broughtIn } from '../../core/readings/brought-in';
import { readExport } from '../../core/readings/read-export';
import type { Around } from '../../core/readings/export-times';
import { settledOf } from '../../core/growth/settling';
import { DRESSES, type Point } from './exports';
import { ODD } from './odd-exports';

const HOUR = 3600;
const around = (began: string | null, more: Partial<Around> = {}): Around => {
  const at = began === null ? null : Date.parse(began) / 1000;
  const offset = began === null ? null : Number(/([+-]\d\d):/.exec(began)?.[1] ?? 0) * 60;
  return { began: at, ended: null, beganOffset: offset, endedOffset: null, dates: 'day first', offsetAt: () => offset ?? 0, now: (at ?? 0) + 86_400, ...more };
}; // prettier-ignore

/** A bath that warms up by Newton's law, to tenths of a degree of both scales, with a little swing. */
function run(began: number, hours: number, minutes: number, tau = 1.2, swing = 0.2): Point[] {
  return Array.from({ length: Math.floor((hours * 60) / minutes) + 1 }, (_, i) => {
    const hour = (i * minutes) / 60;
    // Five ninths of a degree are whole in both scales.
    const celsius = Math.round((38 - 9 * Math.exp(-hour / tau) + swing * Math.sin(hour * 5)) * 2) / 2;
    return { civil: began + i * minutes * 60, celsius };
  });
}

/** Seconds and °C of what was read. */
const seen = (text: string, given: Around, where: 'bath' | 'jar' | 'air' = 'bath') =>
  readExport(text, where, given).readings.map(({ at, celsius }) => [at.seconds, Number(celsius.toFixed(3))]);

describe.each(Object.entries(DRESSES))('%s', (name, dress) => {
  it('gives the same readings, whenever they were read', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 700 }), fc.integer({ min: 0, max: 143 }), fc.constantFrom(5, 10, 15), fc.constantFrom('+01:00', '-05:00', '+00:00'),
        (day, tenMinutes, minutes, zone) => {
          const offset = Number(zone.slice(0, 3)) * 60;
          if (name.includes('name of the zone') && offset < 0) return;
          const civil = Date.UTC(2025, 1, 1) / 1000 + day * 86_400 + tenMinutes * 600;
          const points = run(civil, 30, minutes);
          const began = `${new Date((civil - 0) * 1000).toISOString().slice(0, 19)}${zone}`;
          const given = around(began, { dates: name.includes('month first') || name.includes('AM and PM') ? 'month first' : 'day first' });
          expect(seen(dress(points, offset), given)).toEqual(points.map((point) => [point.civil - offset * 60, point.celsius]));
        },
      ),
      { numRuns: 8 },
    ); // prettier-ignore
  });
});

describe('an export of an odd habit', () => {
  it.each(Object.entries(ODD))('%s: is read whole, and nothing else of it', (_, { text: file, around: given, points, where = 'bath' }) => {
    const told = broughtIn(readExport(file, where, given), given);
    expect(told.readings.map(({ at, celsius }) => [at.seconds, Number(celsius.toFixed(1))])).toEqual(points.map(({ at, celsius }) => [at, celsius]));
    expect(told.gaps).toEqual([]);
  });
  const says = (name: string): string => {
    const { text: file, around: given, where = 'bath' } = ODD[name]!;
    return readExport(file, where, given).says.join(' ');
  };
  it('is said: which of several sensors is read, whose clock it goes by, what a bare count is', () => {
    expect(says('two sensors in rows by turns')).toContain('The file holds several sensors: “bath” is read.');
    expect(says('two sensors one below the other')).toContain('The file holds several sensors: “Sensor: bath” is read.');
    expect(says('a state beside it, by turns')).not.toContain('sensors');
    expect(says('zone above')).toContain('Its clock is read as UTC−05:00, as the file says.');
    expect(says('UTC in the heading')).toContain('Its clock is read as UTC, as the file says.');
    expect(says('seconds since the start, no heading')).toContain('The first column is read as seconds since the start.');
    expect(says('numbers of samples and an interval')).toContain('Rows have no time: one every 10 min, as the file says.');
  });
}); // prettier-ignore

const text = readFileSync(new URL('bath-probe.csv', import.meta.url), 'utf8');
describe('the invented export of a bath probe', () => {
  const given = around('2026-02-10T19:40:00+01:00');
  const read = readExport(text, 'bath', given);
  const told = broughtIn(read, given);
  it('is read whole: month first, °F, thirty-six hours', () => {
    expect(read.unit).toBe('F');
    expect(read.readings).toHaveLength(text.trim().split('\n').length - 3);
    expect(read.readings[0]?.at).toEqual({
      seconds: Date.parse('2026-02-10T19:40:00+01:00') / 1000,
      offset: 60,
    });
    expect(read.readings.at(-1)!.at.seconds - read.readings[0]!.at.seconds).toBe(36 * HOUR);
    expect(read.readings[0]?.celsius).toBeCloseTo(((84.1 - 32) * 5) / 9, 9);
    expect(read.heading).toBe('reading');
    expect(told.says[0]).toBe('Read as °F, as the heading says.');
  });
  it('has its one spike left out and its one gap bridged, and both are said', () => {
    expect(told.leftOut).toHaveLength(1);
    const row = text.split('\n').findIndex((line) => line.includes('195.8')) + 1;
    expect(told.leftOut[0]).toMatchObject({
      row,
      sentence: '195.8 °F: no bath and no jar warms and cools that fast.',
    });
    expect(told.gaps.map(({ from, to }) => (to.at.seconds - from.at.seconds) / 60)).toEqual([120]);
    expect(told.minutesAbove45).toBe(0);
  });
  it('settles near 100 °F, as its swing allows', () => {
    expect(told.settledAt?.unit).toBe('°F');
    expect(told.settledAt?.value).toBeGreaterThan(99.5);
    expect(told.settledAt?.value).toBeLessThan(100.5);
    expect(told.minutesToSettle).toBeGreaterThan(120);
    expect(told.minutesToSettle).toBeLessThan(480);
  });
});

describe('settling', () => {
  it.each([5, 10, 20])('takes 115.6 min from 29 to 38 °C at a time constant of 40 min, read every %s min', (minutes) => {
    // check-values §14: 40 · ln(9 / 0.5) = 115.6 min.
    const profile = Array.from({ length: (24 * 60) / minutes }, (_, i) => ({ hour: (i * minutes) / 60, celsius: 38 - 9 * Math.exp((-i * minutes) / 40) }));
    expect(Math.abs(settledOf(profile)!.hour * 60 - 115.6)).toBeLessThan(minutes / 5);
    expect(settledOf(profile)!.level).toBeCloseTo(38, 1);
  }); // prettier-ignore
  it('is where it stays, not where it is taken out or a power cut leads', () => {
    const profile = Array.from({ length: 36 * 6 }, (_, i) => {
      const hour = i / 6;
      const cut = hour > 14 && hour < 17 ? -6 : 0;
      return { hour, celsius: hour > 33 ? 22 : 38 - 9 * Math.exp(-hour / 0.7) + cut };
    });
    expect(settledOf(profile)!.level).toBeCloseTo(38, 1);
    expect(settledOf(profile)!.hour).toBeCloseTo(0.7 * Math.log(18), 1);
  });
  it('is the mean of an hour where it swings, and nothing where it never stays', () => {
    const swinging = Array.from({ length: 24 * 12 }, (_, i) => ({ hour: i / 12, celsius: 38 + 1.5 * Math.sin(i / 2) - 9 * Math.exp(-i / 12) }));
    expect(settledOf(swinging)).toMatchObject({ byMean: true });
    expect(settledOf(swinging)!.level).toBeCloseTo(38, 0);
    expect(settledOf(swinging)!.swing).toBeCloseTo(1.5, 1);
    expect(settledOf(swinging.slice(0, 8))).toBeNull();
  }); // prettier-ignore
});

describe('what is impossible', () => {
  const began = Date.UTC(2026, 2, 1, 20) / 1000;
  const given = around('2026-03-01T20:00:00+00:00');
  it('is left out wherever it stands, and nothing else is', () => {
    const leap = fc.record({
      at: fc.integer({ min: 0, max: 180 }),
      by: fc.constantFrom(-30, -12, 20, 55),
      long: fc.integer({ min: 1, max: 3 }),
    });
    fc.assert(
      fc.property(leap, ({ at, by, long }) => {
        const points = run(began, 30, 10);
        const spoilt = points.map((point, i) => (i >= at && i < at + long ? { ...point, celsius: point.celsius + by } : point));
        // Three at an end could be true: a probe that was in another place then.
        if (long > 1 && (at < 2 || at + long >= points.length - 2)) return;
        // A leap of a few degrees can hide in the first hour, when a jar warms fast, and at an end.
        if (Math.abs(by) < 15 && (at < 6 || at + long >= points.length)) return;
        const told = broughtIn(readExport(DRESSES['ISO, °C']!(spoilt, 0), 'bath', given), given);
        const wrong = spoilt.flatMap(({ celsius }, i) => (celsius === points[i]?.celsius ? [] : [i + 2]));
        expect(told.leftOut.map(({ row }) => row)).toEqual(wrong);
      }),
    ); // prettier-ignore
  });
  it('is said of cells that hold no temperature, and the gap that they leave', () => {
    const points = run(began, 30, 10);
    const rows = DRESSES['ISO, °C']!(points, 0).split('\n').map((row, i) => (i >= 60 && i < 66 ? row.replace(/,.*/, i === 60 ? ',---' : ',') : row));
    const told = broughtIn(readExport(rows.join('\n'), 'bath', given), given);
    expect(told.leftOut).toHaveLength(6);
    expect(told.leftOut[0]).toEqual({ row: 61, sentence: 'There is a time in this row, but only “---”.' });
    expect(told.leftOut[1]?.sentence).toBe('There is a time in this row, but no temperature.');
    expect(told.gaps).toHaveLength(1);
  }); // prettier-ignore
  it('is no bath that warms by itself, nor one that fails for hours', () => {
    const points = run(began, 30, 10).map((point, i) => (i > 90 && i < 130 ? { ...point, celsius: point.celsius - 9 } : point));
    expect(broughtIn(readExport(DRESSES['ISO, °C']!(points, 0), 'bath', given), given).leftOut).toEqual([]);
  }); // prettier-ignore
});

describe('the night the clocks change', () => {
  const berlin = (seconds: number): number => {
    const name = new Intl.DateTimeFormat('en-GB', { timeZone: 'Europe/Berlin', timeZoneName: 'longOffset' }).format(seconds * 1000);
    return Number(/GMT\+(\d\d)/.exec(name)?.[1]) * 60;
  }; // prettier-ignore
  const nights = [
    ['back', '2026-10-24T20:00:00+02:00', '2026-10-25T10:00:00+01:00'],
    ['forward', '2026-03-28T20:00:00+01:00', '2026-03-29T10:00:00+02:00'],
  ] as const;
  /** What a clock on the wall shows of a run of absolute moments. */
  const wall = (began: string): Point[] => {
    const at = Date.parse(began) / 1000;
    return run(at, 24, 10).map(({ civil, celsius }) => ({ civil: civil + berlin(civil) * 60, celsius }));
  };
  it.each(nights)('put %s is lived as it was, with the keeper’s zone or the hold’s own offsets or neither', (way, began, ended) => {
    const at = Date.parse(began) / 1000;
    const absolute = run(at, 24, 10).map((point) => [point.civil, point.celsius]);
    const end = { ended: Date.parse(ended) / 1000, endedOffset: berlin(Date.parse(ended) / 1000) };
    for (const dress of ['ISO, °C', 'day and time in columns of their own, °F in the heading', 'newest first']) {
      const file = DRESSES[dress]!(wall(began), 0);
      for (const more of [{ offsetAt: berlin }, { offsetAt: () => 0, ...end }, { offsetAt: () => 0 }]) {
        const given = around(began, more);
        expect(seen(file, given)).toEqual(absolute);
        expect(readExport(file, 'bath', given).says.join(' ')).toContain(`put ${way} that night`);
      }
      // A logger that never changes its clock.
      const still = DRESSES[dress]!(run(at + berlin(at) * 60, 24, 10), 0);
      expect(seen(still, around(began, { offsetAt: berlin }))).toEqual(absolute);
    }
  }); // prettier-ignore
});

describe('a file that is no export', () => {
  it.each(['', 'noise', 'a,b\n1,2\n3,4', 'Notes\nfirm and sour, 5 Mar a', '2026-03-01\n2026-03-02'])('%j has no readings', (file) => {
    expect(readExport(file, 'bath', around(null)).trouble).toBe('no readings');
  }); // prettier-ignore
  it('needs the start of the hold where its times have no day', () => {
    const file = 'time,temp\n19:40,37.0\n19:50,37.5\n20:00,38';
    expect(readExport(file, 'bath', around(null)).trouble).toBe('no day');
    expect(readExport(file, 'bath', around('2026-03-01T19:30:00+01:00')).readings).toHaveLength(3);
  });
  it('never throws, whatever it holds', () => {
    fc.assert(
      fc.property(fc.array(fc.array(fc.constantFrom('2026-03-01', '19:40', '38', '-', '"', 'PM', '99999999', '', '31/31/26', '1e9', '°F'), { maxLength: 5 }), { maxLength: 8 }), (rows) => {
        const file = rows.map((row) => row.join(',')).join('\n');
        const given = around('2026-03-01T19:30:00+01:00');
        broughtIn(readExport(file, 'bath', given), given);
      }),
      { numRuns: 200 },
    ); // prettier-ignore
  });
});

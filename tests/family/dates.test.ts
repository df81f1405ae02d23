// Days, letters and months never lie on one another; years stand wherever a day could be mistaken.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { type LabelPlace, LINE, splitLabel, type Written, writtenLabels } from '../../renderer/family/dates';
import type { Box } from '../../renderer/family/geometry';
import { writtenMonths } from '../../renderer/family/months';
import { dayLabel } from '../../core/lineage/labels';
import { dayAfter } from '../families';

const JAR_SIZE = { width: 41, height: 44 };
const [COLUMN, ROW] = [62, 47];
const measure = (text: string): number => text.length * 8;

/** A jar of a lane at a column and row, made on a day since 2000. */
function jarOf(index: number, column: number, row: number, day: number, letter = 'a', lane = 0): LabelPlace {
  const madeOn = dayAfter(day);
  const [left, top] = [column * COLUMN, row * ROW];
  return {
    index,
    label: `${dayLabel(madeOn, false)} ${letter}`,
    madeOn,
    jar: { left, right: left + JAR_SIZE.width, top, bottom: top + JAR_SIZE.height },
    lane,
    line: 'Heron',
    level: row === 2,
    seed: index % 7 === 3 ? (index % 2 ? 'itself' : 'kept back') : null,
  };
}

const sheet = {
  row: ROW,
  beside: COLUMN - JAR_SIZE.width,
  foot: [-4],
  lines: 2 as const,
  scale: 1,
  from: -1e9,
  to: 1e9,
  measure,
};
const boxOf = ({ text, at, x, y }: Written): Box => {
  const left = at === 'side' ? x : x - measure(text) / 2;
  return { left, right: left + measure(text), top: y, bottom: y + LINE };
};
const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

test('a label is a batch and a letter', () => {
  expect(splitLabel('14 Mar plain b')).toEqual({ batch: '14 Mar plain', letter: 'b' });
});

test('nothing that is written lies on anything else that is, nor on a jar, wherever jars stand', () => {
  const spots = fc.uniqueArray(fc.tuple(fc.nat({ max: 12 }), fc.nat({ max: 7 }), fc.nat({ max: 900 })), {
    minLength: 1,
    maxLength: 60,
    selector: ([x, y]) => `${x} ${y}`,
  });
  fc.assert(
    fc.property(
      spots,
      fc.constantFrom(16, 21, 90),
      fc.constantFrom(-4, null),
      fc.constantFrom(1 as const, 2 as const),
      (all, beside, foot, lines) => {
        const places = all.map(([x, y, day], index) => jarOf(index, x, y, day, 'abc'[index % 3]));
        const written = writtenLabels(places, { ...sheet, beside, foot: [foot], lines });
        expect(new Set(written.map(({ key }) => key)).size).toBe(written.length);
        written.forEach((one, i) => {
          for (const other of written.slice(i + 1)) expect(overlaps(boxOf(one), boxOf(other))).toBe(false);
          for (const { jar } of places) expect(overlaps(boxOf(one), jar)).toBe(false);
        });
      },
    ),
  );
});

/** A line of so many weekly batches of three from a day on, the middle one going on. */
const weekly = (weeks: number, from: number): LabelPlace[] =>
  Array.from({ length: weeks }, (_, week) =>
    ['a', 'b', 'c'].map((letter, at) => jarOf(week * 3 + at, week, 1 + at, from + 7 * week, letter)),
  ).flat();
const texts = (written: readonly Written[], kind: string): string[] =>
  written.filter(({ key }) => key.startsWith(kind)).map(({ text }) => text);

test('above a lane each day stands once, its year below the first and where it turns; each jar has its letter', () => {
  // 2000-12-15, 22, 29, then 2001-01-05: civil days counted by hand.
  const written = writtenLabels(weekly(4, 349), sheet);
  expect(texts(written, 'day').toSorted()).toEqual(['15 Dec', '22 Dec', '29 Dec', '5 Jan']);
  expect(texts(written, 'year').toSorted()).toEqual(['2000', '2001']);
  expect(texts(written, 'letter')).toEqual(Array.from({ length: 4 }, () => ['a', 'b', 'c']).flat());
});

test('the first day in the window says its year, whatever was said left of it', () => {
  const written = writtenLabels(weekly(4, 349), { ...sheet, from: COLUMN });
  expect(
    written
      .filter(({ key }) => key.startsWith('year'))
      .map(({ text, x }) => [text, x])
      .toSorted(),
  ).toEqual([
    ['2000', COLUMN + JAR_SIZE.width / 2],
    ['2001', 3 * COLUMN + JAR_SIZE.width / 2],
  ]);
});

test('where there is one line between lanes, the year stands beside its day', () => {
  const written = writtenLabels(weekly(4, 349), { ...sheet, lines: 1, measure: (text) => text.length * 3 });
  expect(texts(written, 'day').toSorted()).toEqual(['15 Dec 2000', '22 Dec', '29 Dec', '5 Jan 2001']);
  expect(texts(written, 'year')).toEqual([]);
});

test('days are thinned out, and the newest is always written (property)', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 4, max: 120 }), (weeks, wide) => {
      const written = writtenLabels(weekly(weeks, 0), {
        ...sheet,
        measure: (text) => (text.length * wide) / 6,
      });
      expect(texts(written, 'day')).toContain(dayLabel(dayAfter(7 * (weeks - 1)), false));
    }),
  );
});

test('a branch made on another day says it, with the year where that is not the one above it', () => {
  const line = weekly(2, 349);
  const same = writtenLabels([...line, jarOf(90, 1, 5, 360)], sheet);
  expect(texts(same, 'branch')).toEqual(['26 Dec']);
  const later = writtenLabels([...line, jarOf(90, 1, 5, 400)], sheet);
  expect(texts(later, 'branch')).toEqual(['4 Feb 2001']);
  const mate = writtenLabels([...line, jarOf(90, 1, 5, 356, 'd')], sheet);
  expect(texts(mate, 'branch')).toEqual([]);
});

test('a batch called by its line’s name says only its day', () => {
  const [first] = weekly(1, 349);
  if (!first) throw new Error('no jar');
  const written = writtenLabels([{ ...first, label: '15 Dec Heron a', level: true }], sheet);
  expect(texts(written, 'day')).toEqual(['15 Dec']);
});

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
const ticks = Array.from({ length: 40 }, (_, i) => {
  const year = 2024 + Math.floor((i + 9) / 12);
  return { x: i * 400, month: MONTHS[(i + 9) % 12] ?? '', year: String(year) };
});

test('months never touch; the first in the window says its year, and each that turns it (property)', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.002, max: 3, noNaN: true }), fc.nat({ max: 16_000 }), (k, from) => {
      const written = writtenMonths(ticks, k, from, measure);
      let right = -Infinity;
      for (const { x, text } of written) {
        expect(x * k - measure(text) / 2).toBeGreaterThan(right);
        right = x * k + measure(text) / 2;
      }
      const seen = written.filter(({ x }) => x >= from);
      let year = '';
      for (const { x, text } of seen) {
        const own = ticks.find((tick) => tick.x === x)?.year ?? '';
        expect(text.endsWith(own)).toBe(own !== year);
        year = own;
      }
    }),
  );
});

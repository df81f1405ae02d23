// Labels and column heads never lie on one another; what is thinned out is what matters least.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { thinnedHeads } from '../../renderer/family/heads';
import { type LabelPlace, splitLabel, writtenLabels } from '../../renderer/family/labels';

const HEIGHT = 21;
const measure = (text: string): number => text.length * 8;
const place = (index: number, more: Partial<LabelPlace> = {}): LabelPlace => ({
  index,
  label: `14 Mar ${String.fromCodePoint(97 + (index % 26))}`,
  middle: 31,
  top: index * 100 + 66,
  besideLeft: 66,
  besideRight: -4,
  besideTop: index * 100 - 3,
  sides: ['under', 'right'],
  rank: 0,
  day: '2026-03-14',
  column: 1,
  ...more,
});
const boxOf = (one: LabelPlace, { text, side }: { text: string; side: string }) => {
  const width = measure(text);
  const left =
    side === 'under' ? one.middle - width / 2 : side === 'right' ? one.besideLeft : one.besideRight - width;
  const top = side === 'under' ? one.top : one.besideTop;
  return { left, right: left + width, top, bottom: top + HEIGHT };
};

test('a label is a batch and a letter', () => {
  expect(splitLabel('14 Mar plain b')).toEqual({ batch: '14 Mar plain', letter: 'b' });
});

test('no two written labels overlap, wherever jars lie', () => {
  const spots = fc.array(
    fc.record({ x: fc.integer({ min: 0, max: 900 }), y: fc.integer({ min: 0, max: 500 }) }),
    {
      minLength: 2,
      maxLength: 80,
    },
  );
  fc.assert(
    fc.property(spots, (all) => {
      const places = all.map(({ x, y }, index) =>
        place(index, {
          middle: x,
          top: y + 44,
          besideLeft: x + 25,
          besideRight: x - 25,
          besideTop: y,
          column: index % 9,
        }),
      );
      const written = [...writtenLabels(places, [], HEIGHT, measure)];
      expect(written.length).toBeGreaterThan(0);
      const boxes = written.map(([index, one]) => boxOf(places[index] ?? place(0), one));
      boxes.forEach((a, i) =>
        boxes.slice(i + 1).forEach((b) => {
          expect(a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom).toBe(false);
        }),
      );
    }),
  );
});

test('where there is room every label is written in full, under its jar', () => {
  const written = writtenLabels([place(0), place(1), place(2)], [], HEIGHT, measure);
  expect([...written.values()]).toEqual([
    { text: '14 Mar a', side: 'under' },
    { text: '14 Mar b', side: 'under' },
    { text: '14 Mar c', side: 'under' },
  ]);
});

test('where there is none under it, beside it; then the letter alone, once its date is written', () => {
  const below = { owner: 9, box: { left: 0, right: 62, top: 60, bottom: 130 } };
  expect(writtenLabels([place(0)], [below], HEIGHT, measure).get(0)).toEqual({
    text: '14 Mar a',
    side: 'right',
  });
  const narrow = { owner: 9, box: { left: 80, right: 200, top: 60, bottom: 130 } };
  const written = writtenLabels(
    [place(0), place(1, { top: 100, middle: 60, sides: ['under'] })],
    [narrow],
    HEIGHT,
    measure,
  );
  expect(written.get(0)?.text).toBe('14 Mar a');
  expect(written.get(1)?.text).toBe('b');
});

test('a letter alone never stands where its date is not written in the same column', () => {
  const blocked = { owner: 9, box: { left: 80, right: 200, top: 0, bottom: 400 } };
  const written = writtenLabels(
    [place(1, { middle: 60, top: 100, sides: ['under'] })],
    [blocked],
    HEIGHT,
    measure,
  );
  expect(written.size).toBe(0);
});

test('the focused jar is written first and in any case; then the newest', () => {
  const close = [
    place(0, { top: 0, day: '2026-03-01', label: '1 Mar a', rank: 2, sides: ['under'] }),
    place(1, { top: 4, day: '2026-03-20', label: '20 Mar a', sides: ['under'] }),
    place(2, { top: 40, day: '2026-03-02', label: '2 Mar a', sides: ['under'] }),
    place(3, { top: 44, day: '2026-03-21', label: '21 Mar a', sides: ['under'] }),
  ];
  const wall = { owner: 9, box: { left: -500, right: 500, top: 0, bottom: 20 } };
  expect([...writtenLabels(close, [wall], HEIGHT, measure).keys()].toSorted()).toEqual([0, 3]);
});

test('column heads say the word while it fits, then once, then every n-th; never one on another', () => {
  const columns = Array.from({ length: 60 }, (_, at) => ({
    x: at * 100,
    long: `generation ${at + 1}`,
    short: String(at + 1),
  }));
  expect(thinnedHeads(columns, 1.5, measure)[1]?.text).toBe('generation 2');
  expect(
    thinnedHeads(columns, 0.9, measure)
      .slice(0, 2)
      .map((head) => head.text),
  ).toEqual(['generation 1', '2']);
  for (const k of [0.5, 0.3, 0.1, 0.02, 0.001]) {
    const heads = thinnedHeads(columns, k, measure);
    expect(heads.length).toBeGreaterThan(0);
    heads.slice(1).forEach((head, at) => {
      const before = heads[at];
      if (!before) return;
      expect(head.x * k - measure(head.text) / 2).toBeGreaterThan(before.x * k + measure(before.text) / 2);
    });
  }
});

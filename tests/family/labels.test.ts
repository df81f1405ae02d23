// Labels and column heads never lie on one another; what is thinned out is what matters least.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { JAR } from '../../renderer/family/geometry';
import { thinnedHeads } from '../../renderer/family/heads';
import {
  type Box,
  labelBox,
  type LabelPlace,
  type Manner,
  mannerOf,
  splitLabel,
  writtenLabels,
} from '../../renderer/family/labels';
import { ribbonPath, ribbonPoints } from '../../renderer/family/ribbons';

const HEIGHT = 21;
const JAR_SIZE = { width: 40, height: 44 };
const measure = (text: string): number => text.length * 8;
const jarAt = (x: number, y: number): Box => ({
  left: x,
  right: x + JAR_SIZE.width,
  top: y,
  bottom: y + JAR_SIZE.height,
});
const place = (index: number, more: Partial<LabelPlace> = {}): LabelPlace => ({
  index,
  label: `14 Mar ${String.fromCodePoint(97 + (index % 26))}`,
  jar: jarAt(300, index * 50),
  rank: 0,
  day: '2026-03-14',
  column: 3,
  left: 'free',
  ...more,
});
const ROW = 50;
const write = (places: readonly LabelPlace[], manner: Manner, more: readonly Box[] = []) =>
  writtenLabels(
    places,
    [
      ...places.map(({ index, jar }) => ({ owner: index, box: jar })),
      ...more.map((box) => ({ owner: -1, box })),
    ],
    manner,
    ROW,
    HEIGHT,
    measure,
  );
const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

test('a label is a batch and a letter', () => {
  expect(splitLabel('14 Mar plain b')).toEqual({ batch: '14 Mar plain', letter: 'b' });
});

test.each(['under', 'beside', 'headed', 'days'] as const)(
  'no two labels overlap, nor lies one on another’s jar, wherever jars lie: %s',
  (manner) => {
    const spots = fc.uniqueArray(fc.tuple(fc.nat({ max: 9 }), fc.nat({ max: 9 }), fc.nat({ max: 3 })), {
      minLength: 2,
      maxLength: 60,
      selector: ([x, y]) => `${x} ${y}`,
    });
    fc.assert(
      fc.property(spots, (all) => {
        const places = all.map(([x, y, batch], index) =>
          place(index, {
            jar: jarAt(x * 70, y * ROW),
            label: `${batch + 1} Mar ${String.fromCodePoint(97 + (index % 26))}`,
            column: x,
            left: (['free', 'ribbon', 'slips'] as const)[index % 3] ?? 'free',
          }),
        );
        const written = write(places, manner);
        expect(written.size).toBeGreaterThan(0);
        const boxes = [...written].map(([index, { text, side }]) => ({
          index,
          box: labelBox(places[index]?.jar ?? jarAt(0, 0), side, measure(text), HEIGHT),
        }));
        boxes.forEach((a, i) => {
          for (const b of boxes.slice(i + 1)) expect(overlaps(a.box, b.box)).toBe(false);
          for (const { index, jar } of places)
            if (index !== a.index) expect(overlaps(a.box, jar)).toBe(false);
        });
      }),
    );
  },
);

test('one manner for a view: under where rows leave room, beside where columns do, else the day over its batch', () => {
  const manner = (column: number, row: number): Manner => mannerOf(column, row, JAR_SIZE, 64, HEIGHT);
  expect(manner(110, 66)).toBe('under');
  expect(manner(160, 50)).toBe('beside');
  expect(manner(110, 50)).toBe('headed');
  expect(manner(60, 50)).toBe('days');
});

test('under or beside, every label is written in full, all on the same side', () => {
  for (const [manner, side] of [
    ['under', 'under'],
    ['beside', 'left'],
  ] as const) {
    const spread = [0, 1, 2].map((index) => place(index, { jar: jarAt(300, index * 80) }));
    expect([...write(spread, manner).values()]).toEqual([
      { text: '14 Mar a', side },
      { text: '14 Mar b', side },
      { text: '14 Mar c', side },
    ]);
  }
});

test('headed: the day once at the top of batch-mates, letters below it, all left', () => {
  expect([...write([place(0), place(1), place(2)], 'headed').values()]).toEqual([
    { text: '14 Mar a', side: 'left' },
    { text: 'b', side: 'left' },
    { text: 'c', side: 'left' },
  ]);
});

test('headed: a batch-mate that does not stand right below has the day again', () => {
  const apart = [place(0), place(1, { jar: jarAt(300, 160) })];
  expect(write(apart, 'headed').get(1)?.text).toBe('14 Mar b');
  const between = [place(0), place(1, { label: '15 Mar a' }), place(2, { label: '14 Mar b' })];
  expect(write(between, 'headed').get(2)?.text).toBe('14 Mar b');
});

test('headed: no letter without its day', () => {
  // Walled in above, on the left and below: only a letter would have room.
  const walls = [
    { left: 0, right: 280, top: 0, bottom: 200 },
    { left: 280, right: 360, top: 0, bottom: 49 },
    { left: 280, right: 360, top: 145, bottom: 200 },
  ];
  expect(write([place(1), place(2)], 'headed', walls).size).toBe(0);
});

test('where a ribbon runs left of the top jar, the day stands over it', () => {
  const [top] = write([place(0, { left: 'ribbon' }), place(1, { left: 'ribbon' })], 'headed').values();
  expect(top).toEqual({ text: '14 Mar a', side: 'over' });
});

test('without room for letters the day stands for all; a jar by itself keeps its letter', () => {
  const places = [place(0), place(1), place(2, { label: '20 Mar a', jar: jarAt(300, 300) })];
  expect([...write(places, 'days')]).toEqual(
    expect.arrayContaining([
      [0, { text: '14 Mar', side: 'left' }],
      [2, { text: '20 Mar a', side: 'left' }],
    ]),
  );
  expect(write(places, 'days').has(1)).toBe(false);
});

test('the focused jar is written first and in any case; then the newest', () => {
  const close = [
    place(0, { jar: jarAt(100, 0), day: '2026-03-01', label: '1 Mar a', rank: 2 }),
    place(1, { jar: jarAt(300, 0), day: '2026-03-20', label: '20 Mar a' }),
    place(2, { jar: jarAt(345, 0), day: '2026-03-02', label: '2 Mar a' }),
  ];
  const wall = { left: -500, right: 160, top: 0, bottom: 90 };
  expect([...write(close, 'under', [wall]).keys()].toSorted()).toEqual([0, 1]);
});

test('column heads say the word while it fits, then once, then every n-th; never one on another', () => {
  const columns = Array.from({ length: 60 }, (_, at) => ({
    x: at * 100,
    long: `generation ${at + 1}`,
    short: String(at + 1),
    count: at + 1,
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

test('a ribbon past the lettering shifts it: over the jar to the left, or under it; it is written all the same', () => {
  const top = place(0, { left: 'slips', label: '5 Nov Lantern a' });
  const over = labelBox(top.jar, 'over', measure(top.label), HEIGHT);
  const middle = (over.top + over.bottom) / 2;
  const writeBeside = (points: readonly { x: number; y: number }[]) =>
    writtenLabels([top], [{ owner: 0, box: top.jar }], 'headed', ROW, HEIGHT, measure, points).get(0)?.side;
  expect(writeBeside([])).toBe('over');
  const rising = { x: over.right - 6, y: middle };
  expect(writeBeside([rising])).toBe('over-left');
  expect(labelBox(top.jar, 'over-left', measure(top.label), HEIGHT).right).toBeLessThan(rising.x);
  expect(writeBeside([rising, { x: top.jar.left, y: middle }])).toBe('under');
  const below = { x: top.jar.left, y: top.jar.bottom + 1 + HEIGHT / 2 };
  expect(writeBeside([rising, { x: top.jar.left, y: middle }, below])).toBe('over');
});

test('the points of a ribbon lie on it, from the seed’s side to where it runs level', () => {
  const points = ribbonPoints(0, 0, 300, 120, 40, 7);
  expect(points[0]).toEqual({ x: JAR.width - 4, y: JAR.inletY });
  expect(points.at(-1)).toEqual({ x: 300 + 4 - 40, y: 120 + JAR.inletY });
  expect(ribbonPath(0, 0, 300, 120, 0, 40).startsWith(`M${JAR.width - 4} ${JAR.inletY}C`)).toBe(true);
  for (const [at, point] of points.entries()) {
    const last = points[at - 1];
    if (last) expect(Math.hypot(point.x - last.x, point.y - last.y)).toBeLessThan(14);
  }
});

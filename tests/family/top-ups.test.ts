// A jar topped up from a product shows a small slip of it; one from sources alone, or from jars alone, shows none.
import { expect, test } from 'vitest';
import type { JarView } from '../../core/contract';
import { JAR } from '../../core/pictures/jar-outline';
import { topUpsOf } from '../../renderer/family/top-ups';

const drawing = {
  keys: Int32Array.of(1, 2, 3),
  parent: Int32Array.of(-1, 0, 0),
  x: Float64Array.of(0, 1, 1),
  y: Float64Array.of(0, 0, 1),
};
const geometry = { columnStep: 140, rowStep: 80 };
const seed = (key: number | null, label: string, share: number) => ({
  key,
  label,
  share,
  amount: null,
});
const view = (...seeds: ReturnType<typeof seed>[]): JarView => ({ seeds }) as unknown as JarView;
const views = new Map([
  [1, view(seed(null, 'Blue Tin', 1))],
  [2, view(seed(1, '14 Mar a', 0.5), seed(null, 'Meadow Pot', 0.2), seed(null, 'Blue Tin', 0.3))],
  [3, view(seed(1, '14 Mar a', 1))],
]);

test('each product beside a jar’s seed has a slip, the larger share nearer the jar', () => {
  const slips = topUpsOf(drawing, geometry, 1, [0, 1, 2], views);
  expect(slips.map(({ child, share }) => [child, share])).toEqual([
    [1, 0.3],
    [1, 0.2],
  ]);
  const [near, far] = slips;
  expect(near && far && far.box.right < near.box.left).toBe(true);
});

test('a slip lies left of its jar, under the ribbon, and above the jar in the next row at any zoom', () => {
  for (const k of [3, 1, 0.6, 0.31]) {
    for (const { box } of topUpsOf(drawing, geometry, k, [1], views)) {
      expect(box.right).toBeLessThan(geometry.columnStep);
      expect(box.top).toBeGreaterThan(JAR.inletY);
      expect(box.bottom).toBeLessThan(geometry.rowStep);
    }
  }
});

test('what is not here yet has no slip', () => {
  expect(topUpsOf(drawing, geometry, 1, [1], new Map())).toEqual([]);
});

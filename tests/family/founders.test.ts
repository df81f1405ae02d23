// The heads of the lanes: beside their lanes, never on one another, with as much as there is room for; and the ribbons
// from their packets.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawFamily } from '../../core/lineage/drawing';
import { buildFamily } from '../../core/lineage/family';
import { foundingRibbons } from '../../renderer/family/founders';
import { JAR } from '../../core/pictures/jar-outline';
import { geometryOf } from '../../renderer/family/geometry';
import { HEAD, headsAt, headsOver, placedIn } from '../../renderer/family/lanes';
import { syntheticFamily } from '../families';

const looks = {
  jar: () => ({ setWord: null, outcomeKnown: false, onShelf: null }),
  mayBeThere: () => true,
  lineName: (batch: number) => `line ${batch}`,
  lineId: (batch: number) => `line ${batch}`,
  strainsOf: () => [],
};
const draw = (jars: number, seed = 7) =>
  drawFamily(buildFamily(syntheticFamily({ jars, shape: 'lines', seed })), looks, 'generation');
const room = { left: 180, right: 1600, top: 44, bottom: 760 };

test('lanes keep their order and their rows, and nothing of two lanes stands in one row', () => {
  for (const width of [800, 1600]) {
    const drawing = draw(700);
    const placed = placedIn(drawing, width);
    placed.lanes.forEach((lane, at) => {
      const before = placed.lanes[at - 1];
      if (before) expect(lane.top).toBeGreaterThan(before.end);
      expect(lane.bottom - lane.top).toBe((drawing.lanes[at]?.bottom ?? 0) - (drawing.lanes[at]?.top ?? 0));
      expect(lane.end).toBeGreaterThan(lane.bottom);
    });
    drawing.y.forEach((row, i) => {
      const at = drawing.lane[i] ?? 0;
      expect((placed.y[i] ?? 0) - (placed.lanes[at]?.top ?? 0)).toBe(row - (drawing.lanes[at]?.top ?? 0));
    });
    expect(placed.height).toBeGreaterThanOrEqual((placed.lanes.at(-1)?.end ?? 0) - 1);
  }
});

test('no two heads overlap at any zoom, none is lower than its lane ends, and each lane has one where it has room', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 400 }),
      fc.nat({ max: 50 }),
      fc.double({ min: 0.1, max: 3, noNaN: true }),
      (jars, seed, k) => {
        const placed = placedIn(draw(jars, seed), 1600);
        const geometry = geometryOf(placed, room);
        const heads = headsAt(placed.lanes, geometry, k, JAR.inletY);
        let bottom = -Infinity;
        for (const { lane, y, height } of heads) {
          expect(y * k).toBeGreaterThanOrEqual(bottom - 1e-6);
          bottom = y * k + height;
          expect(bottom).toBeLessThanOrEqual((placed.lanes[lane]?.end ?? 0) * geometry.rowStep * k + 1e-6);
        }
        if (k >= 0.6) expect(heads.map(({ detail }) => detail)).toEqual(placed.lanes.map(() => 'packets'));
        expect(headsOver(placed.lanes, geometry, k).length).toBeGreaterThan(0);
      },
    ),
  );
});

test('a ribbon runs from each packet into each jar it founded, as wide as its share', () => {
  const drawing = draw(3);
  const placed = placedIn(drawing, 1600);
  const geometry = geometryOf(placed, room);
  const names = placed.lanes[0]?.packets.map(({ name }) => name) ?? [];
  expect(names.length).toBe(2);
  const views = new Map(
    Array.from(drawing.keys, (key) => [
      key,
      { seeds: names.map((label, at) => ({ key: null, label, share: at === 0 ? 0.7 : 0.3, amount: null })) },
    ]),
  ) as unknown as Parameters<typeof foundingRibbons>[4];
  const heads = headsAt(placed.lanes, geometry, 0.8, JAR.inletY);
  const ribbons = foundingRibbons(placed, geometry, 0.8, heads, views);
  expect(ribbons.map(({ share }) => share)).toEqual([0.7, 0.7, 0.7, 0.3, 0.3, 0.3]);
  const [first] = heads;
  const starts = [...new Set(ribbons.map(({ path }) => Number(/^M\S+ (\S+)C/.exec(path)?.[1])))];
  // Level with the middle of each packet's slip.
  const foot = ((first?.y ?? 0) * 0.8 + (first?.height ?? 0)) / 0.8;
  expect(starts).toEqual([foot - (1.5 * HEAD.packet) / 0.8, foot - (0.5 * HEAD.packet) / 0.8]);
});

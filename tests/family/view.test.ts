// The drawing's pure logic: fitting, zooming, what is mounted, where a step leads, what is lit.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFamily } from '../../core/lineage/drawing';
import { FLAG } from '../../core/shapes/drawing-flags';
import { buildFamily } from '../../core/lineage/family';
import { jarWords, warningWords } from '../../renderer/parts/jar-flags';
import { JAR } from '../../core/pictures/jar-outline';
import { boxInView, bringIn, geometryOf, keepInSight, makeRoom, mayGoHome, middleOn, newestEnd, newestPlace, openingView, WHOLE_FROM, zoomAt } from '../../renderer/family/geometry'; // prettier-ignore
import { kinOf, listOf, litBy, nearKin, walk } from '../../renderer/family/kin';
import { MOST_MOUNTED, mountedAt, sameOr } from '../../renderer/family/mounting';
import { newestOf } from '../../renderer/family/newest';
import { inletOffsets, ribbonWidth } from '../../core/pictures/ribbons';
import { sortedRows } from '../../renderer/family/table-order';
import { syntheticFamily } from '../families';

const looks = {
  jar: () => ({ setWord: null, outcomeKnown: false, onShelf: null }),
  mayBeThere: () => true,
  lineName: () => 'Heron',
  lineId: () => 'line',
  strainsOf: () => [],
};
const draw = (jars: number, shape: 'bushy' | 'line' = 'bushy', seed = 7) =>
  drawFamily(buildFamily(syntheticFamily({ jars, shape, seed })), looks, 'generation');
const window1600 = { width: 1600, height: 840 };
const room1600 = { left: 178, right: 1232, top: 44, bottom: 760 };
const rooms = fc
  .record({ width: fc.integer({ min: 400, max: 4000 }), height: fc.integer({ min: 320, max: 2200 }) })
  .map(({ width, height }) => ({ left: width < 1000 ? 0 : 178, right: width, top: 44, bottom: height }));
const counts = fc.constantFrom(1, 2, 3, 17, 60, 400);

test('each flag has a bit of its own in the byte of a drawing', () => {
  expect(Object.values(FLAG).toSorted((a, b) => a - b)).toEqual([1, 2, 4, 8, 16, 32, 64, 128]);
});

type Drawn = ReturnType<typeof draw>;
/** Screen boxes of all jars. */
const boxesOf = (drawing: Drawn, geometry: ReturnType<typeof geometryOf>, view: { k: number; tx: number; ty: number }) =>
  Array.from(drawing.x, (x, i) => {
    const left = x * geometry.columnStep * view.k + view.tx;
    const top = (drawing.y[i] ?? 0) * geometry.rowStep * view.k + view.ty;
    return { left, top, right: left + JAR.width * view.k, bottom: top + JAR.height * view.k };
  }); // prettier-ignore
const whole = (box: { left: number; right: number; top: number; bottom: number }, room: typeof room1600): boolean =>
  box.left >= room.left - 1 && box.right <= room.right + 1 && box.top >= room.top - 1 && box.bottom <= room.bottom + 1; // prettier-ignore

describe('fitting', () => {
  test('every jar lies inside the room, whatever its size, unless jars would be too small to be told apart', () => {
    fc.assert(
      fc.property(rooms, counts, (room, jars) => {
        const drawing = draw(jars);
        const geometry = geometryOf(drawing, room);
        if (!geometry.whole) return;
        for (const box of boxesOf(drawing, geometry, geometry.fit)) expect(whole(box, room)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });

  test('no two jars touch at any fitting', () => {
    fc.assert(
      fc.property(rooms, counts, (room, jars) => {
        const { columnStep, rowStep } = geometryOf(draw(jars), room);
        expect(columnStep).toBeGreaterThan(JAR.width);
        expect(rowStep).toBeGreaterThan(JAR.height);
      }),
      { numRuns: 60 },
    );
  });

  test('a family of any size opens with jars that can be read, its newest among them', () => {
    for (const jars of [1, 60, 400, 1_000, 10_000])
      fc.assert(
        fc.property(rooms, (room) => {
          const drawing = draw(jars);
          const geometry = geometryOf(drawing, room);
          const at = newestOf(drawing);
          const newest = { x: drawing.x[at] ?? 0, y: drawing.y[at] ?? 0, top: 0, bottom: drawing.height - 1 };
          const view = openingView(geometry, room, newest);
          expect(view.k).toBeGreaterThanOrEqual(WHOLE_FROM);
          const box = boxesOf(drawing, geometry, view)[at];
          expect(box && whole(box, room)).toBe(true);
        }),
        { numRuns: 12 },
      );
  });

  test('a line whose others all ended before what is seen opens closer, its whole height in the room', () => {
    const drawing = draw(400, 'line');
    const at = newestOf(drawing);
    fc.assert(
      fc.property(rooms, fc.integer({ min: 0, max: 8 }), (room, mates) => {
        const geometry = geometryOf(drawing, room);
        const lane = { x: drawing.x[at] ?? 0, y: 2, top: 2, bottom: 2 + mates };
        const among = openingView(geometry, room, { ...lane, others: lane.x });
        const alone = openingView(geometry, room, { ...lane, others: 0 });
        expect(alone.k).toBeGreaterThanOrEqual(among.k);
        if (alone.k > among.k)
          expect((mates * geometry.rowStep + JAR.height) * alone.k).toBeLessThan(room.bottom - room.top);
      }),
      { numRuns: 60 },
    );
    const geometry = geometryOf(drawing, room1600);
    const lane = { x: drawing.x[at] ?? 0, y: 2, top: 2, bottom: 5 };
    const opened = (others: number) => openingView(geometry, room1600, { ...lane, others }).k;
    expect(opened(0)).toBeGreaterThan(opened(lane.x));
  });

  test('zoom stays in its bounds and holds the point under the pointer', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e-4, max: 50, noNaN: true }),
        fc.integer({ min: 0, max: 1600 }),
        fc.integer({ min: 0, max: 840 }),
        (k, x, y) => {
          const geometry = geometryOf(draw(60), room1600);
          const before = geometry.fit;
          const after = zoomAt(before, geometry, k, x, y);
          expect(after.k).toBeGreaterThanOrEqual(geometry.least);
          expect(after.k).toBeLessThanOrEqual(geometry.most);
          expect((x - after.tx) / after.k).toBeCloseTo((x - before.tx) / before.k, 6);
          expect((y - after.ty) / after.k).toBeCloseTo((y - before.ty) / before.k, 6);
        },
      ),
    );
  });

  test('the family can not be pushed out of sight: however it is pulled, a whole jar stays in the room', () => {
    const pull = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(rooms, counts, pull, pull, fc.double({ min: 0.16, max: 1.5, noNaN: true }), (room, jars, tx, ty, k) => {
        const drawing = draw(jars);
        const geometry = geometryOf(drawing, room);
        const view = keepInSight({ k, tx, ty }, geometry, drawing, room);
        expect(view.k).toBe(k);
        expect(boxesOf(drawing, geometry, view).some((box) => whole(box, room))).toBe(true);
      }),
      { numRuns: 150 },
    );
  }); // prettier-ignore

  test('a jar in sight moves nothing; one out of sight comes in', () => {
    const view = { k: 1, tx: 0, ty: 0 };
    expect(bringIn(view, room1600, 700, 400)).toBe(view);
    const moved = bringIn(view, room1600, 5000, 400);
    expect(5000 + moved.tx + JAR.width).toBeLessThan(room1600.right);
    expect(moved.ty).toBe(0);
  });

  test('a pane that takes room covers no jar that was in sight (property)', () => {
    fc.assert(
      fc.property(rooms, counts, fc.nat({ max: 399 }), fc.integer({ min: 200, max: 400 }), (room, jars, pick, pane) => {
        const drawing = draw(jars);
        const geometry = geometryOf(drawing, room);
        const at = pick % jars;
        const end = { x: drawing.x[at] ?? 0, y: drawing.y[at] ?? 0, top: 0, bottom: 0 };
        const before = newestEnd(geometry, room, end, 0.66);
        const less = { ...room, right: Math.max(room.left + 120, room.right - pane) };
        const after = makeRoom(before, boxInView(before, geometry, drawing, room), less);
        const seen = boxesOf(drawing, geometry, before);
        boxesOf(drawing, geometry, after).forEach((box, i) => {
          const had = seen[i];
          if (had && had.right > room.left && had.left < room.right && had.bottom > room.top && had.top < room.bottom)
            expect(whole(box, less)).toBe(true);
        });
      }),
      { numRuns: 100 },
    );
  }); // prettier-ignore
});

describe('mounting', () => {
  const drawing = draw(20_000);
  const geometry = geometryOf(drawing, room1600);

  test('never more than 600, at any zoom and anywhere', () => {
    fc.assert(
      fc.property(
        fc.double({ min: geometry.least, max: 3, noNaN: true }),
        fc.integer({ min: 0, max: 19_999 }),
        (k, index) => {
          const view = {
            k,
            tx: 800 - (drawing.x[index] ?? 0) * geometry.columnStep * k,
            ty: 400 - (drawing.y[index] ?? 0) * geometry.rowStep * k,
          };
          const { indices } = mountedAt(drawing, geometry, view, window1600, [index]);
          expect(indices.length).toBeLessThanOrEqual(MOST_MOUNTED);
          expect(indices).toContain(index);
        },
      ),
    );
  });

  test('as jars, all that is in the window is mounted', () => {
    const view = { k: 0.8, tx: -geometry.width * 0.2, ty: -geometry.height * 0.3 };
    const { indices, asJars } = mountedAt(drawing, geometry, view, window1600, []);
    expect(asJars).toBe(true);
    const mounted = new Set(indices);
    for (let i = 0; i < drawing.x.length; i += 1) {
      const left = (drawing.x[i] ?? 0) * geometry.columnStep * view.k + view.tx;
      const top = (drawing.y[i] ?? 0) * geometry.rowStep * view.k + view.ty;
      const inWindow =
        left + JAR.width * view.k >= 0 && left <= 1600 && top + JAR.height * view.k >= 0 && top <= 840;
      if (inWindow) expect(mounted.has(i)).toBe(true);
    }
  });

  test('a set that did not change is the same array', () => {
    const before = [1, 2, 3];
    expect(sameOr(before, [1, 2, 3])).toBe(before);
    expect(sameOr(before, [1, 2, 4])).toEqual([1, 2, 4]);
  });
});

describe('walking', () => {
  const drawing = draw(400);
  const kin = kinOf(drawing);
  const step = (from: number, way: Parameters<typeof walk>[4]) =>
    walk(kin, drawing.generation, drawing.y, from, way, 399);

  test('the numbers for the screen reader are those of the tree', () => {
    for (let i = 0; i < 400; i += 1) {
      const seed = drawing.parent[i] ?? -1;
      expect(kin.level[i]).toBe(seed < 0 ? 1 : (kin.level[seed] ?? 0) + 1);
      const siblings = seed < 0 ? kin.roots : listOf(kin.children, seed);
      expect(siblings[(kin.place[i] ?? 0) - 1]).toBe(i);
    }
  });

  test('to the seed and back along a line; nowhere to go stays', () => {
    for (let i = 0; i < 400; i += 1) {
      const seed = drawing.parent[i] ?? -1;
      expect(step(i, 'seed')).toBe(seed < 0 ? i : seed);
      const child = step(i, 'descendant');
      if (child !== i) expect(drawing.parent[child]).toBe(i);
      else expect(listOf(kin.children, i).length).toBe(0);
    }
  });

  test('up and down stay in the column and meet every jar of it', () => {
    for (const column of kin.columns.values()) {
      const met: number[] = [];
      for (let at = column[0] ?? 0; met.at(-1) !== at; at = step(at, 'below')) met.push(at);
      expect(met).toEqual([...column]);
      const rows = met.map((index) => drawing.y[index] ?? 0);
      expect(rows).toEqual(rows.toSorted((a, b) => a - b));
    }
  });

  test('the jar in focus and its near kin stay mounted, and not too many', () => {
    const star = kinOf(draw(400, 'line'));
    expect(nearKin(star, 200, 40)).toEqual(expect.arrayContaining([199, 200, 201]));
    for (let i = 0; i < 400; i += 1) expect(nearKin(kin, i, 40).length).toBeLessThanOrEqual(40);
  });
});

test('what is lit is what the lineage says: all it descends from and all that descends from it', () => {
  const family = buildFamily(syntheticFamily({ jars: 300, shape: 'bushy', seed: 3 }));
  const drawing = drawFamily(family, looks, 'generation');
  const kin = kinOf(drawing);
  for (let i = 0; i < 300; i += 7) {
    const key = drawing.keys[i] ?? 0;
    const wanted = new Set([key, ...family.ancestorsOf(key), ...family.descendantsOf(key)]);
    const lit = litBy(kin, i);
    expect(new Set([...drawing.keys].filter((_, at) => lit[at] === 1))).toEqual(wanted);
  }
});

test('shares arrive stacked: together one full ribbon, in their order, none on another', () => {
  const shares = [0.2, 0.5, 0.3];
  const offsets = inletOffsets(shares);
  const edges = shares.map((share, at) => {
    const middle = offsets[at] ?? 0;
    return [middle - ribbonWidth(share) / 2, middle + ribbonWidth(share) / 2] as const;
  });
  expect(edges[0]?.[1]).toBeCloseTo(edges[1]?.[0] ?? Number.NaN, 9);
  expect(edges[1]?.[1]).toBeCloseTo(edges[2]?.[0] ?? Number.NaN, 9);
  expect((edges[2]?.[1] ?? 0) - (edges[0]?.[0] ?? 0)).toBeCloseTo(ribbonWidth(1), 9);
});

test('a jar in words says all its marks', () => {
  expect(jarWords('14 Mar b', 4, 3, FLAG.outcomeKnown | FLAG.onShelf)).toBe(
    '14 Mar b, generation 4, firm, on the shelf',
  );
  expect(jarWords('14 Mar b', 4, 255, FLAG.atLeast)).toBe('14 Mar b, at least generation 4, outcome unknown');
  expect(jarWords('14 Mar b', 4, 3, FLAG.outcomeKnown | FLAG.spoiled)).toContain('spoiled: discard');
  expect(jarWords('14 Mar b', 4, 3, FLAG.outcomeKnown | FLAG.setAside)).toContain('set aside');
});

test('a jar that may not be used is said to be so, the gravest first', () => {
  expect(warningWords(FLAG.onShelf | FLAG.outcomeKnown)).toBe('');
  expect(warningWords(FLAG.look)).toBe('look before using');
  expect(warningWords(FLAG.look | FLAG.setAside)).toBe('set aside: not food, not seed');
  expect(warningWords(FLAG.setAside | FLAG.spoiled)).toMatch(/^spoiled: discard/);
});

test('the newest jar is of the latest day, then the deepest; an unknown day is never the newest', () => {
  const keys = Int32Array.of(1, 2, 3, 4);
  const generation = Int32Array.of(1, 2, 5, 3);
  expect(newestOf({ keys, generation, days: Float64Array.of(0, 3, Number.NaN, 3) })).toBe(3);
  expect(newestOf({ keys, generation, days: Float64Array.of(9, 3, 2, 3) })).toBe(0);
});

test('the table sorts, with unknown set words last either way and ties in the order of making', () => {
  const drawing = {
    keys: Int32Array.of(1, 2, 3, 4),
    generation: Int32Array.of(1, 2, 2, 3),
    setWord: Uint8Array.of(255, 1, 3, 1),
    flags: Uint8Array.of(0, FLAG.setAside, FLAG.spoiled, 0),
    y: new Float64Array(4),
    days: Float64Array.of(0, 9, 5, 7),
  };
  expect([...sortedRows(drawing, 'day', true)]).toEqual([1, 3, 2, 0]);
  expect([...sortedRows(drawing, 'generation', false)]).toEqual([0, 2, 1, 3]);
  expect([...sortedRows(drawing, 'set', false)]).toEqual([3, 1, 2, 0]);
  expect([...sortedRows(drawing, 'set', true)]).toEqual([2, 3, 1, 0]);
  expect([...sortedRows(drawing, 'state', false)][0]).toBe(2);
});

test('once a pane is closed the view goes home only where the jar that was walked to is in sight there (property)', () => {
  fc.assert(
    fc.property(rooms, fc.nat(20_000), fc.nat(3000), fc.double({ min: 0.3, max: 2, noNaN: true }), (room, x, y, k) => {
      const home = { k, tx: room.left, ty: room.top };
      const seen =
        x * k + home.tx >= room.left && (x + JAR.width) * k + home.tx <= room.right &&
        y * k + home.ty >= room.top && (y + JAR.height) * k + home.ty <= room.bottom;
      if (!seen) expect(mayGoHome(home, room, x, y)).toBe(false);
      // A jar in the middle of the room is in sight.
      expect(mayGoHome(middleOn(home, room, x, y), room, x, y)).toBe(true);
      expect(mayGoHome(null, room, x, y)).toBe(true);
    }),
  ); // prettier-ignore
});

test('a family opens with all jars of its newest batch in sight, also where its row is crowded and they stand apart', () => {
  const lanes = [{ top: 0, bottom: 2, right: 59.3 }];
  const drawing = {
    x: Float64Array.of(58, 59.3, 58.6),
    y: Float64Array.of(0, 0, 1),
    lane: Int32Array.of(0, 0, 0),
    lanes,
  };
  expect(newestPlace(drawing as never, 2).x).toBe(59.3);
  // Another line that ends a little farther right is seen to its end, too; one far beyond is not.
  const two = (right: number) => ({ ...drawing, lanes: [...lanes, { top: 4, bottom: 5, right }] });
  expect(newestPlace(two(65) as never, 2).x).toBe(65);
  expect(newestPlace(two(90) as never, 2).x).toBe(59.3);
  // A lane that reaches far beyond it, as by generations, does not put it out of sight.
  expect(newestPlace({ ...drawing, lanes: [{ ...lanes[0]!, right: 90 }] } as never, 2).x).toBe(58.6);
});

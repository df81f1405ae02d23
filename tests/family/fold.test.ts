// Lanes folded to their level line: what stays, where it stands, and that nothing is lost that is not counted.
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawFamily } from '../../core/lineage/drawing';
import { buildFamily } from '../../core/lineage/family';
import { folded, mustFold } from '../../renderer/family/fold';
import { placedIn } from '../../renderer/family/lanes';
import { syntheticFamily } from '../families';

const looks = {
  jar: () => ({ setWord: null, outcomeKnown: false, onShelf: null }),
  mayBeThere: () => true,
  lineName: () => 'Heron',
  lineId: () => 'line',
  strainsOf: () => [],
};
const draw = (jars: number, seed: number, spacing: 'generation' | 'calendar' = 'generation') =>
  drawFamily(buildFamily(syntheticFamily({ jars, shape: 'lines', seed })), looks, spacing);
const cases = fc.record({
  jars: fc.integer({ min: 1, max: 120 }),
  seed: fc.integer({ min: 1, max: 40 }),
  spacing: fc.constantFrom('generation' as const, 'calendar' as const),
  pick: fc.nat(),
});

describe('folding', () => {
  test('keeps the open lane whole, of the others the level row, and counts what lies below', () => {
    fc.assert(
      fc.property(cases, ({ jars, seed, spacing, pick }) => {
        const laid = draw(jars, seed, spacing);
        const open = pick % laid.lanes.length;
        const { drawing, mates } = folded(laid, open);
        const kept = new Set(drawing.keys);
        laid.keys.forEach((key, i) => {
          const level = laid.y[i] === laid.lanes[laid.lane[i] ?? 0]?.level;
          expect(kept.has(key)).toBe(laid.lane[i] === open || level);
        });
        // Each in the row of its lane, no two on each other, no jar left of what it hangs from.
        const places = Array.from(drawing.keys, (_, i) => `${drawing.x[i]} ${drawing.y[i]}`);
        expect(new Set(places).size).toBe(new Set(Array.from(drawing.keys)).size);
        drawing.keys.forEach((_, i) => {
          const lane = drawing.lanes[drawing.lane[i] ?? 0];
          expect(drawing.y[i]).toBeGreaterThanOrEqual(lane?.top ?? NaN);
          expect(drawing.y[i]).toBeLessThanOrEqual(lane?.bottom ?? NaN);
          const parent = drawing.parent[i] ?? -1;
          if (parent >= 0 && drawing.spacing === 'generation')
            expect(drawing.x[i]).toBeGreaterThan(drawing.x[parent] ?? Infinity);
        });
        const columns = new Set(
          Array.from(drawing.keys, (_, i) => `${drawing.lane[i]} ${drawing.generation[i]}`),
        );
        const hidden = Array.from(laid.keys.keys()).filter((i) => !kept.has(laid.keys[i] ?? 0));
        const below = hidden.filter((i) => columns.has(`${laid.lane[i]} ${laid.generation[i]}`)).length;
        const counted = mates.reduce((sum, one) => sum + one, 0);
        if (spacing === 'generation') expect(counted).toBe(below);
        else expect(counted).toBeLessThanOrEqual(hidden.length);
        // Each lane ends where the longest does.
        if (spacing === 'generation')
          for (const at of drawing.lanes.keys())
            expect(Math.max(...Array.from(drawing.x).filter((_, i) => drawing.lane[i] === at))).toBe(
              Math.max(...drawing.x),
            );
      }),
      { numRuns: 60 },
    );
  });

  test('happens only where lanes can’t be read whole: narrow and low windows, more lanes than one', () => {
    const laid = draw(120, 7);
    const room = (right: number, bottom: number) => ({ left: 0, right, top: 84, bottom });
    expect(laid.lanes.length).toBeGreaterThan(1);
    expect(mustFold(laid, room(800, 445))).toBe(true);
    expect(mustFold(laid, room(1280, 445))).toBe(false);
    expect(mustFold(laid, room(800, 5000))).toBe(false);
    const one = draw(1, 7);
    expect(one.lanes).toHaveLength(1);
    expect(mustFold(one, room(800, 445))).toBe(false);
  });

  test('gives what is whole more than half of a low window: folding, not shrinking', () => {
    const laid = draw(120, 7);
    const { drawing } = folded(laid, 0);
    expect(placedIn(drawing, 800).height).toBeLessThan(placedIn(laid, 800).height);
  });
});

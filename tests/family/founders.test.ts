// The label strips of founding batches: none is cut off when the whole family is in sight.
import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { founderStrips } from '../../renderer/family/founders';
import { geometryOf, JAR, STRIP_HEIGHT, stripSize } from '../../renderer/family/geometry';
import { drawFamily } from '../../core/lineage/drawing';
import { buildFamily } from '../../core/lineage/family';
import { syntheticFamily } from '../families';

const looks = {
  jar: () => ({ setWord: null, outcomeKnown: false, onShelf: null }),
  lineName: () => 'Heron',
  lineId: () => 'line',
  strainsOf: () => [],
};
const drawing = drawFamily(buildFamily(syntheticFamily({ jars: 30, shape: 'bushy', seed: 7 })), looks, 'generation'); // prettier-ignore
const product = (name: string) => ({ name, strains: ['one'], culture: false });
/** Band of the column heads at the top of the drawing, in screen pixels. */
const HEADS = 40;

test('two or three slips beside any row lie below the heads and above the lower edge (property)', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 29 }),
      fc.integer({ min: 1, max: 3 }),
      fc.record({ width: fc.integer({ min: 760, max: 2400 }), height: fc.integer({ min: 420, max: 1400 }) }),
      (jar, slips, size) => {
        const sources = ['Green Box', 'Blue Tin', 'Meadow Pot'].slice(0, slips).map(product);
        const founded = { ...drawing, founders: [{ line: 'Heron', jars: [jar], sources }] };
        const geometry = geometryOf(founded, size);
        const { k, ty } = geometry.fit;
        const { strips } = founderStrips(founded, geometry, k, new Map(), stripSize(size));
        expect(strips.map(({ name }) => name)).toEqual(sources.map(({ name }) => name));
        // Slips keep their size on the screen at far zoom and grow with the drawing from zoom 1 on.
        const grown = Math.max(1, k);
        for (const { y, lift } of strips) {
          const top = (y + JAR.inletY) * k + ty + lift * grown;
          expect(top).toBeGreaterThanOrEqual(HEADS);
          expect(top + STRIP_HEIGHT * grown).toBeLessThanOrEqual(size.height);
        }
      },
    ),
  );
});

// What is kept back stands at its line's end, whole or not at all: an open pane never cuts a card in two.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { KEPT_WIDTH, type KeptAt, keptInRoom } from '../../renderer/family/kept-marks';

const card = (x: number): KeptAt => ({ lane: 0, x, y: 0, kept: [], more: 0 });

it('no card is cut by the right edge of the room; those wholly on one side of it stay', () => {
  fc.assert(
    fc.property(
      fc.array(fc.integer({ min: -3000, max: 3000 }), { maxLength: 12 }),
      fc.double({ min: 0.1, max: 1.5, noNaN: true }),
      fc.integer({ min: -2000, max: 2000 }),
      fc.integer({ min: 300, max: 2000 }),
      (places, k, tx, right) => {
        const view = { k, tx, ty: 0 };
        const all = places.map(card);
        const shown = new Set(keptInRoom(all, view, { left: 0, right, top: 0, bottom: 500 }));
        for (const one of all) {
          const from = one.x * k + tx;
          const cut = from <= right && right < from + KEPT_WIDTH;
          expect(shown.has(one), `from ${from}, edge ${right}`).toBe(!cut);
        }
      },
    ),
  );
});

// What is only measured asks nothing; whatever has a word in it does.
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { saysInWords } from '../../core/safety/in-words';

const UNITS = ['', ' ml', ' g', ' h', ' °C', '%', ' pm', ' tbsp', '/10'];

it('figures, units and marks under any heading say nothing', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom('Taste /10', 'Set by (h)', 'pH 12h', 'Stars', 'Punkte'), fc.nat(500), fc.constantFrom(...UNITS)), { minLength: 1 }),
      (lines) => {
        expect(saysInWords(lines.map(([heading, figure, unit]) => `${heading}: ${figure}${unit}`).join('\n'))).toBe(false);
      },
    ),
  );
  expect(['8', 'x', '★★★', '7,5 / 10', 'Taste: ++'].map((text) => saysInWords(text))).toEqual([false, false, false, false, false]);
}); // prettier-ignore

it.each(['off', 'Smell: off', '8 but bitter', 'Taste /10: 8\npink spots', 'schimmel', '発酵', 'Taste: 3 mould', 'ok'])('“%s” says something', (text) => {
  expect(saysInWords(text)).toBe(true);
}); // prettier-ignore

it.each(['fest', 'löffelfest', 'sehr fest', 'weich', 'thick', 'Soft set.', 'thick and creamy', 'very firm', 'bien pris', 'Konsistenz: fest'])('“%s” only tells how it set', (text) => {
  expect(saysInWords(text)).toBe(false);
}); // prettier-ignore

// What may deny, ask, or tell of a jar that is no clean set stays to be read.
it.each(['not firm', 'nicht fest', 'soft?', 'thick, not sour', 'flüssig', 'pours', 'loose at 12 h', 'fest, rosa Fleck', 'firmed in the fridge'])('“%s” says more than how it set', (text) => {
  expect(saysInWords(text)).toBe(true);
}); // prettier-ignore

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
        expect(saysInWords(lines.map(([heading, figure, unit]) => `${heading}: ${figure}${unit}`).join('\n'), 'note')).toBe(false);
      },
    ),
  );
  expect(['8', 'x', '★★★', '7,5 / 10', 'Taste: ++'].map((text) => saysInWords(text, 'note'))).toEqual([false, false, false, false, false]);
}); // prettier-ignore

it.each(['off', 'Smell: off', '8 but bitter', 'Taste /10: 8\npink spots', 'schimmel', '発酵', 'Taste: 3 mould', 'ok'])('“%s” says something', (text) => {
  expect(saysInWords(text, 'note')).toBe(true);
}); // prettier-ignore

it.each(['fest', 'löffelfest', 'sehr fest', 'weich', 'thick', 'Soft set.', 'thick and creamy', 'very firm', 'bien pris', 'Konsistenz: fest'])('“%s” only tells how it set', (text) => {
  expect(saysInWords(text, 'note')).toBe(false);
}); // prettier-ignore

// What may deny, ask, or tell of a jar that is no clean set stays to be read.
it.each(['not firm', 'nicht fest', 'soft?', 'thick, not sour', 'flüssig', 'pours', 'loose at 12 h', 'fest, rosa Fleck', 'firmed in the fridge'])('“%s” says more than how it set', (text) => {
  expect(saysInWords(text, 'note')).toBe(true);
}); // prettier-ignore

// Invented, as cooks write it; common practice, no source.
const CLEAN_SMELLS = ['sour', 'clean', 'fresh', 'mild', 'yoghurt-like', 'sauer', 'sauber', 'frisch', 'acide', 'propre', 'limpio', 'fresca', 'pulito', 'zuur', 'fris', 'syrlig', 'kwaśny', 'czysty']; // prettier-ignore
const HOW = ['', 'very ', 'slightly ', 'sehr ', 'leicht ', 'très ', 'molto '];

it('what a clean jar smells of is no remark under its own field, in any order and joined as people join it', () => {
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.constantFrom(...HOW), fc.constantFrom(...CLEAN_SMELLS)), { minLength: 1, maxLength: 4 }),
      fc.constantFrom(', ', ' and ', '; ', ' und ', ' ', ' & '),
      (words, join) => {
        const text = words.map((one) => one.join('')).join(join);
        expect(saysInWords(text, 'smell')).toBe(false);
        expect(saysInWords(text, 'note')).toBe(true);
        // Any other word beside it is asked about: a denial, a doubt, a sign, a word that nobody knows.
        for (const other of ['not', 'too', 'off', 'a bit odd', 'kaum', 'foul', 'yeasty', 'but', 'milky', '発酵'])
          for (const whole of [`${other} ${text}`, `${text}, ${other}`]) expect(saysInWords(whole, 'smell')).toBe(true);
        expect(saysInWords(`${text}?`, 'smell')).toBe(true);
      },
    ),
  );
  for (const text of ['smooth', 'smooth and firm', 'glatt, sehr fest', 'silky', 'lisse et ferme']) expect(saysInWords(text, 'texture')).toBe(false);
  for (const text of ['slimy', 'stringy', 'smooth but ropy', 'grainy', 'not smooth', 'sour', 'smooth?']) expect(saysInWords(text, 'texture')).toBe(true);
}); // prettier-ignore

// Phrases in which a word of spoilage says something else, and beside each what must stop all the same: both stand in the table.
// The words: common practice, no source.
import { describe, expect, it } from 'vitest';
import { HARMLESS } from '../../core/safety/harmless-words';
import { tellsOfSpoiling } from '../../core/safety/remarks';

const stops = (text: string): boolean => tellsOfSpoiling(text, 'note');

describe.each(HARMLESS)('$what', ({ fine, stops: bad }) => {
  it.each(fine)('%s: no sign', (text) => expect(stops(text)).toBe(false));
  it.each(bad)('%s: stops', (text) => expect(stops(text)).toBe(true));
  it('says nothing of what stands beside it', () => {
    for (const text of fine) expect(stops(`${text}; pink streaks`)).toBe(true);
  });
});

it.each([
  'Went off at 9 pm', 'turned off', 'off to bed', 'lid went on', 'lid went off at 8 to look', 'it took off', 'red spoon', 'pink lid',
  'red lid on at 8', 'black tape', 'no mould', 'not pink at all', 'foam strip', 'lid is red', 'red and white lid', 'off-white',
  'black plastic bag', 'written in black', 'red light', 'light and fluffy',
])('%s: no sign', (text) => expect(stops(text)).toBe(false)); // prettier-ignore

it.each([
  'pink', 'pink on lid', 'lid pink inside', 'pink ring at the rim', 'pink spoon-sized patch', 'pink outside, white inside', 'mold',
  'mold on top', 'foam', 'foamed over', 'red film under the lid', 'tastes off', 'looks off', 'off smell', 'off-flavour', 'a bit off',
  'turned bad', 'has turned', 'it went off', 'has gone off', 'no mould but pink', 'lid lifted',
])('%s: stops until it is answered', (text) => expect(stops(text)).toBe(true)); // prettier-ignore

// What a remark says of whether its jar is still there: suggested, never taken for said; what tells of a part of it, of what is to
// come or of something else suggests nothing. Examples are our own.
import { expect, it } from 'vitest';
import { goneInWords } from '../../core/safety/gone-words';

it.each([
  ['Binned it.', 'discarded'],
  ['weggeworfen', 'discarded'],
  ['creamy, eaten up on Sunday', 'eaten up'],
  ['Aufgegessen', 'eaten up'],
  ['all gone', 'gone'],
  ['given away to the club', 'gone'],
  ['verschenkt', 'gone'],
])('“%s” suggests %s', (text, what) => expect(goneInWords(text)).toBe(what));

it.each([
  'half of it eaten', 'not eaten yet', 'to be eaten by Friday', 'best eaten soon', 'eaten up?', 'the whey was thrown away', 'fast aufgegessen',
  'nicht gegessen', 'lumps are gone', 'smooth', 'firm and sour', 'some given away', 'söin kaiken',
])('“%s” suggests nothing', (text) => expect(goneInWords(text)).toBeNull()); // prettier-ignore

// Names of jars in a sentence become links, whatever the sentence is.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { linkedParts } from '../../renderer/parts/linked-parts';

const jar = (label: string) => ({ jar: `id of ${label}`, label });

describe('names of jars in a sentence', () => {
  it('are cut out whole, the longest where several begin together', () => {
    const text = '11 Apr ab descends from 1 Apr a, or 1 Apr a · freezer cubes.';
    expect(linkedParts(text, ['1 Apr a', '1 Apr a · freezer cubes', '11 Apr ab'].map(jar))).toEqual([
      { words: '11 Apr ab', jar: 'id of 11 Apr ab' },
      { words: ' descends from ', jar: null },
      { words: '1 Apr a', jar: 'id of 1 Apr a' },
      { words: ', or ', jar: null },
      { words: '1 Apr a · freezer cubes', jar: 'id of 1 Apr a · freezer cubes' },
      { words: '.', jar: null },
    ]);
  });
  it('are none inside other words', () => {
    expect(linkedParts('21 Apr a and 1 Apr ab', [jar('1 Apr a')])).toEqual([
      { words: '21 Apr a and 1 Apr ab', jar: null },
    ]);
  });
  it('together with the rest are the sentence as it was', () => {
    const words = fc.constantFrom('1 Apr a', '11 Apr a', ' ', 'is', 'a', '1', '.', 'Apr', '');
    fc.assert(
      fc.property(fc.array(words), fc.array(words), (said, names) => {
        const text = said.join('');
        const parts = linkedParts(text, names.map(jar));
        expect(parts.map((part) => part.words).join('')).toBe(text);
      }),
    );
  });
});

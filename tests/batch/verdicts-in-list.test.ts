// The list to pick a seed from: the verdict stands word for word beside what it advises, and first while nothing is typed.
import { describe, expect, it } from 'vitest';
import type { SeedSuggestion } from '../../renderer/batch/find-seed';
import { withVerdicts } from '../../renderer/batch/use-verdicts';

const row = (id: string, more: Partial<SeedSuggestion> = {}): SeedSuggestion => ({ kind: 'jar', id, label: id, detail: 'firm', ...more }); // prettier-ignore
const cubes = { id: 'p', part: null, pieces: true };

describe('a list with verdicts', () => {
  const advised = [row('b', { detail: 'Heron: Go on from b.' }), row('z', { detail: 'Lantern: Take the reserve: z.', portion: cubes })];

  it('begins with what is advised while nothing is typed, also what it would not have shown', () => {
    const list = withVerdicts([row('a'), row('b'), row('c')], advised, ' ');
    expect(list.map(({ id }) => id)).toEqual(['b', 'z', 'a', 'c']);
    expect(list.slice(0, 2).map(({ detail }) => detail)).toEqual(advised.map(({ detail }) => detail));
  });

  it('keeps its order once something is typed', () => {
    const list = withVerdicts([row('a'), row('b')], advised, 'a');
    expect(list.map(({ id, detail }) => [id, detail])).toEqual([['a', 'firm'], ['b', 'Heron: Go on from b.']]);
  });

  it('tells a jar from what is kept of it, and never covers why one can’t be picked', () => {
    const list = withVerdicts([row('z'), row('z', { portion: cubes }), row('b', { refused: 'spoiled' })], advised, 'x');
    expect(list.map(({ detail }) => detail)).toEqual(['firm', 'Lantern: Take the reserve: z.', 'firm']);
  });
}); // prettier-ignore

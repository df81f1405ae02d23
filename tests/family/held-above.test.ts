// What a jar descends from that is set aside: said of a jar that carries no caution itself.
import { expect, test } from 'vitest';
import { heldAbove, heldAboveSays } from '../../renderer/family/held-above';

const view = (
  key: number,
  label: string,
  caution: 'condemned' | 'set aside' | 'look' | null,
  spoiled = false,
) => [key, { id: `id-${key}`, label, caution, spoiled, madeOn: `2026-01-${10 + key}` }] as const;
const views = new Map([
  view(1, '11 Jan a', null),
  view(2, '12 Jan c', 'set aside'),
  view(3, '13 Jan b', 'look'),
  view(4, '14 Jan a', 'condemned', true),
]);

test('ancestors set aside or condemned are named, the others are not', () => {
  const held = heldAbove([1, 2, 3, 4], views, []);
  expect(held).toEqual([
    { label: '14 Jan a', state: 'condemned' },
    { label: '12 Jan c', state: 'set aside' },
  ]);
  expect(heldAboveSays(held)).toBe(
    'Descends from 14 Jan a, which is condemned; and from 12 Jan c, which is set aside.',
  );
  expect(heldAbove([1, 3], views, [])).toEqual([]);
});

test('a spoiled ancestor that the jar’s own cautions name, standing or lifted, is not told of twice', () => {
  expect(heldAbove([2, 4], views, [{ of: 'id-4' }])).toEqual([{ label: '12 Jan c', state: 'set aside' }]);
});

test('a long list is cut short, with its count', () => {
  const held = ['a', 'b', 'c', 'd', 'e'].map((letter) => ({
    label: `4 Jan ${letter}`,
    state: 'set aside' as const,
  }));
  expect(heldAboveSays(held.slice(0, 1))).toBe('Descends from 4 Jan a, which is set aside.');
  expect(heldAboveSays(held.slice(0, 2))).toBe('Descends from 4 Jan a and 4 Jan b, which are set aside.');
  expect(heldAboveSays(held)).toBe(
    'Descends from 4 Jan a, 4 Jan b, 4 Jan c and 2 more, which are set aside.',
  );
});

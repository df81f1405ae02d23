// The token sheet: contrast of every pair in both themes, and the style sheet made from it.
import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { colours, measures } from '../../renderer/theme/tokens';
import { pairs } from './colour-pairs';
import { contrast } from './contrast';
import { tokensCss } from './tokens-css';

const renderer = join(import.meta.dirname, '../../renderer');

test('contrast agrees with the published extremes and a published near-miss', () => {
  // WCAG 2.2, "contrast ratio": ranges from 1 to 21.
  expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
  expect(contrast('#777777', '#777777')).toBe(1);
  // #767676 on white is the well-known lightest grey that passes 4.5 (4.54), #777777 just fails (4.48); from memory.
  expect(contrast('#767676', '#ffffff')).toBeCloseTo(4.54, 2);
  expect(contrast('#777777', '#ffffff')).toBeCloseTo(4.48, 2);
});

test.each(pairs.flatMap((pair) => (['light', 'dark'] as const).map((theme) => ({ ...pair, theme }))))(
  '$front on $back, $theme: at least $least',
  ({ front, back, least, theme }) => {
    expect(contrast(colours[front][theme], colours[back][theme])).toBeGreaterThanOrEqual(least);
  },
);

test('tokens.css is what tokens.ts says', async () => {
  await expect(tokensCss()).toMatchFileSnapshot('../../renderer/theme/tokens.css');
});

test('no text size below 15 px, no target below 40 px', () => {
  for (const name of ['text-size', 'text-small', 'text-large', 'text-title'] as const) {
    expect(Number.parseFloat(measures[name])).toBeGreaterThanOrEqual(15);
  }
  expect(Number.parseFloat(measures.target)).toBeGreaterThanOrEqual(40);
});

test('outside the token sheet, no style names a colour or a size of type of its own', () => {
  const files = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.(css|tsx?)$/.test(name) && !/theme[/\\]tokens\.(ts|css)$/.test(name),
  );
  expect(files.length).toBeGreaterThan(5);
  // White behind a see-through photograph is part of the picture, not of the page.
  const pictures = new Set([join('batch', 're-encode.ts')]);
  for (const name of files) {
    if (pictures.has(name)) continue;
    const source = readFileSync(join(renderer, name), 'utf8');
    expect(source.match(/['"\s:]#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/gi), name).toBeNull();
    for (const [, size] of source.matchAll(/font-size:\s*([\d.]+)px/g)) {
      expect(Number(size), `${name}: type below 15 px`).toBeGreaterThanOrEqual(15);
    }
  }
});

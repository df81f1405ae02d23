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
  const least = { text: 15, target: 40 };
  for (const [name, value] of Object.entries(measures)) {
    const [kind = ''] = name.split('-');
    if (kind === 'text' || kind === 'target')
      expect(Number.parseFloat(value), name).toBeGreaterThanOrEqual(least[kind]);
  }
});

test('each measure and colour is used, and no style has a size of type or of a target beside them', () => {
  const styles = readdirSync(renderer, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.(css|tsx?)$/.test(name) && !/theme[/\\]tokens\.(ts|css)$/.test(name))
    .map((name) => ({ name, source: readFileSync(join(renderer, name), 'utf8') }));
  for (const token of [...Object.keys(measures), ...Object.keys(colours)])
    expect(
      styles.filter(({ source }) => source.includes(`--${token}`) || source.includes(`'${token}'`)),
      token,
    ).not.toEqual([]);
  for (const { name, source } of styles) {
    // Numerals grow and shrink with the drawing, and the largest letters with the window: those are no steps of the scale.
    expect(source.match(/font-size:\s*[\d.]+px/g), name).toBeNull();
    expect(source.match(/min-(?:height|width):\s*4[0-8]px/g), name).toBeNull();
  }
});

test('outside the token sheet, no style names a colour of its own', () => {
  const files = readdirSync(renderer, { recursive: true, encoding: 'utf8' }).filter(
    (name) => /\.(css|tsx?)$/.test(name) && !/theme[/\\]tokens\.(ts|css)$/.test(name),
  );
  expect(files.length).toBeGreaterThan(5);
  // White behind a see-through photograph is part of the picture, not of the page.
  const pictures = new Set([join('parts', 'redrawn.ts')]);
  for (const name of files) {
    if (pictures.has(name)) continue;
    const source = readFileSync(join(renderer, name), 'utf8');
    expect(source.match(/['"\s:]#[0-9a-f]{3,8}\b|\brgba?\(|\bhsla?\(/gi), name).toBeNull();
  }
});

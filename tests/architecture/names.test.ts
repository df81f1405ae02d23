// A file's base name says what is inside, wherever it is read: none stands for two files.
import { spawnSync } from 'node:child_process';
import { basename } from 'node:path';
import { expect, it } from 'vitest';
import { root } from './import-graph';

/** Names that others than us decide. */
const GIVEN: Readonly<Record<string, string>> = {
  main: 'the page’s entry, and that of the stand-in’s default app, as Electron’s own is called',
};

/** Base names without their last ending that stand for several files. */
function twice(files: readonly string[]): string[] {
  const places = new Map<string, string[]>();
  for (const file of files) {
    const name = basename(file).replace(/\.\w+$/, '');
    places.set(name, [...(places.get(name) ?? []), file]);
  }
  return [...places]
    .filter(([name, all]) => all.length > 1 && !(name in GIVEN))
    .map(([, all]) => all.join(' '));
}

it('stands for one file', () => {
  const listed = spawnSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' });
  expect(listed.status, 'git lists the committed files').toBe(0);
  const files = listed.stdout
    .split('\0')
    .filter((file) => /\.(?:ts|tsx|mts|mjs)$/.test(file) && !file.endsWith('.d.mts'));
  expect(files.length).toBeGreaterThan(500);
  expect(twice(files)).toEqual([]);
});

it('is told where it stands for two, whatever the ending', () => {
  expect(twice(['core/a/says.ts', 'renderer/b/says.tsx', 'core/c.ts', 'core/c.test.ts'])).toEqual([
    'core/a/says.ts renderer/b/says.tsx',
  ]);
});

// What fits on a screen: no line over 140 characters but in tables, where a row is a row. A sentence or a pattern can't be
// broken, so of a line that quotes one what stands around it counts. Functions are held by the linter (.oxlintrc.json).
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { filesUnder, root } from './import-graph';

const MOST = 140;
const MOST_AROUND = 100;
const QUOTED = /'(?:[^'\\]|\\.)*'|"(?:[^"\\]|\\.)*"|`(?:[^`\\]|\\.)*`|\/(?![ *])(?:[^/\\\n]|\\.)+\/[gimuy]*/g;

/** Whose lines are rows of a table. */
const isTable = (file: string): boolean => file === 'core/contract.ts' || file.startsWith('core/shapes/');

const tooLong = (line: string): boolean =>
  line.length > MOST &&
  (/^\s*(?:\/\/|\/?\*)/.test(line) || line.trim().replaceAll(QUOTED, '').length > MOST_AROUND);

it('no line is longer than can be read', () => {
  const over = ['core', 'main', 'renderer']
    .flatMap(filesUnder)
    .filter((file) => !isTable(file))
    .flatMap((file) =>
      readFileSync(join(root, file), 'utf8')
        .split('\n')
        .flatMap((line, at) => (tooLong(line) ? [`${file}:${at + 1}`] : [])),
    );
  expect(over).toEqual([]);
});

it('is told apart from a line that quotes a sentence', () => {
  expect(tooLong(`  const words = '${'word '.repeat(40)}';`)).toBe(false);
  expect(tooLong(`  const words = ${'word + '.repeat(40)}1;`)).toBe(true);
  expect(tooLong(`// ${'word '.repeat(40)}`)).toBe(true);
});

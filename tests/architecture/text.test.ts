// What no committed file may hold: places of one machine, registry hosts, words that mean "not finished".
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '../..');
const self = 'tests/architecture/text.test.ts';

function committed(): string[] {
  const listed = spawnSync('git', ['ls-files', '-z'], { cwd: root, encoding: 'utf8' });
  expect(listed.status, 'git lists the committed files').toBe(0);
  return listed.stdout
    .split('\0')
    .filter((name) => name !== '' && !/\.(png|jpg|sqlite|gz|woff2)$/.test(name));
}

function holding(pattern: RegExp, where: (name: string) => boolean = () => true): string[] {
  return committed()
    .filter((name) => name !== self && where(name))
    .flatMap((name) => {
      let text: string;
      try {
        text = readFileSync(join(root, name), 'utf8');
      } catch (error) {
        if ((error as NodeJS.ErrnoException).code === 'ENOENT') return []; // deleted, not yet committed
        throw error;
      }
      const found = pattern.exec(text);
      return found ? [`${name}: ${found[0]}`] : [];
    });
}

const isCode = (name: string): boolean => /\.(ts|tsx|mjs|mts)$/.test(name);

it('names no place of one machine', () => {
  expect(holding(/(?<![\w.~$}/-])\/(?:work|root|home)\/[\w.]|(?<![\w.~$}/-])\/tmp\/[\w.]/)).toEqual([]);
});

it('names no registry host', () => {
  expect(holding(/registry\.npmjs|registry\.yarnpkg|"resolved":|_authToken/)).toEqual([]);
});

it('leaves nothing marked as unfinished or passed over', () => {
  expect(
    holding(
      /\b(?:TODO|FIXME|XXX)\b|@ts-ignore|@ts-nocheck|\b(?:it|test|describe)\.(?:skip|only|todo)\(/,
      isCode,
    ),
  ).toEqual([]);
});

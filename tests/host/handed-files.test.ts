// Which file a command line names, as the system's double click does, and what is done with it.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { MOST_HAND_OVER } from '../../core/hand-over/hand-over-format';
import { Handed, handedBytes, handedFile, type HandedFile } from '../../main/handed-files';
import { readOptions } from '../../main/options';
import { newFolder } from '../ledger/ledger-files';

const folder = newFolder();
const put = (name: string, content: string | Uint8Array): string => {
  writeFileSync(join(folder, name), content);
  return join(folder, name);
};
const program = newFolder();
const jar = put('a jar.jarline-jar', ' {"format": "jarline hand-over"}');
const ledger = put('mine.jarline', 'SQLite format 3\u0000');
const other = put('other.txt', 'neither');

it.each<[string, string[], HandedFile | null]>([
  ['a jar’s file', [jar], { kind: 'hand-over', path: jar }],
  ['a ledger', [ledger], { kind: 'ledger', path: ledger }],
  ['what is neither, whose opening says so', [other], { kind: 'ledger', path: other }],
  ['a name in that folder', ['mine.jarline'], { kind: 'ledger', path: ledger }],
  ['one behind the program’s own folder', [other, program, jar], { kind: 'hand-over', path: jar }],
  ['the last of several', [jar, ledger], { kind: 'ledger', path: ledger }],
  ['nothing', [], null],
  ['a folder', [folder], null],
  ['what is not there', ['gone.jarline'], null],
  ['only what stands before the program', [ledger, program], null],
])('%s', (_what, words, found) => {
  expect(handedFile(words, folder, program)).toEqual(found);
});

it('is told from options of the command line', () => {
  expect(readOptions(['--demo', '--user-data-dir=x', jar, '--no-sandbox']).words).toEqual([jar]);
});

it('no more is read of a jar’s file than one may hold, and one byte more', () => {
  expect(handedBytes(jar)).toEqual({ name: 'a jar.jarline-jar', bytes: new TextEncoder().encode(' {"format": "jarline hand-over"}') }); // prettier-ignore
  const long = put('long.jarline-jar', new Uint8Array(MOST_HAND_OVER + 1000));
  expect(handedBytes(long).bytes.length).toBe(MOST_HAND_OVER + 1);
});

it('waits until the page is up; a ledger’s path is given out once', () => {
  const told: string[] = [];
  const handed = new Handed(({ path }) => told.push(path));
  handed.take({ kind: 'ledger', path: 'a' });
  expect(told).toEqual([]);
  handed.pageIsUp();
  expect(told).toEqual(['a']);
  expect([handed.ledger(), handed.ledger()]).toEqual(['a', null]);
  handed.take({ kind: 'hand-over', path: 'b' });
  expect(told).toEqual(['a', 'b']);
  expect(handed.ledger()).toBeNull();
});

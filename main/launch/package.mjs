// npm run package [-- electron-builder's own flags]: by default an unpacked package in release/, then tried: it has to
// come up, open its page, reach its ledger and end.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { onNode24 } from './node.mjs';
import { launch, notice, Refused, root } from './places.mjs';

/** The packaged executable below release/, or undefined where only installers were made. */
function packaged() {
  const release = join(root, 'release');
  const folder = readdirSync(release).find((name) => name.endsWith('-unpacked') || name.startsWith('mac'));
  if (!folder) return undefined;
  const inside = { darwin: 'Jarline.app/Contents/MacOS/Jarline', win32: 'Jarline.exe' };
  return join(release, folder, inside[process.platform] ?? 'jarline');
}

/** Electron security checklist, item 19: what the fuses of a package must be, whoever set them. */
const FUSES = {
  RunAsNode: false,
  EnableCookieEncryption: true,
  EnableNodeOptionsEnvironmentVariable: false,
  EnableNodeCliInspectArguments: false,
  EnableEmbeddedAsarIntegrityValidation: true,
  OnlyLoadAppFromAsar: true,
  GrantFileProtocolExtraPrivileges: false,
};

/** Reads the fuses back from the executable. @throws Refused where one differs */
async function checkFuses(executable) {
  const { FuseV1Options, getCurrentFuseWire } = await import('@electron/fuses');
  const wire = await getCurrentFuseWire(executable);
  for (const [name, wanted] of Object.entries(FUSES)) {
    const state = wire[FuseV1Options[name]];
    // As the executable spells them: '1' is on, '0' is off.
    if (state !== (wanted ? '1' : '0').charCodeAt(0)) {
      throw new Refused(`item 19: the fuse ${name} of the package is not ${wanted ? 'on' : 'off'}.`);
    }
  }
  notice(`item 19: all ${Object.keys(FUSES).length} fuses of the package are as they must be`);
}

/** What may lie in a package: the built program, its licence and manifest, and the one addon with its licence. */
const PACKED =
  /^(?:dist\/(?:main|preload|renderer)\/|LICENSE$|package\.json$|node_modules\/better-sqlite3\/)/;

/** Every file of an asar archive: four sizes of four bytes, the last that of the JSON index behind them; then the files. */
function filesOf(archive) {
  const bytes = readFileSync(archive);
  const from = 8 + bytes.readUInt32LE(4);
  const index = JSON.parse(bytes.toString('utf8', 16, 16 + bytes.readUInt32LE(12)));
  const below = (node, path) =>
    Object.entries(node.files).flatMap(([name, entry]) =>
      entry.files ? below(entry, `${path}${name}/`) : [{ name: `${path}${name}`, ...entry }],
    );
  return below(index, '').map(({ name, size, offset, unpacked, integrity }) => ({
    name,
    integrity,
    data: unpacked
      ? readFileSync(join(`${archive}.unpacked`, name))
      : bytes.subarray(from + Number(offset), from + Number(offset) + size),
  }));
}

/** Each file as its archive says that it was packed: what macOS and Windows hold it to when it is read. Linux does not yet. */
function checkIntegrity(files) {
  const other = files.filter(
    ({ data, integrity }) =>
      integrity?.algorithm !== 'SHA256' || integrity.hash !== createHash('sha256').update(data).digest('hex'),
  );
  if (other.length > 0)
    throw new Refused(`the package's archive does not hold what it says: ${other[0].name}.`);
  notice(`each of ${files.length} files has the checksum that its archive says`);
}

/** Nothing of the launcher, the tests or the stand-in goes out with a package. @throws Refused where something does */
function checkContents(executable) {
  const beside = [dirname(executable), join(dirname(executable), '../Resources')];
  const archive = beside
    .flatMap((folder) => [join(folder, 'resources/app.asar'), join(folder, 'app.asar')])
    .find((file) => existsSync(file));
  if (!archive) throw new Refused('the package holds no app.asar.');
  const files = filesOf(archive);
  const names = files.map(({ name }) => name);
  const strange = names.filter((name) => !PACKED.test(name));
  if (names.length === 0 || strange.length > 0)
    throw new Refused(
      `the package holds what it may not: ${strange.slice(0, 5).join(', ') || 'nothing at all'}.`,
    );
  notice(`the package holds ${names.length} files, all of the built program and its addon`);
  checkIntegrity(files);
}

await launch(() =>
  onNode24(async () => {
    const { prepare } = await import('./prepare.mjs');
    const { findRuntime, machineFlags } = await import('./runtime.mjs');
    const { useDisplay } = await import('./display.mjs');
    const { ensureSystemPackages } = await import('./system-packages.mjs');
    prepare();
    const runtime = findRuntime();
    const given = process.argv.slice(2);
    const flags = given.length > 0 ? given : ['--dir'];
    // The stand-in says another version than package.json, so its integrity data and fuses are not a release's.
    const standIn = runtime.source === 'stand-in';
    if (standIn)
      notice('packaging the stand-in Electron: for trying the package only, never to be released.');
    rmSync(join(root, 'release'), { recursive: true, force: true });
    const builder = join(root, 'node_modules/electron-builder/cli.js');
    const done = spawnSync(
      process.execPath,
      [builder, '--publish', 'never', `-c.electronDist=${runtime.dist}`, ...flags],
      { cwd: root, stdio: ['ignore', 2, 2] },
    );
    if (done.status !== 0)
      throw new Refused('electron-builder could not make the package; its own words stand above.');

    const executable = packaged();
    if (!executable) return;
    await checkFuses(executable);
    checkContents(executable);
    ensureSystemPackages(executable);
    const stop = await useDisplay();
    const data = mkdtempSync(join(tmpdir(), 'jarline-package-'));
    const tried = spawnSync(executable, ['--smoke', `--user-data-dir=${data}`, ...machineFlags()], {
      encoding: 'utf8',
      timeout: 60000,
    });
    stop();
    rmSync(data, { recursive: true, force: true });
    if (tried.status !== 0 || !/^ok$/m.test(tried.stdout)) {
      throw new Refused(`the package does not come up: ${tried.stdout}${tried.stderr}`);
    }
    notice(`the package comes up: ${executable}`);
  }),
);

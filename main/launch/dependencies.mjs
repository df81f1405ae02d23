// Installs what package-lock.json asks for, when node_modules does not hold it already.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { npmCommand } from './node.mjs';
import { checkout, notice, Refused, root } from './places.mjs';

const stamp = join(root, 'node_modules', '.jarline-lock-hash');
const read = (file) => (existsSync(file) ? readFileSync(file, 'utf8') : '');

/** Whether npm's own record of node_modules has every package of the lock, as after `npm install` by hand. */
function holdsAll(lockText) {
  const record = read(join(root, 'node_modules', '.package-lock.json'));
  if (!record) return false;
  const have = JSON.parse(record).packages;
  return Object.entries(JSON.parse(lockText).packages).every(
    ([path, wanted]) =>
      path === '' || wanted.optional || (have[path] && have[path].version === wanted.version),
  );
}

/** Brings node_modules in line with package-lock.json. Needs Node 24, under which npm's JavaScript runs. */
export function ensureDependencies() {
  const lockText = read(join(root, 'package-lock.json'));
  const wanted = createHash('sha256').update(lockText).digest('hex');
  if (read(stamp) === wanted) return;
  withLock(`dependencies-${checkout}`, () => {
    if (read(stamp) === wanted) return;
    if (!holdsAll(lockText)) {
      notice('installing dependencies (a few minutes the first time) …');
      const npm = npmCommand();
      const done = spawnSync(npm.command, [...npm.args, 'ci', '--no-audit', '--no-fund'], {
        cwd: root,
        shell: npm.shell,
        stdio: ['ignore', 2, 2],
      });
      if (done.status !== 0)
        throw new Refused('npm could not install the dependencies; its own words stand above.');
    }
    writeFileSync(stamp, wanted);
  });
}

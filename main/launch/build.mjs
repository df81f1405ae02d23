// Builds page, main process and preload into dist/, when a source is newer than what lies there.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { withLock } from './lock.mjs';
import { checkout, notice, Refused, root } from './places.mjs';

const SOURCES = ['core', 'main', 'renderer', 'vite.config.ts', 'package-lock.json'];
const dist = join(root, 'dist');
const stamp = join(dist, 'sources');

/** Changes when any source is added, removed or written to. Reads names, sizes and times only: a few milliseconds. */
function sourcesNow() {
  const hash = createHash('sha256');
  const visit = (path) => {
    const found = statSync(join(root, path));
    if (!found.isDirectory()) hash.update(`${path} ${found.size} ${found.mtimeMs}\n`);
    else if (path !== 'main/launch') {
      for (const name of readdirSync(join(root, path)).toSorted()) visit(`${path}/${name}`);
    }
  };
  SOURCES.forEach(visit);
  return hash.digest('hex');
}

const isFresh = () => existsSync(stamp) && readFileSync(stamp, 'utf8') === sourcesNow();

/** Builds beside dist/ and swaps, so that a program running from dist/ never finds half a build. */
export function ensureBuilt() {
  if (isFresh()) return;
  withLock(`build-${checkout}`, () => {
    if (isFresh()) return;
    notice('building …');
    const sources = sourcesNow();
    const fresh = join(root, `dist.${process.pid}.tmp`);
    try {
      const vite = join(root, 'node_modules/vite/bin/vite.js');
      const done = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
        cwd: root,
        stdio: ['ignore', 2, 2],
        env: { ...process.env, JARLINE_DIST: fresh, NODE_ENV: 'production' },
      });
      if (done.status !== 0) throw new Refused('the build failed; its own words stand above.');
      writeFileSync(join(fresh, 'sources'), sources);
      const old = `${fresh}.old`;
      if (existsSync(dist)) renameSync(dist, old);
      renameSync(fresh, dist);
      rmSync(old, { recursive: true, force: true });
    } finally {
      rmSync(fresh, { recursive: true, force: true });
    }
  });
}

// What every command but `npm start` does first, under Node 24.
import { ensureBuilt } from './build.mjs';
import { ensureDependencies } from './dependencies.mjs';

/** Dependencies and a fresh build in dist/. Milliseconds when nothing changed. */
export function prepare() {
  ensureDependencies();
  ensureBuilt();
}

// Builds a TypeScript entry into one file that plain Node runs, for tests that need a process of their own.
import { existsSync, renameSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { newFolder } from './ledger-files';

const root = resolve(import.meta.dirname, '../..');

const made = new Map<string, Promise<string>>();

/** Builds an entry once for all the test files of a run, whichever worker asks first. @returns the built file */
export function built(entry: string): Promise<string> {
  const file = made.get(entry) ?? bundled(entry);
  made.set(entry, file);
  return file;
}

async function bundled(entry: string): Promise<string> {
  const folder = newFolder();
  // Under vitest the folder of the run leads to the packages already: see tests/temporary-folder.ts.
  if (process.env['VITEST'] === undefined) {
    symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
    return bundledIn(folder, entry);
  }
  const shared = join(tmpdir(), `${entry.replaceAll('/', ' ')}.mjs`);
  // Of two workers that build at the same time the later one's takes the place: both are the same.
  if (!existsSync(shared)) renameSync(await bundledIn(folder, entry), shared);
  return shared;
}

async function bundledIn(outDir: string, entry: string): Promise<string> {
  await build({
    configFile: false,
    root,
    logLevel: 'error',
    ssr: { noExternal: true, external: ['better-sqlite3'] },
    build: {
      ssr: resolve(root, entry),
      outDir,
      emptyOutDir: false,
      minify: false,
      rolldownOptions: {
        external: ['better-sqlite3', /^node:/],
        output: { format: 'es', entryFileNames: 'built.mjs', codeSplitting: false },
      },
    },
  });
  return join(outDir, 'built.mjs');
}

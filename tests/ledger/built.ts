// Builds a TypeScript entry into one file that plain Node runs, for tests that need a process of their own.
import { symlinkSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { build } from 'vite';
import { newFolder } from './ledger-files';

const root = resolve(import.meta.dirname, '../..');

const made = new Map<string, Promise<string>>();

/** Builds an entry once for all the test files of a worker. @returns the built file */
export function built(entry: string): Promise<string> {
  const file = made.get(entry) ?? bundled(entry);
  made.set(entry, file);
  return file;
}

async function bundled(entry: string): Promise<string> {
  const outDir = newFolder();
  symlinkSync(join(root, 'node_modules'), join(outDir, 'node_modules'));
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

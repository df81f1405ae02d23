// One build of three: the page, the main process (with its ledger worker and the headless host), the preload.
import { resolve } from 'node:path';
import react from '@vitejs/plugin-react';
import { licences } from './main/launch/licences.mjs';
import { defineConfig, type EnvironmentOptions } from 'vite';

const root = import.meta.dirname;
/** The launcher builds beside dist/ and swaps. */
const dist = process.env['JARLINE_DIST'] ?? resolve(root, 'dist');

/** A bundle for Electron's or Node's side. Runtime dependencies stay outside it. */
function nodeSide(
  input: Record<string, string>,
  outDir: string,
  format: 'es' | 'cjs',
  extension: string,
): EnvironmentOptions {
  return {
    consumer: 'server',
    resolve: { external: ['electron', 'better-sqlite3'], noExternal: true },
    build: {
      outDir: resolve(dist, outDir),
      emptyOutDir: true,
      target: 'node20', // the stand-in runtime of machines without a download is Node 20 inside
      minify: false,
      sourcemap: true,
      rolldownOptions: {
        input: Object.fromEntries(Object.entries(input).map(([name, file]) => [name, resolve(root, file)])),
        external: ['electron', 'better-sqlite3', /^node:/],
        output: {
          format,
          entryFileNames: `[name].${extension}`,
          chunkFileNames: `[name]-[hash].${extension}`,
          ...(format === 'cjs' ? { codeSplitting: false } : {}),
        },
      },
    },
  };
}

export default defineConfig({
  root: resolve(root, 'renderer'),
  base: './',
  plugins: [react(), licences(resolve(dist, 'main/LICENCES.txt'))],
  builder: {},
  environments: {
    client: {
      build: {
        outDir: resolve(dist, 'renderer'),
        emptyOutDir: true,
        target: 'chrome130',
        sourcemap: true,
        chunkSizeWarningLimit: 4000, // read from the disk, not from a network
        modulePreload: { polyfill: false },
        assetsInlineLimit: 0,
      },
    },
    main: nodeSide(
      { index: 'main/index.ts', worker: 'main/ledger-worker.ts', headless: 'main/headless.ts' },
      'main',
      'es',
      'js',
    ),
    preload: nodeSide({ preload: 'main/preload.ts' }, 'preload', 'cjs', 'cjs'),
  },
});

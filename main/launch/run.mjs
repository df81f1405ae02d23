// node main/launch/run.mjs FILE.ts [arguments]: bundles a TypeScript file and runs it under Node 24.
import { mkdirSync, rmSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onNode24 } from './node.mjs';
import { launch, Refused, root } from './places.mjs';

await launch(() =>
  onNode24(async () => {
    const file = process.argv[2];
    if (!file) throw new Refused('Name the TypeScript file to run: node main/launch/run.mjs FILE.ts');
    const { prepare } = await import('./prepare.mjs');
    prepare();
    const { build } = await import('vite');
    // Inside the checkout, so that packages are found from there.
    const folder = join(root, 'node_modules/.cache/jarline', `run-${process.pid}`);
    mkdirSync(folder, { recursive: true });
    process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
    await build({
      root,
      configFile: false,
      logLevel: 'warn',
      build: {
        ssr: resolve(root, file),
        outDir: folder,
        target: 'node24',
        rolldownOptions: { output: { entryFileNames: 'run.mjs' } },
      },
    });
    process.argv = [process.argv[0], basename(file), ...process.argv.slice(3)];
    await import(pathToFileURL(join(folder, 'run.mjs')).href);
  }),
);

// node main/launch/in-window.mjs PROJECT [flags]: what is no test and needs the real window. npm run screenshots: its pictures
// with the invented ledger, into e2e/screenshots/; npm run bench:window: how quick it is.
import { spawnSync } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { onNode24 } from './node.mjs';
import { launch, Refused, root } from './places.mjs';

await launch(() =>
  onNode24(async () => {
    const { prepare } = await import('./prepare.mjs');
    const { findRuntime } = await import('./runtime.mjs');
    const { useDisplays } = await import('./display.mjs');
    const { ensureSystemPackages } = await import('./system-packages.mjs');
    const [project, ...more] = process.argv.slice(2);
    if (!project) throw new Refused('Name the project of e2e/playwright.config.ts to run.');
    prepare();
    ensureSystemPackages(findRuntime().executable);
    const { env, stop } = await useDisplays(project === 'bench' ? 1 : availableParallelism());
    const cli = join(root, 'node_modules/@playwright/test/cli.js');
    const flags = [
      'test',
      '--config',
      'e2e/playwright.config.ts',
      '--project',
      project,
      '--reporter',
      'list',
    ];
    const done = spawnSync(process.execPath, [cli, ...flags, ...more], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, ...env },
    });
    stop();
    if (done.status !== 0) throw new Refused('not all of it could be done.');
  }),
);

// npm run screenshots: pictures of the real window with the invented ledger, into e2e/screenshots/.
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
    prepare();
    ensureSystemPackages(findRuntime().executable);
    const { env, stop } = await useDisplays(availableParallelism());
    const cli = join(root, 'node_modules/@playwright/test/cli.js');
    const flags = [
      'test',
      '--config',
      'e2e/playwright.config.ts',
      '--project',
      'pictures',
      '--reporter',
      'list',
    ];
    const done = spawnSync(process.execPath, [cli, ...flags, ...process.argv.slice(2)], {
      cwd: root,
      stdio: 'inherit',
      env: { ...process.env, ...env },
    });
    stop();
    if (done.status !== 0) throw new Refused('not every picture could be made.');
  }),
);

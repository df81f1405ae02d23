// npm run -s jarline -- call NAME 'JSON' --ledger FILE [--now MOMENT]: any call of the contract, without a window.
// The headless host itself is main/headless.ts; it reads process.argv and takes paths from the working folder.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onNode24 } from './node.mjs';
import { launch, root, typedFrom } from './places.mjs';

await launch(() =>
  onNode24(async () => {
    const { prepare } = await import('./prepare.mjs');
    prepare();
    const headless = join(root, 'dist/main/headless.js');
    process.chdir(typedFrom);
    process.argv = [process.argv[0], headless, ...process.argv.slice(2)];
    await import(pathToFileURL(headless).href);
  }),
);

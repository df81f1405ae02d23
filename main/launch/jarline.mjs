// npm run -s jarline -- call NAME 'JSON' --ledger FILE [--now MOMENT]: any call of the contract, without a window.
// npm run -s jarline -- calls --ledger FILE [--now MOMENT]: as many as there are lines on standard input.
// The headless host itself is main/headless.ts; it reads process.argv and takes paths from the working folder.
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { onNode24 } from './node.mjs';
import { launch, root, typedFrom } from './places.mjs';

const couldNotBegin = process.argv[2] === 'calls' ? 2 : 1;
await launch(
  () =>
    onNode24(async () => {
      const { prepare } = await import('./prepare.mjs');
      prepare();
      const headless = join(root, 'dist/main/headless.js');
      process.chdir(typedFrom);
      process.argv = [process.argv[0], headless, ...process.argv.slice(2)];
      await import(pathToFileURL(headless).href);
    }),
  couldNotBegin,
);

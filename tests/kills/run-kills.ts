// npm run kills [-- KILLS]: so many kills in all, spread over everything that the program may be at.
import { resolve } from 'node:path';
import { killWhile } from './kill-while';
import { WAYS } from './ways';

const [kills = '500'] = process.argv.slice(2);
// Built before this runs.
const program = resolve('dist/main/headless.js');
const each = Math.ceil(Number(kills) / Object.keys(WAYS).length);
let failed = false;
for (const [name, way] of Object.entries(WAYS)) {
  try {
    const done = await killWhile(program, name, way, each);
    process.stdout.write(
      `${name}: ${done.kills} kills, ${done.amid} of them between its first trace in the files and its last answer; nothing lost\n`,
    );
  } catch (error) {
    failed = true;
    process.stdout.write(`${error instanceof Error ? error.message : String(error)}\n`);
  }
}
process.exit(Number(failed));

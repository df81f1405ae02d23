// Run by kills.test.ts in a process of its own: records jar after jar and prints each id once it is acknowledged.
import { writeSync } from 'node:fs';
import { Session } from '../../main/session';
import type { Reply } from '../../core/contract';
import { recordingEntry } from './recording-entry';

const [file = '', from = '0'] = process.argv.slice(2);
const session = new Session({ file, mode: 'open', now: null, timeZone: 'UTC', version: '0.0.0' });
writeSync(1, 'open\n');
let seed: string | null = null;
for (let number = Number(from); ; number++) {
  const result = session.answer('batch.record', recordingEntry(number, seed));
  if (!result.ok) {
    writeSync(2, `${JSON.stringify(result.error)}\n`);
    process.exit(2);
  }
  const { act, jars } = result.value as Reply<'batch.record'>;
  seed = jars[0] ?? null;
  writeSync(1, `${act} ${seed}\n`);
}

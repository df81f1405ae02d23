// Run by migrating-kills.test.ts in a process of its own: opens a ledger, which brings it to a version after the newest.
import { randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { machineClock } from '../../main/ledger/clock';
import { idGenerator } from '../../main/ledger/ids';
import { migrations } from '../../main/ledger/migrations/all-migrations';
import { openLedger } from '../../main/ledger/open';
import { NEXT } from './next-version';

const [file = ''] = process.argv.slice(2);
const clock = machineClock('UTC');
const newId = idGenerator({ milliseconds: clock.milliseconds, random: randomBytes });
writeSync(1, 'begin\n');
openLedger(file, { clock, newId, demo: false, mode: 'open', migrations: [...migrations, NEXT] });
writeSync(1, 'open\n');
setInterval(() => undefined, 1000);

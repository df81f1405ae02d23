// Run by migrating-kills.test.ts in a process of its own: opens a ledger, which brings it to the latest version.
import { writeSync } from 'node:fs';
import { Session } from '../../main/ledger/session';

const [file = ''] = process.argv.slice(2);
writeSync(1, 'begin\n');
const session = new Session({ file, mode: 'open', now: null, timeZone: 'UTC', version: '0.0.0' });
void session.ledger;
writeSync(1, 'open\n');
setInterval(() => undefined, 1000);

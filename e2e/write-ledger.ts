// node main/launch/run.mjs e2e/write-ledger.ts WANTED: makes an invented ledger and says where it lies.
import { syntheticLedger, type Wanted } from './synthetic-ledger';

process.stdout.write(JSON.stringify(syntheticLedger(JSON.parse(process.argv[2] ?? '') as Wanted)));

// The ledger without a window, as a program: command-line.ts says what it takes and prints.
import { runCommand } from './command-line';

// Told to whoever writes; without a listener it would end the program at once.
process.stdout.on('error', () => undefined);
process.exit(await runCommand(process.argv.slice(2), process));

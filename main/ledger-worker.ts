// The worker thread that owns a ledger's only write connection: messages in, one reply each. All work is the session's.
import { parentPort, workerData } from 'node:worker_threads';
import { type JobName, JOBS, WRITES } from '../core/call-names';
import { type FromWorker, isCancelled, type ToWorker, type WorkerStart } from './ledger/worker-protocol';
import { CHECK_LATER_FROM } from './ledger/page-check';
import { Refused } from './refusal';
import { Session, unexpected } from './session';

const port = parentPort;
if (!port) throw new Error('the ledger worker runs in a worker thread only');
const tell = (message: FromWorker): void => port.postMessage(message);

const start = workerData as WorkerStart;
const session = new Session({ ...start, checkLaterFrom: CHECK_LATER_FROM });
/** Jobs that record nothing. */
const UNCHANGING: readonly string[] = [
  'notes.preview',
  'ledger.backups',
  'archive.write',
  'calendar.write',
  'handOver.preview',
] satisfies JobName[];
const CHANGING = new Set<string>([...WRITES, ...JOBS].filter((name) => !UNCHANGING.includes(name)));

/** Progress is for eyes: oftener than this only costs messages. */
const BETWEEN_STEPS_MS = 50;
/** A look costs some microseconds. */
const LOOK_ELSEWHERE_MS = 1000;
/** After the window has settled: the copy holds up calls for a moment. */
const BACKUP_AFTER_MS = 60_000;
/** What is on the screen first is asked for by then. */
const CHECK_AFTER_MS = 1000;

port.on('message', (message: ToWorker) => {
  if (message.kind === 'close') {
    session.close();
    port.close();
    clearTimeout(backup);
    clearInterval(elsewhere);
    clearTimeout(pages);
    return;
  }
  const { id, name, input, cancel } = message;
  let last = -Infinity;
  const look = (): void => {
    if (isCancelled(cancel)) throw new Refused('cancelled');
  };
  const result = session.answer(name, input, {
    look,
    step: (done, total, says) => {
      look();
      if (performance.now() - last < BETWEEN_STEPS_MS) return;
      last = performance.now();
      tell({ kind: 'progress', id, done, total, says });
    },
  });
  tell({ kind: 'reply', id, result });
  if (result.ok && CHANGING.has(name)) tell({ kind: 'changed' });
});

// A clock that stands still is a test's or a picture's: there nothing happens by itself.
const backup = setTimeout(() => {
  try {
    if (start.now === null && !start.beside) session.backupIfDue();
  } catch (error) {
    // Nobody asked for it, so nobody is answered; what is wrong with the disk shows at the next call.
    unexpected(error);
  }
}, BACKUP_AFTER_MS);

// A large ledger is checked after the first answers, a table at a time, with calls between.
let pages = setTimeout(checkPages, CHECK_AFTER_MS);
function checkPages(): void {
  try {
    if (!start.beside && session.checkPages()) pages = setTimeout(checkPages, 0);
  } catch {
    // What is wrong is the state of the program from now on: the window asks for it.
    tell({ kind: 'changed' });
  }
}

// Another process may record into the same file: what the window shows is then old.
const elsewhere = setInterval(() => {
  try {
    if (!start.beside && session.changedElsewhere()) tell({ kind: 'changed' });
  } catch (error) {
    // What is wrong with the disk shows at the next call.
    unexpected(error);
  }
}, LOOK_ELSEWHERE_MS);

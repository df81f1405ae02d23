// The worker thread that owns a ledger's only write connection: messages in, one reply each. All work is the session's.
// One ledger after another: what the thread has loaded serves the next one too.
import { parentPort, workerData } from 'node:worker_threads';
import { type JobName, JOBS, type ReadName, WRITES } from '../core/call-names';
import { type FromWorker, isCancelled, type ToWorker, type WorkerStart } from './ledger/worker-protocol';
import { watchBackups } from './backup-watch';
import { CHECK_LATER_FROM } from './ledger/page-check';
import { Refused } from './refusal';
import { Session, unexpected } from './session';

const port = parentPort;
if (!port) throw new Error('the ledger worker runs in a worker thread only');
const tell = (message: FromWorker): void => port.postMessage(message);

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
/** What is on the screen first is asked for by then. */
const CHECK_AFTER_MS = 1000;

/** What the page asks for by itself and rests on the judgement of every line: it waits for that, and holds up nothing else. */
const JUDGING = new Set<string>([
  'today.list',
  'shelf.get',
  'judgement.scores',
  'advice.line',
] satisfies ReadName[]);

type Call = Extract<ToWorker, { kind: 'call' }>;

/** One opening of one file, and what happens by itself while it lasts. */
class Opened {
  readonly #start: WorkerStart;
  readonly #session: Session;
  readonly #endBackups: () => void;
  readonly #elsewhere: NodeJS.Timeout;
  #pages: NodeJS.Timeout;
  /** Calls that wait until every line is judged. */
  readonly #judging: Call[] = [];
  #further: NodeJS.Timeout | undefined;

  constructor(start: WorkerStart) {
    this.#start = start;
    this.#session = new Session({ ...start, checkLaterFrom: CHECK_LATER_FROM });
    this.#endBackups = watchBackups(
      () => this.#backUp(),
      (ms, work) => {
        const timer = setTimeout(work, ms);
        return () => clearTimeout(timer);
      },
    );
    this.#elsewhere = setInterval(() => this.#lookElsewhere(), LOOK_ELSEWHERE_MS);
    this.#pages = setTimeout(() => this.#checkPages(), CHECK_AFTER_MS);
  }

  answer(call: Call): void {
    if (!JUDGING.has(call.name)) return this.#answerNow(call);
    this.#judging.push(call);
    if (this.#judging.length === 1) this.#judgeMore();
  }

  /** A few batches at a time, with calls between. */
  #judgeMore(): void {
    try {
      if (this.#session.judgeMore()) {
        this.#further = setTimeout(() => this.#judgeMore(), 0);
        return;
      }
    } catch (error) {
      // The calls themselves say what is wrong.
      unexpected(error);
    }
    this.#answerJudging();
  }

  #answerJudging(): void {
    for (const call of this.#judging.splice(0)) this.#answerNow(call);
  }

  #answerNow({ id, name, input, cancel }: Call): void {
    let last = -Infinity;
    const look = (): void => {
      if (isCancelled(cancel)) throw new Refused('cancelled');
    };
    const result = this.#session.answer(name, input, {
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
  }

  close(): void {
    this.#endBackups();
    clearInterval(this.#elsewhere);
    clearTimeout(this.#pages);
    clearTimeout(this.#further);
    this.#answerJudging();
    this.#backUp(0);
    this.#session.close();
  }

  /**
   * A clock that stands still is a test's or a picture's: there nothing happens by itself.
   * @param age how old the last backup must be (ms); left out: a day
   */
  #backUp(age?: number): void {
    if (this.#start.now === null && !this.#start.beside) this.#session.backUpByItself(age);
  }

  /** A large ledger is checked after the first answers, a table at a time, with calls between. */
  #checkPages(): void {
    try {
      if (!this.#start.beside && this.#session.checkPages())
        this.#pages = setTimeout(() => this.#checkPages(), 0);
    } catch {
      // What is wrong is the state of the program from now on: the window asks for it.
      tell({ kind: 'changed' });
    }
  }

  /** Another process may record into the same file: what the window shows is then old. */
  #lookElsewhere(): void {
    try {
      if (!this.#start.beside && this.#session.changedElsewhere()) tell({ kind: 'changed' });
    } catch (error) {
      // What is wrong with the disk shows at the next call.
      unexpected(error);
    }
  }
}

let opened: Opened | null = new Opened(workerData as WorkerStart);

port.on('message', (message: ToWorker) => {
  switch (message.kind) {
    case 'call':
      opened?.answer(message);
      break;
    case 'close':
      opened?.close();
      opened = null;
      tell({ kind: 'closed' });
      break;
    case 'open':
      opened = new Opened(message.start);
      break;
    case 'end':
      port.close();
  }
});

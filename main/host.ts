// Starts the ledger worker and speaks with it: one call, one reply, always, also when the worker dies.
// With or without a window: no electron here.
import { Worker } from 'node:worker_threads';
import { WRITES } from '../core/call-names';
import type { AppState, CallName, Result } from '../core/contract';
import { checkInput, checkReply } from './check-call';
import type { FromWorker, ToWorker, WorkerCall, WorkerStart } from './ledger/worker-protocol';

export interface JobWatch {
  /** Set to 1 at index 0 to cancel. */
  readonly cancel: SharedArrayBuffer | null;
  readonly progress: (done: number, total: number | null, says: string) => void;
}

interface Waiting {
  readonly job: JobWatch | null;
  readonly settle: (result: Result<unknown>) => void;
}

const CLOSING_MS = 10_000;

/** A worker thread that has the ledger open: one call, one reply, also when it dies. */
class LedgerThread {
  readonly #threads: LedgerThreads;
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  readonly #gone: Promise<void>;
  #lastId = 0;
  #alive = true;

  constructor(threads: LedgerThreads, start: WorkerStart, changed: () => void) {
    this.#threads = threads;
    this.#worker = threads.take(start);
    this.#gone = new Promise((done) => {
      this.#worker.on('message', (message: FromWorker) => {
        if (message.kind === 'changed') changed();
        else if (message.kind === 'progress') {
          this.#waiting.get(message.id)?.job?.progress(message.done, message.total, message.says);
        } else if (message.kind === 'reply') this.#settle(message.id, message.result);
        else {
          this.#end(null);
          this.#threads.giveBack(this.#worker);
          done();
        }
      });
      this.#worker.on('exit', () => {
        this.#end(null);
        done();
      });
    });
    this.#worker.on('messageerror', (error) => {
      this.#end(error); // a reply that can't be read would leave its call waiting
      void this.#worker.terminate();
    });
    this.#worker.on('error', (error) => this.#end(error));
  }

  /** False once it has ended, by request or by accident. */
  get alive(): boolean {
    return this.#alive;
  }

  get idle(): boolean {
    return this.#waiting.size === 0;
  }

  /** @param input already parsed against the contract */
  ask(name: WorkerCall, input: unknown, job: JobWatch | null): Promise<Result<unknown>> {
    if (!this.#alive) return Promise.resolve(stopped);
    const id = ++this.#lastId;
    return new Promise((settle) => {
      this.#waiting.set(id, { job, settle });
      send(this.#worker, { kind: 'call', id, name, input, cancel: job?.cancel ?? null });
    });
  }

  /** Lets it finish and close its file; ends it where it does not within ten seconds. */
  async close(): Promise<void> {
    if (!this.#alive) return;
    send(this.#worker, { kind: 'close' });
    const timer = setTimeout(() => void this.#worker.terminate(), CLOSING_MS);
    await this.#gone;
    clearTimeout(timer);
  }

  #settle(id: number, result: Result<unknown>): void {
    this.#waiting.get(id)?.settle(result);
    this.#waiting.delete(id);
  }

  #end(error: unknown): void {
    if (error) process.stderr.write(`jarline: the ledger worker ended: ${describe(error)}\n`);
    this.#alive = false;
    for (const id of this.#waiting.keys()) this.#settle(id, stopped);
  }
}

/** Threads without a ledger that are kept: as many as one ledger uses, its own and the one for notes. */
const SPARE = 2;

/** Worker threads, used for one ledger after another: starting one takes as long as opening a ledger does, and more. */
export class LedgerThreads {
  readonly #workerFile: URL;
  /** Those without a ledger, and when each gives its memory back. */
  readonly #spare = new Map<Worker, NodeJS.Timeout>();

  /** @param workerFile the built worker */
  constructor(workerFile: URL) {
    this.#workerFile = workerFile;
  }

  /** A thread that opens what it is told to; nobody listens to it yet. */
  take(start: WorkerStart): Worker {
    const [worker] = this.#spare.keys();
    if (worker === undefined) return new Worker(this.#workerFile, { workerData: start });
    this.#forget(worker);
    stopListening(worker);
    worker.ref();
    send(worker, { kind: 'open', start });
    return worker;
  }

  /** One whose ledger is closed. */
  giveBack(worker: Worker): void {
    stopListening(worker);
    worker.on('error', (error) => {
      process.stderr.write(`jarline: a thread without a ledger ended: ${describe(error)}\n`);
    });
    worker.on('exit', () => this.#forget(worker));
    if (this.#spare.size === SPARE) return send(worker, { kind: 'end' });
    worker.unref();
    this.#spare.set(worker, setTimeout(() => this.#end(worker), IDLE_MS).unref());
  }

  /** Ends those without a ledger. */
  async end(): Promise<void> {
    const gone = [...this.#spare.keys()].map((worker) => {
      worker.ref();
      this.#end(worker);
      return new Promise((done) => worker.once('exit', done));
    });
    await Promise.all(gone);
  }

  #end(worker: Worker): void {
    this.#forget(worker);
    send(worker, { kind: 'end' });
  }

  #forget(worker: Worker): void {
    clearTimeout(this.#spare.get(worker));
    this.#spare.delete(worker);
  }
}

/** By their names: node itself listens to some of the others. */
function stopListening(worker: Worker): void {
  for (const event of ['message', 'messageerror', 'error', 'exit']) worker.removeAllListeners(event);
}

const send = (worker: Worker, message: ToWorker): void => worker.postMessage(message);

/** What may record, and so waits while notes come in. */
const RECORDING = new Set<CallName>([
  ...WRITES,
  'ledger.backup',
  'ledger.recover',
  'ledger.restore',
  'archive.read',
  'handOver.write',
  'handOver.preview',
  'handOver.read',
]);
/** A thread that nothing was asked of for so long gives its memory back. */
const IDLE_MS = 60_000;

/**
 * One open ledger: a worker thread that owns the file, and beside it, while notes are read or brought in, a second one for
 * just that. While the second one writes, what is read shows the ledger from before, and what would record waits behind it.
 */
export class LedgerHost {
  readonly start: WorkerStart;
  readonly #threads: LedgerThreads;
  readonly #changed: () => void;
  readonly #ledger: LedgerThread;
  #notes: LedgerThread | null = null;
  #idle: NodeJS.Timeout | undefined;
  /** The end of the last import that was asked for; null where none is under way. */
  #importing: Promise<unknown> | null = null;

  /**
   * @param changed called when something was recorded or the program's state changed
   */
  constructor(threads: LedgerThreads, start: WorkerStart, changed: () => void) {
    this.start = start;
    this.#threads = threads;
    this.#changed = changed;
    this.#ledger = new LedgerThread(threads, start, changed);
  }

  /** False once the worker has ended, by request or by accident. */
  get alive(): boolean {
    return this.#ledger.alive;
  }

  /** Asks the worker. Resolves to a refusal where the request, the reply or the worker fails; never rejects. */
  async call(name: WorkerCall, rawInput: unknown, job: JobWatch | null = null): Promise<Result<unknown>> {
    const input = checkInput(name, rawInput);
    if (!input.ok) return input;
    return checkReply(name, await this.#answer(name, input.value, job));
  }

  #answer(name: WorkerCall, input: unknown, job: JobWatch | null): Promise<Result<unknown>> {
    if (name === 'notes.preview') return this.#ofNotes(name, input, job);
    const ask = async (): Promise<Result<unknown>> => {
      // What it has open would be another file.
      if (name === 'ledger.restore') await this.#notes?.close();
      return this.#ledger.ask(name, input, job);
    };
    const before = this.#importing;
    if (name !== 'notes.bringIn') return before && RECORDING.has(name) ? before.then(ask) : ask();
    const done = (before ?? Promise.resolve()).then(() => this.#ofNotes(name, input, job));
    this.#importing = done;
    return done.finally(() => {
      if (this.#importing === done) this.#importing = null;
    });
  }

  /** Reads or brings in notes in a thread beside the ledger's own, after all that was asked for before. */
  async #ofNotes(name: WorkerCall, input: unknown, job: JobWatch | null): Promise<Result<unknown>> {
    const state = await this.#ledger.ask('app.state', {}, null);
    // A ledger that is not open says why in the thread that owns it.
    if (!state.ok || (state.value as AppState).ledger === null) return this.#ledger.ask(name, input, job);
    clearTimeout(this.#idle);
    if (!this.#notes?.alive)
      this.#notes = new LedgerThread(
        this.#threads,
        { ...this.start, mode: 'open', beside: true },
        this.#changed,
      );
    const notes = this.#notes;
    const result = await notes.ask(name, input, job);
    if (notes.idle) {
      clearTimeout(this.#idle);
      this.#idle = setTimeout(() => void notes.close(), IDLE_MS);
      this.#idle.unref();
    }
    return result;
  }

  /** Lets the workers finish and close the file; ends them where they don't within ten seconds. */
  async close(): Promise<void> {
    clearTimeout(this.#idle);
    await Promise.all([this.#notes?.close(), this.#ledger.close()]);
  }
}

const stopped: Result<never> = { ok: false, error: { code: 'ledger stopped', params: {} } };

const describe = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error);

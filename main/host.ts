// Starts the ledger worker and speaks with it: one call, one reply, always, also when the worker dies.
// With or without a window: no electron here.
import { Worker } from 'node:worker_threads';
import type { Result } from '../core/contract';
import { checkInput, checkReply } from './check-call';
import type { FromWorker, ToWorker, WorkerCall, WorkerStart } from './ledger/protocol';

export interface JobWatch {
  /** Set to 1 at index 0 to cancel. */
  readonly cancel: SharedArrayBuffer | null;
  readonly progress: (done: number, total: number | null, says: string) => void;
}

interface Waiting {
  readonly name: WorkerCall;
  readonly job: JobWatch | null;
  readonly settle: (result: Result<unknown>) => void;
}

const CLOSING_MS = 10_000;

/** One open ledger: a worker thread that owns the file. */
export class LedgerHost {
  readonly start: WorkerStart;
  readonly #worker: Worker;
  readonly #waiting = new Map<number, Waiting>();
  readonly #gone: Promise<void>;
  #lastId = 0;
  #alive = true;

  /**
   * @param workerFile the built worker
   * @param changed called when something was recorded or the program's state changed
   */
  constructor(workerFile: URL, start: WorkerStart, changed: () => void) {
    this.start = start;
    this.#worker = new Worker(workerFile, { workerData: start });
    this.#worker.on('message', (message: FromWorker) => {
      if (message.kind === 'changed') changed();
      else if (message.kind === 'progress') {
        this.#waiting.get(message.id)?.job?.progress(message.done, message.total, message.says);
      } else this.#settle(message.id, message.result);
    });
    this.#worker.on('messageerror', (error) => {
      this.#end(error); // a reply that can't be read would leave its call waiting
      void this.#worker.terminate();
    });
    this.#worker.on('error', (error) => this.#end(error));
    this.#gone = new Promise((done) => {
      this.#worker.on('exit', () => {
        this.#end(null);
        done();
      });
    });
  }

  /** False once the worker has ended, by request or by accident. */
  get alive(): boolean {
    return this.#alive;
  }

  /** Asks the worker. Resolves to a refusal where the request, the reply or the worker fails; never rejects. */
  async call(name: WorkerCall, rawInput: unknown, job: JobWatch | null = null): Promise<Result<unknown>> {
    const input = checkInput(name, rawInput);
    if (!input.ok) return input;
    if (!this.#alive) return stopped;
    const id = ++this.#lastId;
    const result = await new Promise<Result<unknown>>((settle) => {
      this.#waiting.set(id, { name, job, settle });
      this.#send({ kind: 'call', id, name, input: input.value, cancel: job?.cancel ?? null });
    });
    return checkReply(name, result);
  }

  /** Lets the worker finish and close its file; ends it where it does not within ten seconds. */
  async close(): Promise<void> {
    if (!this.#alive) return;
    this.#send({ kind: 'close' });
    const timer = setTimeout(() => void this.#worker.terminate(), CLOSING_MS);
    await this.#gone;
    clearTimeout(timer);
  }

  #send(message: ToWorker): void {
    this.#worker.postMessage(message);
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

const stopped: Result<never> = { ok: false, error: { code: 'ledger stopped', params: {} } };

const describe = (error: unknown): string =>
  error instanceof Error ? (error.stack ?? error.message) : String(error);

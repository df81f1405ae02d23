// What the host (main/host.ts, with or without a window) and the ledger worker (main/ledger-worker.ts) say to each other.
// Owns the shapes of their messages and where a ledger's companions lie; no behaviour.
//
// The host starts the worker with a `WorkerStart` as workerData, sends `ToWorker` and hears `FromWorker`.
// The worker opens the file at once and from then on answers every call with exactly one reply, also when the
// file is damaged, foreign, newer or missing: then `app.state` tells the trouble and other calls are refused.
// The host parses each input before it sends it (defaults filled in) and each reply before it passes it on.
//
// The host answers HOST_CALLS and the 'show folder' of 'ledger.recover' itself, most by having another thread open
// another file and this one close its own. 'ledger.backup' and the rest of 'ledger.recover' reach the worker, which reopens what it
// recovered by itself.
//
// A ledger's companions lie beside the file itself: give the two functions below no link to it (place.ts, realFile).
import { basename, dirname, extname, join } from 'node:path';
import type { CallName, Result } from '../../core/contract';

/** Answered beside the worker, never sent to it. */
export const HOST_CALLS = ['ledger.open', 'ledger.create', 'ledger.fromArchive', 'ledger.openDemo', 'ledger.leaveDemo', 'label.print', 'report.print', 'camera.ask'] as const; // prettier-ignore
export type HostCall = (typeof HOST_CALLS)[number];
export type WorkerCall = Exclude<CallName, HostCall>;

/**
 * How the file is to be opened: it must be there; it must not be there; it may be there, else it is made; it may be there,
 * else it reads as empty and the first thing recorded makes it; it is made with the demo in it.
 */
export type OpenMode = 'open' | 'create' | 'open or create' | 'open or begin' | 'demo';

export interface WorkerStart {
  /** null until a door is chosen: `app.state` then has ledger null, other calls are refused with 'no ledger'. */
  readonly file: string | null;
  readonly mode: OpenMode;
  /** A second thread for one kind of call: what happens by itself is the first one's. */
  readonly beside?: true;
  /** A moment with its offset that the clock stands still at (tests, screenshots); null for the machine's clock. */
  readonly now: string | null;
  /** IANA name, for the day that is today and the offset of moments. */
  readonly timeZone: string;
  /** The system's locale, for what a keeper prefers who never said; null or absent: unknown. */
  readonly locale?: string | null;
  /** The program's version, for `app.state` and for what is kept with decisions. */
  readonly version: string;
  /** A file of so many bytes or more answers before its pages are checked; left out: none does. */
  readonly checkLaterFrom?: number;
}

export type ToWorker =
  | {
      readonly kind: 'call';
      readonly id: number;
      readonly name: WorkerCall;
      /** Already parsed against the contract. */
      readonly input: unknown;
      /** For jobs that can be cancelled: an Int32Array over it reads 1 at index 0 once the keeper cancels. */
      readonly cancel: SharedArrayBuffer | null;
    }
  /** Finish the call at hand and close the file in order; told as 'closed'. */
  | { readonly kind: 'close' }
  /** Open another file, once the one before is closed: what the thread has loaded and learnt serves it too. */
  | { readonly kind: 'open'; readonly start: WorkerStart }
  /** Exit, once the file is closed. */
  | { readonly kind: 'end' };

export type FromWorker =
  | { readonly kind: 'reply'; readonly id: number; readonly result: Result<unknown> }
  /** Of the job with that call id; `total` null when it can't be told. */
  | {
      readonly kind: 'progress';
      readonly id: number;
      readonly done: number;
      readonly total: number | null;
      readonly says: string;
    }
  /** Something was recorded, or the state of the program changed: what is shown may be old. */
  | { readonly kind: 'changed' }
  /** The file is closed, and nothing more is said of it. */
  | { readonly kind: 'closed' };

/** Whether a job's keeper has cancelled it. Cheap enough for the inner loop. */
export function isCancelled(cancel: SharedArrayBuffer | null): boolean {
  return cancel !== null && Atomics.load(new Int32Array(cancel), 0) === 1;
}

const beside = (file: string, what: string): string =>
  join(dirname(file), `${basename(file, extname(file))}-${what}`);

/** Where a ledger's photographs lie: `<sha256>.jpg` each, never changed. */
export const photographFolder = (file: string): string => beside(file, 'photographs');

/** Where a ledger's backups lie. */
export const backupFolder = (file: string): string => beside(file, 'backups');

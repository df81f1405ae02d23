// The only file that listens to the page. Every message is checked for its sender before anything else.
import { type IpcMainInvokeEvent, type WebContents, ipcMain } from 'electron';
import { CALLS, type EventName, JOBS, type MenuId } from '../core/call-names';
import type { Result } from '../core/contract';
import { namesPath } from './check-call';
import type { JobWatch } from './host';
import type { OpenLedger } from './open-ledger';
import { isTrusted } from './walls';

export interface Events {
  readonly progress: { job: string; done: number; total: number | null; says: string };
  readonly changed: Record<string, never>;
  readonly menu: { id: MenuId };
  readonly handed: { name: string; bytes: Uint8Array<ArrayBuffer> };
}

/** Sends an event to the page: its payload and nothing else. */
export function tell<E extends EventName>(page: WebContents | null, event: E, payload: Events[E]): void {
  if (page !== null && !page.isDestroyed()) page.send(event, payload);
}

const forbidden: Result<never> = { ok: false, error: { code: 'forbidden', params: {} } };
const isJobId = (value: unknown): value is string =>
  typeof value === 'string' && /^[\w-]{1,100}$/.test(value);

/**
 * Answers the page's calls from the open ledger.
 * @param page the one page there is, or null while there is none
 * @param replied hears of each reply, for what the window itself takes from it (the theme)
 */
export function listen(
  ledger: OpenLedger,
  page: () => WebContents | null,
  replied: (name: string, result: Result<unknown>) => void,
): void {
  const running = new Map<string, SharedArrayBuffer>();
  const isMine = (event: IpcMainInvokeEvent): boolean =>
    event.sender === page() && isTrusted(event.senderFrame);

  for (const name of CALLS) {
    const isJob = (JOBS as readonly string[]).includes(name);
    ipcMain.handle(name, async (event, input: unknown, jobId: unknown): Promise<Result<unknown>> => {
      if (!isMine(event)) return forbidden;
      if (namesPath(name, input)) return forbidden;
      if (jobId !== undefined && (!isJob || !isJobId(jobId) || running.has(jobId))) return forbidden;
      let job: JobWatch | null = null;
      if (jobId !== undefined) {
        const cancel = new SharedArrayBuffer(4);
        running.set(jobId, cancel);
        job = {
          cancel,
          progress: (done, total, says) => tell(page(), 'progress', { job: jobId, done, total, says }),
        };
      }
      try {
        const result = await ledger.call(name, input, job);
        replied(name, result);
        return result;
      } finally {
        if (jobId !== undefined) running.delete(jobId);
      }
    });
  }

  ipcMain.handle('cancel', (event, jobId: unknown): boolean => {
    const cancel = isMine(event) && isJobId(jobId) ? running.get(jobId) : undefined;
    if (cancel) Atomics.store(new Int32Array(cancel), 0, 1);
    return cancel !== undefined;
  });
}

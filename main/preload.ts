// What the page can reach: one frozen function for each call of the contract, cancelling, and four events.
// Sandboxed; knows the names only, never lets the page name a channel.
import { contextBridge, ipcRenderer } from 'electron';
import { CALLS, EVENTS } from '../core/call-names';

const call = Object.fromEntries(
  CALLS.map((name) => [
    name,
    (input: unknown, jobId?: unknown): Promise<unknown> => ipcRenderer.invoke(name, input, jobId),
  ]),
);

const on = Object.fromEntries(
  EVENTS.map((name) => [
    name,
    (hear: (payload: unknown) => void): (() => void) => {
      const listener = (_event: unknown, payload: unknown): void => hear(payload);
      ipcRenderer.on(name, listener);
      return () => void ipcRenderer.off(name, listener);
    },
  ]),
);

contextBridge.exposeInMainWorld('jarline', {
  call,
  cancel: (jobId: unknown): Promise<unknown> => ipcRenderer.invoke('cancel', jobId),
  on,
  /** What this side of the wall knows of it, for the tests. */
  walls: { sandboxed: process.sandboxed, contextIsolated: process.contextIsolated },
});

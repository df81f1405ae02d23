// The page's one way to the ledger: typed calls over the bridge, refusals already turned into sentences.
import type { CallName, JobName, ReadName, WriteName } from '../../core/call-names';
import type { Input, Refusal, Reply, Result } from '../../core/contract';
import { refusalSentence } from '../../core/sentences';
import { pressOver } from './after-press';

export interface Progress {
  readonly job: string;
  readonly done: number;
  readonly total: number | null;
  readonly says: string | null;
}
type Unsubscribe = () => void;

/** A jar's file that the system handed to the program: by a double click, say. */
export interface HandedJar {
  readonly name: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** What the preload puts on the window: one frozen function for each call, and the declared events. */
export interface Bridge {
  readonly call: { readonly [N in CallName]: (input: Input<N>, jobId?: string) => Promise<Result<Reply<N>>> };
  readonly cancel: (jobId: string) => unknown;
  readonly on: {
    readonly progress: (listen: (progress: Progress) => void) => Unsubscribe;
    readonly changed: (listen: (payload: unknown) => void) => Unsubscribe;
    readonly menu: (listen: (item: { id: string }) => void) => Unsubscribe;
    readonly handed: (listen: (file: HandedJar) => void) => Unsubscribe;
  };
}

declare global {
  interface Window {
    readonly jarline: Bridge;
  }
}

/** A reply, or a refusal with the sentence to show. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: Refusal; readonly sentence: string };

function answer<T>(result: Result<T>): Answer<T> {
  return result.ok ? result : { ...result, sentence: refusalSentence(result.error) };
}

async function ask<N extends CallName>(name: N, input: Input<N>, jobId?: string): Promise<Answer<Reply<N>>> {
  try {
    const result = await window.jarline.call[name](input, jobId);
    await pressOver();
    return answer<Reply<N>>(result);
  } catch (error) {
    // Only a broken bridge throws; refusals come back as data.
    const problem: Refusal = { code: 'unexpected', params: { ref: String(error) } };
    return { ok: false, error: problem, sentence: refusalSentence(problem) };
  }
}

/** Asks for a read or a write. Never throws: a refusal is an answer with a sentence. */
export function call<N extends ReadName | WriteName>(name: N, input: Input<N>): Promise<Answer<Reply<N>>> {
  return ask(name, input);
}

export interface Job<N extends JobName> {
  readonly done: Promise<Answer<Reply<N>>>;
  readonly cancel: () => void;
}

/** Starts a job; `onProgress` hears of it until it is done. Cancelling leaves the ledger as it was. */
export function startJob<N extends JobName>(
  name: N,
  input: Input<N>,
  onProgress: (progress: Progress) => void = () => undefined,
): Job<N> {
  const id = crypto.randomUUID();
  const stop = window.jarline.on.progress((progress) => {
    if (progress.job === id) onProgress(progress);
  });
  return {
    done: ask(name, input, id).finally(stop),
    cancel: () => void window.jarline.cancel(id),
  };
}

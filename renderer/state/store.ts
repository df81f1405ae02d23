// The page's small store: the app's state as the ledger tells it, which screen is shown, what is said aloud.
// Plain functions outside React; components read it through the hooks at the end.
import { useSyncExternalStore } from 'react';
import type { AppState } from '../../core/contract';
import { watchPresses } from './after-press';
import { call } from './ledger-calls';

/** Where the keeper is. `focus` says what a screen opens at ("jar:" and an id, a batch's id); what it means is that screen's affair. */
export interface Place {
  readonly screen: string;
  readonly focus: string | null;
}

interface Snapshot {
  readonly state: AppState | null;
  /** Counts up whenever the ledger changed: a screen that shows ledger facts reads them again. */
  readonly revision: number;
  readonly place: Place;
  /** The line that the keeper last turned to, on whichever screen. */
  readonly line: string | null;
  /** The last message said, and a count so that the same words are said again. */
  readonly said: { readonly words: string; readonly tone: 'calm' | 'caution'; readonly count: number };
}

let snapshot: Snapshot = {
  state: null,
  revision: 0,
  place: { screen: 'family', focus: null },
  line: null,
  said: { words: '', tone: 'calm', count: 0 },
};
const listeners = new Set<() => void>();

function set(change: Partial<Snapshot>): void {
  snapshot = { ...snapshot, ...change };
  for (const listen of listeners) listen();
}
const subscribe = (listen: () => void): (() => void) => {
  listeners.add(listen);
  return () => listeners.delete(listen);
};

/** Says words in the one live region, and shows them until the next or until dismissed. Empty words clear it. */
export function say(words: string, tone: 'calm' | 'caution' = 'calm'): void {
  set({ said: { words, tone, count: snapshot.said.count + 1 } });
}

/** Goes to a screen, at a jar or batch if `focus` is given. At a line: then the keeper has turned to it. */
export function go(screen: string, focus: string | null = null): void {
  const line = /^(?:line|next|name):(.+)$/.exec(focus ?? '')?.[1] ?? snapshot.line;
  set({ place: { screen, focus }, line });
}

/** Turns to a line: screens that show one line show it until the keeper turns to another. */
export function turnTo(line: string): void {
  set({ line });
}

function dress(state: AppState): void {
  const { theme } = state.preferences;
  if (theme === 'system') delete document.documentElement.dataset.theme;
  else document.documentElement.dataset.theme = theme;
}

let asked = 0;
/** Reads the app's state again. A later reading wins over an earlier one that answers late. */
async function refresh(): Promise<void> {
  asked += 1;
  const mine = asked;
  const answer = await call('app.state', {});
  if (mine !== asked) return;
  if (!answer.ok) {
    say(answer.sentence, 'caution');
    return;
  }
  dress(answer.value);
  set({ state: answer.value });
}

/** Starts listening to the ledger. Call once. */
export function connect(): () => void {
  watchPresses();
  const stop = window.jarline.on.changed(() => {
    set({ revision: snapshot.revision + 1 });
    void refresh();
  });
  void refresh();
  return stop;
}

/** What an act did, as the beginning of a sentence. */
export const sentenceCase = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}`;

/** Takes back the last act, and says which. */
export async function undo(): Promise<void> {
  const answer = await call('act.undo', { act: null });
  say(answer.ok ? `${sentenceCase(answer.value.says)}.` : answer.sentence, answer.ok ? 'calm' : 'caution');
}

/** Does the last undone act again, and says which. */
export async function redo(): Promise<void> {
  const answer = await call('act.redo', {});
  say(answer.ok ? `${sentenceCase(answer.value.says)}.` : answer.sentence, answer.ok ? 'calm' : 'caution');
}

export const currentPlace = (): Place => snapshot.place;
export const currentState = (): AppState | null => snapshot.state;

export const useAppState = (): AppState | null => useSyncExternalStore(subscribe, () => snapshot.state);
export const useRevision = (): number => useSyncExternalStore(subscribe, () => snapshot.revision);
export const useLineInHand = (): string | null => useSyncExternalStore(subscribe, () => snapshot.line);
export const usePlace = (): Place => useSyncExternalStore(subscribe, () => snapshot.place);
export const useSaid = (): Snapshot['said'] => useSyncExternalStore(subscribe, () => snapshot.said);

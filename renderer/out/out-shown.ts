// Which of the panels for what goes out and comes in is open, over whatever screen. None by default.
import { useSyncExternalStore } from 'react';
import type { HandedJar } from '../state/ledger-calls';

export type OutShown =
  | { readonly panel: 'everything' | 'backups' | 'find' }
  | { readonly panel: 'receive'; readonly file?: HandedJar }
  | {
      readonly panel: 'reports';
      readonly kind?: 'told';
      readonly line?: string;
      readonly jar?: { readonly id: string; readonly label: string };
    }
  | {
      readonly panel: 'give' | 'labels';
      readonly jar: string;
      readonly label: string;
      readonly mates?: true;
    };

let shown: OutShown | null = null;
const listeners = new Set<() => void>();

/** Opens a panel, or closes the one that is open. */
export function showOut(next: OutShown | null): void {
  shown = next;
  for (const listen of listeners) listen();
}

export const useOutShown = (): OutShown | null =>
  useSyncExternalStore(
    (listen) => {
      listeners.add(listen);
      return () => listeners.delete(listen);
    },
    () => shown,
  );

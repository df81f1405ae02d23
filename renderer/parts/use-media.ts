// What the window is now: as wide as a query asks, shown by night.
import { useCallback, useSyncExternalStore } from 'react';

/** Whether a media query holds; asked again when it changes. */
export function useMedia(query: string): boolean {
  const listenTo = useCallback(
    (listen: () => void) => {
      const asked = window.matchMedia(query);
      asked.addEventListener('change', listen);
      return () => asked.removeEventListener('change', listen);
    },
    [query],
  );
  return useSyncExternalStore(listenTo, () => window.matchMedia(query).matches);
}

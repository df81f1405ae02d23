// The theme that is shown now, as a word: what is painted by hand is painted anew when it changes.
import { useSyncExternalStore } from 'react';
import { useAppState } from '../state/store';

const night = window.matchMedia('(prefers-color-scheme: dark)');
const systemIsDark = (): boolean => night.matches;
const onSystemTheme = (listen: () => void): (() => void) => {
  night.addEventListener('change', listen);
  return () => night.removeEventListener('change', listen);
};

export function useThemeName(): string {
  const dark = useSyncExternalStore(onSystemTheme, systemIsDark);
  return `${useAppState()?.preferences.theme} ${dark}`;
}

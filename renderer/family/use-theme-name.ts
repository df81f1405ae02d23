// The theme that is shown now, as a word: what is painted by hand is painted anew when it changes.
import { useMedia } from '../parts/use-media';
import { useAppState } from '../state/store';

export function useThemeName(): string {
  const dark = useMedia('(prefers-color-scheme: dark)');
  return `${useAppState()?.preferences.theme} ${dark}`;
}

// A jar in words for a screen reader. Pure.
import { FLAG } from '../../core/shapes/drawing-flags';
import { SET_WORDS } from '../../core/ledger/jar-fields';

/** The set word of a drawing's column; null when unknown. */
const setWordAt = (value: number): (typeof SET_WORDS)[number] | null => SET_WORDS[value] ?? null;

/** "at least generation 3", or "generation 3". */
export const generationWords = (generation: number, atLeast: boolean): string =>
  atLeast ? `at least generation ${generation}` : `generation ${generation}`;

/** What has to be known of a jar before it is used, in words; '' where nothing stands against it. */
export const warningWords = (flags: number): string =>
  flags & FLAG.spoiled
    ? 'spoiled: discard, not food, not seed'
    : flags & FLAG.setAside
      ? 'set aside: not food, not seed'
      : flags & FLAG.look
        ? 'look before using'
        : '';

/** What a jar shows, in words: "14 Mar b, generation 4, firm, on the shelf". @param warm it stands in a hold that runs */
export function jarWords(
  label: string,
  generation: number,
  setWord: number,
  flags: number,
  warm = false,
): string {
  const parts = [label, generationWords(generation, (flags & FLAG.atLeast) !== 0)];
  if (flags & FLAG.lost) parts.push('lost: nobody can name it');
  else if (flags & FLAG.spoiled) parts.push('spoiled: discard, not food, not seed');
  else parts.push(setWordAt(setWord) ?? (flags & FLAG.outcomeKnown ? 'set not noted' : 'outcome unknown'));
  if (flags & FLAG.setAside) parts.push('set aside');
  if (flags & FLAG.look) parts.push('look before using');
  if (warm) parts.push('in warmth');
  else if (flags & FLAG.onShelf) parts.push('on the shelf');
  return parts.join(', ');
}

// How a jar that stands outside the drawing is drawn: what the picture needs, from what the calls say of it. Pure.
import type { JarView } from '../../core/contract';
import { FLAG } from '../../core/shapes/drawing-flags';
import { SET_WORDS } from '../../core/ledger/jar-fields';

/** Index of a set word as the drawing counts them; 255 where it is not known. */
const setWordIndex = (word: JarView['setWord']): number => (word === null ? 255 : SET_WORDS.indexOf(word));

type Drawn = Pick<JarView, 'setWord' | 'spoiled' | 'caution'> & Partial<Pick<JarView, 'lost' | 'onShelf' | 'outcomeKnown'>>; // prettier-ignore

/** Set word and flags of a jar's picture. */
export function lookOf(jar: Drawn, atLeast = false): { readonly setWord: number; readonly flags: number } {
  const barred = jar.caution !== null && jar.caution !== 'look';
  const flags =
    (jar.spoiled ? FLAG.spoiled : 0) |
    (barred && !jar.spoiled ? FLAG.setAside : 0) |
    (jar.caution === 'look' ? FLAG.look : 0) |
    (jar.onShelf === true ? FLAG.onShelf : 0) |
    ((jar.outcomeKnown ?? jar.setWord !== null) ? FLAG.outcomeKnown : 0) |
    (jar.lost === true ? FLAG.lost : 0) |
    (atLeast ? FLAG.atLeast : 0);
  return { setWord: setWordIndex(jar.setWord), flags };
}

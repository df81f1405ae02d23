// What the words on a jar or a portion say of whether it is still there. Pure.
import type { MovementKind } from './facts/kept-facts';

/** Of a movement, what tells where things stand. */
export interface Moved {
  readonly kind: MovementKind;
  /** Null where nobody said when. */
  readonly day: string | null;
  readonly amount: unknown;
  readonly pieces: number | null;
}

/** Whether nothing is left after it: given or discarded with no amount means all of it. */
const endsIt = ({ kind, amount, pieces }: Moved): boolean =>
  kind === 'gone' || ((kind === 'given' || kind === 'discarded') && amount === null && pieces === null);

const isThere = ({ kind }: Moved): boolean =>
  kind === 'still there' || kind === 'fridge' || kind === 'freezer';

/**
 * The last word on whether some is still there: what ended it, or what says that it is there; null where nobody said. What
 * is told later of a day before the end is no word against it: it was there then. Of two ends it is the first.
 * @param moved in the order in which it was told
 */
export function lastWord<T extends Moved>(
  moved: readonly T[],
): { readonly ended: T | null; readonly there: T | null } {
  let ended: T | null = null;
  let there: T | null = null;
  for (const one of moved) {
    if (endsIt(one))
      [ended, there] = [ended && !isBefore(one, ended) && ended.day !== null ? ended : one, null];
    else if (isThere(one) && !(ended && isBefore(one, ended))) [ended, there] = [null, one];
  }
  return { ended, there };
}

const isBefore = (one: Moved, other: Moved): boolean =>
  one.day !== null && other.day !== null && one.day < other.day;

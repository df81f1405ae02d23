// What is known of the spoilage of one jar, and whether it became more than it was: a caution that was lifted with a
// written reason stays lifted only for what was known when the reason was written.
import type { DiscardSign } from '../ledger/records';
import { gateOf } from './gate';
import { looksOf, NOT_SET_SIGN, type Shown } from './seen';
import { discardOf } from './take-out';

export interface Spoilage {
  readonly signs: ReadonlySet<DiscardSign>;
  /** Called spoiled with no sign named. */
  readonly said: boolean;
  /** Days after opening at which it was seen; null: at take-out, or not said, which is held for the same. */
  readonly openedDays: number | 'unknown' | null;
}

/** The spoilage an outcome tells of; null where it tells of none, or where there is no outcome. */
export function spoilageOf(outcome: Shown | null): Spoilage | null {
  if (outcome === null) return null;
  const discard = discardOf(outcome);
  if (discard === null) return null;
  const signs = new Set(outcome.signs);
  if (discard === 'not set' || gateOf({ looks: looksOf(outcome), additions: [] }) === 'failed') signs.add(NOT_SET_SIGN); // prettier-ignore
  return {
    signs,
    said: outcome.spoiledSaid,
    openedDays: outcome.seenAt === 'after opening' ? (outcome.openedDays ?? 'unknown') : null,
  };
}

/**
 * Whether more is known now than was known then: a sign was added or exchanged, it was called spoiled, or it is said to
 * have been seen at another time. A sign that was taken back alone is not more.
 */
export function spoilageGrew(then: Spoilage | null, now: Spoilage | null): boolean {
  if (now === null) return false;
  if (then === null) return true;
  return (
    [...now.signs].some((sign) => !then.signs.has(sign)) ||
    (now.said && !then.said) ||
    now.openedDays !== then.openedDays
  );
}

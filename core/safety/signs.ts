// What is known of the spoilage of one jar, and whether it became more than it was: a caution that was lifted with a
// written reason stays lifted only for what was known when the reason was written.
import { failsGate, isSpoiled } from './gate';
import type { DiscardSign, Outcome } from '../ledger/records';

type Told = Pick<
  Outcome,
  'signs' | 'spoiledSaid' | 'setAtTakeOut' | 'ph' | 'phHow' | 'seenAt' | 'openedDays'
>;

export interface Spoilage {
  readonly signs: ReadonlySet<DiscardSign>;
  /** Called spoiled with no sign named. */
  readonly said: boolean;
  /** Days after opening at which it was seen; null: at take-out, or not said, which is held for the same. */
  readonly openedDays: number | 'unknown' | null;
}

/** The spoilage an outcome tells of; null where it tells of none, or where there is no outcome. */
export function spoilageOf(outcome: Told | null): Spoilage | null {
  if (outcome === null || !isSpoiled(outcome)) return null;
  const signs = new Set(outcome.signs);
  if (failsGate(outcome)) signs.add('not set and no pH at or below 4.6');
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

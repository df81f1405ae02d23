// Which jars a set-aside jar touches: itself, and what descends from a set-aside mate. Judgement lets them speak for no other.
import { cautionSentence } from '../says/safety-says';
import type { Family } from '../lineage/family';
import { stands } from '../shapes/caution-codes';

/** How it touches a jar: set aside itself, or descending from a set-aside mate of a spoiled jar. */
export type Held = 'set aside' | 'from a mate';

/** All jars so touched, in one pass over the family. */
export function heldJars(family: Family): ReadonlyMap<number, Held> {
  const found = new Map<number, Held>();
  for (const key of family.keys) {
    const level = family.cautionLevelOf(key);
    if (level === 'set aside') found.set(key, 'set aside');
    else if (level === 'look' && family.descendsFromMate(key)) found.set(key, 'from a mate');
  }
  return found;
}

/** "It is set aside: seeded from 1 Apr c."; null where it is not. */
export function setAsideOf(family: Family, key: number): string | null {
  const because = family.cautionsOf(key).find((caution) => caution.level === 'set aside' && stands(caution));
  return because
    ? cautionSentence(because, family.has(because.of) ? family.jar(because.of).label : null)
    : null;
}

/** That it descends from a set-aside mate, in a sentence; null where it doesn't, or is set aside or condemned itself. */
export function fromMateOf(family: Family, key: number): string | null {
  const level = family.cautionLevelOf(key);
  if (level !== 'look' || !family.descendsFromMate(key)) return null;
  const because = family
    .cautionsOf(key)
    .find((caution) => caution.relation === 'from a mate' && stands(caution));
  if (!because || because.via === null) return null;
  const [mate, spoiled] = [family.jar(because.via).label, family.jar(because.of).label];
  return `It descends from ${mate}, which is set aside because of ${spoiled}. Look into that first, or start afresh.`;
}

// Which jars a set-aside jar touches: itself, and what descends from a set-aside mate. Judgement lets them speak for no other.
import type { Family } from '../lineage/family';
import { stands } from '../shapes/caution-codes';
import type { SeedCaution } from '../shapes/seed-codes';

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

/** The caution because of which it is set aside; null where it is not. */
export function setAsideOf(family: Family, key: number): SeedCaution | null {
  const because = family.cautionsOf(key).find((caution) => caution.level === 'set aside' && stands(caution));
  return because
    ? { ...because, spoiled: family.has(because.of) ? family.jar(because.of).label : null }
    : null;
}

/** The set-aside mate that it descends from and the spoiled jar, by label; null where it doesn't, or is set aside or condemned itself. */
export function fromMateOf(
  family: Family,
  key: number,
): { readonly mate: string; readonly spoiled: string } | null {
  const level = family.cautionLevelOf(key);
  if (level !== 'look' || !family.descendsFromMate(key)) return null;
  const because = family
    .cautionsOf(key)
    .find((caution) => caution.relation === 'from a mate' && stands(caution));
  if (!because || because.via === null) return null;
  return { mate: family.jar(because.via).label, spoiled: family.jar(because.of).label };
}

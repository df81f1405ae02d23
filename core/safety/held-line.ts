// Whether a jar's way back runs through a jar on hold. Cautions are not chained, so such a jar carries none of its own; a
// keeper is told all the same, before it is used as seed.
import { cautionSentence } from './cautions';
import type { Family } from '../lineage/family';

export interface HeldAncestor {
  /** The nearest jar on the way back that is on hold. */
  readonly label: string;
  readonly says: string;
}

/**
 * The nearest jar that a jar descends from and that is on hold, with what is said of it; null where there is none, or
 * where the jar itself is condemned or on hold (that is graver, and said of itself).
 *
 * A condemned jar puts all its descendants on hold themselves, so it needs no looking for here. Where the keeper lifted
 * the jar's own hold about a spoiled jar in writing, the same spoiled jar is not brought up again further back.
 */
export function heldAncestor(family: Family, key: number): HeldAncestor | null {
  const own = family.cautionLevelOf(key);
  if (own === 'condemned' || own === 'on hold') return null;
  const answered = new Set(
    family
      .cautionsOf(key)
      .filter(({ level, cleared }) => level === 'on hold' && cleared !== null)
      .map(({ of }) => of),
  );
  for (const ancestor of family.ancestorsOf(key)) {
    if (family.cautionLevelOf(ancestor) !== 'on hold') continue;
    const because = family
      .cautionsOf(ancestor)
      .find(({ level, cleared, of }) => level === 'on hold' && cleared === null && !answered.has(of));
    if (!because) continue;
    const { label } = family.jar(ancestor);
    return {
      label,
      says: `It descends from ${label}, which is on hold because of ${family.jar(because.of).label}. Look into that first: lift the hold with a written reason, or start afresh.`,
    };
  }
  return null;
}

/** How a hold touches a jar: its own, or that of a jar further up its way back. */
export type Held = 'on hold' | 'held line';

/** All jars that are on hold, or descend from one that is (as heldAncestor tells), in one pass over the family. */
export function heldJars(family: Family): ReadonlyMap<number, Held> {
  const found = new Map<number, Held>();
  // Without a spoiled jar nothing is on hold.
  if (!family.keys.some((key) => family.jar(key).spoiled)) return found;
  for (const key of family.keys) if (family.cautionLevelOf(key) === 'on hold') found.set(key, 'on hold');
  const reached = new Set(found.keys());
  const open = [...reached];
  for (let key = open.pop(); key !== undefined; key = open.pop()) {
    for (const child of family.childrenOf(key)) {
      if (reached.has(child)) continue;
      reached.add(child);
      open.push(child);
      if (family.cautionLevelOf(child) === 'condemned') continue;
      const lifted = family
        .cautionsOf(child)
        .some(({ level, cleared }) => level === 'on hold' && cleared !== null);
      if (!lifted || heldAncestor(family, child) !== null) found.set(child, 'held line');
    }
  }
  return found;
}

/** "It is on hold: seeded from 1 Apr c."; null where no hold of its own stands. */
export function holdSentence(family: Family, key: number): string | null {
  const because = family
    .cautionsOf(key)
    .find(({ level, cleared }) => level === 'on hold' && cleared === null);
  return because
    ? cautionSentence(because, family.has(because.of) ? family.jar(because.of).label : null)
    : null;
}

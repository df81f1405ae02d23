// How a spoiled jar touches another, one pair at a time: what the words of the design and the trade say, and nothing of how
// the jars are found.
import { addDays } from '../quantities/typed-days';
import type { FamilyJar, FamilySeeding } from './lineage-shapes';
import type { CautionLevel, CautionRelation } from '../shapes/caution-codes';
import { UNSEEN, type JarSafety } from '../shapes/safety-codes';

/** Gravest first; of two ways a spoiled jar touches another, the earlier here is given. */
export const STRENGTH: readonly CautionRelation[] = [
  'itself', 'seeded by it', 'same hold', 'same batch', 'seeded before', 'same hold, not set', 'from a mate', 'seeded it', 'same seed', 'same package',
]; // prettier-ignore

export const LEVEL: Record<CautionRelation, CautionLevel> = {
  itself: 'condemned',
  'seeded by it': 'set aside',
  'same hold': 'set aside',
  'same batch': 'set aside',
  'seeded before': 'look',
  'same hold, not set': 'look',
  'from a mate': 'look',
  'seeded it': 'look',
  'same seed': 'look',
  'same package': 'look',
};

/** What may end by itself: a mate's own caution, and that of what descends from it. */
export const ENDS: ReadonlySet<CautionRelation> = new Set<CautionRelation>([
  'same hold',
  'same batch',
  'same hold, not set',
  'from a mate',
]);

/** What was seen of a jar; of one given as spoiled without more, the plain case: a sign at take-out. */
export const safetyOf = (jar: FamilyJar): JarSafety =>
  jar.safety ?? (jar.spoiled ? { ...UNSEEN, discard: 'spoiled' } : UNSEEN);

/** A sign first seen after opening says nothing of mates, seeds and packages: it came in with air or a spoon. */
export const seenAfterOpening = (jar: FamilyJar): boolean => safetyOf(jar).opened !== null;

export const onlyNotSet = (jar: FamilyJar): boolean => safetyOf(jar).discard === 'not set';

/**
 * Whether two batch-mates may have sat in the same warmth. Told apart where both holds are known and differ, by other hours or
 * another warmth in a sheet as well: such jars are related by their seed alone. An unknown hold clears nobody.
 */
export const sharedHold = (a: FamilyJar, b: FamilyJar): boolean =>
  a.batch === b.batch && (a.hold === null || b.hold === null || a.hold === b.hold);

/** How a spoiled jar touches a mate: that they were kept warm together is said only where it is known. */
export function mateRelation(mate: FamilyJar, spoiled: FamilyJar): CautionRelation {
  if (onlyNotSet(spoiled)) return 'same hold, not set';
  return mate.hold !== null && mate.hold === spoiled.hold ? 'same hold' : 'same batch';
}

/** Days before a sign from which what was taken of the jar is set aside. */
const BEFORE_SIGN_DAYS = 7;

/**
 * Whether what was taken of an opened jar on some day stays with the sign: taken in the seven days before it was seen, or
 * later, or nobody knows when; never what was parted before it was opened.
 */
export function takenNearSign({ opened }: Pick<JarSafety, 'opened'>, takenOn: string | null): boolean {
  if (opened === null) return true;
  if (takenOn === null || opened.signOn === null) return true;
  if (opened.openedOn !== null && takenOn < opened.openedOn) return false;
  return takenOn >= addDays(opened.signOn, -BEFORE_SIGN_DAYS);
}

/** Whether a seeding brought a child near the sign: by the day its seed was parted from the jar, else by the child's own. */
export const seededNearSign = (
  jar: FamilyJar,
  child: FamilyJar,
  seedings: readonly FamilySeeding[],
): boolean =>
  seedings.some(
    ({ fromJar, takenOn }) => fromJar === jar.key && takenNearSign(safetyOf(jar), takenOn ?? child.madeOn),
  );

// The one answer: may this be eaten, may it seed, and which codes stand against it. Asked by advice, drawing, picker, recording
// and whoever asks without a window. No figure is among what it reads: vigour, chances and warm hours speak of no safety.
import type { Family } from '../lineage/family';
import type { FamilyJar } from '../lineage/lineage-shapes';
import { safetyOf, sharedHold, takenNearSign } from '../lineage/touch';
import { stands, type Caution, type CautionLevel } from '../shapes/caution-codes';
import {
  type Gate,
  type Discard,
  type JarSafety,
  SAFETY_STOPS,
  type SafetyStop,
  type Answer,
} from '../shapes/safety-codes';

/** What a jar's batch says of it. */
interface Mates {
  /** The jars of the batch, lost ones apart. */
  readonly jars: readonly FamilyJar[];
  /** Half of them or more did not set. */
  readonly notSet: boolean;
}

const known = new WeakMap<Family, Map<number, Mates>>();

/** Only the batches that are asked about are looked at: each act makes a new version, and asks about a few. */
function matesIn(family: Family, batch: number): Mates {
  let batches = known.get(family);
  if (!batches) known.set(family, (batches = new Map()));
  const before = batches.get(batch);
  if (before) return before;
  const jars = family.inBatch(batch).filter(({ lost }) => !lost);
  const failed = jars.filter((jar) => safetyOf(jar).gate === 'failed').length;
  const found = { jars, notSet: failed > 0 && 2 * failed >= jars.length };
  batches.set(batch, found);
  return found;
}

const seedsOf = (family: Family, key: number): string =>
  family.seedsOf(key).map(({ fromJar, source }) => `${fromJar}:${source}`).toSorted().join(); // prettier-ignore

/**
 * How a jar stands at the gate, its mates asked too: what may have been thickened by what was stirred in passes by its sour
 * smell beside a plain jar of the same seed and the same hold that passed.
 */
export function gateAmongMates(family: Family, key: number): Gate {
  const jar = family.jar(key);
  const { gate } = safetyOf(jar);
  if (gate !== 'thickened' || jar.hold === null) return gate;
  const seeds = seedsOf(family, key);
  const vouched = matesIn(family, jar.batch).jars.some((mate) => {
    const { plain, discard, gate: its } = safetyOf(mate);
    return (
      mate.key !== key && plain && discard === null && its === 'passed' && mate.hold !== null &&
      sharedHold(jar, mate) && seedsOf(family, mate.key) === seeds
    ); // prettier-ignore
  });
  return vouched ? 'passed' : 'thickened';
}

/** The gravest caution of those that stand; of equals the first, which touches it most closely. */
function gravest(cautions: readonly Caution[]): Caution | null {
  const standing = cautions.filter(stands);
  const of = (wanted: CautionLevel): Caution | undefined => standing.find(({ level }) => level === wanted);
  return of('condemned') ?? of('set aside') ?? of('look') ?? null;
}

/**
 * Why a jar, or what was parted of it on a day, is neither food nor seed by what was seen of it: what was parted long before a
 * sign that came after opening, or before it was opened, does not show that sign.
 * @param partedOn null: the jar itself
 */
export const discardOfPart = (own: JarSafety, partedOn: string | null): Discard | null =>
  partedOn === null || own.discard !== 'spoiled' || takenNearSign(own, partedOn) ? own.discard : null;

/** What stops it by what was seen of the jar alone. @param discard of the jar, or of what was parted of it */
export const ownStops = (own: JarSafety, discard: Discard | null): SafetyStop[] =>
  discard !== null
    ? [discard]
    : [
        ...(own.start === 'meter only' ? ['slow start' as const] : []),
        ...(own.noAcid === null ? [] : ['no acid' as const]),
      ];

/** @param discard of the jar, or of what was parted of it @param because the gravest caution that stands on either */
function ofWhat(family: Family, key: number, discard: Discard | null, because: Caution | null): Answer {
  const own = safetyOf(family.jar(key));
  const level = because?.level ?? null;
  const half = discard === null && !own.metered && matesIn(family, family.jar(key).batch).notSet;
  const found = new Set<SafetyStop>(ownStops(own, discard));
  if (level === 'set aside') found.add('set aside');
  if (half) found.add('needs the meter');
  const stops = SAFETY_STOPS.filter((stop) => found.has(stop));
  const gate = gateAmongMates(family, key);
  return {
    discard,
    level,
    because,
    // A meter at take-out lets a jar that started slowly be eaten; nothing lets it seed.
    eat: stops.every((stop) => stop === 'slow start' && own.metered),
    seed: stops.length === 0,
    stops,
    noAcid: stops.includes('no acid') ? own.noAcid : null,
    looks: [
      ...(level === 'look' ? ['caution' as const] : []),
      ...(discard === null && own.start !== null ? ['slow start' as const] : []),
      ...(discard === null && (gate === 'thickened' || gate === 'not noted') ? [gate] : []),
      ...(discard === null && own.remarkLooks ? ['remark' as const] : []),
    ],
  };
}

const partedBefore = (of: number): Caution => ({
  of, level: 'look', relation: 'seeded before', steps: 1, via: null, cleared: null, ended: false, mayEnd: false, liftedBefore: null,
}); // prettier-ignore

/**
 * The answer for a jar, or for what was parted of it on a day. A cube has its jar's caution: freezing makes nothing safe. Only
 * what was parted long before a sign that came after opening, or before it was opened, is to be looked at instead.
 */
export function answerOf(family: Family, key: number, parted: { readonly on: string } | null = null): Answer {
  const own = safetyOf(family.jar(key));
  const discard = discardOfPart(own, parted?.on ?? null);
  const cautions = family.cautionLevelOf(key) === null ? [] : family.cautionsOf(key);
  if (discard === own.discard) return ofWhat(family, key, discard, gravest(cautions));
  // The jar's sign is not its own; whatever else stands on the jar stands on it.
  const others = gravest(cautions.filter(({ of }) => of !== key));
  return ofWhat(family, key, null, others?.level === 'set aside' ? others : partedBefore(key));
}

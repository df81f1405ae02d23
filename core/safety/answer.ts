// The one answer: may this be eaten, may it seed, and which codes stand against it. Asked by advice, drawing, picker, recording
// and whoever asks without a window. No figure is among what it reads: vigour, chances and warm hours speak of no safety.
import type { Family } from '../lineage/family';
import type { CautionLevel, FamilyJar } from '../lineage/lineage-shapes';
import type { Gate } from './gate';
import type { Discard } from './own';
import { safetyOf, sharedHold, takenNearSign } from './touch';

/**
 * What stops a jar. The three of *discard*; set aside because of a spoiled jar; needs the meter: half its batch or more did
 * not set; slow start: not sour at 24 h, so that a meter may let it be eaten and nothing lets it seed.
 */
export const SAFETY_STOPS = [
  'spoiled',
  'not set',
  'remark',
  'set aside',
  'needs the meter',
  'slow start',
] as const;
export type SafetyStop = (typeof SAFETY_STOPS)[number];

/** What has to be looked at or asked first. */
export type SafetyLook = 'caution' | 'slow start' | 'thickened' | 'not noted';

export interface Answer {
  readonly discard: Discard | null;
  readonly level: CautionLevel | null;
  /** Whether anything forbids it, as far as is known; that nothing does is no proof. */
  readonly eat: boolean;
  readonly seed: boolean;
  /** Gravest first. */
  readonly stops: readonly SafetyStop[];
  readonly looks: readonly SafetyLook[];
}

interface Batches {
  /** Batches of which half or more did not set. */
  readonly notSet: ReadonlySet<number>;
  readonly jars: ReadonlyMap<number, readonly FamilyJar[]>;
}

const known = new WeakMap<Family, Batches>();

function batchesOf(family: Family): Batches {
  const before = known.get(family);
  if (before) return before;
  const jars = new Map<number, FamilyJar[]>();
  for (const key of family.keys) {
    const jar = family.jar(key);
    if (jar.lost) continue;
    const mates = jars.get(jar.batch);
    if (mates) mates.push(jar);
    else jars.set(jar.batch, [jar]);
  }
  const notSet = new Set<number>();
  for (const [batch, mates] of jars) {
    const failed = mates.filter((jar) => safetyOf(jar).gate === 'failed').length;
    if (failed > 0 && 2 * failed >= mates.length) notSet.add(batch);
  }
  const found = { notSet, jars };
  known.set(family, found);
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
  const vouched = (batchesOf(family).jars.get(jar.batch) ?? []).some((mate) => {
    const { plain, discard, gate: its } = safetyOf(mate);
    return (
      mate.key !== key && plain && discard === null && its === 'passed' && mate.hold !== null &&
      sharedHold(jar, mate) && seedsOf(family, mate.key) === seeds
    ); // prettier-ignore
  });
  return vouched ? 'passed' : 'thickened';
}

/** A jar's own answer, before what is kept apart of it is looked at. */
function ofJar(family: Family, key: number): Answer {
  const own = safetyOf(family.jar(key));
  const level = family.cautionLevelOf(key);
  const { discard } = own;
  const half = discard === null && !own.metered && batchesOf(family).notSet.has(family.jar(key).batch);
  const late = own.start === 'meter only';
  const stops: SafetyStop[] = [
    ...(discard === null ? [] : [discard]),
    ...(level === 'set aside' ? ['set aside' as const] : []),
    ...(half ? ['needs the meter' as const] : []),
    ...(discard === null && late ? ['slow start' as const] : []),
  ];
  const gate = gateAmongMates(family, key);
  return {
    discard,
    level,
    // A meter at take-out lets a jar that started slowly be eaten; nothing lets it seed.
    eat: stops.every((stop) => stop === 'slow start' && own.metered),
    seed: stops.length === 0,
    stops,
    looks: [
      ...(level === 'look' ? ['caution' as const] : []),
      ...(discard === null && own.start !== null ? ['slow start' as const] : []),
      ...(discard === null && (gate === 'thickened' || gate === 'not noted') ? [gate] : []),
    ],
  };
}

/**
 * The answer for a jar, or for what was parted of it on a day. A cube has its jar's caution: freezing makes nothing safe. Only
 * what was parted long before a sign that came after opening, or before it was opened, is to be looked at instead.
 */
export function answerOf(family: Family, key: number, parted: { readonly on: string } | null = null): Answer {
  const answer = ofJar(family, key);
  const jar = family.jar(key);
  if (parted === null || answer.discard !== 'spoiled' || takenNearSign(jar, parted.on)) return answer;
  return { discard: null, level: 'look', eat: true, seed: true, stops: [], looks: ['caution'] };
}

// What came to stay when a line fell: another amount of seed, whey or curd as seed, another dose, vessel, carton or time
// in warmth. A batch has no plain sibling to tell such a change by, so it is named with its figures, and the fall is not
// put down to the culture.
import { mean, median } from './medians';
import type { JarEvidence } from './jar-evidence';
import { ASPECTS, type Aspect, type MadeChange } from '../shapes/vigour-codes';

/** Changes that came with one batch and stayed. */
export interface MadeOtherwise {
  /** Day of the first batch made so; null where it isn't known. */
  readonly since: string | null;
  /** Batches made so, by their keys. */
  readonly batches: readonly number[];
  readonly changes: readonly MadeChange[];
}

export interface MadeBatch {
  readonly batch: number;
  readonly madeOn: string | null;
  readonly comparable: readonly JarEvidence[];
  /** Median of its comparable jars, nothing corrected. */
  readonly points: number;
}

/** An amount counts as another one from this many times as much, or as little (common practice, no source). */
const TIMES = 1.5;
/** … and a time in warmth from this many times as long: 24 h instead of 36, not 30 (common practice, no source). */
const TIMES_HELD = 1.4;
/** Batches before and after that a change must part, and points by which those after stand below. */
const BEFORE = 3;
const AFTER = 2;
const FALLEN = 8;

const VALUES: Readonly<Record<Aspect, (jar: JarEvidence) => number | string | null>> = {
  'seed amount': ({ made }) => made.seedMl,
  'seed part': ({ made }) => made.seedPart,
  dose: ({ made: { dose } }) => dose && dose.value,
  vessel: ({ made: { vessel } }) => vessel && vessel.trim().toLowerCase(),
  carton: ({ made }) => made.carton,
  'hold hours': ({ heldHours }) => heldHours,
};

/** What a batch's jars have in common of one aspect; null where it varies or nothing is noted. */
function commonOf({ comparable }: MadeBatch, aspect: Aspect): number | string | null {
  const values = comparable.map((jar) => VALUES[aspect](jar));
  const [first = null] = values;
  if (typeof first === 'number' && aspect !== 'carton')
    return median(values.flatMap((one) => (typeof one === 'number' ? [one] : [])));
  return values.every((one) => one === first) ? first : null;
}

const differ = (aspect: Aspect, a: number | string, b: number | string): boolean =>
  typeof a === 'number' && typeof b === 'number' && aspect !== 'carton'
    ? Math.max(a, b) >= (aspect === 'hold hours' ? TIMES_HELD : TIMES) * Math.min(a, b)
    : a !== b;

/** The change of one aspect that came with the batch at a place and stayed; null where there is none. */
function changeAt(batches: readonly MadeBatch[], at: number, aspect: Aspect): MadeChange | null {
  const values = batches.map((batch) => commonOf(batch, aspect));
  const now = values[at] ?? null;
  if (now === null || values.slice(at).some((one) => one === null || differ(aspect, one, now))) return null;
  const known = values.slice(0, at).flatMap((one) => (one === null ? [] : [one]));
  // What nobody noted before may have been the same; only of whey or curd is that unlikely.
  if (known.length < BEFORE)
    return aspect === 'seed part' && known.length === 0 && now !== 'mixed'
      ? { aspect, now, before: null, unit: null }
      : null;
  if (known.some((one) => !differ(aspect, one, now))) return null;
  const before =
    typeof now === 'number'
      ? (median(known.filter((one) => typeof one === 'number')) ?? now)
      : (known.at(-1) ?? now);
  const unit = aspect === 'dose' ? (batches[at]?.comparable[0]?.made.dose?.unit ?? null) : null;
  return { aspect, now, before, unit };
}

/**
 * What came with a lasting fall and stayed: of all places where something changed, the one that parts the scores most.
 * @param batches compared ones in order of making
 * @returns null where nothing that was noted changed with a fall
 */
export function madeOtherwise(batches: readonly MadeBatch[]): MadeOtherwise | null {
  let found: MadeOtherwise | null = null;
  let most = FALLEN;
  for (let at = BEFORE; at <= batches.length - AFTER; at++) {
    const [before, after] = [batches.slice(0, at), batches.slice(at)].map(
      (part) => mean(part.map(({ points }) => points)) ?? 0,
    ) as [number, number];
    if (before - after < most) continue;
    const changes = ASPECTS.flatMap((aspect) => changeAt(batches, at, aspect) ?? []);
    if (changes.length === 0) continue;
    most = before - after;
    found = {
      since: batches[at]?.madeOn ?? null,
      batches: batches.slice(at).map(({ batch }) => batch),
      changes,
    };
  }
  return found;
}

/** A name for it, as for a treatment. */
export const madeName = ({ changes }: MadeOtherwise): string =>
  changes.map(({ aspect, now, unit }) => `${aspect} ${now}${unit === null ? '' : ` ${unit}`}`).join(', ');

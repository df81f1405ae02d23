// What judgement reads of a jar and what it answers. Plain data: core/vigour/evidence.ts makes it from the ledger.
import type { Storage } from '../growth/storage';
import type { ReadingsProfile } from '../growth/reading-profile';
import type { TimeConstant } from '../growth/time-constant';
import type { WarmPoint } from '../growth/warm-hours';
import type { DayRange } from '../quantities/day-ranges';
import type { Outcome } from '../ledger/records';
import type { Held } from '../safety/set-aside';
import type { CorrectionFor, PartName } from '../shapes/vigour-codes';

export type Seen = Pick<
  Outcome,
  | 'earlyCheckHours' | 'earlySet' | 'earlyPh' | 'setAfterHours' | 'setByHours' | 'setWord' | 'whey' | 'ph' | 'phHow' | 'tang'
>; // prettier-ignore

/** Temperatures of a hold as the jar had them, and what they rest on. */
export interface HoldWarmth {
  readonly profile: readonly WarmPoint[];
  readonly from:
    'readings in the jar' | 'readings in the bath' | 'readings in the air' | 'the planned temperature';
  /** What a probe outside the jar read, and how the jar follows it; null where it was in the jar or nothing was read. */
  readonly outside: {
    readonly read: readonly WarmPoint[];
    readonly startsAt: number;
    readonly follows: TimeConstant;
  } | null;
  /** Somebody said where the probe stood, or nothing was read. */
  readonly probeSaid: boolean;
  /** What was done with the readings: left out, gaps bridged. */
  readonly read: Pick<ReadingsProfile, 'leftOut' | 'gaps'>;
}

/** How a jar was made beyond its seed, its milk and what was stirred in; null is not noted. */
export interface Made {
  readonly vessel: string | null;
  /** The package that its milk came from, by key. */
  readonly carton: number | null;
  readonly seedPart: 'whey' | 'curd' | 'mixed' | null;
  /** Of all that seeded it. */
  readonly seedMl: number | null;
  /** Of all that was stirred in, where all of it is told in one unit. */
  readonly dose: { readonly value: number; readonly unit: string } | null;
}

/** A jar as judgement needs it. */
export interface JarEvidence {
  readonly key: number;
  readonly label: string;
  readonly madeOn: string | null;
  /** The days between which it was made, where only these are known: it stands in their middle, and has no day. */
  readonly madeBetween?: DayRange | null;
  readonly batch: number;
  readonly hold: number | null;
  /** Founding batches of the lines it belongs to. */
  readonly lines: readonly number[];
  /** Its own seeds were of different lines. */
  readonly mixes: boolean;
  /** Deepest. */
  readonly generation: number;
  /** Seeded from sources alone. */
  readonly founding: boolean;
  readonly spoiled: boolean;
  /** It was spoiled before anybody opened it; a sign seen later, or that it did not set, says nothing of what its seed carried. */
  readonly spoiledUnopened: boolean;
  /** It is set aside, or descends from a jar that is: it speaks for no jar that isn't. */
  readonly held: Held | null;
  readonly outcome: Seen | null;
  /** Names of what was stirred in, in lower case, sorted; empty is plain. */
  readonly additions: readonly string[];
  readonly milk: string | null;
  readonly made: Made;
  /** Same text for jars seeded by the very same jars and sources. */
  readonly seed: string;
  /** Batch of the jar that it hangs from; null where that is a source or unknown. */
  readonly seedBatch: number | null;
  /** Temperatures of its hold; null where none are known. */
  readonly profile: readonly WarmPoint[] | null;
  readonly warmth: HoldWarmth | null;
  /** How long it was held (h). */
  readonly heldHours: number | null;
  /** How its longest-kept seed was stored; null where days are unknown or it came from a source. */
  readonly seedStorage: Storage | null;
}

/** One thing that was seen, in points: 75 is as the line's early batches were. */
export interface Part {
  readonly name: PartName;
  readonly points: number;
  readonly weight: number;
  /** Standard error of the points, from how coarsely it was seen. */
  readonly error: number;
  readonly seen: PartSeen;
}

/** What was seen, beside what is usual; a place among the words of a scale where it is one. */
export type PartSeen =
  | {
      readonly name: 'set time';
      readonly low: number;
      readonly high: number;
      readonly warm: boolean;
      readonly usual: number;
    }
  | { readonly name: 'early pH'; readonly ph: number; readonly usual: number }
  | { readonly name: 'end pH'; readonly ph: number; readonly usual: number; readonly strip: boolean }
  | { readonly name: 'early set' | 'set word' | 'whey'; readonly at: number };

/** An early check that can't be compared: hours of warmth after which it came, and usually comes. */
export interface CheckAside {
  readonly hours: number;
  readonly usual: number;
}

export interface Correction {
  readonly name: string;
  /** Points added. */
  readonly points: number;
  readonly for: CorrectionFor;
}

export interface JarScore {
  readonly jar: JarEvidence;
  /** On the line's own scale, not cut off; the score shown is this within 0 to 100. */
  readonly points: number;
  readonly low: number;
  readonly high: number;
  readonly parts: readonly Part[];
  readonly missing: readonly PartName[];
  readonly leftAside: readonly CheckAside[];
  readonly corrections: readonly Correction[];
  /** Width of the range that the record leaves open: wide where only a set word was written down. */
  readonly width: number;
}

/** Points that mean: as the line's early batches were. */
export const USUAL_POINTS = 75;

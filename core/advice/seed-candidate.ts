// What the advice on a seed reads of each candidate, and what it makes of it. Types only.
import type { Discard, JarSafety, SafetyStop } from '../shapes/safety-codes';
import type { Doubt, Quoted, SeedCaution, SeedLook, SeedPlace, SeedStop } from '../shapes/seed-codes';
import type { CautionLevel } from '../shapes/caution-codes';
import type { Scored } from './scored';
import type { CostBasis } from './seed-cost';
import type { SeedLevel } from './seed-level';

/** The keeper's own limits; null is none. */
export interface SeedLimits {
  readonly fridgeDays: number | null;
  readonly freezerDays: number | null;
  readonly generation: number | null;
}

/** What may seed the next batch, with all that is known of it. */
export interface SeedCandidate extends Scored {
  /** Jar or portion id, for the caller. */
  readonly id: string;
  readonly label: string;
  readonly kind: 'jar' | 'portion' | 'reserve' | 'older sibling';
  /** The batch of its jar: what scores one of its jars scores all. */
  readonly batch: string;
  /** Founding batches of the lines it carries. */
  readonly lines: readonly string[];
  readonly generation: number;
  /** Any path runs into a past that isn't known: its generation is at least that. */
  readonly atLeast: boolean;
  /** The path runs into a jar of which nobody knows the seed, not into a received culture. */
  readonly pastUnknown: boolean;
  readonly discard: Discard | null;
  readonly spoiled: boolean;
  /** What stops it by the one answer on safety, gravest first. */
  readonly stops: readonly SafetyStop[];
  /** It smelled sour and clean at take-out and a curd held, or a meter showed it: of equals the known come first. */
  readonly passed: boolean;
  /** The pH because of which it is no seed although nobody said that it did not set; null where that is not so. */
  readonly acidNotThere: JarSafety['noAcid'];
  /** The gravest caution that stands, and what it is about. */
  readonly caution: SeedCaution | null;
  /** What its own hold leaves in doubt (doubts.ts): no stop, but it comes last of all. */
  readonly doubts: readonly Doubt[];
  /** Remarks that nobody has answered. */
  readonly quotes: readonly Quoted[];
  /** What is to be looked at first although it leaves no doubt of the jar itself (doubts.ts, way-back.ts). */
  readonly asks: readonly SeedLook[];
  /** Nobody has seen how it came out, and its hold may not have ended (in-hold.ts). */
  readonly inHold: boolean;
  /** Somebody said that it is still kept. */
  readonly keptSaid: boolean;
  readonly place: SeedPlace;
  /** Days it has been kept there; of a jar that was made on one of several days, by the first of them. */
  readonly days: number;
  /** By the last of them; not there where its day is known. */
  readonly daysLeast?: number;
  /** Hours that its storage should cost the next jar. */
  readonly delayHours: number;
  readonly outcomeKnown: boolean;
  /** What its batch promises by the posterior of its line (seed-level.ts); null where no line tells. */
  readonly level: SeedLevel | null;
}

/** A candidate with the ids that a reply names. */
export type KeptSeed = SeedCandidate & { readonly jar: string; readonly portion: string | null };

/** What the ranking stands on. */
export interface NextInput extends CostBasis {
  readonly candidates: readonly SeedCandidate[];
  readonly limits: SeedLimits;
  /** Of the costs: a currency, or 'jars'. */
  readonly unit: string;
  /** Jars of the keeper's own that those chances rest on. */
  readonly jarsTell: number;
  /** How a fresh start from sources is called. */
  readonly freshLabel: string;
  /** Treatments that can't be told from the culture: no plain sibling. */
  readonly blocked: readonly string[];
  /** Names of lines, by the ids used in candidates. */
  readonly lineNames: ReadonlyMap<string, string>;
}

/** A candidate, or a fresh start, in its place. */
export interface Ranked {
  readonly id: string | null;
  readonly label: string;
  readonly kind: SeedCandidate['kind'] | 'fresh start';
  readonly allowed: boolean;
  /** Whether it was seen how it came out; a jar in doubt comes last. */
  readonly tells: 'seen' | 'unseen' | 'in doubt';
  /** What leaves it in doubt: to be said wherever it is offered. */
  readonly doubts: readonly Doubt[];
  /** What has to be looked at first: to be said wherever it is offered. */
  readonly looks: readonly SeedLook[];
  readonly keptSaid: boolean;
  /** It is known to have passed the gate; else that is said, and it stands behind equals that are known. */
  readonly passed: boolean;
  readonly discard: Discard | null;
  readonly level: CautionLevel | null;
  readonly stops: readonly SeedStop[];
  /** Expected cost of a good jar; null where it may not be used. */
  readonly cost: number | null;
  /** The same as it counts for its place (ranking-order.ts). */
  readonly placeCost: number | null;
  /** What it scored itself, as it is shown: of equals the better comes first. */
  readonly own: number | null;
  /** Days it has been kept, and what going on from it is worth beyond a fresh start (jars), where a line tells. */
  readonly days: number;
  readonly worth: number | null;
  /** What it costs that it may carry on unseen what spoiled a whole batch (jars; carried.ts). */
  readonly carries: number;
  readonly weakChance: number | null;
  /** What it was ranked by; null: the fresh start. */
  readonly candidate: SeedCandidate | null;
}

/** A ranking: facts and figures; core/says/next-says.ts makes the sentences. */
export interface NextAdvice {
  /** What a jar costs: the scale on which costs are near ties. */
  readonly jar: number;
  readonly ranking: readonly Ranked[];
  readonly nothingMayBeUsed: boolean;
  /** What alone still carries a line and may be used: to be warned of before it is eaten. */
  readonly lastOf: readonly { readonly only: SeedCandidate; readonly line: string }[];
}

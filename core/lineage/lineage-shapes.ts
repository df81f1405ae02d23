// What lineage reads and what it answers. Keys are the ledger's integer keys: speed inside, uids outside.
import { type DayRange, middleDay } from '../quantities/day-ranges';
import type { JarSafety } from '../shapes/safety-codes';

/** A made (or lost) jar as lineage needs it. Planned jars and stubs of mistakes never get here. */
export interface FamilyJar {
  readonly key: number;
  /** YYYY-MM-DD; null where the day is not known. */
  readonly madeOn: string | null;
  /** The days between which it was made, where only these are known. */
  readonly madeBetween?: DayRange | null;
  readonly batch: number;
  readonly hold: number | null;
  readonly letter: string;
  /** Printed label, used as the last tie-break of the drawing order. */
  readonly label: string;
  readonly lost: boolean;
  readonly finalVolumeMl: number | null;
  /** Measured only. */
  readonly countPerMl: number | null;
  /** Neither food nor seed: spoiled, not set, or by a remark (`safety` says which). */
  readonly spoiled: boolean;
  /** What was seen of it, as far as safety rests on it; where nothing is given, nothing was seen but what `spoiled` says. */
  readonly safety?: JarSafety;
  /** Made of raw milk, as far as its name says. */
  readonly rawMilk?: boolean;
  /** Packages used in it (sources, milk, additions). */
  readonly packages: readonly number[];
}

type DaysMade = Pick<FamilyJar, 'madeOn' | 'madeBetween'>;

/** The day a jar stands at among others: its own, or the middle of its range; null where nothing is known of it. */
export const dayInOrder = ({ madeOn, madeBetween }: DaysMade): string | null =>
  madeOn ?? (madeBetween ? middleDay(madeBetween) : null);

/** By the day each stands at; what has none comes first. */
export const compareDays = (a: DaysMade, b: DaysMade): number => {
  const [one, other] = [dayInOrder(a) ?? '', dayInOrder(b) ?? ''];
  return one < other ? -1 : one > other ? 1 : 0;
};

/** The earliest and the latest day it can have been made on. */
export const earliestDay = ({ madeOn, madeBetween }: DaysMade): string | null =>
  madeOn ?? madeBetween?.from ?? null;
export const latestDay = ({ madeOn, madeBetween }: DaysMade): string | null =>
  madeOn ?? madeBetween?.to ?? null;

/** One edge. Exactly one of fromJar and source is set. */
export interface FamilySeeding {
  readonly key: number;
  readonly jar: number;
  readonly fromJar: number | null;
  readonly source: number | null;
  readonly volumeMl: number | null;
  readonly pieces: number | null;
  /** Declared count of all strains in one piece, or a direct count in CFU when the amount was given so. */
  readonly countPerPiece: number | null;
  readonly countDirect: number | null;
  /** The day on which it was parted from the jar, where that was before it was used (a pot, a cube). */
  readonly takenOn?: string | null;
}

export interface FamilySource {
  readonly key: number;
  readonly name: string;
  readonly culture: boolean;
  /** For a received culture: generations known to have run; null: past unknown, so "at least". */
  readonly knownGenerations: number | null;
}

export interface FamilyClearing {
  readonly jar: number;
  readonly of: number;
  readonly reason: string;
  /** More is known of the spoilage now than when this was written, so that it lifts nothing any more. */
  readonly outdated?: boolean;
}

export interface FamilyRecords {
  readonly jars: readonly FamilyJar[];
  readonly seedings: readonly FamilySeeding[];
  readonly sources: readonly FamilySource[];
  readonly clearings: readonly FamilyClearing[];
}

export type ShareBasis = 'count' | 'volume' | 'pieces' | 'equal, assumed';

/** Density assumed where none was measured (CFU per mL): Hekmat & Reid 2007, doi 10.1111/j.1365-2621.2006.01292.x. */
export const DEFAULT_COUNT_PER_ML = 2e8;

export interface Generation {
  readonly deepest: number;
  readonly shallowest: number;
  readonly mean: number;
  readonly atLeast: boolean;
}

/** Doublings summed down the line; null where something needed was not recorded. */
export interface Doublings {
  readonly transfers: number | null;
  readonly start: number | null;
}

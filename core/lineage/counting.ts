// The counts of one jar, from the counts of what seeded it: generation, doublings, shares, traced shares, lines.
// Columns hold one slot per jar; a slot is given once to a key and never to another.
import { dayNumber } from './calendar';
import { LineSets } from './line-sets';
import { doublingsInJar, shareSeeds, type SeedContext } from './seed-shares';
import type { FamilyJar, FamilySeeding, FamilySource, ShareBasis } from './types';

/** Stands for "unknown past" among the sources of a traced share; ledger keys start at 1. */
export const UNKNOWN_PAST = 0;

/** Where a seeding comes from, when not from a jar of this family. */
export const FROM_SOURCE = -1;
/** From a jar the family does not hold (a stub of a mistake): what it was, nobody knows. */
export const FROM_UNKNOWN = -2;

/** Before any day that can be written. */
export const UNKNOWN_DAY = -(2 ** 31);

/** What part traces back to each source: ascending source keys, shares summing to 1. Shared between jars, never changed. */
export interface Traced {
  readonly sources: readonly number[];
  readonly shares: readonly number[];
}

/** The keys of all versions of a family: a key keeps its slot, so that versions can share this. */
export interface SlotIndex {
  readonly slotOf: Map<number, number>;
  readonly keyOf: number[];
}

export const BASES: readonly ShareBasis[] = ['count', 'volume', 'pieces', 'equal, assumed'];
const NO_BASIS = 255;

const NOTHING: readonly never[] = [];
const ALL_UNKNOWN: Traced = { sources: [UNKNOWN_PAST], shares: [1] };

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((value, i) => Object.is(value, b[i])));

function grown<T extends Int32Array | Float64Array | Uint8Array>(
  make: new (length: number) => T,
  old: T,
  size: number,
): T {
  const wider = new make(size);
  wider.set(old as never);
  return wider;
}

/** A copy with empty slots at its end, made at once: a copy that is pushed to is copied again. */
const lengthened = <T>(old: readonly T[], size: number, empty: T): T[] =>
  old.concat(Array.from({ length: size - old.length }, () => empty));

/** Every count of one jar, to be compared with what it was. */
interface Counts {
  readonly numbers: readonly number[];
  readonly shares: readonly number[];
  readonly traced: Traced;
}

/** One version of a family, as columns. Written only while it is being built; read-only afterwards. */
export class FamilyColumns {
  jars: (FamilyJar | undefined)[] = [];
  /** What seeded each jar, by seeding key. */
  seedings: (readonly FamilySeeding[])[] = [];
  /** Slot of each seeding's jar, or FROM_SOURCE, or FROM_UNKNOWN; same order as `seedings`. */
  seedSlots: (readonly number[])[] = [];
  /** Slots seeded by each jar, each once, by key. */
  children: (readonly number[])[] = [];
  shares: (readonly number[])[] = [];
  traced: (Traced | undefined)[] = [];
  deepest = new Int32Array(0);
  shallowest = new Int32Array(0);
  mean = new Float64Array(0);
  /** 1 where any path runs into an unknown past. */
  atLeast = new Uint8Array(0);
  /** Index in BASES, or NO_BASIS for a jar with no recorded seed. */
  basis = new Uint8Array(0);
  /** Doublings in this jar; NaN is unknown (these three columns only, never outside this folder). */
  own = new Float64Array(0);
  transfers = new Float64Array(0);
  start = new Float64Array(0);
  lineSet = new Int32Array(0);
  /** Day made, as in dayNumber; UNKNOWN_DAY for a lost jar of unknown day. */
  day = new Int32Array(0);

  constructor(
    readonly index: SlotIndex,
    readonly lineSets: LineSets,
    readonly sources: ReadonlyMap<number, FamilySource>,
  ) {}

  /** A version of its own to write in, with room for `size` slots. */
  copy(size: number, sources: ReadonlyMap<number, FamilySource>): FamilyColumns {
    const next = new FamilyColumns(this.index, this.lineSets, sources);
    next.jars = lengthened(this.jars, size, undefined);
    next.seedings = lengthened(this.seedings, size, NOTHING);
    next.seedSlots = lengthened(this.seedSlots, size, NOTHING);
    next.children = lengthened(this.children, size, NOTHING);
    next.shares = lengthened(this.shares, size, NOTHING);
    next.traced = lengthened(this.traced, size, undefined);
    next.deepest = grown(Int32Array, this.deepest, size);
    next.shallowest = grown(Int32Array, this.shallowest, size);
    next.mean = grown(Float64Array, this.mean, size);
    next.atLeast = grown(Uint8Array, this.atLeast, size);
    next.basis = grown(Uint8Array, this.basis, size);
    next.own = grown(Float64Array, this.own, size);
    next.transfers = grown(Float64Array, this.transfers, size);
    next.start = grown(Float64Array, this.start, size);
    next.lineSet = grown(Int32Array, this.lineSet, size);
    next.day = grown(Int32Array, this.day, size);
    return next;
  }

  /** The slot of a jar this version holds, or -1. */
  slot(key: number): number {
    const slot = this.index.slotOf.get(key);
    return slot !== undefined && slot < this.jars.length && this.jars[slot] ? slot : -1;
  }

  /** Seed shares and doublings in the jar itself: what depends on the jar, its seedings and its seeds' densities. */
  #weigh(slot: number, jar: FamilyJar): void {
    const seedings = this.seedings[slot] as readonly FamilySeeding[];
    if (seedings.length === 0) {
      this.shares[slot] = NOTHING;
      this.basis[slot] = NO_BASIS;
      this.own[slot] = NaN;
      return;
    }
    const from = this.seedSlots[slot] as readonly number[];
    const contextOf = (i: number): SeedContext => {
      const source = (seedings[i] as FamilySeeding).source;
      return {
        density: this.jars[from[i] as number]?.countPerMl ?? null,
        culture: source !== null && (this.sources.get(source)?.culture ?? false),
      };
    };
    const weighed = shareSeeds(seedings, contextOf);
    this.shares[slot] = weighed.shares;
    this.basis[slot] = BASES.indexOf(weighed.basis);
    this.own[slot] = doublingsInJar(jar.finalVolumeMl, jar.countPerMl, weighed.countIn) ?? NaN;
  }

  /**
   * Counts one jar; everything that seeded it must be counted already. True where any count came out different from
   * what stood there, so that only then what it seeded has to be counted again.
   */
  count(slot: number): boolean {
    const jar = this.jars[slot] as FamilyJar;
    const before = this.#snapshot(slot);
    this.#weigh(slot, jar);
    this.day[slot] = jar.madeOn === null ? UNKNOWN_DAY : dayNumber(jar.madeOn);
    const seedings = this.seedings[slot] as readonly FamilySeeding[];
    const from = this.seedSlots[slot] as readonly number[];
    const shares = this.shares[slot] as readonly number[];
    const own = this.own[slot] as number;
    let deepest = 0;
    let shallowest = Infinity;
    let mean = 0;
    let lowestMean = Infinity;
    let highestMean = 0;
    // A lost jar stands for a past that nobody can name, whatever else is known of it.
    let atLeast = jar.lost || seedings.length === 0;
    let transfers = 0;
    let start = 0;
    let lineSet = 0;
    let sourcesOnly = seedings.length > 0;
    for (let i = 0; i < seedings.length; i++) {
      const seed = from[i] as number;
      const share = shares[i] as number;
      let seedDeepest = 0;
      let seedShallowest = 0;
      let seedMean = 0;
      if (seed === FROM_SOURCE) {
        const source = this.sources.get((seedings[i] as FamilySeeding).source as number);
        if (!source) throw new Error('a seeding names a source that the family was not given');
        if (source.culture) {
          // A received culture has been grown at least once before it came here.
          seedDeepest = seedShallowest = seedMean = source.knownGenerations ?? 1;
          atLeast ||= source.knownGenerations === null;
        }
        if (share > 0) start += share * own;
      } else if (seed === FROM_UNKNOWN) {
        sourcesOnly = false;
        seedDeepest = seedShallowest = seedMean = 1;
        atLeast = true;
        if (share > 0) transfers = start = NaN;
      } else {
        sourcesOnly = false;
        seedDeepest = this.deepest[seed] as number;
        seedShallowest = this.shallowest[seed] as number;
        seedMean = this.mean[seed] as number;
        if (this.atLeast[seed]) atLeast = true;
        lineSet = this.lineSets.union(lineSet, this.lineSet[seed] as number);
        if (share > 0) {
          transfers += share * ((this.transfers[seed] as number) + own);
          start += share * (this.start[seed] as number);
        }
      }
      if (seedDeepest > deepest) deepest = seedDeepest;
      if (seedShallowest < shallowest) shallowest = seedShallowest;
      mean += share * (1 + seedMean);
      if (seedMean < lowestMean) lowestMean = seedMean;
      if (seedMean > highestMean) highestMean = seedMean;
    }
    const seeded = seedings.length > 0;
    this.deepest[slot] = deepest + 1;
    this.shallowest[slot] = seeded ? shallowest + 1 : 1;
    // Held between its seeds’ means: shares that sum to 1 but for a rounding must not make a 3 a 2.9999999999999996.
    this.mean[slot] = seeded ? Math.min(Math.max(mean, 1 + lowestMean), 1 + highestMean) : 1;
    this.atLeast[slot] = atLeast ? 1 : 0;
    this.transfers[slot] = seeded ? transfers : NaN;
    this.start[slot] = seeded ? start : NaN;
    // A lost jar founds no line: its batch is nobody's founding batch.
    this.lineSet[slot] = sourcesOnly && !jar.lost ? this.lineSets.single(jar.batch) : lineSet;
    this.traced[slot] = this.#trace(slot);
    return before === null || this.#differs(slot, before);
  }

  /** What part traces back to each source. A jar with one seed shares the record of that seed. */
  #trace(slot: number): Traced {
    const seedings = this.seedings[slot] as readonly FamilySeeding[];
    const from = this.seedSlots[slot] as readonly number[];
    const shares = this.shares[slot] as readonly number[];
    const of = (i: number): Traced => {
      const seed = from[i] as number;
      if (seed >= 0) return this.traced[seed] as Traced;
      if (seed === FROM_UNKNOWN) return ALL_UNKNOWN;
      return { sources: [(seedings[i] as FamilySeeding).source as number], shares: [1] };
    };
    if (seedings.length === 0) return ALL_UNKNOWN;
    if (seedings.length === 1) return of(0);
    const parts = new Map<number, number>();
    let total = 0;
    for (let i = 0; i < seedings.length; i++) {
      const seed = of(i);
      for (let k = 0; k < seed.sources.length; k++) {
        const part = (shares[i] as number) * (seed.shares[k] as number);
        if (part === 0) continue;
        const source = seed.sources[k] as number;
        parts.set(source, (parts.get(source) ?? 0) + part);
        total += part;
      }
    }
    const sources = [...parts.keys()].toSorted((a, b) => a - b);
    // Over the total, so that rounding can't build up along a line of a hundred thousand mixtures.
    return { sources, shares: sources.map((source) => (parts.get(source) as number) / total) };
  }

  #snapshot(slot: number): Counts | null {
    if (this.traced[slot] === undefined) return null;
    return {
      numbers: [this.deepest, this.shallowest, this.mean, this.atLeast, this.basis, this.own, this.transfers, this.start, this.lineSet].map((column) => column[slot] as number), // prettier-ignore
      shares: this.shares[slot] as readonly number[],
      traced: this.traced[slot] as Traced,
    };
  }

  #differs(slot: number, before: Counts): boolean {
    const after = this.#snapshot(slot) as Counts;
    return !(
      same(before.numbers, after.numbers) &&
      same(before.shares, after.shares) &&
      (before.traced === after.traced ||
        (same(before.traced.sources, after.traced.sources) &&
          same(before.traced.shares, after.traced.shares)))
    );
  }
}

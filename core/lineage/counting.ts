// The counts of one jar, from the counts of what seeded it: generation, doublings, shares, traced shares, lines.
// Columns hold one slot per jar; a slot is given once to a key and never to another.
import { dayNumber } from './calendar';
import { LineSets } from './line-sets';
import { primarySeed } from './primary-seed';
import { doublingsInJar, shareSeeds, type SeedContext } from './seed-shares';
import {
  dayInOrder,
  type FamilyJar,
  type FamilySeeding,
  type FamilySource,
  type ShareBasis,
} from './lineage-shapes';

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

/** Which slots were ever of a batch or a package, in any version: who asks looks whether they still are. */
class EverOf {
  readonly #slots = new Map<number, Set<number>>();

  note(key: number, slot: number): void {
    const slots = this.#slots.get(key);
    if (slots) slots.add(slot);
    else this.#slots.set(key, new Set([slot]));
  }

  of(key: number): Iterable<number> {
    return this.#slots.get(key) ?? NOTHING;
  }
}

export const BASES: readonly ShareBasis[] = ['count', 'volume', 'pieces', 'equal, assumed'];
const NO_BASIS = 255;

const NOTHING: readonly never[] = [];
const ALL_UNKNOWN: Traced = { sources: [UNKNOWN_PAST], shares: [1] };

const same = (a: readonly number[], b: readonly number[]): boolean =>
  a === b || (a.length === b.length && a.every((value, i) => Object.is(value, b[i])));

type Column = Int32Array<ArrayBuffer> | Float64Array<ArrayBuffer> | Uint8Array<ArrayBuffer>;

function grown<T extends Column>(make: new (length: number) => T, old: T, size: number): T {
  const wider = new make(size);
  wider.set(old as never);
  return wider;
}

/** All that stands of one jar. */
export interface Row {
  readonly jar: FamilyJar | undefined;
  readonly seedings: readonly FamilySeeding[];
  readonly seedSlots: readonly number[];
  readonly children: readonly number[];
  readonly shares: readonly number[];
  readonly traced: Traced | undefined;
  readonly numbers: readonly number[];
}

/** A family as columns, shared by its versions (versions.ts). Written only while a version is being made. */
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
  /** Seedings on the way back along the seeds that each hangs from, and how many of those jars had another seed beside. */
  wayLength = new Int32Array(0);
  wayMixed = new Int32Array(0);
  /** The jar on that way that hangs from its first one; -1 for the first one itself. */
  wayFirst = new Int32Array(0);
  /** Day made, as in dayNumber; the middle of a range; UNKNOWN_DAY where nothing is known of it. */
  day = new Int32Array(0);
  readonly #everInBatch = new EverOf();
  readonly #everOfPackage = new EverOf();
  /** While a version is made from another: rows as they are in that one. */
  kept: Map<number, Row> | null = null;

  constructor(
    readonly index: SlotIndex,
    readonly lineSets: LineSets,
    /** Of the version that the columns stand as. */
    public sources: ReadonlyMap<number, FamilySource>,
  ) {}

  /** Makes room for `size` slots. Columns of numbers grow by doubling and may be longer than there are slots. */
  widen(size: number): void {
    for (let slot = this.jars.length; slot < size; slot++) {
      this.jars.push(undefined);
      this.seedings.push(NOTHING);
      this.seedSlots.push(NOTHING);
      this.children.push(NOTHING);
      this.shares.push(NOTHING);
      this.traced.push(undefined);
    }
    if (size <= this.day.length) return;
    const room = Math.max(size, 2 * this.day.length);
    this.deepest = grown(Int32Array, this.deepest, room);
    this.shallowest = grown(Int32Array, this.shallowest, room);
    this.mean = grown(Float64Array, this.mean, room);
    this.atLeast = grown(Uint8Array, this.atLeast, room);
    this.basis = grown(Uint8Array, this.basis, room);
    this.own = grown(Float64Array, this.own, room);
    this.transfers = grown(Float64Array, this.transfers, room);
    this.start = grown(Float64Array, this.start, room);
    this.lineSet = grown(Int32Array, this.lineSet, room);
    this.wayLength = grown(Int32Array, this.wayLength, room);
    this.wayMixed = grown(Int32Array, this.wayMixed, room);
    this.wayFirst = grown(Int32Array, this.wayFirst, room);
    this.day = grown(Int32Array, this.day, room);
  }

  get #numbers(): Column[] {
    return [
      this.deepest,
      this.shallowest,
      this.mean,
      this.atLeast,
      this.basis,
      this.own,
      this.transfers,
      this.start,
      this.lineSet,
      this.wayLength,
      this.wayMixed,
      this.wayFirst,
      this.day,
    ];
  }

  #row(slot: number): Row {
    return {
      jar: this.jars[slot],
      seedings: this.seedings[slot] as readonly FamilySeeding[],
      seedSlots: this.seedSlots[slot] as readonly number[],
      children: this.children[slot] as readonly number[],
      shares: this.shares[slot] as readonly number[],
      traced: this.traced[slot],
      numbers: this.#numbers.map((column) => column[slot] as number),
    };
  }

  /**
   * Has to come before anything of a slot is written.
   * @returns its row as it was before this version; undefined while no version is made from another
   */
  keep(slot: number): Row | undefined {
    let row = this.kept?.get(slot);
    if (!row) this.kept?.set(slot, (row = this.#row(slot)));
    return row;
  }

  /** Writes a jar's record; its counts come after. */
  put(slot: number, jar: FamilyJar): void {
    this.jars[slot] = jar;
    this.#everInBatch.note(jar.batch, slot);
    for (const used of jar.packages) this.#everOfPackage.note(used, slot);
  }

  /** Slots of a batch's jars. */
  inBatch(batch: number): number[] {
    return [...this.#everInBatch.of(batch)].filter((slot) => this.jars[slot]?.batch === batch);
  }

  /** Slots of the jars that something of a package went into. */
  ofPackage(key: number): number[] {
    return [...this.#everOfPackage.of(key)].filter((slot) => this.jars[slot]?.packages.includes(key));
  }

  /** Puts rows in the place of those that stand there. @returns those that stood there */
  exchange(rows: ReadonlyMap<number, Row>): Map<number, Row> {
    const stood = new Map<number, Row>();
    const columns = this.#numbers;
    for (const [slot, row] of rows) {
      stood.set(slot, this.#row(slot));
      this.jars[slot] = row.jar;
      this.seedings[slot] = row.seedings;
      this.seedSlots[slot] = row.seedSlots;
      this.children[slot] = row.children;
      this.shares[slot] = row.shares;
      this.traced[slot] = row.traced;
      for (let i = 0; i < columns.length; i++) (columns[i] as Column)[slot] = row.numbers[i] as number;
    }
    return stood;
  }

  /** The slot of a jar the version holds, or -1. */
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
    const kept = this.keep(slot);
    const before = this.traced[slot] === undefined ? undefined : kept;
    this.#weigh(slot, jar);
    const day = dayInOrder(jar);
    this.day[slot] = day === null ? UNKNOWN_DAY : dayNumber(day);
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
    this.#countWay(slot);
    return before === undefined || this.#differs(slot, before);
  }

  /** The way back, from that of the seed it hangs from. */
  #countWay(slot: number): void {
    const seed = primarySeed(this, slot);
    const none = seed < 0;
    const mixed = (this.seedSlots[slot] as readonly number[]).some((other) => other !== seed);
    const length = none ? -1 : (this.wayLength[seed] as number);
    this.wayLength[slot] = length + 1;
    this.wayMixed[slot] = none ? 0 : (this.wayMixed[seed] as number) + (mixed ? 1 : 0);
    this.wayFirst[slot] = length > 0 ? (this.wayFirst[seed] as number) : none ? -1 : slot;
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

  #differs(slot: number, before: Row): boolean {
    const [was, is] = [before.traced as Traced, this.traced[slot] as Traced];
    return !(
      this.#numbers.every((column, i) => Object.is(column[slot], before.numbers[i])) &&
      same(before.shares, this.shares[slot] as readonly number[]) &&
      (was === is || (same(was.sources, is.sources) && same(was.shares, is.shares)))
    );
  }
}

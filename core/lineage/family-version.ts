// One version of a family, and every question that can be asked of it. Read-only: family.ts makes versions.
import { Cautions } from './cautions';
import { BASES, type FamilyColumns, UNKNOWN_PAST } from './counting';
import { reachDown, reachUp } from './descent';
import type {
  Doublings,
  FamilyClearing,
  FamilyJar,
  FamilySeeding,
  FamilySource,
  Generation,
  ShareBasis,
} from './lineage-shapes';
import { dayInOrder } from './lineage-shapes';
import type { Version } from './versions';
import type { Caution, CautionLevel } from '../shapes/caution-codes';

/** A line: the source-only jars of one batch and all that descends from them. */
export interface Line {
  /** Key of the founding batch. */
  readonly batch: number;
  readonly founded: string | null;
  /** Keys of the jars that founded it, by letter. */
  readonly founders: readonly number[];
  /** Founders and descendants together. */
  readonly jarCount: number;
}

export interface TracedShare {
  /** null: an unknown past (a lost jar, or one with no recorded seed). */
  readonly source: number | null;
  readonly share: number;
}

/** Null where it is not known; neither is what absurd volumes make boundless. */
const number = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** One version of a family. Every answer is by jar key; asking for a jar it does not hold throws. */
export class Family {
  #cautions: Cautions | undefined;
  #lines: readonly Line[] | undefined;

  constructor(
    /** For the files of this folder. */
    readonly version: Version,
    readonly clearings: readonly FamilyClearing[],
    /** Slots whose seeds the family does not hold, by the key of the missing jar. */
    readonly missing: ReadonlyMap<number, readonly number[]>,
    /** Slots of the spoiled jars. */
    readonly spoiled: ReadonlySet<number>,
  ) {}

  /** For the files of this folder: never held while another version is asked. */
  get columns(): FamilyColumns {
    return this.version.columns;
  }

  #slot(key: number): number {
    const slot = this.columns.slot(key);
    if (slot < 0) throw new RangeError(`the family holds no jar ${key}`);
    return slot;
  }

  #keys(slots: Iterable<number>): number[] {
    return Array.from(slots, (slot) => this.columns.index.keyOf[slot] as number);
  }

  has(key: number): boolean {
    return this.columns.slot(key) >= 0;
  }

  /** Keys of all jars, in the order they came in. */
  get keys(): number[] {
    const keys: number[] = [];
    for (const jar of this.columns.jars) if (jar) keys.push(jar.key);
    return keys;
  }

  jar(key: number): FamilyJar {
    return this.columns.jars[this.#slot(key)] as FamilyJar;
  }

  /** The jars of a batch, in no order; as many steps as it ever held jars. */
  inBatch(batch: number): FamilyJar[] {
    const { columns } = this;
    return columns.inBatch(batch).map((slot) => columns.jars[slot] as FamilyJar);
  }

  source(key: number): FamilySource | undefined {
    return this.columns.sources.get(key);
  }

  /**
   * Deepest: 1 for a jar seeded from sources alone, else 1 + the deepest that seeded it; shallowest likewise; mean
   * weighted by seed share. A received culture counts as the generations it is known to have run, or as 1.
   */
  generationOf(key: number): Generation {
    const slot = this.#slot(key);
    const { deepest, shallowest, mean, atLeast } = this.columns;
    return {
      deepest: deepest[slot] as number,
      shallowest: shallowest[slot] as number,
      mean: mean[slot] as number,
      atLeast: atLeast[slot] === 1,
    };
  }

  /**
   * Doublings down the line, weighted by seed share: `transfers` from jar to jar, `start` from sources. Each is null
   * where an amount it needs was not recorded anywhere on the way; the other may still be known (an undeclared count
   * leaves the start unknown and the transfers known; a missing volume in a jar seeded from jars, the other way round).
   */
  doublingsOf(key: number): Doublings {
    const slot = this.#slot(key);
    return {
      transfers: number(this.columns.transfers[slot] as number),
      start: number(this.columns.start[slot] as number),
    };
  }

  /** Doublings in this jar alone; null where volume or a count is unknown. */
  ownDoublingsOf(key: number): number | null {
    return number(this.columns.own[this.#slot(key)] as number);
  }

  /** Seeding key → seed share. The shares of a jar sum to 1. */
  sharesOf(key: number): ReadonlyMap<number, number> {
    const slot = this.#slot(key);
    const shares = this.columns.shares[slot] as readonly number[];
    return new Map(
      (this.columns.seedings[slot] as readonly FamilySeeding[]).map((s, i) => [s.key, shares[i] as number]),
    );
  }

  /** What the seed shares rest on; null for a jar with no recorded seed. */
  basisOf(key: number): ShareBasis | null {
    return BASES[this.columns.basis[this.#slot(key)] as number] ?? null;
  }

  /** What part of the inoculum traces back to each source along all paths, if all had grown equally; sums to 1. */
  tracedSharesOf(key: number): readonly TracedShare[] {
    const traced = this.columns.traced[this.#slot(key)];
    if (!traced) throw new Error('a jar of the family was never counted');
    return traced.sources.map((source, i) => ({
      source: source === UNKNOWN_PAST ? null : source,
      share: traced.shares[i] as number,
    }));
  }

  /** Keys of the founding batches of the lines it belongs to, ascending; none where its past is unknown. */
  linesOf(key: number): readonly number[] {
    return this.columns.lineSets.lines(this.columns.lineSet[this.#slot(key)] as number);
  }

  /** All seedings of a jar, by seeding key. */
  seedsOf(key: number): readonly FamilySeeding[] {
    return this.columns.seedings[this.#slot(key)] as readonly FamilySeeding[];
  }

  /** Jars it seeded, each once, by key. */
  childrenOf(key: number): number[] {
    return this.#keys(this.columns.children[this.#slot(key)] as readonly number[]);
  }

  /** All jars it descends from, nearest first, or the nearest so many. */
  ancestorsOf(key: number, atMost?: number): number[] {
    return this.#keys(reachUp(this.columns, [this.#slot(key)], atMost).slots);
  }

  /** All jars that descend from it, nearest first, or the nearest so many. */
  descendantsOf(key: number, atMost?: number): number[] {
    return this.#keys(reachDown(this.columns, [this.#slot(key)], atMost).slots);
  }

  get #allCautions(): Cautions {
    return (this.#cautions ??= new Cautions(this.version, this.clearings, this.spoiled));
  }

  /** Cautions on a jar because of spoiled ones, the gravest first; one per spoiled jar. Lifted ones keep their reason. */
  cautionsOf(key: number): readonly Caution[] {
    return this.#allCautions.on(this.#slot(key));
  }

  /** The gravest caution that stands, or null. */
  cautionLevelOf(key: number): CautionLevel | null {
    return this.#allCautions.level(this.#slot(key));
  }

  /** The same by slot, for the files of this folder. */
  cautionLevelAt(slot: number): CautionLevel | null {
    return this.#allCautions.level(slot);
  }

  /** Whether a caution stands because the jar descends from a set-aside mate of a spoiled one. */
  descendsFromMate(key: number): boolean {
    return this.#allCautions.fromMate(this.#slot(key));
  }

  /** All lines, oldest first. */
  get lines(): readonly Line[] {
    return (this.#lines ??= this.#listLines());
  }

  #listLines(): readonly Line[] {
    const { jars, lineSet, lineSets } = this.columns;
    const perSet = new Map<number, number>();
    const founders = new Map<number, FamilyJar[]>();
    for (let slot = 0; slot < jars.length; slot++) {
      const jar = jars[slot];
      if (!jar) continue;
      const set = lineSet[slot] as number;
      perSet.set(set, (perSet.get(set) ?? 0) + 1);
      const seedings = this.columns.seedings[slot] as readonly FamilySeeding[];
      if (jar.lost || seedings.length === 0 || seedings.some((seeding) => seeding.source === null)) continue;
      const known = founders.get(jar.batch);
      if (known) known.push(jar);
      else founders.set(jar.batch, [jar]);
    }
    const counts = new Map<number, number>();
    for (const [set, jarsInSet] of perSet) {
      for (const line of lineSets.lines(set)) counts.set(line, (counts.get(line) ?? 0) + jarsInSet);
    }
    return [...founders]
      .map(([batch, found]) => ({
        batch,
        founded: found[0]?.madeOn ?? null,
        since: (found[0] && dayInOrder(found[0])) ?? '',
        founders: found
          .toSorted((a, b) => (a.letter < b.letter ? -1 : a.letter > b.letter ? 1 : a.key - b.key))
          .map((jar) => jar.key),
        jarCount: counts.get(batch) ?? 0,
      }))
      .toSorted((a, b) => (a.since < b.since ? -1 : a.since > b.since ? 1 : a.batch - b.batch))
      .map(({ since: _day, ...line }) => line);
  }
}

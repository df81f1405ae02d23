// The family: every jar with what it descends from, counted once and kept in columns. buildFamily counts all of it;
// changeFamily counts again only what a change reaches. Both give a new version and leave the old one
// as it was (versions.ts).
import { FamilyColumns, FROM_SOURCE, FROM_UNKNOWN } from './counting';
import { reachDown } from './descent';
import { Family } from './family-version';
import { LineSets } from './line-sets';
import { refuseLaterSeeds, seedsFirst } from './loops';
import { Version } from './versions';
import {
  dayInOrder,
  type FamilyClearing,
  type FamilyJar,
  type FamilyRecords,
  type FamilySeeding,
  type FamilySource,
} from './lineage-shapes';

export { Family, type Line, type TracedShare } from './family-version';
export { FamilyRefused } from './loops';

/** What changed, as whole records. A jar that comes in brings all its seedings along. */
export interface FamilyChange {
  readonly sources?: readonly FamilySource[];
  /** New or corrected jars. */
  readonly jars?: readonly FamilyJar[];
  /** All seedings a jar has now, in place of those it had. */
  readonly seedings?: readonly { readonly jar: number; readonly seedings: readonly FamilySeeding[] }[];
  /** Jars that are of the family no longer (planned again, a stub of a mistake); what they seeded then has an unknown past. */
  readonly gone?: readonly number[];
  /** All clearings there are now, in place of those before. */
  readonly clearings?: readonly FamilyClearing[];
}

const byKey = (a: { readonly key: number }, b: { readonly key: number }): number => a.key - b.key;

type Waiting = ReadonlyMap<number, readonly number[]>;

/** The slot for a key, given out for good. */
function slotFor(columns: FamilyColumns, key: number): number {
  const { slotOf, keyOf } = columns.index;
  let slot = slotOf.get(key);
  if (slot === undefined) {
    slot = keyOf.length;
    slotOf.set(key, slot);
    keyOf.push(key);
  }
  return slot;
}

/**
 * Counts a whole family. Seedings into jars that are not given (planned ones) are left out; seedings from jars that are
 * not given are from an unknown past. The order of the records makes no difference.
 *
 * @throws FamilyRefused 'own ancestor', naming the loop; Error where a key comes twice or a source is missing
 */
export function buildFamily(records: FamilyRecords): Family {
  const sources = new Map(records.sources.map((source) => [source.key, source]));
  const columns = new FamilyColumns({ slotOf: new Map(), keyOf: [] }, new LineSets(), sources);
  const jars = records.jars.toSorted(byKey);
  for (const jar of jars) slotFor(columns, jar.key);
  if (columns.index.keyOf.length < jars.length) throw new Error('two jars of the family have the same key');
  columns.widen(jars.length);
  const seedings: (FamilySeeding[] | undefined)[] = Array.from({ length: jars.length });
  const children: (number[] | undefined)[] = Array.from({ length: jars.length });
  jars.forEach((jar, slot) => columns.put(slot, jar));
  for (const seeding of records.seedings) {
    const slot = columns.slot(seeding.jar);
    if (slot < 0) continue;
    const own = seedings[slot];
    if (own) own.push(seeding);
    else seedings[slot] = [seeding];
  }
  const missing = new Map<number, number[]>();
  for (let slot = 0; slot < jars.length; slot++) {
    const own = seedings[slot];
    if (!own) continue;
    if (own.length > 1) own.sort(byKey);
    columns.seedings[slot] = own;
    columns.seedSlots[slot] = own.map((seeding) => {
      if (seeding.fromJar === null) return FROM_SOURCE;
      const seed = columns.slot(seeding.fromJar);
      if (seed < 0) {
        const waiting = missing.get(seeding.fromJar);
        if (!waiting) missing.set(seeding.fromJar, [slot]);
        else if (waiting.at(-1) !== slot) waiting.push(slot);
        return FROM_UNKNOWN;
      }
      // Slots come in order of key, so each list of children is in order of key, and a double would be the last.
      const found = children[seed];
      if (!found) columns.children[seed] = children[seed] = [slot];
      else if (found[found.length - 1] !== slot) found.push(slot);
      return seed;
    });
  }
  const all = Int32Array.from(jars.keys());
  for (const slot of seedsFirst(columns, all)) columns.count(slot);
  const spoiled = new Set<number>();
  for (let slot = 0; slot < jars.length; slot++) if (jars[slot]?.spoiled) spoiled.add(slot);
  return new Family(new Version(columns), records.clearings, missing, spoiled);
}

/** Links of one jar, set and taken away in a version that is being written. */
class Links {
  readonly missing: Map<number, readonly number[]>;

  constructor(
    readonly columns: FamilyColumns,
    missing: Waiting,
  ) {
    this.missing = new Map(missing);
  }

  /** Sets all seedings of a jar, in place of those it had. */
  set(slot: number, seedings: readonly FamilySeeding[]): void {
    this.clear(slot);
    const { columns } = this;
    const sorted = seedings.toSorted(byKey);
    columns.seedings[slot] = sorted;
    columns.seedSlots[slot] = sorted.map((seeding) => {
      if (seeding.fromJar === null) return FROM_SOURCE;
      const seed = columns.slot(seeding.fromJar);
      if (seed >= 0) {
        this.#addChild(seed, slot);
        return seed;
      }
      const waiting = this.missing.get(seeding.fromJar) ?? [];
      if (!waiting.includes(slot)) this.missing.set(seeding.fromJar, [...waiting, slot]);
      return FROM_UNKNOWN;
    });
  }

  clear(slot: number): void {
    const { columns } = this;
    columns.keep(slot);
    for (const seed of columns.seedSlots[slot] as readonly number[]) {
      if (seed < 0) continue;
      columns.keep(seed);
      columns.children[seed] = (columns.children[seed] as readonly number[]).filter(
        (child) => child !== slot,
      );
    }
    for (const { fromJar } of columns.seedings[slot] as readonly FamilySeeding[]) {
      const waiting = fromJar === null ? undefined : this.missing.get(fromJar);
      if (fromJar === null || !waiting) continue;
      const others = waiting.filter((other) => other !== slot);
      if (others.length > 0) this.missing.set(fromJar, others);
      else this.missing.delete(fromJar);
    }
    columns.seedings[slot] = [];
    columns.seedSlots[slot] = [];
  }

  #addChild(seed: number, child: number): void {
    const { children, index } = this.columns;
    const had = children[seed] as readonly number[];
    if (had.includes(child)) return;
    this.columns.keep(seed);
    const key = index.keyOf[child] as number;
    const after = had.findIndex((other) => (index.keyOf[other] as number) > key);
    children[seed] = after < 0 ? [...had, child] : had.toSpliced(after, 0, child);
  }
}

/** Whether something that its children's shares, or which seed they hang from, rests on differs between two records. */
const weighsOtherwise = (before: FamilyJar | undefined, after: FamilyJar): boolean =>
  !before ||
  before.countPerMl !== after.countPerMl ||
  dayInOrder(before) !== dayInOrder(after) ||
  before.label !== after.label;

/** What a change reaches, as slots. */
class Reach {
  /** To be counted again. */
  readonly recount = new Set<number>();
  /** Of which no seed may have been made later. */
  readonly checkDays = new Set<number>();
  /** Whose seedings were set. */
  readonly relinked = new Set<number>();
  /** That came, went or were written anew. */
  readonly written = new Set<number>();
  /** Keys whose record or counts came out different. */
  readonly touched = new Set<number>();
}

/** Takes jars out; what they seeded then has an unknown past. */
function takeOut(columns: FamilyColumns, links: Links, gone: readonly number[], reach: Reach): void {
  for (const key of gone) {
    const slot = columns.slot(key);
    if (slot < 0) continue;
    reach.written.add(slot);
    links.clear(slot);
    const orphans = columns.children[slot] as readonly number[];
    columns.jars[slot] = undefined;
    columns.children[slot] = [];
    columns.traced[slot] = undefined;
    // What seeded it may have gone before it in the same change.
    reach.recount.delete(slot);
    for (const child of orphans) {
      links.set(child, columns.seedings[child] as readonly FamilySeeding[]);
      reach.recount.add(child);
      reach.relinked.add(child);
    }
    reach.touched.add(key);
  }
}

/** Puts jars and seedings in. */
function putIn(columns: FamilyColumns, links: Links, change: FamilyChange, reach: Reach): void {
  const { recount, checkDays, relinked } = reach;
  for (const jar of change.jars ?? []) {
    const slot = slotFor(columns, jar.key);
    const before = columns.jars[slot];
    const children = columns.children[slot] as readonly number[];
    reach.written.add(slot);
    if (weighsOtherwise(before, jar)) for (const child of children) recount.add(child);
    columns.keep(slot);
    columns.put(slot, jar);
    recount.add(slot);
    checkDays.add(slot);
    for (const child of children) checkDays.add(child);
    reach.touched.add(jar.key);
  }
  const link = (slot: number, seedings: readonly FamilySeeding[]): void => {
    links.set(slot, seedings);
    recount.add(slot);
    checkDays.add(slot);
    relinked.add(slot);
  };
  // A jar that came (back) in: what waited for it descends from it again.
  for (const jar of change.jars ?? []) {
    for (const slot of links.missing.get(jar.key) ?? [])
      link(slot, columns.seedings[slot] as readonly FamilySeeding[]);
  }
  for (const { jar, seedings } of change.seedings ?? []) {
    const slot = columns.slot(jar);
    if (slot >= 0) link(slot, seedings);
  }
  const changedSources = new Set((change.sources ?? []).map((source) => source.key));
  if (changedSources.size === 0) return;
  columns.seedings.forEach((seedings, slot) => {
    if (seedings.some(({ source }) => source !== null && changedSources.has(source))) recount.add(slot);
  });
}

/** Counts again what is to be, and on from each jar that came out different. */
function countAgain(columns: FamilyColumns, { recount, checkDays, touched }: Reach): void {
  const reached = reachDown(columns, [...recount]).slots;
  const order = seedsFirst(columns, Int32Array.from(new Set([...recount, ...reached])));
  for (const slot of checkDays) refuseLaterSeeds(columns, slot);
  for (const slot of order) {
    if (!recount.has(slot) || !columns.count(slot)) continue;
    touched.add(columns.index.keyOf[slot] as number);
    for (const child of columns.children[slot] as readonly number[]) recount.add(child);
  }
}

/** The spoiled slots after a change, from those before. */
function spoiledAfter(
  columns: FamilyColumns,
  before: ReadonlySet<number>,
  changed: ReadonlySet<number>,
): ReadonlySet<number> {
  if (changed.size === 0) return before;
  const spoiled = new Set(before);
  for (const slot of changed) {
    if (columns.jars[slot]?.spoiled) spoiled.add(slot);
    else spoiled.delete(slot);
  }
  return spoiled;
}

/**
 * A new version with a change in it, counting again only what the change reaches. `touched`: keys of the jars whose
 * record or counts came out different, ascending; a jar that went is among them.
 *
 * @throws FamilyRefused 'own ancestor' or 'seed made later'; the version given stays as it was
 */
export function changeFamily(
  family: Family,
  change: FamilyChange,
): { readonly family: Family; readonly touched: readonly number[] } {
  const { index } = family.columns;
  const sources = new Map(family.columns.sources);
  for (const source of change.sources ?? []) sources.set(source.key, source);
  for (const jar of change.jars ?? []) slotFor(family.columns, jar.key);
  const reach = new Reach();
  const { version, value: links } = family.version.changed(index.keyOf.length, sources, (columns) => {
    const written = new Links(columns, family.missing);
    takeOut(columns, written, change.gone ?? [], reach);
    putIn(columns, written, change, reach);
    countAgain(columns, reach);
    return written;
  });
  const { touched, relinked, written } = reach;
  for (const slot of relinked) touched.add(index.keyOf[slot] as number);
  const spoiled = spoiledAfter(version.columns, family.spoiled, written);
  const next = new Family(version, change.clearings ?? family.clearings, links.missing, spoiled);
  return { family: next, touched: [...touched].toSorted((a, b) => a - b) };
}

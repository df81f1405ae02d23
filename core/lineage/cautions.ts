// Cautions on jars because of a spoiled one, as in the words of the design. Each rests on what was seen in one spoiled jar; a
// caution never causes another. Lifted only by a written reason, and only for the spoilage that was known when it was written;
// some end by themselves (clean-generations.ts).
import type { FamilyColumns } from './counting';
import { reachDown, reachUp } from './descent';
import type { FamilyClearing, FamilyJar, FamilySeeding } from './lineage-shapes';
import { endedFrom } from './clean-generations';
import {
  ENDS,
  LEVEL,
  mateRelation,
  onlyNotSet,
  safetyOf,
  seededNearSign,
  seenAfterOpening,
  sharedHold,
  STRENGTH,
} from './touch';
import { stands, type Caution, type CautionLevel, type CautionRelation } from '../shapes/caution-codes';

const GRAVITY = [null, 'look', 'set aside', 'condemned'] as const satisfies (CautionLevel | null)[];

/** Lists of slots by a key. */
class Slots {
  readonly #lists = new Map<number, number[]>();

  add(key: number, slot: number): void {
    const list = this.#lists.get(key);
    if (list) list.push(slot);
    else this.#lists.set(key, [slot]);
  }

  of(key: number): readonly number[] {
    return this.#lists.get(key) ?? [];
  }
}

/** How one spoiled jar touches a slot. */
interface Touch {
  readonly relation: CautionRelation;
  readonly steps: number;
  readonly via: number | null;
}

/** All cautions of one version of a family. What is found is kept; the version never changes. */
export class Cautions {
  readonly #version: { readonly columns: FamilyColumns };
  readonly #spoiled: ReadonlySet<number>;
  /** Spoiled slots by what ties others to them. */
  readonly #spoiledOf = { batch: new Slots(), package: new Slots(), seed: new Slots() };
  readonly #reasons = new Map<number, Map<number, string>>();
  /** Reasons that were written about less than is known now: they lift nothing, and are said. */
  readonly #outdated = new Map<number, Map<number, string>>();
  /** By spoiled slot: what a sign after opening sets aside of what descends from it, and what of its mates' has ended. */
  readonly #near = new Map<number, ReadonlySet<number>>();
  readonly #ended = new Map<number, ReadonlySet<number>>();
  #levels: Uint8Array | undefined;
  #touchedLevels: Uint8Array | undefined;
  #fromMate: Uint8Array | undefined;

  /** @param spoiled slots of all spoiled jars */
  constructor(
    version: { readonly columns: FamilyColumns },
    clearings: readonly FamilyClearing[],
    spoiled: ReadonlySet<number>,
  ) {
    this.#version = version;
    this.#spoiled = spoiled;
    const { columns } = version;
    for (const slot of spoiled) {
      const jar = this.#jar(slot);
      this.#spoiledOf.batch.add(jar.batch, slot);
      for (const used of jar.packages) this.#spoiledOf.package.add(used, slot);
      for (const seed of new Set(this.#seeds(slot))) this.#spoiledOf.seed.add(seed, slot);
    }
    for (const { jar, of, reason, outdated } of clearings) {
      const slot = columns.slot(jar);
      if (slot < 0) continue;
      const kept = outdated ? this.#outdated : this.#reasons;
      const reasons = kept.get(slot) ?? new Map<number, string>();
      reasons.set(of, reason);
      kept.set(slot, reasons);
    }
  }

  get #columns(): FamilyColumns {
    return this.#version.columns;
  }

  #jar(slot: number): FamilyJar {
    return this.#columns.jars[slot] as FamilyJar;
  }

  #seeds(slot: number): number[] {
    return (this.#columns.seedSlots[slot] as readonly number[]).filter((seed) => seed >= 0);
  }

  /** Spoiled slots that speak of their batch-mates of the hold, other than the slot itself. */
  #spoiledMates(slot: number): number[] {
    const jar = this.#jar(slot);
    return this.#spoiledOf.batch
      .of(jar.batch)
      .filter((of) => of !== slot && !seenAfterOpening(this.#jar(of)) && sharedHold(jar, this.#jar(of)));
  }

  /** Whether a mate is set aside because of a spoiled jar: not where that one only did not set, nor where it was lifted. */
  #isAside(mate: number, of: number): boolean {
    const jar = this.#jar(of);
    return !onlyNotSet(jar) && this.#reasons.get(mate)?.has(jar.key) !== true;
  }

  /** Mates of a spoiled jar, of the same hold. */
  #matesOf(of: number): number[] {
    const spoiled = this.#jar(of);
    if (seenAfterOpening(spoiled)) return [];
    const together = this.#columns.inBatch(spoiled.batch);
    return together.filter((slot) => slot !== of && sharedHold(this.#jar(slot), spoiled));
  }

  /** What descends from an opened jar by what was taken of it near the sign. */
  #nearSign(of: number): ReadonlySet<number> {
    const known = this.#near.get(of);
    if (known) return known;
    const { children, seedings } = this.#columns;
    const jar = this.#jar(of);
    const taken = (children[of] as readonly number[]).filter((child) =>
      seededNearSign(jar, this.#jar(child), seedings[child] as readonly FamilySeeding[]),
    );
    const near = new Set([...taken, ...reachDown(this.#columns, taken).slots]);
    this.#near.set(of, near);
    return near;
  }

  /** Whether cautions because of a spoiled jar end by themselves at all. */
  #mayEnd(of: number): boolean {
    const { sources, traced } = this.#columns;
    const jar = this.#jar(of);
    if (safetyOf(jar).forever || jar.rawMilk === true) return false;
    return !(traced[of]?.sources ?? []).some((source) => sources.get(source)?.culture === true);
  }

  #endedOf(of: number): ReadonlySet<number> {
    const known = this.#ended.get(of);
    if (known) return known;
    const ended = this.#mayEnd(of) ? endedFrom(this.#columns, this.#matesOf(of)) : new Set<number>();
    this.#ended.set(of, ended);
    return ended;
  }

  /** Every spoiled slot that touches a slot, and how. */
  #touching(slot: number): Map<number, Touch> {
    const jar = this.#jar(slot);
    const found = new Map<number, Touch>();
    const take = (of: number, relation: CautionRelation, steps = 1, via: number | null = null): void => {
      const other = found.get(of);
      if (other && STRENGTH.indexOf(other.relation) <= STRENGTH.indexOf(relation)) return;
      found.set(of, { relation, steps, via });
    };
    if (jar.spoiled) take(slot, 'itself', 0);
    const up = reachUp(this.#columns, [slot]);
    up.slots.forEach((other, i) => {
      if (other === slot) return;
      const steps = up.steps[i] as number;
      if (this.#spoiled.has(other)) {
        const near = !seenAfterOpening(this.#jar(other)) || this.#nearSign(other).has(slot);
        take(other, near ? 'seeded by it' : 'seeded before', steps);
      }
      for (const of of this.#spoiledMates(other))
        if (of !== slot && this.#isAside(other, of)) take(of, 'from a mate', steps, other);
    });
    for (const of of this.#spoiledMates(slot)) take(of, mateRelation(jar, this.#jar(of)));
    const { package: packages, seed } = this.#spoiledOf;
    const elsewhere = (of: number, relation: CautionRelation): void => {
      if (of !== slot && !seenAfterOpening(this.#jar(of))) take(of, relation);
    };
    for (const of of seed.of(slot)) elsewhere(of, 'seeded it');
    for (const one of new Set(this.#seeds(slot))) for (const of of seed.of(one)) elsewhere(of, 'same seed');
    for (const used of jar.packages) for (const of of packages.of(used)) elsewhere(of, 'same package');
    return found;
  }

  /** All cautions on a jar, the gravest first, one for each spoiled jar that touches it. */
  on(slot: number): Caution[] {
    if (this.#spoiled.size === 0 || (this.#touched()[slot] === 0 && !this.#reasons.has(slot))) return [];
    const found: Caution[] = [];
    for (const [of, { relation, steps, via }] of this.#touching(slot)) {
      const { key } = this.#jar(of);
      // A spoiled jar stays condemned: if it was not spoiled, what was seen has to be corrected.
      const itself = relation === 'itself';
      const cleared = itself ? null : (this.#reasons.get(slot)?.get(key) ?? null);
      found.push({
        of: key,
        level: LEVEL[relation],
        relation,
        steps,
        via: via === null ? null : this.#jar(via).key,
        cleared,
        ended: ENDS.has(relation) && this.#endedOf(of).has(slot),
        mayEnd: ENDS.has(relation) && this.#mayEnd(of),
        liftedBefore: itself || cleared !== null ? null : (this.#outdated.get(slot)?.get(key) ?? null),
      });
    }
    return found.toSorted(
      (a, b) =>
        STRENGTH.indexOf(a.relation) - STRENGTH.indexOf(b.relation) || a.steps - b.steps || a.of - b.of,
    );
  }

  /** The gravest caution that stands on a jar, or null. */
  level(slot: number): CautionLevel | null {
    return GRAVITY[this.#allLevels()[slot] as number] ?? null;
  }

  /** Whether a caution stands because the jar descends from a set-aside mate of a spoiled one. */
  fromMate(slot: number): boolean {
    this.#allLevels();
    return this.#fromMate?.[slot] === 1;
  }

  /** For every slot the gravest that touches it, whether or not it was lifted or ended: from each spoiled jar outwards. */
  #touched(): Uint8Array {
    if (this.#touchedLevels) return this.#touchedLevels;
    const columns = this.#columns;
    const levels = new Uint8Array(columns.jars.length);
    const fromMate = new Uint8Array(columns.jars.length);
    [this.#touchedLevels, this.#fromMate] = [levels, fromMate];
    const raise = (slot: number, level: number): void => {
      if ((levels[slot] as number) < level) levels[slot] = level;
    };
    const early = new Set([...this.#spoiled].filter((slot) => !seenAfterOpening(this.#jar(slot))));
    const packages = new Set<number>();
    const mates = new Set<number>();
    for (const of of early) {
      const level = onlyNotSet(this.#jar(of)) ? 1 : 2;
      for (const mate of this.#matesOf(of)) {
        raise(mate, level);
        if (this.#isAside(mate, of)) mates.add(mate);
      }
      // A package goes into hundreds of jars: what several spoiled ones share is looked at once.
      for (const used of this.#jar(of).packages) packages.add(used);
    }
    for (const used of packages) for (const slot of columns.ofPackage(used)) raise(slot, 1);
    for (const slot of reachDown(columns, [...mates]).slots) {
      raise(slot, 1);
      fromMate[slot] = 1;
    }
    for (const slot of reachDown(columns, [...early]).slots) raise(slot, 2);
    for (const seed of new Set([...early].flatMap((slot) => this.#seeds(slot)))) {
      raise(seed, 1);
      for (const child of columns.children[seed] as readonly number[]) raise(child, 1);
    }
    for (const slot of this.#spoiled) {
      if (early.has(slot)) continue;
      for (const other of reachDown(columns, [slot]).slots) raise(other, 1);
      for (const other of this.#nearSign(slot)) raise(other, 2);
    }
    for (const slot of this.#spoiled) levels[slot] = 3;
    return levels;
  }

  /** For every slot the gravest that stands: 0 none, then as GRAVITY. */
  #allLevels(): Uint8Array {
    if (this.#levels) return this.#levels;
    const levels = Uint8Array.from(this.#touched());
    this.#levels = levels;
    const fromMate = this.#fromMate as Uint8Array;
    // Where something was lifted or has ended, only the full list tells what still stands.
    const anyClean = this.#spoiled.size > 0 && this.#columns.jars.some((jar) => jar?.safety?.clean === true);
    const ended = anyClean ? [...this.#spoiled].flatMap((of) => [...this.#endedOf(of)]) : [];
    for (const slot of new Set([...this.#reasons.keys(), ...ended])) {
      const standing = this.on(slot).filter(stands);
      levels[slot] = Math.max(0, ...standing.map(({ level }) => GRAVITY.indexOf(level)));
      fromMate[slot] = standing.some(({ relation }) => relation === 'from a mate') ? 1 : 0;
    }
    return levels;
  }
}

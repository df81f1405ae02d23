// Cautions on jars because of a spoiled one, as in the words of the design. Never chained: each rests on what was seen in
// one spoiled jar, and a caution never causes another. Lifted only by a written reason, and only for the spoilage that was
// known when it was written.
import type { FamilyColumns } from '../lineage/counting';
import { reachDown, reachUp } from '../lineage/descent';
import type { Caution, CautionLevel, CautionRelation, FamilyClearing, FamilyJar } from '../lineage/types';

/** Gravest first; of two ways a spoiled jar touches another, the earlier here is given. */
const STRENGTH: readonly CautionRelation[] = [
  'itself',
  'seeded by it',
  'same hold',
  'seeded it',
  'same seed',
  'same package',
];

const LEVEL: Record<CautionRelation, CautionLevel> = {
  itself: 'condemned',
  'seeded by it': 'on hold',
  'same hold': 'on hold',
  'seeded it': 'look',
  'same seed': 'look',
  'same package': 'look',
};

/**
 * Whether the sign came after the jar had been open for a while. Mould then came in with air or a spoon and says nothing
 * of the seed, so nothing is said of what seeded the jar or of the seed's other jars. A sign on the very day of opening
 * was there before. What the jar seeded stays on hold all the same: nobody can say that the seed was taken before the
 * mould came in, and side with caution; its batch-mates and packages likewise, until the keeper writes a reason.
 */
const afterOpening = (jar: FamilyJar): boolean => (jar.spoiledOpenedDays ?? 0) > 0;

/**
 * Whether two batch-mates may have sat in the same warmth. Told apart only where both holds are recorded, differ, and were
 * not read out of notes alone: an unknown hold clears nobody.
 */
const sharedHold = (a: FamilyJar, b: FamilyJar): boolean =>
  a.batch === b.batch &&
  (a.hold === null || b.hold === null || a.hold === b.hold || (a.holdFromNotes && b.holdFromNotes));

const sharesPackage = (a: FamilyJar, b: FamilyJar): boolean =>
  a.packages.some((used) => b.packages.includes(used));

/** In words, as beside a jar: "on hold: seeded by it, 2 steps down". */
export function cautionWords(caution: Pick<Caution, 'level' | 'relation' | 'steps'>): string {
  switch (caution.relation) {
    case 'itself':
      return 'condemned: spoiled itself';
    case 'seeded by it':
      return caution.steps === 1
        ? 'on hold: seeded by it'
        : `on hold: seeded by it, ${caution.steps} steps down`;
    case 'same hold':
      return 'on hold: from the same batch, kept warm together';
    case 'seeded it':
      return 'look: it seeded the spoiled jar';
    case 'same seed':
      return 'look: from the same seed';
    case 'same package':
      return 'look: used the same package';
  }
}

/** The same words on a screen, where the spoiled jar has a name: "on hold: seeded from 1 Apr c, 2 steps down". */
export const cautionWordsNaming = (how: string, spoiled: string): string =>
  how.replace('seeded by it', `seeded from ${spoiled}`);

/** What a jar to be looked at has to do with the spoiled one. */
const LOOK_AT: Partial<Record<CautionRelation, (spoiled: string) => string>> = {
  'seeded it': (spoiled) => `it seeded ${spoiled}`,
  'same seed': (spoiled) => `it came from the same seed as ${spoiled}`,
  'same package': (spoiled) => `it was made with the same package as ${spoiled}`,
};

/**
 * As a sentence: "It is on hold: seeded from 1 Apr c.", or "Look at it first: it seeded the spoiled jar 1 Apr c." The
 * spoiled jar, where it is another with a name, is named once.
 */
export function cautionSentence(
  caution: Pick<Caution, 'level' | 'relation' | 'steps'>,
  spoiled: string | null,
): string {
  const look = LOOK_AT[caution.relation]?.(
    spoiled === null ? 'the spoiled jar' : `the spoiled jar ${spoiled}`,
  );
  if (look !== undefined) return `Look at it first: ${look}.`;
  const how = cautionWords(caution);
  if (spoiled === null) return `It is ${how}.`;
  const naming = cautionWordsNaming(how, spoiled);
  return naming === how ? `It is ${how} (${spoiled}).` : `It is ${naming}.`;
}

/** "5 Mar a is on hold because of 1 Mar c, which spoiled." @param because labels of the spoiled jars */
export const heldSentence = (label: string, because: readonly string[]): string =>
  `${label} is on hold because of ${because.join(' and ')}, which spoiled.`;

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

/** All cautions of one version of a family. What is found is kept; the version never changes. */
export class Cautions {
  readonly #version: { readonly columns: FamilyColumns };
  readonly #spoiled: ReadonlySet<number>;
  /** Spoiled slots by what ties others to them. */
  readonly #spoiledOf = { batch: new Slots(), package: new Slots(), seed: new Slots() };
  readonly #reasons = new Map<number, Map<number, string>>();
  /** Reasons that were written about less than is known now: they lift nothing, and are said. */
  readonly #outdated = new Map<number, Map<number, string>>();
  #levels: Uint8Array | undefined;

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

  /** All cautions on a jar, the gravest first, one for each spoiled jar that touches it. */
  on(slot: number): Caution[] {
    if (this.#allLevels()[slot] === 0 && !this.#reasons.has(slot)) return [];
    const jar = this.#jar(slot);
    const steps = new Map<number, number>();
    const up = reachUp(this.#columns, [slot]);
    up.slots.forEach((other, i) => {
      if (this.#jar(other).spoiled) steps.set(other, up.steps[i] as number);
    });
    const seeds = new Set(this.#seeds(slot));
    const { batch, package: packages, seed } = this.#spoiledOf;
    const touching = new Set([
      ...(jar.spoiled ? [slot] : []),
      ...steps.keys(),
      ...batch.of(jar.batch),
      ...seed.of(slot),
      ...[...seeds].flatMap((one) => seed.of(one)),
      ...jar.packages.flatMap((used) => packages.of(used)),
    ]);
    const found: Caution[] = [];
    for (const of of touching) {
      const relation = this.#relation(slot, jar, of, steps, seeds);
      if (!relation) continue;
      const { key } = this.#jar(of);
      // A spoiled jar stays condemned: if it was not spoiled, what was seen has to be corrected.
      const cleared = relation === 'itself' ? null : (this.#reasons.get(slot)?.get(key) ?? null);
      found.push({
        of: key,
        level: LEVEL[relation],
        relation,
        steps: relation === 'seeded by it' ? (steps.get(of) as number) : relation === 'itself' ? 0 : 1,
        cleared,
        liftedBefore:
          relation === 'itself' || cleared !== null ? null : (this.#outdated.get(slot)?.get(key) ?? null),
      });
    }
    return found.toSorted(
      (a, b) =>
        STRENGTH.indexOf(a.relation) - STRENGTH.indexOf(b.relation) || a.steps - b.steps || a.of - b.of,
    );
  }

  #relation(
    slot: number,
    jar: FamilyJar,
    of: number,
    steps: ReadonlyMap<number, number>,
    seeds: ReadonlySet<number>,
  ): CautionRelation | null {
    const spoiled = this.#jar(of);
    if (of === slot) return 'itself';
    if (steps.has(of)) return 'seeded by it';
    if (sharedHold(jar, spoiled)) return 'same hold';
    if (!afterOpening(spoiled)) {
      const itsSeeds = this.#seeds(of);
      if (itsSeeds.includes(slot)) return 'seeded it';
      if (itsSeeds.some((seed) => seeds.has(seed))) return 'same seed';
    }
    return sharesPackage(jar, spoiled) ? 'same package' : null;
  }

  /** Slots that a spoiled jar puts a caution on, itself included. */
  reach(of: number): ReadonlySet<number> {
    const reached = new Set<number>();
    const spoiled = this.#jar(of);
    if (!spoiled.spoiled) return reached;
    reached.add(of);
    for (const slot of reachDown(this.#columns, [of]).slots) reached.add(slot);
    if (!afterOpening(spoiled)) {
      for (const seed of this.#seeds(of)) {
        reached.add(seed);
        for (const child of this.#columns.children[seed] as readonly number[]) reached.add(child);
      }
    }
    this.#columns.jars.forEach((jar, slot) => {
      if (jar && (sharedHold(jar, spoiled) || sharesPackage(jar, spoiled))) reached.add(slot);
    });
    return reached;
  }

  /** The gravest caution that stands on a jar, or null. */
  level(slot: number): CautionLevel | null {
    return ([null, 'look', 'on hold', 'condemned'] as const)[this.#allLevels()[slot] as number] ?? null;
  }

  /** For every slot: 0 none, 1 look, 2 on hold, 3 condemned. One pass over the family, however many are spoiled. */
  #allLevels(): Uint8Array {
    if (this.#levels) return this.#levels;
    const columns = this.#columns;
    const levels = new Uint8Array(columns.jars.length);
    this.#levels = levels;
    if (this.#spoiled.size === 0) return levels;
    const raise = (slot: number, level: number): void => {
      if ((levels[slot] as number) < level) levels[slot] = level;
    };
    for (const slot of reachDown(columns, [...this.#spoiled]).slots) raise(slot, 2);
    const seeds = new Set(
      [...this.#spoiled]
        .filter((slot) => !afterOpening(this.#jar(slot)))
        .flatMap((slot) => this.#seeds(slot)),
    );
    for (const seed of seeds) {
      raise(seed, 1);
      for (const child of columns.children[seed] as readonly number[]) raise(child, 1);
    }
    columns.jars.forEach((jar, slot) => {
      if (!jar) return;
      const mates = this.#spoiledOf.batch.of(jar.batch);
      if (mates.some((mate) => mate !== slot && sharedHold(jar, this.#jar(mate)))) raise(slot, 2);
      if (jar.packages.some((used) => this.#spoiledOf.package.of(used).length > 0)) raise(slot, 1);
    });
    for (const slot of this.#spoiled) levels[slot] = 3;
    // Where something was lifted, only the full list tells what still stands.
    for (const slot of this.#reasons.keys()) {
      levels[slot] = Math.max(
        0,
        ...this.on(slot)
          .filter((caution) => caution.cleared === null)
          .map((caution) => ({ look: 1, 'on hold': 2, condemned: 3 })[caution.level]),
      );
    }
    return levels;
  }
}

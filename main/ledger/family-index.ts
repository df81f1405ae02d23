// The family in memory: built from rows when a ledger opens, then changed by each act, never rebuilt while it is
// right. `settle` plans the change inside the act's transaction (lineage may still refuse it there); what it answers
// puts the change in place after the commit. tests/ledger/undo.test.ts holds it equal to a rebuild.
import { buildFamily, changeFamily, type Family, FamilyRefused } from '../../core/lineage/family';
import { jarLabel, type LabelParts } from '../../core/lineage/labels';
import type { FamilyClearing, FamilyJar, FamilySeeding } from '../../core/lineage/lineage-shapes';
import type { Change } from './facts/act-changes';
import {
  familyJar,
  familySource,
  isOfFamily,
  type JarFacts,
  readFacts,
  readSeedings,
} from './derived/family-of-rows';
import { LabelGroups } from './label-groups';
import { readClearings } from './derived/lifts';
import { Touched } from './derived/touched';
import { Refused } from '../refusal';
import type { Rows } from './facts/fact-rows';

/** A jar's facts with its printed label. */
export type KnownJar = JarFacts & { readonly label: string };

/** Touching more jars than this share of the ledger, counting all again is quicker than following each. */
const REBUILD_SHARE = 0.3;

/** The code under which lineage refused, as a refusal of the ledger's. */
const asRefused = (error: unknown): unknown =>
  error instanceof FamilyRefused
    ? new Refused(error.refusal.code as 'own ancestor' | 'seed made later', error.refusal.params)
    : error;

export class FamilyIndex {
  readonly #rows: Rows;
  #jars = new Map<number, KnownJar>();
  #labels = new LabelGroups();
  #family: Family = buildFamily({ jars: [], seedings: [], sources: [], clearings: [] });

  constructor(rows: Rows) {
    this.#rows = rows;
    this.rebuild();
  }

  get family(): Family {
    return this.#family;
  }

  /** Every jar, planned ones and mistakes among them. */
  get jars(): ReadonlyMap<number, KnownJar> {
    return this.#jars;
  }

  /** The jar with that key, which is known to be there. */
  jar(key: number): KnownJar {
    const jar = this.#jars.get(key);
    if (!jar) throw new Error(`the index knows no jar ${key}`);
    return jar;
  }

  /** Whether such a label would need its year. */
  needsYear(parts: LabelParts): boolean {
    return this.#labels.needsYear(parts);
  }

  /** Reads everything again. */
  rebuild(): void {
    const { jars, labels, family } = this.#build();
    this.#jars = jars;
    this.#labels = labels;
    this.#family = family;
  }

  #build(): { jars: Map<number, KnownJar>; labels: LabelGroups; family: Family } {
    const labels = new LabelGroups();
    const jars = new Map<number, KnownJar>();
    const facts = [...readFacts(this.#rows, null)];
    for (const one of facts) labels.add(one);
    const ofFamily: FamilyJar[] = [];
    for (const one of facts) {
      const label = jarLabel(one, labels.needsYear(one));
      jars.set(one.key, { ...one, label });
      if (isOfFamily(one)) ofFamily.push(familyJar(one, label));
    }
    try {
      const family = buildFamily({
        jars: ofFamily,
        seedings: [...readSeedings(this.#rows, null)],
        sources: [...this.#rows.all('source')].map(familySource),
        clearings: this.#clearings(),
      });
      return { jars, labels, family };
    } catch (error) {
      throw asRefused(error);
    }
  }

  #clearings(): FamilyClearing[] {
    return readClearings(this.#rows);
  }

  /**
   * Plans what an act's changes mean for the family.
   * @param many whether there are so many that counting all again is quicker than looking at each
   * @param stale whether another process has written since the index was read: then all is counted again
   * @returns a function that puts it in place, to be called once the act is committed
   * @throws Refused 'own ancestor', 'seed made later'
   */
  settle(changes: Iterable<Change>, many = false, stale = false): () => void {
    if (stale || many) return this.#rebuilt();
    const touched = new Touched(this.#rows, changes);
    const keys = touched.jarKeys();
    if (keys.size > 50 && keys.size > this.#jars.size * REBUILD_SHARE) return this.#rebuilt();
    if (keys.size === 0 && touched.sources.size === 0 && !touched.lifts) return () => undefined;
    return this.#change(keys, touched);
  }

  #rebuilt(): () => void {
    const built = this.#build();
    return () => {
      this.#jars = built.jars;
      this.#labels = built.labels;
      this.#family = built.family;
    };
  }

  #change(keys: ReadonlySet<number>, touched: Touched): () => void {
    const before = new Map<number, KnownJar>();
    for (const key of keys) {
      const known = this.#jars.get(key);
      if (known) before.set(key, known);
    }
    const facts = new Map<number, JarFacts>();
    for (const one of readFacts(this.#rows, [...keys])) facts.set(one.key, one);

    // Labels first: a jar that comes, goes or moves may give its namesakes of other years a year, or take it away.
    const restore = (): void => {
      for (const one of facts.values()) this.#labels.remove(one);
      for (const one of before.values()) this.#labels.add(one);
    };
    const peers = new Set<number>();
    for (const one of before.values()) for (const peer of this.#labels.peers(one)) peers.add(peer);
    for (const one of before.values()) this.#labels.remove(one);
    for (const one of facts.values()) this.#labels.add(one);
    for (const one of facts.values()) for (const peer of this.#labels.peers(one)) peers.add(peer);

    const known: KnownJar[] = [];
    const familyJars: FamilyJar[] = [];
    const gone: number[] = [];
    const seedingsOf = new Map<number, FamilySeeding[]>();
    const take = (one: JarFacts): void => {
      const label = jarLabel(one, this.#labels.needsYear(one));
      known.push({ ...one, label });
      if (isOfFamily(one)) familyJars.push(familyJar(one, label));
      else if (this.#family.has(one.key)) gone.push(one.key);
    };
    for (const one of facts.values()) {
      take(one);
      if (isOfFamily(one)) seedingsOf.set(one.key, []);
    }
    for (const peer of peers) {
      const old = this.#jars.get(peer);
      if (keys.has(peer) || !old) continue;
      if (jarLabel(old, this.#labels.needsYear(old)) !== old.label) take(old);
    }
    for (const key of keys) if (!facts.has(key) && this.#family.has(key)) gone.push(key);
    for (const seeding of readSeedings(this.#rows, [...seedingsOf.keys()])) {
      seedingsOf.get(seeding.jar)?.push(seeding);
    }
    try {
      const { family } = changeFamily(this.#family, {
        sources: [...touched.sources].flatMap((key) => {
          const source = this.#rows.find('source', key);
          return source ? [familySource(source)] : [];
        }),
        jars: familyJars,
        gone,
        seedings: Array.from(seedingsOf, ([jar, seedings]) => ({ jar, seedings })),
        ...(touched.lifts ? { clearings: this.#clearings() } : {}),
      });
      restore();
      return () => {
        for (const one of before.values()) this.#labels.remove(one);
        for (const one of facts.values()) this.#labels.add(one);
        for (const key of keys) if (!facts.has(key)) this.#jars.delete(key);
        for (const one of known) this.#jars.set(one.key, one);
        this.#family = family;
      };
    } catch (error) {
      restore();
      throw asRefused(error);
    }
  }
}

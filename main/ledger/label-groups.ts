// Which labels need their year: those that would read the same as the label of a jar of another year. Mistakes don't
// count: nobody sees them.
import { dayNamed, labelGroup, type LabelParts } from '../../core/lineage/labels';
import type { JarFacts } from './derived/family-of-rows';

interface Group {
  readonly years: Map<string, number>;
  readonly keys: Set<number>;
}

export class LabelGroups {
  readonly #groups = new Map<string, Group>();

  add(facts: JarFacts): void {
    const day = dayNamed(facts);
    if (day === null || facts.state === 'mistake') return;
    const name = labelGroup(facts);
    let group = this.#groups.get(name);
    if (!group) {
      group = { years: new Map(), keys: new Set() };
      this.#groups.set(name, group);
    }
    const year = day.slice(0, 4);
    group.years.set(year, (group.years.get(year) ?? 0) + 1);
    group.keys.add(facts.key);
  }

  remove(facts: JarFacts): void {
    const day = dayNamed(facts);
    if (day === null || facts.state === 'mistake') return;
    const name = labelGroup(facts);
    const group = this.#groups.get(name);
    if (!group?.keys.delete(facts.key)) return;
    const year = day.slice(0, 4);
    const left = (group.years.get(year) ?? 0) - 1;
    if (left > 0) group.years.set(year, left);
    else group.years.delete(year);
    if (group.keys.size === 0) this.#groups.delete(name);
  }

  needsYear(facts: LabelParts): boolean {
    const group = this.#groups.get(labelGroup(facts));
    if (!group) return false;
    return group.years.size > (group.years.has(dayNamed(facts)?.slice(0, 4) ?? '') ? 1 : 0);
  }

  /** Keys of the jars whose labels depend on one another with this one's. */
  *peers(facts: JarFacts): Generator<number> {
    yield* this.#groups.get(labelGroup(facts))?.keys ?? [];
  }
}

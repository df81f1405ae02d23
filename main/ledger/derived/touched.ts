// Which jars, sources and lifts an act's changes reach, beyond the facts it wrote.
import type { Change } from '../facts/act-changes';
import { READ_ON } from '../entries/checked-meter';
import type { Rows as FactRows } from '../facts/fact-rows';
import type { Columns } from '../facts/tables';

type Above = 'jar' | 'batch' | 'hold' | 'portion' | 'source';
/** Where a fact hangs on one that hangs on a jar. */
const BETWEEN = ['milk', 'addition', 'seeding', 'observation', 'photograph'] as const;

export class Touched {
  readonly sources = new Set<number>();
  lifts = false;
  #seen = false;
  /** Whether warmth itself, or what the keeper prefers, was changed. */
  warmth = false;
  readonly #facts: FactRows;
  readonly #keys: Record<Above, Set<number>> = {
    jar: new Set(), batch: new Set(), hold: new Set(), portion: new Set(), source: new Set(),
  }; // prettier-ignore

  constructor(facts: FactRows, changes: Iterable<Change>) {
    this.#facts = facts;
    for (const change of changes) this.#take(change);
    // A lift holds for what was known when it was written.
    if (this.#seen) this.lifts ||= [...this.jarKeys()].some((jar) => this.#isLifted(jar));
  }

  #isLifted(of: number): boolean {
    return this.#facts.prepare('SELECT 1 FROM lift WHERE of_jar = ? LIMIT 1').get(of) !== undefined;
  }

  #take({ kind, key, before, after }: Change): void {
    switch (kind) {
      case 'jar':
      case 'portion':
        this.#keys[kind].add(key);
        // One that is gone leads to its jar by its form alone: what was noted of it speaks of the jar no longer.
        if (kind === 'portion')
          for (const form of [before, after]) if (typeof form?.jar === 'number') this.#keys.jar.add(form.jar);
        return;
      case 'batch':
        // One that came or went takes its jars with it.
        if (before && after) this.#keys.batch.add(key);
        return;
      case 'hold':
        this.warmth = true;
        if (before && after) this.#keys.hold.add(key);
        return;
      case 'source':
        this.sources.add(key);
        return;
      case 'reason':
      case 'lift':
      case 'liftKnew':
        this.lifts = true;
        return;
      case 'preferences':
        this.warmth = true;
        return;
      case 'toolCheck':
        for (const form of [before, after]) if (form?.tool === 'meter') this.#meterChecked(String(form.day));
        return;
      case 'package':
      case 'noteFile':
      case 'noteRow':
      case 'noteAnswer':
      case 'choice':
        return;
      default:
    }
    if (kind === 'series') this.warmth = true;
    for (const form of [before, after]) if (form) this.#above(form);
    if (kind === 'observation' || kind === 'acidity' || kind === 'sign' || kind === 'remark')
      this.#seen = true;
  }

  /** Readings of the day a meter was checked on may prove something now, or nothing any more. */
  #meterChecked(day: string): void {
    for (const jar of this.#facts.prepare(READ_ON).pluck().all({ day })) this.#keys.jar.add(Number(jar));
    this.#seen = true;
  }

  /** What a fact hangs on. */
  #above(form: Columns): void {
    if (typeof form.jar === 'number') this.#keys.jar.add(form.jar);
    else
      for (const column of ['batch', 'hold', 'portion'] as const)
        if (typeof form[column] === 'number') this.#keys[column].add(form[column]);
    if (typeof form.source === 'number' && form.genus !== undefined) this.sources.add(form.source);
    if (typeof form.remark === 'number') this.#aboveRemark(form.remark);
    for (const column of BETWEEN) {
      if (typeof form[column] !== 'number') continue;
      const jar = this.#facts.prepare(`SELECT jar FROM ${column} WHERE key = ?`).pluck().get(form[column]);
      if (typeof jar === 'number') this.#keys.jar.add(jar);
    }
  }

  /** A sign that was read in a remark reaches what the remark is on. One that is gone was taken away in the same act. */
  #aboveRemark(remark: number): void {
    const form = this.#facts.columnsNow('remark', remark);
    if (form) this.#above(form);
  }

  /** Keys of all jars that may read otherwise now. */
  jarKeys(): Set<number> {
    const keys = new Set(this.#keys.jar);
    const addAll = (sql: string, values: Iterable<number>): void => {
      for (const value of values)
        for (const key of this.#facts.prepare(sql).pluck().all(value)) keys.add(Number(key));
    };
    addAll('SELECT key FROM jar WHERE batch = ?', this.#keys.batch);
    addAll('SELECT jar FROM stay WHERE hold = ?', this.#keys.hold);
    addAll('SELECT jar FROM portion WHERE key = ?', this.#keys.portion);
    addAll('SELECT DISTINCT jar FROM seeding WHERE portion = ?', this.#keys.portion);
    addAll('SELECT DISTINCT jar FROM seeding WHERE source = ?', this.sources);
    return keys;
  }
}

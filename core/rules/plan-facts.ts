// What an import would make of a ledger, as facts: its plan laid over the jars of the ledger that it names. So the rule book
// is asked before anything is written, and a row that can't be stays aside by itself.
import { discardOf } from '../safety/take-out';
import type { NotesPlan, PlannedChange, PlannedJar } from '../notes/notes-plan';
import type { Discard } from '../shapes/safety-codes';
import type { Fresh } from './consents';
import {
  type Facts,
  type HoldFact,
  type JarFact,
  jarIn,
  type ObservationFact,
  type SeedingFact,
  type StayFact,
} from './asked-facts';

/** How a plan's words lead to the ledger's jars. */
export interface LedgerKeys {
  readonly keyOf: (uid: string) => number;
  /** Whether the volume of a jar is what its milk and seed came to. */
  readonly isSummed: (jar: number) => boolean;
  /** The words of a row that stop its jar until they are answered; null where none do. */
  readonly stoppingWords: (planned: PlannedJar) => string | null;
  /** Called for each jar; may throw to stop. */
  readonly look?: (() => void) | null;
}

export interface PlanFacts {
  readonly facts: Facts;
  readonly fresh: Fresh;
  /** Jars that are neither food nor seed by the plan, and the words that say so where nobody has answered them. */
  readonly discarded: ReadonlyMap<number, { readonly discard: Discard; readonly words: string | null }>;
  /** The row that a jar is of. */
  readonly rowOf: ReadonlyMap<number, PlannedJar>;
}

class PlanBuilder {
  readonly jars: Map<number, JarFact>;
  readonly seedings: SeedingFact[];
  readonly holds: Map<number, HoldFact>;
  readonly stays: StayFact[];
  readonly observations: ObservationFact[];
  readonly rowOf = new Map<number, PlannedJar>();
  readonly fresh = new Set<number>();
  readonly discarded = new Map<number, { readonly discard: Discard; readonly words: string | null }>();
  /** Keys of the plan's own things, below zero. */
  #next = -1;
  readonly #byRow = new Map<string, number>();

  constructor(
    base: Facts,
    readonly keys: LedgerKeys,
  ) {
    this.jars = new Map(base.jars);
    this.seedings = [...base.seedings];
    this.holds = new Map(base.holds);
    this.stays = [...base.stays];
    this.observations = [...base.observations];
  }

  addJar(planned: PlannedJar): void {
    const key = this.#next--;
    this.#byRow.set(planned.id, key);
    this.rowOf.set(key, planned);
    const { madeOn: day, madeFrom, madeTo, word, letter, fields } = planned;
    this.jars.set(key, {
      key, batch: key, day, first: day ?? madeFrom, last: day ?? madeTo,
      word, letter, state: 'made', volume: fields.finalVolume, mistakeIn: null,
    }); // prettier-ignore
    this.#addHold(key, planned);
    this.#addOutcome(key, planned);
  }

  #addHold(jar: number, { hold }: PlannedJar): void {
    if (hold === null || hold.hours === null) return;
    const key = this.#next--;
    this.holds.set(key, { key, began: null, ended: null, hours: hold.hours });
    this.stays.push({ key: this.#next--, jar, hold: key, came: null, went: null });
  }

  #addOutcome(jar: number, planned: PlannedJar): void {
    const { outcome } = planned;
    const discard = outcome && discardOf(outcome);
    const words = this.keys.stoppingWords(planned);
    if (discard !== null) this.discarded.set(jar, { discard, words: null });
    else if (words !== null) this.discarded.set(jar, { discard: 'remark', words });
    if (outcome === null) return;
    const { ph, earlyPh, setAfterHours, setByHours, setAtTakeOut, powerCutHours } = outcome;
    const acidity = [ph, earlyPh].filter((one) => one !== null);
    this.observations.push({
      key: this.#next--, jar, acidity, setAfterHours, setByHours, setAtTakeOut, out: false, powerCutHours,
      day: null, daysOpen: null, portion: null, at: null, toldOn: null,
    }); // prettier-ignore
  }

  /** Once all jars of the plan are known. */
  addSeeds(jar: number, planned: PlannedJar): void {
    for (const { fromRow, fromUid, amount } of planned.seedings) {
      const fromJar = fromUid === null ? this.#row(fromRow) : this.keys.keyOf(fromUid);
      const key = this.#next--;
      this.seedings.push({ key, jar, fromJar, portion: null, amount, writtenIn: null });
      if (fromJar !== null) this.fresh.add(key);
    }
  }

  #row(id: string | null): number | null {
    return id === null ? null : (this.#byRow.get(id) ?? null);
  }

  /** A jar that is there, as its row changes it. Blanks take nothing away. */
  change(change: PlannedChange, key: number): void {
    const { planned, whole, amounts } = change;
    this.rowOf.set(key, planned);
    const jar = jarIn(this, key);
    const volume = planned.fields.finalVolume;
    const measured = whole && planned.fields.finalVolumeKnown === 'measured';
    if (amounts && volume !== null && (measured || this.keys.isSummed(key)))
      this.jars.set(key, { ...jar, volume });
    if (amounts && planned.seedings.length > 0) this.#changeSeeds(key, change);
    if ((whole || planned.hold?.hours !== change.before?.hold?.hours) && planned.hold?.hours) {
      drop(this.stays, (stay) => stay.jar === key);
      this.#addHold(key, planned);
    }
    if (planned.outcome?.powerCutHours)
      drop(this.observations, (one) => one.jar === key && one.powerCutHours !== null);
    this.#addOutcome(key, planned);
  }

  #changeSeeds(key: number, { planned, whole, columns }: PlannedChange): void {
    const old = this.seedings.filter((seeding) => seeding.jar === key);
    const before = this.seedings.length;
    this.addSeeds(key, planned);
    const added = this.seedings.splice(before);
    const next = added.flatMap((seeding): SeedingFact[] => {
      const same = old.find((one) => one.fromJar === seeding.fromJar && seeding.fromJar !== null);
      if (!same) return whole || columns ? [seeding] : [];
      this.fresh.delete(seeding.key);
      const [first, second] = columns ? [same.amount, seeding.amount] : [seeding.amount, same.amount];
      return [{ ...same, amount: first ?? second }];
    });
    const replaced = new Set(next.map((seeding) => seeding.key));
    drop(this.seedings, (one) => one.jar === key && (whole || replaced.has(one.key)));
    this.seedings.push(...next);
  }
}

function drop<T>(list: T[], which: (one: T) => boolean): void {
  let kept = 0;
  for (const one of list) if (!which(one)) list[kept++] = one;
  list.length = kept;
}

const NONE: ReadonlySet<number> = new Set();

/**
 * @param base the jars of the ledger that the plan names or changes, with all that belongs to them
 * @param plan as read; its jars need not be in order
 */
export function factsOfPlan(
  base: Facts,
  plan: Pick<NotesPlan, 'jars' | 'changes'>,
  keys: LedgerKeys,
): PlanFacts {
  const built = new PlanBuilder(base, keys);
  for (const jar of plan.jars) {
    keys.look?.();
    built.addJar(jar);
  }
  for (const [key, planned] of built.rowOf) built.addSeeds(key, planned);
  for (const change of plan.changes) built.change(change, keys.keyOf(change.uid));
  const { jars, seedings, fresh, rowOf, discarded } = built;
  const changed = new Set(plan.changes.map(({ uid }) => keys.keyOf(uid)));
  const ofOneDay = seedings.filter(
    ({ jar, fromJar }) =>
      fromJar !== null && jars.get(jar)?.day === jars.get(fromJar)?.day && (jar < 0 || changed.has(jar)),
  );
  return {
    facts: {
      ...base,
      touched: new Set([...rowOf.keys(), ...base.touched]),
      jars,
      seedings,
      sameDay: [...base.sameDay.filter(({ jar }) => !changed.has(jar)), ...ofOneDay],
      holds: built.holds,
      stays: built.stays,
      observations: built.observations,
    },
    fresh: {
      labels: NONE, kept: NONE, moved: NONE, seen: NONE, looked: NONE, reserves: NONE, ends: NONE, stays: NONE,
      mistakes: NONE, seedings: fresh,
    },
    rowOf,
    discarded,
  }; // prettier-ignore
}

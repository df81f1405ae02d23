// Acts in the records that the calls know. `acts.run(kind, subject, why, work)` opens an act in a transaction of its own
// (facts/open-act.ts) and hands `work` an OpenAct: what is inserted, changed or removed there is taken apart into facts
// (projection/), and each fact is a row. `act.facts` writes facts as they are.
import { SqliteError } from 'better-sqlite3';
import type { ActKind } from '../../core/ledger/act-words';
import type { RecordKind } from '../../core/ledger/records';
import type { ObservationFact } from '../../core/rules/asked-facts';
import type { Clock } from './clock';
import {
  Acts as FactActs,
  type Chosen,
  type Done,
  type Made,
  type OpenAct as OpenFacts,
} from './facts/open-act';
import { type Change, changesOf } from './facts/act-changes';
import type { FactKind } from './facts/tables';
import { FORMS, type Form, type RootedKind } from './projection/forms';
import { observedOf, outcomeFrom, putOutcome } from './projection/outcome';
import { askedOf } from './projection/put';
import type { NoteRow, Stored } from './projection/records';
import { Refused } from './refusal';
import type { Rows } from './rows';
import type { Asked } from './rules/ask';
import type { Pending } from './rules/load';
import { pendingOf } from './rules/pending';

/** Writes records under an open act. Lives only inside `acts.run`. */
export class OpenAct {
  readonly #rows: Rows;
  readonly #explain: (pending: Pending) => void;
  /** Jars made in this act of which nothing was observed yet. */
  readonly #new = new Set<number>();

  constructor(
    readonly facts: OpenFacts,
    rows: Rows,
    explain: (pending: Pending) => void,
  ) {
    this.#rows = rows;
    this.#explain = explain;
  }

  /** Writes an outcome; where the tables refuse one of its facts, the rule book says why. */
  #putOutcome(jar: number, seen: Omit<Stored['outcome'], 'jar'> | null): void {
    try {
      // Of a jar that is new in this act nothing was observed yet: an import need not ask for each.
      const observed = this.#new.delete(jar) ? [] : observedOf(askedOf(this.#rows.facts), jar);
      putOutcome(this.facts, jar, observed, seen);
    } catch (error) {
      if (error instanceof SqliteError && seen) this.#explain({ observation: observationOf(jar, seen) });
      throw error;
    }
  }

  get key(): number {
    return this.facts.key;
  }

  /** What was made. Its id is looked up when it is asked for: an import asks for few. */
  #made(kind: RecordKind, key: number): Made {
    const rows = this.#rows;
    return {
      key,
      get uid() {
        return rows.uidOf(kind, key);
      },
    };
  }

  /** Adds a record; refs are keys. Its uid is made here. */
  insert<K extends RecordKind>(kind: K, record: Stored[K]): Made {
    if (kind === 'outcome') {
      const { jar, ...seen } = record as Stored['outcome'];
      this.#putOutcome(jar, seen);
      return this.#made('jar', jar);
    }
    const { put } = FORMS[kind as RootedKind] as unknown as Form<RootedKind>;
    const key = put(this.facts, this.#rows.facts, undefined as never, record as never);
    if (kind === 'jar') this.#new.add(key);
    return this.#made(kind, key);
  }

  /** Changes the given fields of a record. Where none is different nothing is written. */
  update<K extends RecordKind>(kind: K, key: number, changes: Partial<Stored[K]>): void {
    const { facts } = this.#rows;
    if (kind === 'outcome') {
      const { jar: _jar, ...told } = changes as Partial<Stored['outcome']>;
      const now = outcomeFrom(observedOf(askedOf(facts), key));
      if (now) this.#putOutcome(key, { ...now, ...told });
      return;
    }
    const { root, put } = FORMS[kind as RootedKind] as unknown as Form<RootedKind>;
    const { key: _key, uid: _uid, ...now } = this.#rows.get(kind, key);
    const told = Object.fromEntries(Object.entries(changes).filter(([, value]) => value !== undefined));
    put(this.facts, facts, facts.get(root, key) as never, { ...now, ...told } as never);
  }

  /** Takes a record away, with the facts that hang on it. */
  remove(kind: RecordKind, key: number): void {
    const { facts } = this.#rows;
    if (kind === 'outcome') {
      this.#putOutcome(key, null);
      return;
    }
    const { root, hanging } = FORMS[kind];
    for (const [hung, column] of hanging)
      for (const one of facts.where(hung, column, key)) this.facts.remove(hung, one.key);
    this.facts.remove(root, key);
  }
}

type Seen = Omit<Stored['outcome'], 'jar'>;

/** An outcome as the rule book looks at it. */
const observationOf = (jar: number, { ph, earlyPh, setAfterHours, setByHours, setAtTakeOut, powerCutHours }: Seen): Omit<ObservationFact, 'key'> => ({
  jar, acidity: [ph, earlyPh].filter((one) => one !== null), setAfterHours, setByHours, setAtTakeOut, powerCutHours, day: null,
  toldOn: null, daysOpen: null,
}); // prettier-ignore

/** The keeper's word on two equal labels; null where the call can't say so. */
type Meant = boolean | null;

export class Acts {
  /** Asks the rule book about an act, inside its transaction. @throws Refused */
  ask: (asked: Asked) => void = () => undefined;
  /** Says which rule a fact would break that the tables have not taken. @throws Refused where one does */
  explain: (act: number, pending: Pending) => void = () => undefined;
  /** Called inside the transaction after the rule book: may still refuse. Its answer is called after the commit. */
  settle: (act: number) => () => void = () => () => undefined;
  readonly #acts: FactActs;
  #asked: Omit<Asked, 'act'> | null = null;

  constructor(
    readonly rows: Rows,
    readonly clock: Clock,
    readonly newId: () => string,
  ) {
    this.#acts = new FactActs(rows.facts, clock, newId);
    this.#acts.settle = (act) => {
      if (this.#asked) this.ask({ act, ...this.#asked });
      return this.settle(act);
    };
    this.#acts.explain = (act, row) => {
      const pending = pendingOf(rows.facts, row);
      if (pending) this.explain(act, pending);
    };
  }

  /** How many acts this has kept: each is on the disk once it is counted. */
  get kept(): number {
    return this.#acts.kept;
  }

  /**
   * One act in one transaction (facts/open-act.ts).
   * @param sameLabelMeant the keeper's word on two equal labels
   * @returns null when nothing was changed: then there is no act
   */
  run<T>(
    kind: ActKind,
    subject: string,
    why: string | null,
    work: (act: OpenAct) => T,
    undoes: number | null = null,
    sameLabelMeant: Meant = null,
  ): Done<T> | null {
    return this.runChosen(() => ({ kind, subject, why, undoes }), work, sameLabelMeant);
  }

  /** Like run, for an act that is chosen in its own transaction (facts/open-act.ts). */
  runChosen<C extends Chosen, T>(
    choose: () => C,
    work: (act: OpenAct, chosen: C) => T,
    sameLabelMeant: Meant = null,
  ): Done<T> | null {
    const open = (facts: OpenFacts): OpenAct =>
      new OpenAct(facts, this.rows, (pending) => this.explain(facts.key, pending));
    const asked = (): C => {
      const chosen = choose();
      this.#asked = { kind: chosen.kind, why: chosen.why, sameLabelMeant };
      return chosen;
    };
    return this.#acts.runChosen(asked, (facts, chosen) => work(open(facts), chosen));
  }

  /**
   * Like run, for a write that a keeper asked for.
   * @param draft key of the draft it was typed in: removed in the same act, so that it is never offered again
   * @throws Refused 'nothing changed'
   */
  mustRun<T>(
    kind: ActKind,
    subject: string,
    why: string | null,
    work: (act: OpenAct) => T,
    draft: string | null = null,
    sameLabelMeant: Meant = null,
  ): Done<T> {
    const drafted = (act: OpenAct): T => {
      const value = work(act);
      if (draft !== null) this.rows.prepare('DELETE FROM draft WHERE key = ?').run(draft);
      return value;
    };
    const done = this.run(kind, subject, why, drafted, null, sameLabelMeant);
    if (!done) throw new Refused('nothing changed');
    return done;
  }

  /** What an act did to each fact. */
  changesOf(act: number): Generator<Change> {
    return changesOf(this.rows.facts, act);
  }

  /** Jars of a day that count as entered (mistakes left out), with their batch's word: to find a label. */
  jarsOfDay(day: string): { key: number; uid: string; letter: string; word: string | null; state: string }[] {
    return this.rows
      .prepare(
        `SELECT j.key, r.uid, j.letter, b.word, j.state FROM batch b JOIN jar j ON j.batch = b.key
           JOIN record r ON r.key = j.key
          WHERE b.made_on = ? AND j.state NOT IN ('mistake', 'not made') ORDER BY j.key`,
      )
      .all(day) as ReturnType<Acts['jarsOfDay']>;
  }
}

export type { Change, Done, FactKind, Made, NoteRow };

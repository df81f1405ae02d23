// A keeper who writes down anything, possible or not: each move picks from what is there, by numbers, so that the same
// moves give the same ledger and a failing sequence can be shortened and read.
import { type CallName, contract, type Input, type Reply, type Result } from '../../core/contract';
import { handlers } from '../../main/calls';
import { stillClock } from '../../main/ledger/clock';
import { PlacedClock } from '../../main/ledger/demo';
import { idGenerator } from '../../main/ledger/ids';
import { Ledger } from '../../main/ledger/ledger';
import { refusalOf } from '../../main/refusal';
import type { Session } from '../../main/session';
import { batchOf, fromJar, fromSource, plainJar, plainSource, unseen } from '../ledger/ledger-files';
import { day, at, dayAfter, ml, g, pieces, pick, START } from './keeper-values';
import { TURNS } from './keeper-turns';
import { equalLabels } from './ledger-check';

/** Which call, and three numbers that choose what it says. */
export type Move = readonly [kind: number, a: number, b: number, c: number];

/** Moves below this are calls, the others facts of kinds that only newer calls know. */
const CALLS = 30;
const FACTS = 8;
/** Turns of several calls: see keeper-turns.ts. */
const FIRST_TURN = CALLS + FACTS;
/** One more than the highest kind of move. */
export const KINDS = FIRST_TURN + TURNS.length;

const DAY = 86_400_000;

/** An input as it is read best: a file as its text, and nothing that is null. */
const told = (input: unknown): string =>
  JSON.stringify(input, (_key, value: unknown) =>
    value instanceof Uint8Array ? new TextDecoder().decode(value) : (value ?? undefined),
  );

interface Kept {
  readonly id: string;
  readonly jar: string;
}

export class RandomKeeper {
  readonly ledger: Ledger;
  /** The calls made so far, with what came of them: what a failing property prints. */
  readonly told: string[] = [];
  /** Pairs of jars that the keeper meant to go by one label. */
  readonly meant = new Set<string>();
  recorded = 0;
  readonly #clock = new PlacedClock(stillClock(new Date(START).toISOString().replace('.000Z', '+00:00')));
  #days = 0;

  constructor() {
    let bytes = 1;
    this.ledger = Ledger.inMemory('', {
      clock: this.#clock,
      newId: idGenerator({
        milliseconds: () => this.#clock.milliseconds(),
        random: (length) => Uint8Array.from({ length }, () => (bytes = (bytes * 73 + 41) % 251)),
      }),
    });
  }

  get today(): string {
    return this.#clock.today();
  }

  /** A call as headless makes it; a fault of the program is thrown. */
  ask<N extends CallName>(name: N, input: Input<N>): Result<Reply<N>> {
    const handler = handlers[name as keyof typeof handlers] as (...given: unknown[]) => Reply<N>;
    const session = { ledger: this.ledger } as Pick<Session, 'ledger'>;
    const { success, data } = contract[name].input.safeParse(input);
    if (!success) return { ok: false, error: { code: 'invalid', params: {} } };
    try {
      const value = handler(session, data, { step: () => undefined, look: () => undefined });
      if (contract[name].kind !== 'read' && name !== 'notes.preview') this.recorded++;
      this.told.push(`${name} ${told(input)}`);
      return { ok: true, value };
    } catch (error) {
      const refused = refusalOf(error);
      if (!refused || refused.refusal.code === 'rule') throw error;
      this.told.push(`${name} ${told(input)} → ${refused.refusal.code}`);
      return { ok: false, error: refused.refusal };
    }
  }

  #uids(table: string): string[] {
    const sql =
      table === 'act'
        ? 'SELECT uid FROM act ORDER BY key'
        : `SELECT r.uid FROM ${table} t JOIN record r ON r.key = t.key ORDER BY t.key`;
    return this.ledger.db.prepare(sql).pluck().all() as string[];
  }

  #portions(): Kept[] {
    return this.ledger.db
      .prepare(
        'SELECT p.uid AS id, j.uid AS jar FROM portion t JOIN record p ON p.key = t.key JOIN record j ON j.key = t.jar ORDER BY t.key',
      )
      .all() as Kept[];
  }

  /** Mostly jars that may seed one of that day; now and then any. */
  #seedsFor(madeOn: string, n: number): string[] {
    const made = this.ledger.db
      .prepare(
        `SELECT r.uid FROM jar j JOIN record r ON r.key = j.key JOIN batch b ON b.key = j.batch
          WHERE j.state = 'made' AND b.made_on < ? ORDER BY j.key`,
      )
      .pluck()
      .all(madeOn) as string[];
    return made.length > 0 && n % 6 !== 5 ? made : this.#uids('jar');
  }

  #seedings(a: number, b: number, madeOn: string): ReturnType<typeof fromJar>[] {
    const jars = this.#seedsFor(madeOn, a);
    const sources = this.#uids('source');
    const portions = this.#portions();
    const amount = pick([ml(45), ml(60), ml(400), null, ml(900), pieces(2), g(50), g(700)], a + b);
    if (a % 4 === 3 && portions.length > 0) {
      const { id, jar } = pick(portions, b);
      return [{ ...fromJar(jar), portion: id, amount: pick([pieces(2), pieces(4), ml(40), null, g(60)], a) }];
    }
    if (a % 5 === 4 && sources.length > 0) return [fromSource(pick(sources, b))];
    if (jars.length === 0) return [];
    const one = { ...fromJar(pick(jars, b)), amount };
    return a % 7 === 0 && jars.length > 1 ? [one, { ...fromJar(pick(jars, b + 1)), amount: ml(45) }] : [one];
  }

  #hold(a: number, b: number) {
    return {
      startedAt: a % 2 ? at(b, 6) : null, endedAt: a % 3 ? at(b + (a % 3), 18) : null, hours: pick([null, 8, 36], a), planned: null,
      probe: null, readings: [], note: null,
    }; // prettier-ignore
  }

  #outcome(a: number, b: number) {
    return {
      ...unseen,
      setWord: pick([null, 'runny', 'firm'] as const, a), ph: pick([null, 4.2, 5.1, null, 4.4, 1.5], b), phHow: pick([null, 'meter'] as const, a),
      setAtTakeOut: pick([null, true, false], a + b), signs: a % 4 === 0 ? (['fuzz'] as const).slice() : [],
      seenAt: a % 3 ? null : ('after opening' as const), openedDays: a % 3 ? null : pick([null, 0, 3, 12], b),
      powerCut: b % 3 === 0, powerCutHours: b % 3 === 0 ? pick([2, 20], a) : null,
      setAfterHours: pick([null, 8], b), setByHours: pick([null, 12, 30, 6], a),
    }; // prettier-ignore
  }

  #jar(letter: string, madeOn: string, a: number, b: number, c: number) {
    return plainJar(letter, {
      state: c % 9 === 0 ? 'planned' : 'made', finalVolume: pick([ml(946), ml(100), null, g(900)], a),
      goneOn: c % 11 === 1 ? day(a + 2) : null, onShelf: c % 8 === 2 ? true : null, seedings: c % 4 ? this.#seedings(b, a, madeOn) : [],
      outcome: c % 10 === 3 ? this.#outcome(a, b) : null,
      milkPackage: c % 13 === 2 ? (this.#uids('package')[0] ?? null) : null,
    }); // prettier-ignore
  }

  #batch([, a, b, c]: Move) {
    const letters = pick([['a'], ['a', 'b'], ['b', 'a'], ['d'], ['c', 'c']], b);
    // Now and then only about the day is known.
    const about = c % 5 === 4;
    return batchOf(
      about ? null : day(a),
      letters.map((letter, n) => ({
        ...this.#jar(letter, day(a), a + n, b, c + n),
        hold: c % 4 === 1 ? 0 : null,
      })),
      {
        word: pick([null, null, 'oat', 'rye'], c),
        madeFrom: about ? day(a) : null,
        madeTo: about ? day(a + (b % 9)) : null,
        holds: c % 4 === 1 ? [this.#hold(b, a)] : [],
        sameLabelMeant: c % 8 === 3,
      },
    );
  }

  #notes([, a, b, c]: Move) {
    const jars = this.ledger.db
      .prepare(`SELECT b.made_on || ' ' || j.letter FROM jar j JOIN batch b ON b.key = j.batch WHERE b.made_on IS NOT NULL ORDER BY j.key`)
      .pluck()
      .all() as string[]; // prettier-ignore
    const seed = (n: number): string => (jars.length === 0 ? 'Blue Tin' : pick(jars, n));
    const rows = [
      `${day(a)},n${b % 3},${seed(b)},${pick([45, 500, 90], c)} ml,${pick(['900 ml', '100 ml', ''], a)},${pick(['firm', 'soft', 'fuzzy'], c)}`,
      `${day(a + 2)},m${c % 3},${day(a)} n${b % 3},${pick([45, 60], b)} ml,900 ml,firm`,
    ];
    const text = `date,jar,seed,amount,volume,set\n${rows.join('\n')}\n`;
    const answers = Object.fromEntries([2, 3].map((line) => [`word:${line}`, c % 2 ? 'it was so' : 'leave']));
    return { file: { name: 'notes.csv', bytes: new TextEncoder().encode(text) }, answers };
  }

  #portion([, a, b, c]: Move, jar: string) {
    const own = this.#portions().filter((one) => one.jar === jar);
    const madeOn = this.ledger.db
      .prepare(
        'SELECT b.made_on FROM jar j JOIN record r ON r.key = j.key JOIN batch b ON b.key = j.batch WHERE r.uid = ?',
      )
      .pluck()
      .get(jar) as string | null;
    // Mostly on the jar's own day or some days after.
    const keptOn = a % 4 === 0 || madeOn === null ? day(b) : dayAfter(madeOn, b % 4);
    return {
      id: c % 3 === 0 ? (own[0]?.id ?? null) : null, jar, part: pick([null, 'whey', 'curd'] as const, b),
      place: pick(['fridge', 'freezer'] as const, a), pieces: pick([null, 6, 2], b),
      amount: pick([null, ml(300), ml(60), ml(700), ml(40), ml(500), ml(0), g(400), pieces(3)], a + c), keptOn,
      goneOn: c % 4 === 0 ? day(b + (a % 4)) : null, reserve: c % 2 === 0, note: null,
    }; // prettier-ignore
  }

  #package([, a, b, c]: Move) {
    return {
      id: c % 2 ? (this.#uids('package')[0] ?? null) : null, of: pick(['milk', 'addition', 'source'] as const, a),
      source: a % 3 === 2 ? (this.#uids('source')[0] ?? null) : null, name: `carton ${a}`, size: null, price: null,
      boughtOn: day(b), openedOn: pick([null, day(b + 1), null, day(b)], c), bestBefore: null, note: null,
    }; // prettier-ignore
  }

  /** A fact as it is, under an act: what no call of the older kind can say. */
  #fact([, a, b, c]: Move, what: number): void {
    const { rows, acts, db } = this.ledger;
    const jars = this.#uids('jar');
    const portions = this.#portions();
    const holds = db.prepare('SELECT key FROM hold ORDER BY key').pluck().all() as number[];
    if (jars.length === 0) return;
    const jar = rows.keyOf('jar', pick(jars, a));
    const portion = portions.length === 0 ? null : pick(portions, a);
    const key = portion === null ? null : rows.keyOf('portion', portion.id);
    const amount = pick([null, ml(45), ml(300), ml(700), g(250), pieces(2)], c);
    const kind = pick(
      [
        'eaten',
        'given',
        'discarded',
        'opened',
        'gone',
        'fridge',
        'still there',
        'freezer',
        'thawed',
      ] as const,
      b,
    );
    const write = (act: Parameters<Parameters<typeof acts.run>[3]>[0]): unknown => {
      const facts = act;
      if (what === 0) return facts.insert('movement', { jar, kind, ...(c % 5 === 1 ? { at: at(b, c % 24) } : { day: c % 5 ? day(b) : null }), amount }); // prettier-ignore
      if (what === 1 && portion && key !== null)
        return facts.insert('movement', {
          portion: key,
          kind,
          day: day(b),
          pieces: c % 2 ? 1 + (c % 4) : null,
          amount: c % 3 ? null : amount,
        });
      if (what === 2 && portion && key !== null)
        return facts.insert('portion', {
          jar: rows.keyOf('jar', portion.jar), ofPortion: key, form: 'cubes', place: 'freezer', reserve: false,
          pieces: pick([null, 2, 5], b), amount, keptOn: day(c),
        }); // prettier-ignore
      if (what === 3 && holds.length > 0)
        return facts.insert('stay', { jar, hold: pick(holds, b), came: c % 3 ? at(b, 7) : null, went: c % 2 ? at(b, 16) : null }); // prettier-ignore
      if (what === 4 && holds.length > 0)
        return facts.insert('interruption', { hold: pick(holds, b), what: 'power', hours: c % 2 ? 1 + (c % 40) : null, began: c % 2 ? null : at(b, 8), ended: null }); // prettier-ignore
      if (what === 6)
        return facts.insert('labResult', { jar, what: 'count', value: 2e8, unit: 'CFU/mL', bound: '=' });
      if (what === 7) return facts.insert('portion', { jar, form: 'cubes', place: pick(['fridge', 'freezer'] as const, b), reserve: false, pieces: pick([null, 4], c), amount, keptOn: day(c) }); // prettier-ignore
      return facts.insert('observation', { jar, stage: pick(['opened', 'later'] as const, b), day: day(c), daysOpen: pick([null, 1, 5], a) }); // prettier-ignore
    };
    const told = `fact ${what} ${JSON.stringify({ jar, key, a, b, c })}`;
    try {
      const done = acts.run('outcome.save', 'a fact', c % 2 ? 'timed by nobody' : null, write);
      if (done) this.recorded++;
      this.told.push(told);
    } catch (error) {
      const refused = refusalOf(error);
      if (!refused || refused.refusal.code === 'rule') throw error;
      this.told.push(`${told} → ${refused.refusal.code}`);
    }
  }

  /** What a move says, or null where there is nothing to say it of. */
  #call(move: Move): readonly [CallName, unknown] | null {
    const [kind, a, b, c] = move;
    const jars = this.#uids('jar');
    const jar = jars.length > 0 ? pick(jars, a) : null;
    const batches = this.#uids('batch');
    const holds = this.#uids('hold');
    const acts = this.#uids('act');
    const why = b % 3 ? null : 'looked twice';
    const moves: readonly (() => readonly [CallName, unknown] | null)[] = [
      () => ['batch.record', this.#batch(move)],
      () => ['batch.record', this.#batch([kind, b, c, a])],
      () => ['batch.record', this.#batch([kind, c, a, b])],
      () => ['batch.record', this.#batch([kind, a, c, b])],
      () => (this.#uids('source').length > 2 ? null : ['source.save', plainSource(`Tin ${a}`)]),
      () => batches.length === 0 ? null : ['batch.addJar', { batch: pick(batches, a), jar: this.#jar(pick(['a', 'b', 'd'], b), day(b), a, b, c), sameLabelMeant: c % 6 === 1, why }],
      () => batches.length === 0 ? null : ['batch.addHold', { batch: pick(batches, a), hold: this.#hold(b, c), jars: jar !== null && c % 2 ? [jar] : [] }],
      () => batches.length === 0 ? null : ['batch.correct', { id: pick(batches, a), changes: pick<object>([{ madeOn: day(b) }, { word: b % 2 ? 'oat' : null }, { madeFrom: day(b), madeTo: day(b + (a % 9)) }], c) }],
      () => batches.length === 0 ? null : ['batch.correct', { id: pick(batches, b), changes: { madeOn: day(c) } }],
      () => holds.length === 0 ? null : ['hold.correct', { id: pick(holds, a), changes: c % 2 ? { endedAt: at(b, 12) } : { hours: pick([4, 36], b) } }],
      () => jar === null ? null : ['jar.correct', { id: jar, changes: { finalVolume: pick([ml(946), ml(100), ml(40), null, ml(500), g(60), g(900), pieces(2)], b) } }],
      () => jar === null ? null : ['jar.correct', { id: jar, changes: pick<object>([{ letter: pick(['a', 'b'], b) }, { goneOn: b % 3 ? day(b) : null }, { onShelf: b % 2 === 0 }], c) }],
      () => jar === null ? null : ['jar.correct', { id: jar, changes: { state: b % 2 ? 'made' : 'planned' } }],
      () => jar === null || c % 3 ? null : ['jar.mistake', { id: jar, why }],
      () => b % 3 ? null : ['jar.lost', { madeOn: a % 2 ? day(b) : null, label: null, note: null }],
      () => jar === null ? null : ['seeding.set', { jar, seedings: this.#seedings(b, c, day(a)), why }],
      () => jar === null ? null : ['seeding.set', { jar, seedings: this.#seedings(c, a, day(b)), why }],
      () => jar === null ? null : ['portion.save', { portion: this.#portion(move, jar) }],
      () => jar === null ? null : ['portion.save', { portion: this.#portion([kind, a, c, b], jar) }],
      () => jar === null ? null : ['portion.save', { portion: this.#portion([kind, b, c, a], jar) }],
      () => jar === null ? null : ['outcome.save', { jar, outcome: c % 7 ? this.#outcome(b, c) : null, onShelf: pick([null, true], b) }],
      () => jar === null ? null : ['outcome.save', { jar, outcome: this.#outcome(c, b), onShelf: null }],
      () => ['package.save', { package: this.#package(move) }],
      () => jar === null ? null : ['caution.clear', { jar, of: pick(jars, b), reason: 'opened, clean' }],
      () => ['notes.bringIn', this.#notes(move)],
      () => ['act.undo', { act: null }],
      () => ['act.redo', {}],
      () => acts.length === 0 ? null : ['act.undo', { act: pick(acts, b * 61 + c) }],
      () => acts.length === 0 ? null : ['act.undo', { act: acts[Math.max(0, acts.length - 2 - (c % 5))] }],
      () => acts.length === 0 ? null : ['act.undo', { act: acts[Math.max(0, acts.length - 2 - (b % 9))] }],
    ]; // prettier-ignore
    return pick(moves, kind)();
  }

  /** All ids of a kind of record, in the order of entry. */
  ids(table: string): string[] {
    return this.#uids(table);
  }

  get clock(): PlacedClock {
    return this.#clock;
  }

  /** What the calls made so far left of labels stands: nobody is asked about those of another ledger. */
  meanAll(): void {
    for (const pair of equalLabels(this.ledger.db)) {
      const [one = '', other = ''] = pair.split(' ');
      this.meant.add(pairOf(one, other));
    }
  }

  /** Makes one move, and lets a day go by now and then. */
  make(move: Move): void {
    const turn = TURNS[move[0] - FIRST_TURN];
    if (turn) {
      turn(this, move);
      return;
    }
    const facts = move[0] - CALLS;
    if (facts >= 0) {
      this.#fact(move, facts);
      return;
    }
    const call = this.#call(move);
    if (!call) return;
    const [name, input] = call;
    const before = new Set(this.#uids('jar'));
    const result = this.ask(name, input as Input<CallName>);
    if (result.ok && (input as { sameLabelMeant?: boolean }).sameLabelMeant === true) this.#mean(before);
    if (move[3] % 5 === 4) this.#clock.moveTo(`${new Date(START + ++this.#days * DAY).toISOString().slice(0, 19)}+00:00`); // prettier-ignore
  }

  /** The keeper meant the labels of the jars that are new, whatever they are equal to. */
  #mean(before: ReadonlySet<string>): void {
    const all = this.#uids('jar');
    for (const fresh of all.filter((uid) => !before.has(uid)))
      for (const other of all) if (other !== fresh) this.meant.add(pairOf(fresh, other));
  }
}

/** Two ids as one, whichever comes first. */
export const pairOf = (one: string, other: string): string => [one, other].toSorted().join(' ');

// Turns of a random keeper that the single calls rarely come to: facts told, corrected and taken away, notes that grow,
// hand-overs there and back, lifts and portions whose ground is taken away and given back.
import type { Input } from '../../core/contract';
import { handlers } from '../../main/calls';
import { handOver, type HandedRows } from '../../main/ledger/facts/hand-over';
import { mergeRows } from '../../main/ledger/facts/merge';
import { idGenerator } from '../../main/ledger/ids';
import { Ledger } from '../../main/ledger/ledger';
import { refusalOf } from '../../main/refusal';
import { fromJar, unseen } from '../ledger/ledger-files';
import { at, day, dayAfter, g, ml, pick, pieces } from './keeper-values';
import type { Move, RandomKeeper } from './random-keeper';

type Turn = (keeper: RandomKeeper, move: Move) => void;

const one = (list: readonly string[], n: number): string | null => (list.length === 0 ? null : pick(list, n));
const record = (keeper: RandomKeeper, facts: readonly object[], n: number): ReturnType<RandomKeeper['ask']> =>
  keeper.ask('facts.record', {
    facts,
    why: n % 2 ? 'looked twice' : null,
  } as unknown as Input<'facts.record'>);
const when = (b: number, c: number): object =>
  c % 3 === 0 ? { day: day(b) } : c % 3 === 1 ? { at: at(b, c % 24) } : {};
const AMOUNTS = [null, ml(45), ml(300), g(250), g(700), pieces(2)];
const MOVES = [
  'fridge',
  'freezer',
  'thawed',
  'opened',
  'eaten',
  'given',
  'discarded',
  'gone',
  'still there',
] as const;

/** What became of a jar, or of a portion, as the call tells it. */
const tellMovement: Turn = (keeper, [, a, b, c]) => {
  const portion = c % 2 ? one(keeper.ids('portion'), a) : null;
  const jar = portion === null ? one(keeper.ids('jar'), a) : null;
  if (jar === null && portion === null) return;
  record(keeper, [{ kind: 'movement', jar, portion, what: pick(MOVES, b + c), ...when(b, a), amount: pick(AMOUNTS, a + b) }], c); // prettier-ignore
};

/** A seed told beside others, of one of several jars perhaps. */
const tellSeeding: Turn = (keeper, [, a, b, c]) => {
  const jar = one(keeper.ids('jar'), a);
  if (jar === null) return;
  const from = [b, b + 1].map((n) => one(keeper.ids('jar'), n));
  const either = c % 3 === 0 ? 1 + (c % 2) : null;
  const facts = from.slice(0, either === null ? 1 : 2);
  record(
    keeper,
    facts.map((fromJar) => ({ kind: 'seeding', jar, fromJar, actual: pick(AMOUNTS, c), either })),
    b,
  );
};

/** A hold with stays of two jars, and an interruption. */
const tellHold: Turn = (keeper, [, a, b, c]) => {
  const jars = [a, a + 1].flatMap((n) => one(keeper.ids('jar'), n) ?? []);
  record(
    keeper,
    [
      { kind: 'hold', ref: 'h', began: c % 3 ? at(b, 8) : null, ended: c % 4 ? at(b + 1, 20) : null, hours: c % 3 ? null : 36 },
      ...jars.map((jar, n) => ({ kind: 'stay', jar, hold: 'h', came: (c + n) % 4 ? null : at(b, 9), went: (b + n) % 3 ? null : at(b + 1, 10) })),
      ...(c % 5 === 0 ? [{ kind: 'interruption', hold: 'h', what: 'power', hours: 1 + (a % 40) }] : []),
    ],
    b,
  ); // prettier-ignore
};

const CORRECTED = ['movement', 'portion', 'stay', 'seeding', 'observation', 'hold'] as const;

/** A fact corrected: what no form of a jar or batch reaches. */
const correctAFact: Turn = (keeper, [, a, b, c]) => {
  const kind = pick(CORRECTED, a);
  const id = one(keeper.ids(kind), b);
  if (id === null) return;
  const jar = one(keeper.ids('jar'), c);
  const changes: Record<(typeof CORRECTED)[number], readonly object[]> = {
    movement: [{ day: day(c), at: null }, { what: pick(MOVES, c) }, { amount: pick(AMOUNTS, c) }],
    portion: [{ keptOn: day(c) }, { amount: pick(AMOUNTS, c) }, { pieces: c % 2 ? 1 + (c % 6) : null }],
    stay: [{ came: at(c, 8) }, { went: at(c, 20) }, { came: null, went: null }],
    seeding: [{ fromJar: jar }, { actual: pick(AMOUNTS, c) }, { portion: null }],
    observation: [{ day: day(c), at: null }],
    hold: [{ began: at(c, 8) }, { ended: at(c, 20) }],
  };
  keeper.ask('facts.correct', {
    kind,
    id,
    changes: pick(changes[kind], b),
    why: c % 2 ? 'read again' : null,
  } as never);
};

const removeAFact: Turn = (keeper, [, a, b]) => {
  const kind = pick([...CORRECTED, 'interruption', 'acidity', 'sign', 'lift'] as const, a);
  const id = one(keeper.ids(kind), b);
  if (id !== null) keeper.ask('facts.remove', { kind, id, why: null });
};

/** A jar that nobody can name, of a range of days, with a seed, and another range told later. */
const lostOfARange: Turn = (keeper, [, a, b, c]) => {
  const lost = keeper.ask('jar.lost', { madeOn: null, madeFrom: day(a % 12), madeTo: day((a % 12) + (b % 10)), label: null, note: null }); // prettier-ignore
  if (!lost.ok) return;
  const seed = one(keeper.ids('jar'), c);
  if (seed !== null) keeper.ask('seeding.set', { jar: lost.value.jar, seedings: [fromJar(seed)], why: 'as remembered' }); // prettier-ignore
  const child = one(keeper.ids('jar'), b + c);
  if (child !== null) keeper.ask('seeding.set', { jar: child, seedings: [fromJar(lost.value.jar)] });
};

const rangeOfABatch: Turn = (keeper, [, a, b, c]) => {
  const id = one(keeper.ids('batch'), a);
  if (id === null) return;
  if (c % 4 === 0) keeper.ask('batch.correct', { id, changes: { madeOn: day(b) } });
  else keeper.ask('batch.about', { id, madeFrom: c % 3 ? day(b % 12) : null, madeTo: c % 3 ? day((b % 12) + (c % 9)) : null }); // prettier-ignore
};

/** The same notes, longer each time, now and then with an amount or a volume changed above; every question is answered. */
const growingNotes: Turn = (keeper, [, a, b, c]) => {
  const rows = ROWS.get(keeper) ?? [];
  ROWS.set(keeper, rows);
  if (c % 3 === 0 && rows.length > 0) {
    const row = pick(rows, a);
    row[3] = pick(['45 ml', '500 ml', '90 g', '700 g'], b);
    row[4] = pick(['900 ml', '100 ml', '', '400 g'], c);
  } else {
    const before = rows.length === 0 ? null : pick(rows, b);
    const on = before === null ? day(a % 12) : dayAfter(before[0], c % 4);
    const seed = before === null || c % 5 === 0 ? 'Blue Tin' : `${before[0]} ${before[1]}`;
    rows.push([on, `g${rows.length}`, seed, pick(['45 ml', '60 g', '5 caps'], a), pick(['900 ml', '950 g', ''], b), pick(['firm', 'soft', 'fuzzy'], a + c)]); // prettier-ignore
  }
  const text = ['date,jar,seed,amount,volume,set', ...rows.map((row) => row.join(','))].join('\n');
  const file = { name: 'diary.csv', bytes: new TextEncoder().encode(text) };
  const preview = keeper.ask('notes.preview', { file, answers: {} });
  if (!preview.ok) return;
  const answers = Object.fromEntries(
    preview.value.questions.flatMap(({ id, choices }, n) =>
      choices.length === 0 ? [] : [[id, pick(choices, b + n).value]],
    ),
  );
  keeper.ask('notes.bringIn', { file, answers });
};
const ROWS = new WeakMap<RandomKeeper, [string, string, string, string, string, string][]>();

/** A lift, and then the undo of what the caution, or the jar it stands on, came from. */
const liftAndUndo: Turn = (keeper, [, a, b, c]) => {
  const [of, jar] = [one(keeper.ids('jar'), a), one(keeper.ids('jar'), b)];
  if (of === null || jar === null) return;
  keeper.ask('outcome.save', { jar: of, outcome: { ...unseen, signs: ['pink'] }, onShelf: null });
  const acts = keeper.ids('act');
  const lifted = keeper.ask('caution.clear', { jar, of, reason: 'opened, clean and sour' });
  if (!lifted.ok) return;
  keeper.ask('act.undo', { act: acts.at(-1) ?? null });
  if (c % 2) keeper.ask('act.undo', { act: pick(acts, c) });
  if (c % 3) keeper.ask('act.redo', {});
};

/** A portion taken back, its jar moved, emptied or made a plan meanwhile, and the portion told again. */
const portionBack: Turn = (keeper, [, a, b, c]) => {
  const jar = one(keeper.ids('jar'), a);
  if (jar === null) return;
  const got = keeper.ask('jar.get', { id: jar });
  const madeOn = got.ok ? got.value.view.madeOn : null;
  const keptOn = madeOn === null ? day(b) : dayAfter(madeOn, b % 3);
  const kept = record(keeper, [{ kind: 'portion', jar, place: 'freezer', pieces: c % 2 ? 4 : null, amount: pick(AMOUNTS, b), keptOn }], c); // prettier-ignore
  if (!kept.ok) return;
  const undone = keeper.ask('act.undo', { act: null });
  if (!undone.ok) return;
  if (got.ok && c % 3 === 0)
    keeper.ask('batch.correct', { id: got.value.batch, changes: { madeOn: day(a + c) } });
  if (c % 3 === 1)
    keeper.ask('jar.correct', { id: jar, changes: { finalVolume: pick([ml(40), g(60), null], a) } });
  if (c % 3 === 2)
    keeper.ask('jar.correct', { id: jar, changes: a % 2 ? { goneOn: day(b) } : { state: 'not made' } });
  keeper.ask('act.undo', { act: (undone.value as { act: string }).act });
};

interface Friend {
  readonly ledger: Ledger;
}
const FRIENDS = new WeakMap<RandomKeeper, Friend>();

function friendOf(keeper: RandomKeeper): Friend {
  const known = FRIENDS.get(keeper);
  if (known) return known;
  let bytes = 7;
  const newId = idGenerator({
    milliseconds: () => keeper.clock.milliseconds(),
    random: (length) => Uint8Array.from({ length }, () => (bytes = (bytes * 61 + 17) % 241)),
  });
  const friend = { ledger: Ledger.inMemory('', { clock: keeper.clock, newId }) };
  FRIENDS.set(keeper, friend);
  return friend;
}

/** Takes in what a jar descends from. @returns whether it was taken */
function merge(into: Ledger, from: Ledger, jar: string): boolean {
  try {
    const key = from.rows.keyOf('jar', jar);
    const handed = JSON.parse(JSON.stringify(handOver(from.rows, key))) as HandedRows;
    return into.acts.run('ledger.merge', 'a hand-over', null, (act) => mergeRows(into.rows, act, handed)) !== null; // prettier-ignore
  } catch (error) {
    const refused = refusalOf(error);
    if (!refused || refused.refusal.code === 'rule') throw error;
    return false;
  }
}

const asFriend = (ledger: Ledger, name: keyof typeof handlers, input: unknown): void => {
  try {
    (handlers[name] as (...given: unknown[]) => unknown)({ ledger }, input, {
      step: () => undefined,
      look: () => undefined,
    });
  } catch (error) {
    const refused = refusalOf(error);
    if (!refused || refused.refusal.code === 'rule') throw error;
  }
};

/** A jar goes to a friend, who changes something of it, and comes back. */
const thereAndBack: Turn = (keeper, [, a, b, c]) => {
  const jar = one(keeper.ids('jar'), a);
  if (jar === null) return;
  const { ledger } = friendOf(keeper);
  merge(ledger, keeper.ledger, jar);
  const there = ledger.db.prepare('SELECT r.uid FROM jar j JOIN record r ON r.key = j.key ORDER BY j.key').pluck().all() as string[]; // prettier-ignore
  const other = one(there, b);
  if (other === null) return;
  const batch = ledger.rows.uidOf('batch', ledger.rows.get('jar', ledger.rows.keyOf('jar', other)).batch);
  const why = 'as the friend has it';
  if (c % 4 === 0)
    asFriend(ledger, 'batch.correct', { id: batch, changes: { madeOn: day(c) }, why, draft: null });
  if (c % 4 === 1) asFriend(ledger, 'jar.correct', { id: other, changes: { finalVolume: pick([ml(60), g(500)], b) }, why, draft: null }); // prettier-ignore
  if (c % 4 === 2)
    asFriend(ledger, 'seeding.set', { jar: other, seedings: [fromJar(pick(there, c))], why, draft: null });
  if (c % 4 === 3)
    asFriend(ledger, 'jar.correct', { id: other, changes: { goneOn: day(c) }, why, draft: null });
  if (merge(keeper.ledger, ledger, pick(there, c))) {
    keeper.recorded++;
    keeper.meanAll();
    keeper.told.push(`taken in from the friend ${JSON.stringify({ jar, other, b, c })}`);
  }
};

/** What waits because the friend says otherwise is decided, whichever way. */
const decide: Turn = (keeper, [, a, b]) => {
  const listed = keeper.ask('received.list', {});
  if (!listed.ok || listed.value.received.length === 0) return;
  const { id } = pick(listed.value.received, a);
  const done = keeper.ask('received.decide', {
    id,
    decided: b % 3 ? 'took received' : 'kept own',
    why: 'asked her',
  });
  if (done.ok) keeper.meanAll();
};

/** Several acts undone as one, with what stands on them or without, and perhaps done again. */
const undoSome: Turn = (keeper, [, a, b, c]) => {
  const acts = keeper.ids('act').slice(-15);
  if (acts.length === 0) return;
  const some = [...new Set([a, b, c].map((n) => pick(acts, n)))];
  const done = keeper.ask('act.undoMany', { acts: some, later: a % 3 > 0 });
  if (done.ok && c % 3 === 0) keeper.ask('act.undo', { act: done.value.act });
};

/** Each is one kind of move. */
export const TURNS: readonly Turn[] = [
  tellMovement, tellSeeding, tellHold, correctAFact, removeAFact, lostOfARange, rangeOfABatch, growingNotes, liftAndUndo,
  portionBack, thereAndBack, decide, undoSome,
]; // prettier-ignore

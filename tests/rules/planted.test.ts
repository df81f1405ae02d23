// Each rule of the book taken out by itself: what it refuses is then taken, and the check in plain SQL finds it. A rule that is
// not here, or that nothing would miss, fails.
import { describe, expect, it } from 'vitest';
import type { CallName, Input } from '../../core/contract';
import { BOOK } from '../../core/rules/book';
import type { RefusalCode } from '../../core/sentences';
import { addSeeding } from '../../main/ledger/entries/kept-entries';
import { Refused } from '../../main/refusal';
import { askRules } from '../../main/ledger/rules/ask';
import { batchOf, fromJar, plainJar, unseen } from '../ledger/ledger-files';
import { checkLedger, equalLabels } from './ledger-check';
import { RandomKeeper } from './random-keeper';

type Said = { [N in CallName]: readonly [N, Input<N>] }[CallName];
/** A call, or a row written under an act. */
type Call = Said | (() => unknown);
/** Records what stands before, and says the call that breaks the rule. Today is 10 March 2026, noon. */
type Plant = (keeper: Keeper) => Call;

class Keeper extends RandomKeeper {
  must<N extends CallName>(
    name: N,
    input: Input<N>,
  ): Extract<ReturnType<typeof this.ask<N>>, { ok: true }>['value'] {
    const result = this.ask(name, input);
    if (!result.ok) throw new Error(`${name}: ${result.error.code}`);
    return result.value as never;
  }
  /** One batch of jars a, b, … of a day. */
  jars(madeOn: string, more: readonly Partial<Parameters<typeof plainJar>[1]>[] = [{}]): string[] {
    const jars = more.map((one, at) => plainJar('abcd'[at] ?? '', one));
    return this.must('batch.record', batchOf(madeOn, jars, { sameLabelMeant: true })).jars;
  }
  batchOf(jar: string): string {
    return this.must('jar.get', { id: jar }).batch;
  }
}

const ml = (value: number) => ({ value, unit: 'mL' as const, typed: null });
const pieces = (value: number) => ({ value, unit: 'pieces' as const, typed: null });
const portion = (jar: string, more: object = {}): Said => [
  'portion.save',
  {
    portion: {
      id: null, jar, part: null, place: 'freezer', pieces: 6, amount: null, keptOn: '2026-03-05', goneOn: null, reserve: false,
      note: null, ...more,
    },
  },
]; // prettier-ignore
const pot = (keeper: Keeper, jar: string, more: object = {}): string =>
  keeper.must('portion.save', portion(jar, more)[1] as Input<'portion.save'>).id;
const seed = (jar: string, from: string, more: Partial<ReturnType<typeof fromJar>> = {}): Call => [
  'seeding.set',
  { jar, seedings: [{ ...fromJar(from), ...more }] },
];
const seen = (jar: string, more: Partial<typeof unseen>): Call => [
  'outcome.save',
  { jar, outcome: { ...unseen, ...more }, onShelf: null },
];
const hold = (more: object) => ({
  startedAt: null, endedAt: null, hours: null, planned: null, probe: null, readings: [], note: null, ...more,
}); // prettier-ignore
const moved = (keeper: Keeper, jar: string, madeOn: string): Call => [
  'batch.correct',
  { id: keeper.batchOf(jar), changes: { madeOn } },
];
/** A fact as it is, beside a jar of 5 March and two holds from 10 to 20 o'clock. */
function fact(
  keeper: Keeper,
  say: (jar: number, hold: number, other: number) => readonly ['stay', object],
): Call {
  const [id = ''] = keeper.jars('2026-03-05');
  const long = hold({ startedAt: '2026-03-05T10:00:00Z', endedAt: '2026-03-05T20:00:00Z' });
  const held = [long, long].map(
    (one) => keeper.must('batch.addHold', { batch: keeper.batchOf(id), hold: one, jars: [] }).hold,
  );
  const { rows, acts } = keeper.ledger;
  const [one = 0, other = 0] = held.map((uid) => rows.keyOf('hold', uid));
  const [kind, stay] = say(rows.keyOf('jar', id), one, other);
  return () => acts.run('batch.addHold', 'a row', null, (act) => act.insert(kind, stay));
}
const carton = (more: object): Input<'package.save'> => ({
  package: {
    id: null, of: 'milk', source: null, name: 'carton', size: null, price: null, boughtOn: null, openedOn: null, bestBefore: null,
    note: null, ...more,
  },
}); // prettier-ignore
const corrected = (id: string, changes: Input<'jar.correct'>['changes']): Call => [
  'jar.correct',
  { id, changes },
];

const PLANTED: Partial<Record<RefusalCode, Plant>> = {
  'own ancestor': (keeper) => {
    const [a = '', b = ''] = keeper.jars('2026-03-05', [{}, {}]);
    keeper.must(...(seed(b, a) as readonly ['seeding.set', Input<'seeding.set'>]));
    return seed(a, b);
  },
  'seed not made': (keeper) => {
    const [a = '', p = ''] = keeper.jars('2026-03-05', [{}, { state: 'planned' }]);
    return seed(a, p);
  },
  'day not known': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-05');
    return seed(keeper.must('jar.lost', { madeOn: null, label: null, note: null }).jar, a);
  },
  'seed made later': (keeper) => {
    const [late = ''] = keeper.jars('2026-03-07');
    const [early = ''] = keeper.jars('2026-03-05');
    return seed(early, late);
  },
  // The call looks by itself whose portion it is, so only another program could write this row: see below.
  'portion of another jar': (keeper) => {
    const [a = '', b = ''] = keeper.jars('2026-03-04', [{}, {}]);
    const [child = ''] = keeper.jars('2026-03-08');
    return seed(child, a, { portion: pot(keeper, b) });
  },
  'day long past': () => ['batch.record', batchOf('1989-03-05', [plainJar('a')])],
  'times crossed': (keeper) => {
    keeper.jars('2026-03-05');
    return ['package.save', carton({ boughtOn: '2026-03-05', openedOn: '2026-03-04' })];
  },
  'kept before made': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-05');
    return portion(a, { keptOn: '2026-03-04' });
  },
  'portion kept later': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04');
    const [child = ''] = keeper.jars('2026-03-06');
    return seed(child, a, { portion: pot(keeper, a, { keptOn: '2026-03-08' }), amount: pieces(1) });
  },
  'gone before made': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-05');
    return corrected(a, { goneOn: '2026-03-04' });
  },
  'made on no day': (keeper) => {
    const id = keeper.batchOf(keeper.jars('2026-03-05')[0] ?? '');
    return ['batch.about', { id, madeFrom: null, madeTo: null }];
  },
  'gone already': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-02', [{ goneOn: '2026-03-04' }]);
    return ['facts.record', { facts: [{ kind: 'movement', jar: a, what: 'opened', day: '2026-03-05' }] }];
  },
  'seed gone before': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-02', [{ goneOn: '2026-03-04' }]);
    const [child = ''] = keeper.jars('2026-03-06');
    return seed(child, a);
  },
  'opened before made': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-02');
    return seen(a, { signs: ['fuzz'], seenAt: 'after opening', openedDays: 18 });
  },
  'warm before made': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-05');
    const ended = hold({ endedAt: '2026-03-04T10:00:00Z' });
    return ['batch.addHold', { batch: keeper.batchOf(a), hold: ended, jars: [a] }];
  },
  'stay outside hold': (keeper) =>
    fact(keeper, (jar, hold) => ['stay', { jar, hold, came: '2026-03-05T08:00:00Z', went: '2026-03-05T12:00:00Z' }]),
  'stays overlap': (keeper) =>
    fact(keeper, (jar, hold, other) => {
      const hours = { came: '2026-03-05T12:00:00Z', went: '2026-03-05T18:00:00Z' };
      keeper.ledger.acts.run('batch.addHold', 'a row', null, (act) => act.insert('stay', { jar, hold, ...hours }));
      return ['stay', { jar, hold: other, ...hours }];
    }),
  'interruption longer': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-05');
    keeper.must('batch.addHold', { batch: keeper.batchOf(a), hold: hold({ hours: 36 }), jars: [a] });
    return seen(a, { powerCut: true, powerCutHours: 40 });
  },
  'seed more than jar': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ finalVolume: null }]);
    const [child = ''] = keeper.jars('2026-03-06', [{ finalVolume: ml(100) }]);
    return seed(child, a, { amount: ml(500) });
  },
  'unit impossible': (keeper) => corrected(keeper.jars('2026-03-05')[0] ?? '', { finalVolume: pieces(2) }),
  'portion more than jar': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ finalVolume: ml(100) }]);
    return portion(a, { amount: ml(102) });
  },
  'portion of nothing': (keeper) => portion(keeper.jars('2026-03-04')[0] ?? '', { amount: ml(0) }),
  'taken more than jar': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ finalVolume: ml(100) }]);
    pot(keeper, a, { amount: ml(60) });
    return portion(a, { amount: ml(60) });
  },
  'more than portion': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04');
    const [child = ''] = keeper.jars('2026-03-06');
    return seed(child, a, { portion: pot(keeper, a), amount: pieces(8) });
  },
  'planned has facts': (keeper) => {
    const [p = ''] = keeper.jars('2026-03-05', [{ state: 'planned' }]);
    return seen(p, { setWord: 'firm' });
  },
  'pH impossible': (keeper) => seen(keeper.jars('2026-03-05')[0] ?? '', { ph: 1.5 }),
  'package of something else': (keeper) => {
    const { id } = keeper.must('package.save', carton({}));
    keeper.jars('2026-03-05', [{ milkPackage: id }]);
    return ['package.save', carton({ id, of: 'addition' })];
  },

  'day to come': (keeper) => moved(keeper, keeper.jars('2026-03-05')[0] ?? '', '2026-03-11'),
  'same label': (keeper) => {
    keeper.jars('2026-03-05');
    return ['batch.record', batchOf('2026-03-05', [plainJar('A')])];
  },
  'kept day to come': (keeper) => portion(keeper.jars('2026-03-05')[0] ?? '', { keptOn: '2026-03-11' }),
  'gone day to come': (keeper) => corrected(keeper.jars('2026-03-05')[0] ?? '', { goneOn: '2026-03-11' }),
  'taken out before the end': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-09', [{ outcome: { ...unseen, setAtTakeOut: true } }]);
    const open = hold({ endedAt: '2026-03-11T10:00:00Z' });
    return ['batch.addHold', { batch: keeper.batchOf(a), hold: open, jars: [a] }];
  },
  'taken out early': (keeper) => {
    const warm = hold({ startedAt: '2026-03-10T08:00:00Z', endedAt: null, hours: 36 });
    const { jars } = keeper.must('batch.record', batchOf('2026-03-10', [plainJar('a', { hold: 0 })], { holds: [warm] }));
    return seen(jars[0] ?? '', { setWord: 'firm' });
  },
  'set too soon': (keeper) => {
    const warm = hold({ startedAt: '2026-03-10T08:00:00Z', endedAt: '2026-03-10T08:01:00Z' });
    const { jars } = keeper.must('batch.record', batchOf('2026-03-10', [plainJar('a', { hold: 0 })], { holds: [warm] }));
    return seen(jars[0] ?? '', { setWord: 'firm' });
  },
  'stay not timed': (keeper) =>
    fact(keeper, (jar, hold, other) => {
      keeper.ledger.acts.run('batch.addHold', 'a row', null, (act) => {
        act.insert('stay', { jar, hold });
        for (const key of [hold, other]) act.update('hold', key, { began: null, ended: null, hours: 10 });
      });
      return ['stay', { jar, hold: other }];
    }),
  'seed found spoiled': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ outcome: { ...unseen, signs: ['pink'] } }]);
    return seed(keeper.jars('2026-03-08')[0] ?? '', a);
  },
  'seed spoiled': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ outcome: { ...unseen, signs: ['pink'] } }]);
    return seed(keeper.jars('2026-03-10')[0] ?? '', a);
  },
  'seed set aside': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-02');
    const [b = ''] = keeper.jars('2026-03-05', [{ seedings: [fromJar(a)] }]);
    keeper.must(...(seen(a, { signs: ['pink'] }) as readonly ['outcome.save', Input<'outcome.save'>]));
    return seed(keeper.jars('2026-03-10')[0] ?? '', b);
  },
  'seed without acid': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ outcome: { ...unseen, ph: 5.2, phHow: 'meter' } }]);
    return seed(keeper.jars('2026-03-10')[0] ?? '', a);
  },
  'seed stopped': (keeper) => {
    const late = { ...unseen, earlyCheckHours: 24, earlySour: false, setAtTakeOut: true, sour: true };
    const [a = ''] = keeper.jars('2026-03-04', [{ outcome: late }]);
    return seed(keeper.jars('2026-03-10')[0] ?? '', a);
  },
  'reserve spoiled': (keeper) =>
    portion(keeper.jars('2026-03-04', [{ outcome: { ...unseen, signs: ['pink'] } }])[0] ?? '', { reserve: true }),
  'reason needed': (keeper) => {
    const [a = ''] = keeper.jars('2026-03-04', [{ outcome: { ...unseen, signs: ['pink'] } }]);
    return ['jar.mistake', { id: a }];
  },
}; // prettier-ignore

/** Nothing of these is left in the ledger to be found: they are about what was known when it was written. */
const OF_THE_MOMENT: ReadonlySet<RefusalCode> = new Set<RefusalCode>([
  'kept day to come',
  'gone day to come',
  'taken out before the end',
  'taken out early',
  'set too soon',
  'stay not timed',
  'seed spoiled',
  'seed found spoiled',
  'seed set aside',
  'seed without acid',
  'seed stopped',
  'reserve spoiled',
  'reason needed',
]);

const codes = [...BOOK.invariants, ...BOOK.consents].map(({ code }) => code);

/** Takes a rule out of the book, and with it the tables' own rules and the family's, which hold behind it. */
function without(keeper: Keeper, code: RefusalCode): void {
  const { acts, db } = keeper.ledger;
  const rest = <T extends { code: RefusalCode }>(rules: readonly T[]): T[] => rules.filter((one) => one.code !== code);
  const book = { invariants: rest(BOOK.invariants), consents: rest(BOOK.consents) };
  for (const trigger of db
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'trigger' AND name GLOB '*_rules*'")
    .pluck()
    .all())
    db.exec(`DROP TRIGGER ${String(trigger)}`);
  acts.ask = (act, { kind, why }) => askRules(keeper.ledger, { act, kind, why, sameLabelMeant: null }, book);
  acts.settle = () => () => undefined;
} // prettier-ignore

/** Makes a call; of a seeding, straight as a row under an act, past what the call looks at by itself. */
function ask(keeper: Keeper, call: Call): { ok: true } | { ok: false; error: { code: string } } {
  const { rows, acts } = keeper.ledger;
  const asRow = ({ jar, seedings: [one] }: Input<'seeding.set'>) => {
    const row = {
      jar: rows.keyOf('jar', jar),
      fromJar: rows.keyOrNull('jar', one?.fromJar ?? null),
      portion: rows.keyOrNull('portion', one?.portion ?? null),
      part: null, source: null, package: null, amount: one?.amount ?? null,
    }; // prettier-ignore
    return () => acts.run('seeding.set', 'a row', null, (act) => addSeeding(act, row));
  };
  const isRow = typeof call !== 'function' && call[0] === 'seeding.set' && call[1].seedings[0]?.portion;
  if (typeof call !== 'function' && !isRow) return keeper.ask(call[0], call[1] as Input<CallName>);
  const write = typeof call === 'function' ? call : asRow(call[1] as Input<'seeding.set'>);
  try {
    write();
    return { ok: true };
  } catch (error) {
    if (error instanceof Refused) return { ok: false, error: error.refusal };
    throw error;
  }
}
const wrong = (keeper: Keeper): unknown[] => [
  ...checkLedger(keeper.ledger.db, keeper.today),
  ...equalLabels(keeper.ledger.db),
];

describe('the book', () => {
  it('says every rule in plain words, once', () => {
    expect(new Set(codes).size).toBe(codes.length);
    expect(Object.keys(PLANTED).toSorted()).toEqual(codes.toSorted());
    for (const one of BOOK.invariants) expect(one.holds).toMatch(/^[A-Z].*\.$/);
    for (const one of BOOK.consents) expect(one.asks).toMatch(/^[A-Z].*\.$/);
  });
});

describe.each(codes)('without “%s”', (code) => {
  const plant = PLANTED[code] as Plant;

  it('it is refused, and the ledger stays as it must be', () => {
    const keeper = new Keeper();
    const call = plant(keeper);
    const result = ask(keeper, call);
    expect(result.ok ? 'taken' : result.error.code).toBe(code);
    expect(wrong(keeper)).toEqual([]);
    keeper.ledger.close();
  });

  it('it is taken, and is found', () => {
    const keeper = new Keeper();
    const call = plant(keeper);
    without(keeper, code);
    const result = ask(keeper, call);
    expect(result.ok ? 'taken' : result.error.code).toBe('taken');
    if (!OF_THE_MOMENT.has(code)) expect(wrong(keeper)).not.toEqual([]);
    keeper.ledger.close();
  });
});

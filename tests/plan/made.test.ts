// What is planned counts nowhere; made with one call it is what was planned, or what is told beside it.
import { describe, expect, it } from 'vitest';
import type { CallName } from '../../core/contract';
import type { Session } from '../../main/session';
import { batchOf, demoSession, fromJar, must, newSession, NOW, plainJar, refusalOf, smallFamily, stateOf } from '../ledger/ledger-files'; // prettier-ignore

const ml = (value: number) => ({ value, unit: 'mL' as const, typed: null });
const TODAY = NOW.slice(0, 10);
const warm = {
  startedAt: null,
  endedAt: null,
  hours: 36,
  planned: null,
  probe: null,
  readings: [],
  note: null,
};

/** Two jars planned for a day, in one hold. */
function planOf(seed: string) {
  const added = { name: 'oat bran', planned: ml(30), actual: null, package: null };
  return ['a', 'b'].map((letter) =>
    plainJar(letter, {
      state: 'planned',
      milkAmount: ml(900),
      additions: [added],
      seedings: [fromJar(seed)],
      hold: 0,
    }),
  );
}

describe('a plan that is made', () => {
  const begun = (day = TODAY, hold = warm) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const seed = jars[3];
    const { batch, jars: own } = must(session, 'batch.record', batchOf(day, planOf(seed), { holds: [hold] }));
    return { session, batch, own };
  };

  it('is what was planned, in one act that one undo takes back whole', () => {
    const { session, batch, own } = begun();
    const before = stateOf(session);
    const { act } = must(session, 'batch.made', { id: batch });
    const reply = must(session, 'batch.get', { id: batch });
    expect(reply.jars.map(({ jar }) => [jar.id, jar.state, jar.onShelf])).toEqual(
      own.map((id) => [id, 'made', true]),
    );
    for (const { jar, additions, seedings } of reply.jars) {
      expect(jar.milkAmount?.value).toBe(900);
      expect(additions.map(({ planned, actual }) => [planned?.value, actual?.value])).toEqual([[30, 30]]);
      expect(seedings[0]?.seeding.amount?.value).toBe(45);
    }
    // Made today, and nobody said when it began: in warmth from now.
    expect(must(session, 'hold.now', {}).holds.map(({ began }) => began)).toEqual([NOW]);
    must(session, 'act.undo', { act });
    expect(stateOf(session)).toBe(before);
  });

  it('keeps beside the plan what differed; a swapped jar is not made', () => {
    const { session, batch, own } = begun();
    const [a = '', b = ''] = own;
    const additions = [{ name: 'oat bran', planned: ml(30), actual: ml(20), package: null }];
    must(session, 'batch.made', {
      id: batch,
      notMade: [b],
      jars: [{ jar: a, changes: { milkAmount: ml(850) }, additions }],
    });
    const reply = must(session, 'batch.get', { id: batch });
    const [one, other] = reply.jars;
    expect([one?.jar.state, one?.jar.milkAmount?.value, one?.additions[0]?.planned?.value, one?.additions[0]?.actual?.value]).toEqual(['made', 850, 30, 20]); // prettier-ignore
    expect(other?.jar.state).toBe('not made');
    expect(refusalOf(session, 'batch.made', { id: batch }).code).toBe('nothing planned');
  });

  it('planned for a day to come it is made today; its warmth begins as planned, or when that is told', () => {
    const at = `${TODAY}T20:00:00+01:00`;
    const planned = begun('2026-03-16', { ...warm, startedAt: `2026-03-16T20:00:00+01:00` as never });
    expect(must(planned.session, 'hold.now', {}).holds).toEqual([]);
    must(planned.session, 'batch.made', { id: planned.batch, startedAt: at });
    const reply = must(planned.session, 'batch.get', { id: planned.batch });
    expect([reply.batch.madeOn, reply.holds[0]?.startedAt]).toEqual([TODAY, at]);
    const own = begun(TODAY, { ...warm, startedAt: at as never });
    must(own.session, 'batch.made', { id: own.batch });
    const told = must(own.session, 'batch.get', { id: own.batch });
    expect([told.holds[0]?.startedAt, told.plannedStarts.map((one) => one.at)]).toEqual([null, [at]]);
  });

  it('refuses what is not planned, and to make none of them', () => {
    const { session, batch, own } = begun();
    const { jars } = must(session, 'family.get', {});
    expect(refusalOf(session, 'batch.made', { id: batch, notMade: [jars[0]?.id ?? ''] }).code).toBe(
      'not planned',
    );
    expect(refusalOf(session, 'batch.made', { id: batch, notMade: own }).code).toBe('invalid');
  });
});

describe('a making card', () => {
  const planned = (hold: object = {}) => {
    const session = newSession();
    const { jars } = smallFamily(session);
    const entry = batchOf(TODAY, planOf(jars[3]), { holds: [{ ...warm, ...hold }] });
    return { session, ...must(session, 'batch.record', entry) };
  };

  it('has letters before seed, seed before milk, the gate before any tasting, and ice water before the fridge', () => {
    const { session, batch } = planned({ startedAt: `${TODAY}T20:00:00+01:00` });
    const { parts, jars, cautions, intro } = must(session, 'batch.card', { id: batch });
    const steps = parts.flatMap((part) => part.steps);
    const at = (pattern: RegExp): number => steps.findIndex((step) => pattern.test(step));
    const order = [/letters on the jars first: a, b/, /Take the seed first/, /Milk from a carton/, /At 12 h \(tomorrow at 08:00\)/, /take out, look, then smell/, /ice water.*fridge/].map(at); // prettier-ignore
    expect(order).not.toContain(-1);
    expect(order).toEqual(order.toSorted((a, b) => a - b));
    expect(jars.map((jar) => [jar.letter, jar.stirredIn])).toEqual([['a', '30 mL oat bran'], ['b', '30 mL oat bran']]); // prettier-ignore
    expect(intro).toContain('45 ml of 9 Mar b');
    expect(cautions.join(' ')).toMatch(/discard the whole jar.*local food-safety authority/);
  });

  it('on paper has a box for each step and room for what went in, and nothing typed in it is markup', () => {
    const { session, batch } = planned();
    must(session, 'batch.correct', { id: batch, changes: { word: '<b>x' } });
    const { html } = must(session, 'report.get', { report: { of: 'making card', batch, paper: 'A4' } });
    expect(html).toContain('Went in');
    expect(html).toContain('&lt;b&gt;x');
    expect(html).not.toContain('<b>x');
    expect(html.match(/class="letter"/g)).toHaveLength(2);
  });
});

it('rows to be filled in by hand ask for no more than a batch can be told of, on a sheet that lies on its side', () => {
  const session = newSession();
  const { html, page } = must(session, 'report.get', { report: { of: 'rows', paper: 'Letter' } });
  expect(page).toEqual({ width: 279.4, height: 215.9 });
  expect(html.match(/<tr>/g)?.length).toBeGreaterThan(10);
  expect(html).toContain('Day, or about when');
  expect(html).toMatch(/runny, soft, spoonable, firm, very firm/);
});

/** Reads that judge, count, draw or keep: what is planned changes none of them. */
const COUNTING: readonly CallName[] = ['family.get', 'line.list', 'advice.freshStart', 'shelf.get', 'cost.list', 'cost.sheet', 'family.now', 'hold.now', 'today.list', 'calendar.get', 'hold.list', 'remarks.list']; // prettier-ignore

/** Every reply by what was asked. */
function everything(session: Session): ReadonlyMap<string, string> {
  const { lines, jars } = must(session, 'family.get', {});
  const ask = (name: CallName, input: object): [string, string] => [
    `${name} ${Object.values(input).join()}`,
    JSON.stringify(session.answer(name as never, input as never)),
  ];
  return new Map([
    ...COUNTING.map((name) => ask(name, {})),
    ...lines.flatMap(({ id: line }) => [ask('judgement.line', { line }), ask('advice.line', { line }), ask('advice.next', { line })]),
    ...jars.filter((_, at) => at % 9 === 0).map(({ id }) => ask('judgement.jar', { jar: id })),
  ]); // prettier-ignore
}

/** Where a reply is another than before: from a little before the first letter that differs. */
function differing(before: ReadonlyMap<string, string>, after: ReadonlyMap<string, string>): string[] {
  return [...after].flatMap(([asked, now]) => {
    const was = before.get(asked) ?? '';
    const at = [...now].findIndex((letter, index) => letter !== was[index]);
    return was === now
      ? []
      : [`${asked}: ${was.slice(at - 100, at + 100)} => ${now.slice(at - 100, at + 100)}`];
  });
}

it('planned jars count nowhere: not in family, judgement, advice, shelf, costs, warmth or what is due', () => {
  const session = demoSession();
  const before = everything(session);
  const { jars } = must(session, 'family.get', {});
  const seeds = jars.filter(({ label }) => /2026|Apr|Mar/.test(label)).slice(-3);
  const { now } = must(session, 'hold.now', {});
  for (const [at, { id }] of seeds.entries()) {
    const holds = [{ ...warm, startedAt: (at === 0 ? now : null) as never }];
    must(session, 'batch.record', {
      ...batchOf(now.slice(0, 10), planOf(id), { holds }),
      word: `plan ${at}`,
      why: 'a test',
    });
  }
  expect(differing(before, everything(session))).toEqual([]);
});

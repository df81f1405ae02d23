// The invented scenario through the real handlers into a real ledger file: nothing is refused, and the counts agree.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { type CallName, contract, type Reply } from '../../core/contract';
import { cases } from '../../core/demo/cases';
import { DEMO_NOW, DEMO_TODAY } from '../../core/demo/invented-larder';
import { Session } from '../../main/session';
import type { WorkerCall } from '../../main/ledger/worker-protocol';
import { play } from './play';

const folder = mkdtempSync(join(tmpdir(), 'jarline-demo-'));
const session = new Session({
  file: join(folder, 'demo.sqlite'),
  mode: 'demo',
  now: null,
  // Wherever it is visited, its clock is that of the invented kitchen.
  timeZone: 'Europe/Berlin',
  version: '0.0.0',
});
afterAll(() => {
  session.close();
  rmSync(folder, { recursive: true, force: true });
});

function ask<N extends WorkerCall & CallName>(name: N, input: unknown): Reply<N> {
  const result = session.answer(name, contract[name].input.parse(input));
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return contract[name].reply.parse(result.value) as Reply<N>;
}

it('opens on its own last day, with every jar, batch and source', () => {
  const state = ask('app.state', {});
  expect(state.trouble).toBeNull();
  expect(state.today).toBe(DEMO_TODAY);
  const { jars } = play();
  expect(state.ledger).toMatchObject({ demo: true, jars: jars.length, batches: 26, sources: 3 });
});

it('names its lines and counts them as lineage does', () => {
  const { lines, jars } = ask('family.get', {});
  expect(lines.map((line) => line.name)).toEqual(['Heron', 'Lantern']);
  const held = jars.filter((jar) =>
    jar.cautions.some((caution) => caution.how.startsWith('set aside') && !caution.cleared),
  );
  expect(held.map((jar) => `${jar.madeOn} ${jar.letter}`).toSorted()).toEqual([...cases.spoiled.setAside]);
  expect(jars.filter((jar) => jar.spoiled).map((jar) => `${jar.madeOn} ${jar.letter}`)).toEqual([
    cases.spoiled.jar,
  ]);
});

it('puts no caution on any other jar: no milk is shared over batches, nor with the spoiled jar', () => {
  const { jars } = ask('family.get', {});
  const touched = jars.filter((jar) => jar.cautions.length > 0);
  expect(touched.map((jar) => `${jar.madeOn} ${jar.letter}`).toSorted()).toEqual(
    [cases.spoiled.jar, ...cases.spoiled.setAside].toSorted(),
  );
  expect(touched.flatMap((jar) => jar.cautions).filter(({ how }) => how.startsWith('look'))).toEqual([]);
});

it('counts costs in pounds: the start by the capsules of its boxes, a jar by its milk', () => {
  const restart = ask('advice.restart', { line: null });
  expect(restart.unit).toBe('GBP');
  const input = (name: string) => restart.why.inputs.find((one) => one.name === name)?.value;
  // 23 of 45 capsules at 18.50 and 8 of 24 at 12.40: 9.456 and 4.133.
  expect(input('a fresh start')).toBe('13.59 GBP');
  // 900 mL at 1.62 to 1.74 a litre.
  const jar = Number(input('a jar')?.replace(' GBP', ''));
  expect(jar).toBeGreaterThanOrEqual(1.45);
  expect(jar).toBeLessThanOrEqual(1.57);
  const next = ask('advice.next', { line: null });
  expect(next.unit).toBe('GBP');
  expect(JSON.stringify([restart, next])).not.toMatch(/counted in jars|No price of milk/);
  for (const { label, allowed } of next.ranking)
    if (['8 Apr a', '8 Apr b', '15 Apr a'].includes(label)) expect(allowed, label).toBe(false);
});

it('holds a tasting that tells and one that does not', () => {
  const { trials, tasters } = ask('trial.list', {});
  expect(tasters.map(({ name }) => name)).toEqual(['taster A', 'taster B', 'taster C', 'taster D']);
  expect(trials.map(({ batchLabel }) => batchLabel)).toEqual(['8 Feb', '14 Dec 2025']);
  const told = trials.map(
    ({ sessions: [session] }) => ask('session.get', { session: session?.id ?? '' }).told,
  );
  // Rank sums by hand: 14 Dec 4, 9, 11 make Q 6.5, which tells (check-values §14, four tasters, three jars: .041667).
  expect(told[1]).toMatchObject({
    tells: true,
    statistic: 6.5,
    says: 'You told these jars apart, and preferred plain.',
  });
  expect(told[1]?.p).toBeCloseTo(0.041667, 6);
  expect(told[1]?.order[0]?.treatment).toBe(cases.tasted.tells.preferred);
  // 8 Feb 6, 8, 10 make Q 2.
  expect(told[0]).toMatchObject({ tells: false, statistic: 2 });
});

it('suggests a fresh start for Heron', () => {
  const { suggestions } = ask('advice.freshStart', {});
  expect(suggestions).toHaveLength(1);
  expect(suggestions[0]?.line).toBe('Heron');
  expect(suggestions[0]?.weak.map((step) => step.madeOn)).toEqual([...cases.slip.weak]);
});

it('is written at the moments it tells of', () => {
  const { acts } = ask('history.list', { record: null, before: null, limit: 200 });
  expect(acts.length).toBeGreaterThan(80);
  for (const act of acts) expect(act.at < DEMO_NOW, act.says).toBe(true);
});

it('has a batch in warmth whose look is due, with readings and a power cut, and the verdict stays with what can be used', () => {
  const [first] = ask('today.list', {}).items;
  expect(first).toMatchObject({ kind: 'look', due: true, lateMinutes: 0, of: { kind: 'hold' } });
  const { id } = first?.of ?? { id: '' };
  const hold = ask('hold.get', { id });
  expect(hold).toMatchObject({ label: '2 May', offset: 60 });
  expect(hold.jars.map(({ inside }) => inside)).toEqual([true, true, true]);
  expect(hold.series).toMatchObject([{ place: 'bath', gaps: [] }]);
  expect(hold.interruptions).toMatchObject([{ what: 'power' }]);
  // Warmed through, and colder while the power was gone than an hour before it.
  const at = (moment: string): number => hold.series[0]?.c[hold.series[0].at.indexOf(Date.parse(moment) / 1000)] ?? NaN;
  expect(at('2026-05-03T03:30:00+01:00')).toBeLessThan(at('2026-05-03T02:30:00+01:00') - 1);
  const lantern = ask('family.get', {}).lines.find(({ name }) => name === cases.inWarmth.line);
  const told = ask('advice.line', { line: lantern?.id ?? '' });
  expect(told.verdict).toBe('go on');
  expect(told.seed).toMatchObject({ label: '22 Apr a' });
}); // prettier-ignore

it('praises no reserve above a fresh jar that promises more and only has to be looked at', () => {
  const lantern = ask('family.get', {}).lines.find(({ name }) => name === 'Lantern');
  const line = lantern?.id ?? '';
  // Fine bubbles are normal, and to be looked at all the same.
  for (const { jar, kind, allowed } of ask('advice.next', { line }).ranking)
    if (jar !== null && kind !== 'reserve' && allowed) ask('facts.record', { facts: [{ kind: 'observation', jar, stage: 'later', bubbles: 'fine' }] });
  // A reserve is kept back while something fresh is as good (common practice, no source): the fresh jar stands first, and is
  // looked at before it seeds.
  const { ranking } = ask('advice.next', { line });
  const [first] = ranking;
  const reserve = ranking.find(({ kind }) => kind === 'reserve');
  expect(first?.kind).not.toBe('reserve');
  expect(first?.looks).toHaveLength(1);
  expect(first?.cost ?? Infinity).toBeLessThan(reserve?.cost ?? 0);
  expect(ask('advice.line', { line })).toMatchObject({
    verdict: 'go on, but look first',
    reason: { code: 'look' },
    seed: { jar: first?.jar },
  });
}); // prettier-ignore

// Judgement and advice through the real handlers, on the invented ledger: what a caller gets, parsed by the contract.
import { afterAll, describe, expect, it } from 'vitest';
import { contract, type CallName, type Reply } from '../../core/contract';
import { cases } from '../../core/demo/cases';
import type { WorkerCall } from '../../main/ledger/worker-protocol';
import { demoSession } from '../ledger/ledger-files';

const session = demoSession();
afterAll(() => session.close());

function ask<N extends WorkerCall & CallName>(name: N, input: unknown): Reply<N> {
  const result = session.answer(name, contract[name].input.parse(input));
  if (!result.ok) throw new Error(JSON.stringify(result.error));
  return contract[name].reply.parse(result.value) as Reply<N>;
}
const { jars, lines } = ask('family.get', {});
const idOf = (name: string): string => jars.find((jar) => `${jar.madeOn} ${jar.letter}` === name)?.id ?? name;
const lineId = (name: string): string => lines.find((line) => line.name === name)?.id ?? name;

describe('judgement.line', () => {
  const heron = ask('judgement.line', { line: lineId('Heron') });
  const lantern = ask('judgement.line', { line: lineId('Lantern') });

  it('catches the slipping line after its last even batch, and says so with figures', () => {
    expect(['slipping', 'worn out']).toContain(heron.standing);
    expect(heron.slope).toBeLessThan(0);
    expect(heron.sentence).toMatch(/\d/);
    const called = heron.batches.find(({ batch }) => batch === heron.calledAt);
    expect(called!.madeOn! > cases.slip.lastEven).toBe(true);
    expect(called!.madeOn! <= cases.slip.weak[0]).toBe(true);
  });
  it('gives a chance at one look together with what it would take to raise the alarm', () => {
    for (const { why } of [heron, lantern]) {
      const chance = why.inputs.find(({ name }) => name.startsWith('chance that luck alone'));
      expect(chance?.value).toMatch(/^\d\.\d{4}; by itself it says nothing$/);
      expect(why.assumptions.join(' ')).toContain('neither decides by itself');
    }
  });
  it('does not blame the other line for a cold night', () => {
    expect(lantern.standing).toBe('steady');
    expect(lantern.suspects.join(' ')).toContain('28 Jan 2026');
  });
  it('says that it says nothing about safety, and carries its why and its parameters', () => {
    expect(heron.safety).toContain('nothing about safety');
    expect(heron.why.inputs.length).toBeGreaterThan(5);
    expect(heron.model.parameters).toMatchObject({ fewest: 5 });
  });
  it('refuses what is no line', () => {
    const result = session.answer('judgement.line', { line: idOf('2025-11-02 a') });
    expect(result).toMatchObject({ ok: false, error: { code: 'not found' } });
  });
});

describe('judgement.jar', () => {
  it('puts a wrecked jar down to the fibre, by its plain siblings', () => {
    for (const name of cases.fibre.wrecked) {
      const { reasons, leftOut } = ask('judgement.jar', { jar: idOf(name) });
      expect(reasons.join(' ')).toContain('that was the oat bran, not the culture');
      expect(leftOut).toContain('plain siblings');
    }
  });
  it('gives a spoiled jar no score, and an unseen one none either', () => {
    expect(ask('judgement.jar', { jar: idOf(cases.spoiled.jar) })).toMatchObject({ score: null });
    expect(ask('judgement.jar', { jar: idOf('2025-12-28 a') }).sentence).toContain('unknown');
  });
  it('answers for every jar of the ledger', () => {
    for (const { id } of jars) expect(ask('judgement.jar', { jar: id }).jar).toBe(id);
  });
});

describe('advice.next', () => {
  it('never offers a held jar, whatever its score', () => {
    const { ranking } = ask('advice.next', {});
    for (const name of cases.spoiled.setAside) {
      const found = ranking.filter(({ jar }) => jar === idOf(name));
      expect(found.length).toBeGreaterThan(0);
      expect(found.every(({ allowed, cost }) => !allowed && cost === null)).toBe(true);
      expect(found[0]?.reasons.join(' ')).toContain('set aside');
    }
    expect(ranking.some(({ jar }) => jar === idOf(cases.spoiled.jar))).toBe(false);
  });
  it('puts a fresh start or a reserve before the worn line', () => {
    const { ranking, sentence } = ask('advice.next', { line: lineId('Heron') });
    const first = ranking[0]?.kind;
    expect(['fresh start', 'reserve']).toContain(first);
    expect(sentence.length).toBeGreaterThan(10);
    for (const { reasons, wouldChange } of ranking)
      expect([reasons.length > 0, wouldChange !== '']).toEqual([true, true]);
  });
  it('gives the same advice twice', () => {
    expect(ask('advice.next', {})).toEqual(ask('advice.next', {}));
  });
});

describe('advice.line', () => {
  it.each(['Heron', 'Lantern'])(
    'says one verdict, the seed that the ranking puts first, and one reason: %s',
    (name) => {
      const line = lineId(name);
      const verdict = ask('advice.line', { line });
      const { ranking } = ask('advice.next', { line });
      expect(verdict.seed).toEqual({ jar: ranking[0]?.jar, portion: ranking[0]?.portion, label: ranking[0]?.label, level: ranking[0]?.level }); // prettier-ignore
      expect(verdict.sentence).toContain(verdict.seed?.label);
      const { sentence, sure, today, from } = ask('advice.restart', { line });
      const reached = (today ?? 0) >= from;
      if (sure && reached && verdict.verdict !== 'start afresh')
        expect(sentence).toContain('the verdict is to go on');
    },
  );
});

describe('advice.restart', () => {
  it('gives a curve with today on it, said as one figure and a range', () => {
    const restart = ask('advice.restart', { line: lineId('Heron') });
    expect(restart.today).toBe(14);
    expect(restart.sentence).toContain(String(restart.best));
    expect(restart.from <= restart.best && restart.best <= restart.to).toBe(true);
    expect(
      restart.curve
        .filter(({ generation }) => generation > restart.lastSeen)
        .every(({ reckonedOn }) => reckonedOn),
    ).toBe(true);
    const lowest = Math.min(...restart.curve.map(({ cost }) => cost));
    expect(restart.curve.find(({ generation }) => generation === restart.best)?.cost).toBe(lowest);
  });
});

describe('a reserve', () => {
  it.each([null, 'Heron', 'Lantern'])('costs the same in both advices (line: %s)', (name) => {
    const line = name === null ? null : lineId(name);
    const { reserve, sentence, curve, best } = ask('advice.restart', { line });
    const { ranking } = ask('advice.next', { line });
    const same = ranking.filter(({ kind, label }) => kind === 'reserve' && label === reserve?.label);
    expect(same.map(({ cost }) => cost)).toEqual([reserve?.cost]);
    expect(sentence).toContain('with what its storage delays');
    const fresh = ranking.find(({ kind }) => kind === 'fresh start');
    expect(fresh?.cost).toBe(curve.find(({ generation }) => generation === best)?.cost);
    // The cheapest of those that may be used is the one that is named.
    const others = ranking.filter(({ kind, allowed }) => kind === 'reserve' && allowed);
    expect(Math.min(...others.map(({ cost }) => cost ?? Infinity))).toBe(reserve?.cost);
  });
});

describe('recording', () => {
  it('is seen by the next judgement', () => {
    const jar = idOf('2026-04-22 a');
    const before = ask('judgement.jar', { jar });
    const record = ask('jar.get', { id: jar }).record.outcome;
    const { jar: _jar, ...outcome } = record!;
    ask('outcome.save', {
      jar,
      outcome: { ...outcome, setWord: 'runny', setAtTakeOut: true },
      onShelf: true,
    });
    expect(ask('judgement.jar', { jar }).score).toBeLessThan(before.score!);
    ask('act.undo', { act: null });
    expect(ask('judgement.jar', { jar })).toEqual(before);
  });
});

describe('a hold corrected later', () => {
  it('changes the judgement of its jars, and of no other ledger read since', () => {
    const jar = idOf('2026-02-18 a');
    const before = ask('judgement.jar', { jar });
    const { record, hold } = ask('jar.get', { id: jar });
    expect(record.jar.hold).toBe(hold!.id);
    ask('hold.correct', {
      id: hold!.id,
      changes: { readings: [], planned: { value: 30, unit: '°C', typed: null } },
    });
    expect(ask('judgement.jar', { jar }).leftOut).toContain('ran cool');
    ask('act.undo', { act: null });
    expect(ask('judgement.jar', { jar })).toEqual(before);
  });
});

describe("the keeper's limits", () => {
  const saved = ask('app.state', {}).preferences;
  const stopped = (code: string): string[] =>
    ask('advice.next', {}).ranking.flatMap(({ stops }) => stops.filter((stop) => stop.code === code).map(({ says }) => says)); // prettier-ignore

  it('are hard stops, with the days and the limit in the sentence', () => {
    ask('preferences.save', { ...saved, seedFridgeDays: 3 });
    for (const says of stopped('too old'))
      expect(says).toMatch(/in the fridge for \d+ days; the limit is 3 \(Preferences\)\.$/);
    expect(stopped('too old').length).toBeGreaterThan(0);
  });
  it('stop a line at its most generations, and no limit stops nothing', () => {
    ask('preferences.save', { ...saved, mostGenerations: 2 });
    expect(stopped("keeper's limit").join(' ')).toMatch(/generation \d+; the limit is 2 \(Preferences\)\./);
    ask('preferences.save', { ...saved, seedFridgeDays: null, seedFreezerDays: null });
    expect([...stopped('too old'), ...stopped("keeper's limit")]).toEqual([]);
  });
  it('are kept with the advice as its parameters', () => {
    ask('preferences.save', { ...saved, seedFridgeDays: 14, mostGenerations: 12 });
    expect(ask('advice.next', {}).model.parameters).toMatchObject({ fridgeDays: 14, generation: 12 });
    ask('preferences.save', saved);
  });
});

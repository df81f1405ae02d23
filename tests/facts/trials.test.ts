// Trials and tastings through the calls: drawn afresh, blind until revealed, only past the gate, honest in what they tell.
import fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Input } from '../../core/contract';
import type { Session } from '../../main/session';
import { runs } from '../runs';
import { batchOf, fromJar, fromSource, must, newSession, plainJar, plainSource, refusalOf, stateOf } from '../ledger/ledger-files'; // prettier-ignore

const HOLD = {
  startedAt: null,
  endedAt: null,
  hours: 12,
  planned: null,
  probe: null,
  readings: [],
  note: null,
};
let session: Session;
let seed = '';
const passed = (jar: string): void => {
  must(session, 'facts.record', { facts: [{ kind: 'observation', jar, stage: 'take-out', looked: true, sour: true, setState: 'set', setWord: 'firm' }] }); // prettier-ignore
};
/** A batch of jars from one seed, each with its own addition, and a trial of them. */
function trialOf(
  day: string,
  names: readonly string[],
  more: Partial<Input<'trial.save'>> = {},
  gate = true,
) {
  const { batch, jars } = must(session, 'batch.record', batchOf(day, names.map((name, i) => plainJar('abcdef'[i] ?? '', { seedings: [fromJar(seed)], hold: 0, additions: name === 'plain' ? [] : [{ name, planned: null, actual: null, package: null }] })), { holds: [HOLD] })); // prettier-ignore
  if (gate) for (const jar of jars) passed(jar);
  const treatments = names.map((name, i) => ({ jar: jars[i] ?? '', name, dose: i }));
  const { trial } = must(session, 'trial.save', { batch, differsIn: 'fibre', treatments, ...more });
  return { batch, jars, trial };
}
type Served = ReturnType<typeof start>;
const start = (trial: string, day: string, tasters: number, task: Input<'session.start'>['task'] = 'rank', more: Partial<Input<'session.start'>> = {}) =>
  must(session, 'session.start', { trial, day, task, tasters: Array.from({ length: tasters }, (_, i) => ({ name: `taster ${i}`, avoids: [] })), ...more }); // prettier-ignore
/** Which jar is behind a code: only the file knows before it is revealed. */
const jarBehind = (code: number, of: string): string => {
  const serving = must(session, 'facts.list', { kind: 'serving', of }).facts.find((one) => 'code' in one && one.code === code); // prettier-ignore
  return serving && 'jar' in serving ? String(serving.jar) : '';
};
/** All tasters rank by the order of jars. */
const rankAll = (served: Served, order: readonly string[]): void => {
  const marks = served.tasters.flatMap(({ servings }) => servings.map(({ code }) => ({ code, rank: order.indexOf(jarBehind(code, served.session)) + 1 }))); // prettier-ignore
  must(session, 'mark.record', { session: served.session, marks });
};

beforeAll(() => {
  session = newSession();
  const source = must(session, 'source.save', plainSource('Blue Tin')).id;
  seed = must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a', { seedings: [fromSource(source)] })])).jars[0] ?? ''; // prettier-ignore
  passed(seed);
});
afterAll(() => session.close());

describe('a tasting', () => {
  it('is blind until it is revealed, and then tells, by an exact test', () => {
    const { trial, jars } = trialOf('2026-03-03', ['plain', 'acacia fibre', 'oat bran']);
    const served = start(trial, '2026-03-04', 4);
    const codes = served.tasters.flatMap(({ servings }) => servings.map(({ code }) => code));
    expect(new Set(codes).size).toBe(12);
    expect(JSON.stringify(served)).not.toContain(jars[0]);
    expect(served).toMatchObject({ blind: true, revealedAt: null, told: null, words: [] });
    expect(served.reach.says).toBe('Four tasters and three jars can tell if they mostly agree.');
    rankAll(served, [jars[1] ?? '', jars[0] ?? '', jars[2] ?? '']);
    const words = served.tasters.map(({ servings }) => ({ code: servings[0]?.code ?? 0, aspect: 'texture', word: 'smooth' })); // prettier-ignore
    must(session, 'mark.record', { session: served.session, marks: words });
    const told = must(session, 'session.reveal', { session: served.session });
    expect(told.told).toMatchObject({ tells: true, test: 'Friedman', method: 'exact', says: 'You told these jars apart, and preferred acacia fibre.' }); // prettier-ignore
    // Four in the same order: 1/6³.
    expect(told.told?.p).toBeCloseTo(1 / 216, 9);
    expect(told.told?.order.map(({ treatment }) => treatment)).toEqual(['acacia fibre', 'plain', 'oat bran']);
    expect(told.words.reduce((sum, { count }) => sum + count, 0)).toBe(4);
    expect(told.jars?.map(({ treatment }) => treatment)).toEqual(['acacia fibre', 'plain', 'oat bran']);
    // Whoever tasted first got one bowl each: what was said of it stands beside the jar that was in it.
    expect(told.jars?.map(({ words: said }) => said).join(' ')).toMatch(
      /smooth (?:once|twice|three times|four times)/,
    );
    expect(told.told?.why.inputs).toContainEqual({ name: 'by chance', value: '1 in 216' });
    expect(told.told).toMatchObject({ reason: 'The tasters agree well.', statistic: 8 });
    expect(told.tasters[0]?.servings[0]?.jar).toBeTruthy();
    expect(refusalOf(session, 'mark.record', { session: served.session, marks: words }).code).toBe('revealed already'); // prettier-ignore
  });
  it('of two jars by three can never tell, and says so before anyone tastes', () => {
    const { trial, jars } = trialOf('2026-03-05', ['plain', 'potato starch']);
    expect(must(session, 'trial.reach', { task: 'rank', tasters: 3, jars: 2 })).toMatchObject({ canTell: false, says: 'Three tasters and two jars can never tell: it takes six tasters.' }); // prettier-ignore
    const served = start(trial, '2026-03-06', 3);
    rankAll(served, jars);
    const { told } = must(session, 'session.reveal', { session: served.session });
    expect(told).toMatchObject({ tells: false, p: 0.25, reason: 'Three tasters and two jars can never tell: it takes six tasters.' }); // prettier-ignore
  });
  it('goes on where it was: who has marked and who has not is told, and what each bowl holds to whoever pours', () => {
    const { trial, jars } = trialOf('2026-03-02', ['plain', 'acacia fibre', 'oat bran']);
    const served = start(trial, '2026-03-04', 3);
    const listed = () => must(session, 'trial.list', {}).trials.find(({ id }) => id === trial);
    expect(listed()).toMatchObject({ says: 'Being tasted: none of three has marked.', batchLabel: '2 Mar' });
    const [first] = served.tasters;
    const mark = (rank: number) => ({ session: served.session, marks: [{ code: first?.servings[rank - 1]?.code ?? 0, rank }] }); // prettier-ignore
    must(session, 'mark.record', mark(1));
    must(session, 'mark.record', mark(2));
    const done = () =>
      must(session, 'session.get', { session: served.session }).tasters.map((one) => one.done);
    expect(done()).toEqual([false, false, false]);
    must(session, 'mark.record', mark(3));
    expect(done()).toEqual([true, false, false]);
    expect(listed()?.says).toBe('Being tasted: one of three has marked.');
    expect(JSON.stringify(must(session, 'session.get', { session: served.session }))).not.toContain(jars[0]);
    const { bowls } = must(session, 'session.pour', { session: served.session });
    expect(bowls.map(({ jar }) => jar)).toEqual(jars);
    for (const { jar, codes } of bowls) {
      expect(codes).toHaveLength(3);
      for (const { code } of codes) expect(jarBehind(code, served.session)).toBe(jar);
    }
    must(session, 'act.undo', { act: null });
    expect(done()).toEqual([false, false, false]);
  });
  it('by pairs and by triangles goes by exact binomials', () => {
    const { trial, jars } = trialOf('2026-03-07', ['plain', 'chicory inulin']);
    const pair = start(trial, '2026-03-08', 6, 'pair');
    const picks = pair.tasters.map(({ servings }) => servings.find(({ code }) => jarBehind(code, pair.session) === jars[1])?.code ?? 0); // prettier-ignore
    must(session, 'mark.record', { session: pair.session, marks: picks.map((code) => ({ code, picked: true })) }); // prettier-ignore
    expect(must(session, 'session.reveal', { session: pair.session }).told).toMatchObject({ tells: true, says: 'You told these two jars apart, and preferred chicory inulin.' }); // prettier-ignore
    // Each picks one bowl: a later pick takes the place of the one before, two at once are refused.
    const two = start(trial, '2026-03-08', 1, 'pair');
    const own = two.tasters[0]?.servings.map(({ code }) => code) ?? [];
    const pick = (...codes: number[]): Input<'mark.record'> => ({ session: two.session, marks: codes.map((code) => ({ code, picked: true })) }); // prettier-ignore
    expect(refusalOf(session, 'mark.record', pick(...own)).params).toMatchObject({ problem: 'picks two bowls of one taster' }); // prettier-ignore
    for (const code of own) must(session, 'mark.record', pick(code));
    expect(must(session, 'session.get', { session: two.session }).tasters[0]?.servings.map(({ marks }) => marks[0]?.picked)).toEqual([false, true]); // prettier-ignore
    must(session, 'session.reveal', { session: two.session });
    expect(must(session, 'trial.list', {}).trials.find(({ id }) => id === trial)?.together).toMatchObject({ batches: 1, enough: false }); // prettier-ignore
    const odd = start(trial, '2026-03-08', 3, 'triangle');
    expect(odd.tasters.every(({ servings }) => servings.length === 3)).toBe(true);
    const right = odd.tasters.map(({ servings }) => servings.find(({ code }) => servings.filter((one) => jarBehind(one.code, odd.session) === jarBehind(code, odd.session)).length === 1)?.code ?? 0); // prettier-ignore
    must(session, 'mark.record', {
      session: odd.session,
      marks: right.map((code) => ({ code, picked: true })),
    });
    const found = must(session, 'session.reveal', { session: odd.session }).told;
    expect(found?.p).toBeCloseTo(1 / 27, 9);
    expect(found?.says).toBe('You told these two jars apart.');
  });
  it('of doses asks for the trend that was expected', () => {
    const { trial, jars } = trialOf('2026-03-09', ['plain', 'oat bran', 'more oat bran'], { expected: 'more is better' }); // prettier-ignore
    const served = start(trial, '2026-03-10', 2);
    expect(served.reach.canTell).toBe(true);
    rankAll(served, jars.toReversed());
    const told = must(session, 'session.reveal', { session: served.session }).told;
    // check-values §14: two tasters, three ordered doses, L 28.
    expect(told).toMatchObject({ test: 'Page', tells: true, says: 'The taste follows the dose, as you expected.' }); // prettier-ignore
    expect(told?.p).toBeCloseTo(0.027778, 6);
  });
  it('says where whoever poured tasted, too', () => {
    const { trial } = trialOf('2026-03-11', ['plain', 'acacia fibre']);
    expect(start(trial, '2026-03-11', 2, 'rank', { pouredBy: 1 })).toMatchObject({ blind: false, notBlind: 'Not blind: taster 1 poured and tasted.' }); // prettier-ignore
  });
  it('is drawn afresh each time, and undone as one act', () => {
    const { trial } = trialOf('2026-03-12', ['plain', 'acacia fibre', 'oat bran']);
    const before = stateOf(session);
    const one = start(trial, '2026-03-12', 6);
    const codes = (of: Served) => of.tasters.map(({ servings }) => servings.map(({ code }) => code));
    must(session, 'act.undo', { act: one.act });
    expect(stateOf(session)).toBe(before);
    expect(codes(start(trial, '2026-03-12', 6))).not.toEqual(codes(one));
  });
  it('serves nothing that has not passed the gate, and nobody what they avoid', () => {
    const unseen = trialOf('2026-03-13', ['plain', 'oat bran'], {}, false);
    const ask = (trial: string, avoids: readonly string[] = []) => refusalOf(session, 'session.start', { trial, day: '2026-03-13', task: 'rank', tasters: [{ name: 'taster A', avoids: [...avoids] }] }); // prettier-ignore
    expect(ask(unseen.trial).code).toBe('gate not passed');
    must(session, 'facts.record', { facts: [{ kind: 'observation', ref: 'look', jar: unseen.jars[1] ?? '', stage: 'take-out', looked: true }, { kind: 'sign', observation: 'look', sign: 'pink', answer: 'seen' }] }); // prettier-ignore
    passed(unseen.jars[0] ?? '');
    expect(ask(unseen.trial).code).toMatch(/^(?:not to be tasted|gate not passed)$/);
    const { trial, jars } = trialOf('2026-03-14', ['plain', 'oat bran']);
    must(session, 'facts.record', { facts: [{ kind: 'carries', name: 'Oat bran', allergen: 'gluten' }] });
    expect(ask(trial, ['Gluten']).sentence).toBe('taster A avoids Gluten, and 14 Mar b may hold it. Leave one of the two out.'); // prettier-ignore
    expect(ask(trial, ['milk']).code).toBe('taster avoids');
    expect(must(session, 'trial.list', {}).trials.find(({ id }) => id === trial)?.cautions[0]).toContain('milk, gluten'); // prettier-ignore
    const served = start(trial, '2026-03-14', 2);
    expect(served.cautions[0]).toContain('these jars hold milk, gluten');
    // What one who is known newly says to avoid is kept in the same act as the codes, and asked ever after.
    const [known] = served.tasters;
    const again = (avoids: string[]): Input<'session.start'> => ({ trial, day: '2026-03-14', task: 'rank', tasters: [{ id: known?.taster ?? '', avoids }] }); // prettier-ignore
    must(session, 'session.start', again(['Nuts']));
    must(session, 'session.start', again(['nuts']));
    expect(must(session, 'trial.list', {}).tasters.find(({ id }) => id === known?.taster)?.avoids).toEqual(['Nuts']); // prettier-ignore
    expect(refusalOf(session, 'session.start', again(['gluten'])).code).toBe('taster avoids');
    expect(jars).toHaveLength(2);
  });
});

it('proposes what the jars of a batch differ in, says why a jar is not tasted, and offers what can be compared', () => {
  const source = must(session, 'source.list', {}).sources[0]?.id ?? '';
  const { batch, jars } = must(session, 'batch.record', batchOf('2026-03-06', ['plain', 'oat bran', 'acacia fibre'].map((name, i) => plainJar('abc'[i] ?? '', { seedings: [fromSource(source)], hold: 0, milk: i === 2 ? 'cream' : 'whole milk', additions: name === 'plain' ? [] : [{ name, planned: null, actual: null, package: null }] })), { holds: [HOLD] })); // prettier-ignore
  passed(jars[0] ?? '');
  passed(jars[1] ?? '');
  const proposed = must(session, 'trial.propose', { batch });
  expect(proposed).toMatchObject({ label: '6 Mar', differsIn: 'what was stirred in', trials: [] });
  expect(proposed.cautions[0]).toBe('They differ in the milk, too: a difference may come from that.');
  expect(proposed.treatments.map(({ name, plain }) => [name, plain])).toEqual([['plain', true], ['oat bran', false], ['acacia fibre', false]]); // prettier-ignore
  expect(proposed.treatments.map(({ not }) => not?.slice(0, 29) ?? null)).toEqual([null, null, 'It is not noted that 6 Mar c ']); // prettier-ignore
  const offered = () => must(session, 'trial.list', {}).offers.map(({ label }) => label);
  expect(offered()[0]).toBe('6 Mar');
  must(session, 'trial.save', { batch, differsIn: proposed.differsIn ?? '', treatments: proposed.treatments.map(({ jar, name, dose }) => ({ jar, name, dose })) }); // prettier-ignore
  expect(offered()).not.toContain('6 Mar');
  expect(must(session, 'trial.propose', { batch }).trials).toHaveLength(1);
});

it('tells pairs of several batches together, as exactly as one by one: a coin for each taster', () => {
  const source = must(session, 'source.list', {}).sources[0]?.id ?? '';
  for (const day of ['2026-02-10', '2026-02-12', '2026-02-14']) {
    const names = ['plain', 'guar'];
    const { batch, jars } = must(session, 'batch.record', batchOf(day, names.map((name, i) => plainJar('ab'[i] ?? '', { seedings: [fromSource(source)], hold: 0, additions: name === 'plain' ? [] : [{ name: 'acacia fibre', planned: null, actual: null, package: null }] })), { holds: [HOLD] })); // prettier-ignore
    for (const jar of jars) passed(jar);
    const { trial } = must(session, 'trial.save', { batch, differsIn: 'fibre', treatments: names.map((name, i) => ({ jar: jars[i] ?? '', name })) }); // prettier-ignore
    const served = start(trial, day, 2, 'pair');
    const marks = served.tasters.flatMap(({ servings }) => servings.filter(({ code }) => jarBehind(code, served.session) === jars[0]).map(({ code }) => ({ code, picked: true }))); // prettier-ignore
    must(session, 'mark.record', { session: served.session, marks });
    must(session, 'session.reveal', { session: served.session });
  }
  const { together } = must(session, 'trial.list', {}).trials.find(({ treatments }) => treatments.map(({ name }) => name).join() === 'plain,guar') ?? {}; // prettier-ignore
  // Six of six, either way round: 2 / 64 (ISO 5495, exact binomial).
  expect(together).toMatchObject({
    batches: 3,
    enough: true,
    sameSeed: true,
    told: { tells: true, tasters: 6 },
  });
  expect(together?.told?.p).toBeCloseTo(2 / 64, 9);
});

it('taste never enters vigour, advice or safety, whatever tasters say of whichever jar', () => {
  const source = must(session, 'source.list', {}).sources[0]?.id ?? '';
  const { batch, jars } = must(session, 'batch.record', batchOf('2026-02-26', ['a', 'b', 'c'].map((letter) => plainJar(letter, { seedings: [fromSource(source)], hold: 0 })), { holds: [HOLD] })); // prettier-ignore
  for (const jar of jars) passed(jar);
  const { trial } = must(session, 'trial.save', { batch, differsIn: 'the shelf', treatments: jars.map((jar, i) => ({ jar, name: `place ${i}` })) }); // prettier-ignore
  const keys = [...must(session, 'family.drawing', { spacing: 'generation' }).keys];
  const judged = (): string =>
    JSON.stringify([
      must(session, 'judgement.scores', { keys }),
      must(session, 'advice.next', { line: null }),
      must(session, 'shelf.get', {}).items.map(({ id, safety, eatBy, seedBy, group }) => [id, safety, eatBy, seedBy, group]),
      must(session, 'family.drawing', { spacing: 'generation' }),
    ]); // prettier-ignore
  const before = judged();
  const mark = fc.record({
    aspect: fc.constantFrom('overall', 'texture', 'taste', 'remark'),
    word: fc.constantFrom('foul', 'weak', 'pink', 'runny', 'sour'),
    rank: fc.integer({ min: 1, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(mark, { minLength: 6, maxLength: 6 }), (given) => {
      const served = start(trial, '2026-02-28', 2);
      const marks = served.tasters.flatMap(({ servings }, taster) =>
        servings.map(({ code }, at) => {
          const { aspect, word, rank } = given[3 * taster + at] ?? { aspect: 'overall', word: '', rank: 1 };
          return aspect === 'overall' ? { code, aspect, rank } : { code, aspect, word };
        }),
      );
      must(session, 'mark.record', { session: served.session, marks });
      must(session, 'session.reveal', { session: served.session });
      expect(judged()).toBe(before);
    }),
    { numRuns: runs(5) },
  );
});

it('a claim about a fibre needs three batches, told together by like treatment', () => {
  const like = must(session, 'trial.list', {}).trials.find(({ treatments }) => treatments.map(({ name }) => name).join() === 'plain,acacia fibre,oat bran'); // prettier-ignore
  expect(like?.together).toMatchObject({ batches: 1, enough: false, told: null });
  expect(like?.together?.says).toContain('three are needed');
  for (const day of ['2026-02-20', '2026-02-22']) {
    // Earlier days can't be seeded by a later jar: these begin from the product.
    const source = must(session, 'source.list', {}).sources[0]?.id ?? '';
    const names = ['plain', 'acacia fibre', 'oat bran'];
    const { batch, jars } = must(session, 'batch.record', batchOf(day, names.map((name, i) => plainJar('abc'[i] ?? '', { seedings: [fromSource(source)], hold: 0, additions: name === 'plain' ? [] : [{ name, planned: null, actual: null, package: null }] })), { holds: [HOLD] })); // prettier-ignore
    for (const jar of jars) passed(jar);
    const { trial } = must(session, 'trial.save', { batch, differsIn: 'fibre', treatments: names.map((name, i) => ({ jar: jars[i] ?? '', name })) }); // prettier-ignore
    const served = start(trial, day, 2);
    rankAll(served, [jars[1] ?? '', jars[0] ?? '', jars[2] ?? '']);
    must(session, 'session.reveal', { session: served.session });
  }
  const now = must(session, 'trial.list', {}).trials.find(({ id }) => id === like?.id)?.together;
  expect(now).toMatchObject({ batches: 3, enough: true, sameSeed: true, says: 'Over 3 batches acacia fibre is preferred.' }); // prettier-ignore
});

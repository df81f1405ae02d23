// No ledger makes a read fail: generated ledgers of 1 to 400 jars with gaps, mixes, holes, mistakes and undone acts, every
// read of the contract. Whatever is replied has the form that the contract promises, and no figure in it is without a value.
// A thorough run draws more of them, up to the largest.
import { expect, it } from 'vitest';
import { type CallName, contract, type Input, type Reply } from '../../core/contract';
import { READS } from '../../core/call-names';
import { RECORDED } from '../../core/ledger/facts/recorded-facts';
import { seededNumbers } from '../families';
import { Generated } from '../ledger/generated-ledgers';
import { runs } from '../runs';

const LEDGERS = runs(20);
/** Batches of the largest: about two and a half jars each make 400. */
const MOST_BATCHES = LEDGERS > 40 ? 160 : 16;

/** What a reply holds that is no figure: NaN or without end, by where it stands. */
function unfit(value: unknown, at: string): string[] {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [`${at} is ${value}`];
  if (typeof value === 'string') return /\b(NaN|Infinity|undefined)\b/.test(value) ? [`${at} says ${value}`] : []; // prettier-ignore
  if (ArrayBuffer.isView(value)) return Array.from(value as Float64Array).flatMap((one, i) => (Number.isNaN(one) ? [`${at}.${i} is NaN`] : [])); // prettier-ignore
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, one]) => unfit(one, `${at}.${key}`));
}

/** Asks a read and holds its reply against the contract. @returns null where it was refused, with a code */
function read<N extends CallName>(
  ledger: Generated,
  name: N,
  input: Input<N>,
  seed: number,
): Reply<N> | null {
  const reply = ledger.ask(name, input);
  if (!reply.ok) {
    // A lost jar has nothing to judge: that is a refusal with a sentence, and no failure.
    expect([seed, name, reply.error.code]).toEqual([seed, name, 'not found']);
    return null;
  }
  const formed = contract[name].reply.safeParse(reply.value);
  if (!formed.success) throw new Error(`${name} of ledger ${seed}: ${formed.error.message}`);
  expect([seed, ...unfit(reply.value, name)]).toEqual([seed]);
  return reply.value;
}

/** Verdict and ranking of a line name the same seed, and the ranking's sentence recommends none that the verdict doesn't. */
function asOne(ledger: Generated, line: string, seed: number): void {
  const [verdict, next] = [read(ledger, 'advice.line', { line }, seed), read(ledger, 'advice.next', { line }, seed)]; // prettier-ignore
  if (!verdict || !next) throw new Error(`no verdict on a line of ledger ${seed}`);
  const { seed: chosen, verdict: word } = verdict;
  const [first] = next.ranking;
  if (chosen) expect([chosen.jar, chosen.label]).toEqual([first?.jar, first?.label]);
  expect(next.sentence.startsWith('Seed the next batch from')).toBe(word !== 'start afresh' && chosen !== null); // prettier-ignore
}

/** Asks every read of a ledger, of each jar, line, batch and kind of fact. @returns the names that were asked */
function readAll(ledger: Generated, seed: number): Set<string> {
  const asked = new Set<string>();
  const ask = <N extends CallName>(name: N, input: Input<N>): Reply<N> | null => {
    asked.add(name);
    return read(ledger, name, input, seed);
  };
  const family = ask('family.get', {});
  if (!family) throw new Error('there is always a family');
  for (const line of [null, ...family.lines.map(({ id }) => id)]) {
    ask('advice.next', { line });
    ask('advice.restart', { line });
    ask('advice.choices', { line, limit: 20 });
    if (line === null) continue;
    ask('judgement.line', { line });
    ask('advice.line', { line });
    asOne(ledger, line, seed);
  }
  ask('line.list', { jar: null });
  const batches = new Set<string>();
  const keys: number[] = [];
  for (const { id } of family.jars) {
    const jar = ask('jar.get', { id });
    if (jar) batches.add(jar.batch);
    if (jar && keys.length < 600) keys.push(jar.view.key);
    ask('judgement.jar', { jar: id });
    ask('jar.left', { id });
    ask('caution.list', { of: id });
    ask('photograph.list', { jar: id });
    ask('photograph.line', { jar: id });
  }
  for (const id of batches) {
    ask('batch.get', { id });
    ask('batch.card', { id });
    ask('trial.propose', { batch: id });
  }
  for (const spacing of ['generation', 'calendar'] as const) ask('family.drawing', { spacing });
  ask('family.jars', { keys });
  ask('judgement.scores', { keys });
  ask('jar.find', { text: 'a', limit: 50, notAfter: null });
  ask('batch.list', { before: null, limit: 200 });
  ask('history.list', { record: null, before: null, limit: 200 });
  for (const kind of RECORDED) ask('facts.list', { kind, of: null, after: null, limit: 200 });
  for (const name of ['source.list', 'package.list', 'line.list', 'draft.list', 'advice.freshStart', 'family.now', 'received.list', 'handOver.list', 'cost.list', 'appliance.list', 'tool.list', 'trial.list', 'hold.now', 'hold.list', 'today.list', 'calendar.get', 'shelf.get', 'cost.sheet'] as const)
    ask(name, {}); // prettier-ignore
  const spoons = { source: null, package: null, amount: { value: 45, unit: 'mL' as const } };
  const source = ask('source.list', {})?.sources[0];
  const pieces = {
    source: source?.id ?? null,
    package: null,
    amount: { value: 10, unit: 'pieces' as const },
  };
  const additions = [{ name: 'potato starch', amount: { value: 30, unit: 'mL' as const }, package: null }];
  ask('plan.batch', {
    jars: [
      { volume: 946 },
      { volume: 946, seeds: [spoons], additions },
      { volume: 473, seeds: [spoons, pieces] },
    ],
    milkAtHand: 900,
    awayUntil: '2026-03-01',
  });
  ask('remarks.list', {});
  const [some] = family.jars;
  if (some) ask('label.sheet', { jars: [some.id], kind: 'shelf', layout: ROLL });
  if (some) ask('report.get', { report: { of: 'page', line: null } });
  ask('trial.reach', { task: 'rank', tasters: 3, jars: 3 });
  const hold = ask('facts.list', { kind: 'hold', of: null, after: null, limit: 1 })?.facts[0];
  ask('hold.get', { id: hold?.id ?? '00000000-0000-7000-8000-000000000000' });
  ask('addition.usual', {});
  ask('appliance.proof', { hold: hold?.id ?? '00000000-0000-7000-8000-000000000000' });
  const act = ask('history.list', { record: null, before: null, limit: 1 })?.acts[0];
  if (act && !act.undone) ask('act.standing', { acts: [act.act] });
  return asked;
}

/** A roll of labels, in mm. */
const ROLL = {
  page: { width: 62, height: 40 }, rows: 1, columns: 1, label: { width: 60, height: 38 }, margin: { top: 1, left: 1 },
  gap: { across: 0, down: 0 },
}; // prettier-ignore

it('answers every read with figures, whatever the ledger', { timeout: 3_600_000 }, () => {
  const random = seededNumbers(1);
  const asked = new Set<string>();
  for (let seed = 1000; seed < 1000 + LEDGERS; seed++) {
    // Most are small, as most are; the last is the largest.
    const part = seed === 999 + LEDGERS ? 1 : random() ** 5;
    const ledger = new Generated(seed, 1 + Math.floor((MOST_BATCHES - 1) * part));
    for (const name of readAll(ledger, seed)) asked.add(name);
  }
  // The state of the program is no matter of a ledger; series of readings, files and tastings there are none to ask here, and
  // a hand-over is refused by what is unanswered.
  const left = READS.filter((name) => !asked.has(name));
  expect(left).toEqual([
    'app.state',
    'readings.list',
    'handOver.about',
    'session.get',
    'session.pour',
    'readings.preview',
  ]);
});

// What the fields of a new batch begin with, asked of a real ledger: as last time, with the advised or the chosen seed.
import { describe, expect, it } from 'vitest';
import { refusalSentence } from '../../core/sentences';
import { beginBatch, beginOf, type Ask, type Begin } from '../../renderer/batch/begin';
import { noAddition, recipeOf } from '../../renderer/batch/batch-text';
import { makeWriter } from '../../renderer/parts/use-reader';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import type { Session } from '../../main/session';
import { ask, batchOf, FIRM, fromJar, fromSource, must, newFile, openSession, plainJar, plainSource } from '../ledger/ledger-files'; // prettier-ignore

const writer = makeWriter({
  theme: 'system', temperatures: '°C', volumes: 'metric', spoons: 'US', dates: 'day first', currency: 'EUR', ...NEUTRAL_LIMITS,
}); // prettier-ignore
const asking =
  (session: Session): Ask =>
  async (name, input) => {
    const result = ask(session, name, input);
    return result.ok ? result : { ...result, sentence: refusalSentence(result.error) };
  };
const begin = (session: Session, how: Begin) => beginBatch(how, asking(session), writer, '20 May 2026');

const WARM = { startedAt: null, endedAt: null, hours: 30, planned: { value: 38, unit: '°C' as const, typed: '38' }, probe: 'bath' as const, readings: [], note: null }; // prettier-ignore
const milk = (value: number) => ({
  milk: 'whole milk',
  milkAmount: { value, unit: 'mL' as const, typed: `${value} ml` },
  onShelf: true,
  outcome: FIRM,
  hold: 0,
});
const spoons = (name: string) => ({
  name,
  planned: { value: 20, unit: 'g' as const, typed: '20 g' },
  actual: null,
  package: null,
});

/** Line A of two batches, the last of three jars with a fibre and cubes kept; then a founding batch of line B. */
function two(): { session: Session; jars: readonly string[]; cubes: string; other: string; batch: string } {
  const session = openSession(newFile(), 'create', '2026-05-20T10:00:00+02:00');
  const [tin, pot] = [plainSource('Blue Tin'), plainSource('Meadow Pot')].map((one) => must(session, 'source.save', one).id); // prettier-ignore
  const first = must(session, 'batch.record', batchOf('2026-05-08', [plainJar('a', { ...milk(900), seedings: [fromSource(tin ?? '')] })], { holds: [WARM] })); // prettier-ignore
  const seeded = { ...milk(500), seedings: [fromJar(first.jars[0] ?? '', 30)] };
  const { jars, batch } = must(session, 'batch.record', batchOf('2026-05-14', [plainJar('a', seeded), plainJar('b', { ...seeded, additions: [spoons('oat bran')] }), plainJar('c', seeded)], { holds: [WARM] })); // prettier-ignore
  const cubes = must(session, 'portion.save', { portion: { id: null, jar: jars[0] ?? '', place: 'freezer', amount: null, pieces: 6, part: 'mixed', keptOn: '2026-05-16', goneOn: null, reserve: true, note: null } }).id; // prettier-ignore
  const other = must(session, 'batch.record', batchOf('2026-05-16', [plainJar('a', { ...milk(250), seedings: [fromSource(pot ?? '')] })], { holds: [WARM] })); // prettier-ignore
  return { session, jars, cubes, other: other.jars[0] ?? '', batch };
}

describe('a batch that begins from a seed', () => {
  it('has everything of its line’s last batch, and that seed with as much of it as then', async () => {
    const { session, jars } = two();
    const { text, repeated } = await begin(session, { as: 'seeded', jar: jars[1] ?? '', portion: null });
    expect(repeated).toBeNull();
    expect(text.date).toBe('20 May 2026');
    expect(text.jars.map(({ letter }) => letter)).toEqual(['a', 'b', 'c']);
    expect(text.all.milk).toMatchObject({ milk: 'whole milk', milkAmount: '500 ml' });
    expect(text.holds).toMatchObject([{ hours: '30', planned: '38', probe: 'bath' }]);
    expect(text.jars.map((jar) => recipeOf(text, jar).additions)).toMatchObject([[noAddition], [{ name: 'oat bran', planned: '20 g' }], [noAddition]]); // prettier-ignore
    expect(text.all.seeds).toMatchObject([{ picked: { kind: 'jar', id: jars[1], label: '14 May b' }, amount: '30 ml' }]); // prettier-ignore
    expect(text.jars.every(({ seeds }) => seeds === null)).toBe(true);
  });
  it('takes what was kept back as it is counted: spoons are not carried over to cubes', async () => {
    const { session, jars, cubes } = two();
    const { text } = await begin(session, { as: 'seeded', jar: jars[0] ?? '', portion: cubes });
    expect(text.all.seeds).toMatchObject([
      { picked: { id: jars[0], pieces: true }, portion: cubes, amount: '' },
    ]);
    expect(text.count).toBe('3');
  });
  it('after a founding batch has its milk and warmth, and no capsules', async () => {
    const { session, other } = two();
    const { text } = await begin(session, { as: 'seeded', jar: other, portion: null });
    expect(text.all.milk.milkAmount).toBe('250 ml');
    expect(text.all.seeds).toMatchObject([{ picked: { kind: 'jar', id: other }, amount: '' }]);
  });
});

describe('a batch made again', () => {
  it('takes the seed that advice.line says for its line, the last one as well as an earlier one', async () => {
    const { session, batch, jars } = two();
    const [line] = must(session, 'line.list', { jar: jars[0] ?? '' }).lines;
    const { seed } = must(session, 'advice.line', { line: line?.id ?? '' });
    expect(seed?.jar).toBeTruthy();
    const again = await begin(session, { as: 'again', batch });
    expect(again.repeated).toBe('14 May 2026');
    expect(again.text.all.seeds[0]?.picked?.id).toBe(seed?.jar);
    expect(again.text.all.seeds[0]?.portion).toBe(seed?.portion ?? '');
    const last = await begin(session, { as: 'last' });
    expect(last.repeated).toBe('16 May 2026');
    expect(last.text.all.seeds[0]?.picked).toMatchObject({ kind: 'jar', label: '16 May a' });
  });
  it('is founded again from its products where it was founded from them', async () => {
    const { session } = two();
    const [line] = must(session, 'line.list', {}).lines;
    const { text } = await begin(session, { as: 'again', batch: line?.id ?? '' });
    expect(text.all.seeds).toMatchObject([{ picked: { kind: 'source', label: 'Blue Tin' } }]);
    expect(text.all.milk.milkAmount).toBe('900 ml');
  });
});

it('an empty batch has last time’s milk, vessel and warmth, and neither its seed nor its fibres', async () => {
  const { session } = two();
  const { text, repeated } = await begin(session, { as: 'empty' });
  expect(repeated).toBeNull();
  expect(text.all.milk).toMatchObject({ milk: 'whole milk', milkAmount: '250 ml' });
  expect(text.holds).toMatchObject([{ hours: '30', planned: '38' }]);
  expect(text.all.seeds[0]?.picked).toBeNull();
  expect(text.all.additions).toEqual([noAddition]);
  expect(text.count).toBe('1');
});

it('what can’t be read is said, and the fields are empty', async () => {
  const session = openSession(newFile(), 'create', '2026-05-20T10:00:00+02:00');
  expect(await begin(session, { as: 'last' })).toMatchObject({ repeated: null, problem: 'There is no batch to repeat yet.' }); // prettier-ignore
  const gone = await begin(session, { as: 'again', batch: '019a0000-0000-7000-8000-000000000001' });
  expect(gone.problem).toMatch(/\.$/);
  expect(gone.text.all.seeds[0]?.picked).toBeNull();
});

it('what is asked for stands in the focus of the screen', () => {
  expect(['new', 'repeat', 'repeat:1', 'seed:1', 'seed:1/2', 'lost', null, '1'].map(beginOf)).toEqual([
    { as: 'empty' }, { as: 'last' }, { as: 'again', batch: '1' }, { as: 'seeded', jar: '1', portion: null },
    { as: 'seeded', jar: '1', portion: '2' }, null, null, null,
  ]); // prettier-ignore
});

it('an amount that was worked out is written into a field as one would write it', () => {
  // A quart and three spoons of seed (US): 946.352946 + 44.36 mL, of which nobody types more than a tenth.
  expect(writer.amount({ value: 990.71324034375, unit: 'mL', typed: null })).toBe('990.7 mL');
  expect(writer.amount({ value: 44.36029434375, unit: 'mL', typed: null })).toBe('44.36 mL');
  expect(writer.amount({ value: 44.36029434375, unit: 'mL', typed: '3 tbsp' })).toBe('3 tbsp');
});

it('what stood without its unit at the head of a column is written with it, and reads back', () => {
  expect(writer.amount({ value: 45, unit: 'mL', typed: '45' })).toBe('45 mL');
  expect(writer.amount({ value: 1.5, unit: 'g', typed: '1,5 ' })).toBe('1,5 g');
  expect(writer.amount({ value: 8, unit: 'pieces', typed: '8' })).toBe('8');
});

it('repeats what was made last, not what is planned, and numbers its jars on', async () => {
  const { session, jars } = two();
  const numbered = (letter: string) =>
    plainJar(letter, { ...milk(700), seedings: [fromJar(jars[0] ?? '', 30)] });
  must(
    session,
    'batch.record',
    batchOf('2026-05-18', [numbered('s39.1'), numbered('s39.2')], { holds: [WARM] }),
  );
  must(session, 'batch.record', batchOf('2026-05-22', [{ ...numbered('a'), state: 'planned' as const, onShelf: null, outcome: null }], { holds: [WARM] })); // prettier-ignore
  const { text, repeated } = await begin(session, { as: 'last' });
  expect(repeated).toBe('18 May 2026');
  expect(text.jars.map(({ letter }) => letter)).toEqual(['s40.1', 's40.2']);
  const empty = await begin(session, { as: 'empty' });
  expect(empty.text.jars.map(({ letter }) => letter)).toEqual(['s40.1']);
});

it('each thing that was stirred in has its own last amount, by the day it went in', () => {
  const { session, jars } = two();
  const of = (day: string, name: string, grams: number, state: 'made' | 'planned' = 'made') =>
    must(session, 'batch.record', batchOf(day, [plainJar('a', { ...milk(500), state, ...(state === 'planned' ? { onShelf: null, outcome: null } : {}), hold: null, seedings: [fromJar(jars[0] ?? '', 30)], additions: [{ ...spoons(name), planned: { value: grams, unit: 'g', typed: `${grams} g` } }] })])); // prettier-ignore
  of('2026-05-19', 'Inulin', 12);
  of('2026-05-18', 'inulin', 9);
  of('2026-05-30', 'inulin', 40, 'planned');
  expect(must(session, 'addition.usual', {}).additions).toEqual([
    { name: 'oat bran', amount: { value: 20, unit: 'g', typed: '20 g' } },
    { name: 'Inulin', amount: { value: 12, unit: 'g', typed: '12 g' } },
  ]);
});

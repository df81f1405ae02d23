// Earlier jars from memory: rows as a keeper types them, what they come to, and that what is not known stays so in a real ledger.
// Days and amounts by hand from the calendar and the tables of units; the rest is common practice, no source.
import { describe, expect, it } from 'vitest';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import type { Preferences } from '../../core/ledger/records';
import type { Session } from '../../main/session';
import { gateOf, namesIn, readRemember } from '../../renderer/batch/remember-entry';
import type { Asked } from '../../renderer/batch/remember-seeds';
import { COLUMNS, emptyRemember, namedSeeds, toldRows, withCell, type Column, type RememberText } from '../../renderer/batch/remember-text'; // prettier-ignore
import { seedWords } from '../../renderer/batch/jar-says';
import { makeReader } from '../../renderer/parts/reading';
import { makeWriter } from '../../renderer/parts/use-reader';
import { batchOf, fromSource, must, newFile, openSession, plainJar, plainSource, refusalOf } from '../ledger/ledger-files'; // prettier-ignore
import { checkLedger } from '../rules/ledger-check';

const NOW = '2026-05-20T10:00:00+02:00';
const preferences: Preferences = { theme: 'system', temperatures: '°C', volumes: 'metric', spoons: 'metric', dates: 'day first', currency: 'EUR', ...NEUTRAL_LIMITS }; // prettier-ignore
const reader = makeReader(preferences, '2026-05-20', () => '+02:00');
const writer = makeWriter(preferences);

const rowsOf = (...rows: readonly Partial<Record<Column, string>>[]): RememberText =>
  rows.reduce<RememberText>(
    (text, row, at) => COLUMNS.reduce((now, column) => withCell(now, at, column, row[column] ?? ''), text),
    emptyRemember,
  );

/** What the ledger says to the names, by the calls that the page makes. */
function askLedger(session: Session, text: RememberText): ReadonlyMap<string, Asked> {
  const sources = must(session, 'source.list', {}).sources.map(({ id, name }) => ({ id, name }));
  return new Map(
    namesIn(text).map((name) => {
      const found = must(session, 'jar.find', { text: name, limit: 6, notAfter: null });
      const jars = found.jars.map(({ id, label }) => ({ id, label }));
      return [name.trim().toLowerCase(), { named: found.named, jars, sources }];
    }),
  );
}
const readIn = (session: Session, text: RememberText) => readRemember(text, askLedger(session, text), reader, writer); // prettier-ignore

const WINTER = rowsOf(
  { day: 'about 15 Jan', seed: 'blue tin', seedAmount: '8', stirredIn: 'plain', milk: '900 ml whole milk', warmth: '32 h, 38 C', gate: 'yes', setWord: 'soft' }, // prettier-ignore
  { seed: '"', stirredIn: '2 tbsp oat bran', setWord: 'firm' },
  { day: 'late January', seed: 'a or b, not sure', seedAmount: '3 tbsp', setWord: 'firm', note: 'nice' },
  { day: '3 Feb', seed: '?' },
);

function winter(): Session {
  const session = openSession(newFile(), 'create', NOW);
  must(session, 'source.save', plainSource('Blue Tin'));
  return session;
}

describe('a winter from memory', () => {
  const session = winter();
  const { entry, problems, rows } = readIn(session, WINTER);
  it('is read by the row, with nothing filled in that was not typed', () => {
    expect([...problems]).toEqual([]);
    expect(rows.map(({ letter, either, seeds }) => [letter, either, seeds.map((one) => one.kind)])).toEqual([
      ['a', false, ['source']], ['b', false, ['source']], ['a', true, ['here', 'here']], ['a', false, []],
    ]); // prettier-ignore
    expect(entry?.batches.map(({ madeOn, madeFrom, madeTo }) => [madeOn, madeFrom, madeTo])).toEqual([
      [null, '2026-01-12', '2026-01-18'], [null, '2026-01-21', '2026-01-31'], ['2026-02-03', null, null],
    ]); // prettier-ignore
    expect(entry?.jars.map(({ batch }) => batch)).toEqual([0, 0, 1, 2]);
    expect(entry?.batches[0]?.holds).toMatchObject([{ hours: 32, planned: { value: 38 }, startedAt: null }]);
    expect(entry?.jars.slice(0, 2)).toMatchObject([
      { milk: 'whole milk', milkAmount: { value: 900, unit: 'mL' }, hold: 0, additions: [], seedings: [{ amount: { value: 8, unit: 'pieces' } }], outcome: { sour: true, setAtTakeOut: true, setWord: 'soft', powerCut: null } },
      { milk: null, milkAmount: null, hold: null, additions: [{ name: 'oat bran', actual: { value: 30, unit: 'mL' } }], seedings: [{ amount: null }], outcome: { sour: null, setAtTakeOut: null, setWord: 'firm' } },
    ]); // prettier-ignore
    expect(entry?.jars[3]).toMatchObject({ seedings: [], additions: [], outcome: null, onShelf: null, hold: null }); // prettier-ignore
  });
  it('is one act, in which unknown stays unknown in every figure, and one undo takes all of it', () => {
    const done = must(session, 'jars.remember', { ...entry!, why: null });
    expect(checkLedger(session.ledger.db, '2026-05-20')).toEqual([]);
    const { jars } = must(session, 'family.get', {});
    expect(jars.map(({ label, generation }) => [label, generation.deepest, generation.atLeast])).toEqual([
      ['lost a', expect.any(Number), expect.any(Boolean)],
      ['about 15 Jan a', 1, false], ['about 15 Jan b', 1, false], ['about 26 Jan a', 2, false], ['3 Feb a', expect.any(Number), true],
    ]); // prettier-ignore
    const unsure = jars.find(({ label }) => label === 'about 26 Jan a');
    // One of the two went in, and nobody knows which: no share of theirs rests on an amount.
    expect(unsure?.shareBasis).toBe('equal, assumed');
    expect(unsure?.seeds.map(({ share }) => share)).toEqual([0.5, 0.5]);
    expect(unsure?.doublings.transfers).toBeNull();
    // On its page it is one or the other, and no mixture of halves.
    const told = must(session, 'batch.get', { id: done.batches[1] ?? '' }).jars[0];
    expect(told && seedWords(told, writer)).toMatch(/^[^%]*15 Jan a or [^%]*15 Jan b, not sure which$/);
    must(session, 'act.undo', { act: done.act });
    expect(must(session, 'family.get', {}).jars).toEqual([]);
    session.close();
  });
});

describe('seeds as they are named', () => {
  it.each([
    ['a or b, not sure', ['a', 'b'], true],
    ['15 Jan a or 15 Jan b?', ['15 Jan a', '15 Jan b'], true],
    ['one of a or b', ['a', 'b'], true],
    ['Blue Tin + Meadow Pot', ['Blue Tin', 'Meadow Pot'], false],
    ['a and b', ['a', 'b'], false],
    ['3 Feb b, I think', ['3 Feb b'], false],
    ['?', [], false],
    ['nobody knows', [], false],
    ['', [], false],
  ])('“%s”', (typed, names, either) => expect(namedSeeds(typed)).toEqual({ names, either }));
  it('are looked for in the rows first, the nearest day above; then in the ledger; a mate is never one', () => {
    const session = winter();
    must(session, 'batch.record', batchOf('2026-03-01', [plainJar('a'), plainJar('b', { seedings: [fromSource(must(session, 'source.list', {}).sources[0]?.id ?? '')] })])); // prettier-ignore
    const text = rowsOf(
      { day: '1 Apr', seed: '1 Mar a' },
      { seed: 'b' },
      { day: '5 Apr', seed: 'a' },
      { day: '9 Apr', seed: '1 Apr a' },
      { seed: '1 Mar' },
      { seed: 'Moss Pot' },
    );
    const { rows, problems } = readIn(session, text);
    expect(rows.map(({ seeds }) => seeds.map((one) => (one.kind === 'wrong' ? 'wrong' : one.label)))).toEqual([
      ['1 Mar a'], ['wrong'], ['1 Apr a'], ['1 Apr a'], ['wrong'], ['wrong'],
    ]); // prettier-ignore
    expect(problems.get('4.seed')).toMatch(/may be 1 Mar b or 1 Mar a|may be 1 Mar a or 1 Mar b/);
    expect(problems.get('5.seed')).toMatch(/No jar or product is called “Moss Pot”/);
    const added = readIn(session, { ...rowsOf({ day: '9 Apr', seed: 'Moss Pot' }), products: ['Moss Pot'] });
    must(session, 'jars.remember', { ...added.entry!, why: null });
    expect(must(session, 'source.list', {}).sources.map(({ name }) => name)).toContain('Moss Pot');
    session.close();
  });
  it('a loop is refused, and so is a seed of a later day; nothing of the call is kept', () => {
    const session = winter();
    const loop = readIn(
      session,
      rowsOf({ day: '1 Apr', seed: '5 Apr a' }, { day: '5 Apr', seed: '1 Apr a' }),
    );
    expect(['own ancestor', 'seed made later']).toContain(refusalOf(session, 'jars.remember', { ...loop.entry!, why: null }).code); // prettier-ignore
    expect(must(session, 'family.get', {}).jars).toEqual([]);
    session.close();
  });
});

it('a cell that can’t be read is said at its row, and nothing is recorded', () => {
  const { entry, problems } = readRemember(
    rowsOf({ setWord: 'firm' }, { day: '30 May 2026', jar: 'a' }, { jar: 'a', setWord: 'wobbly', gate: 'perhaps', seedAmount: '45', warmth: 'long' }),
    new Map(), reader, writer,
  ); // prettier-ignore
  expect(entry).toBeNull();
  expect([...problems.keys()].toSorted()).toEqual(['0.day', '1.day', '2.day', '2.gate', '2.jar', '2.seedAmount', '2.setWord', '2.warmth']); // prettier-ignore
});

it('a row that is empty is no jar, and another follows the last that is typed in', () => {
  expect(toldRows(emptyRemember)).toEqual([]);
  expect(withCell(emptyRemember, emptyRemember.rows.length - 1, 'jar', 'a').rows.length).toBe(emptyRemember.rows.length + 1); // prettier-ignore
  expect(withCell(emptyRemember, 0, 'jar', 'a').rows.length).toBe(emptyRemember.rows.length);
});

it.each([
  ['yes', { sour: 'yes', setAtTakeOut: 'yes' }],
  ['sour, holds', { sour: 'yes', setAtTakeOut: 'yes' }],
  ['sour but not set', { sour: 'yes', setAtTakeOut: 'no' }],
  ['not sour', { sour: 'no' }],
  ['no', { sour: 'no', setAtTakeOut: 'no' }],
  ['', {}],
  ['fine', null],
])('the gate answered “%s”', (typed, answers) => expect(gateOf(typed)).toEqual(answers));

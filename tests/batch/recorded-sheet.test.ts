// The sheet of a recorded batch: what typing in its cells comes to, one act for all of it, where the batch stands. That a pH
// lies between 2 and 9, and that a jar that was looked at today is not looked at again: common practice, no source.
import { describe, expect, it } from 'vitest';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import { standingOf } from '../../renderer/batch/batch-steps';
import { eatsWords, passedToday } from '../../renderer/batch/jar-says';
import {
  cellText,
  leftOver,
  nothingTyped,
  phTyped,
  readSheet,
  setTyped,
  cellsTyped,
  withTyped,
  type Jar,
  type RecordText,
} from '../../renderer/batch/record-text';
import { jarsAcross } from '../../renderer/batch/use-bands';
import { makeReader } from '../../renderer/parts/reading';
import { makeWriter } from '../../renderer/parts/use-reader';
import { batchOf, fromSource, must, newFile, openSession, plainJar, plainSource, refusalOf, unseen } from '../ledger/ledger-files'; // prettier-ignore

const TODAY = '2026-05-20';
const reader = makeReader(NEUTRAL_PREFERENCES, TODAY, () => '+02:00');
const writer = makeWriter(NEUTRAL_PREFERENCES);

/** Plain jars of one batch in a ledger of their own, as the page gets them. */
function kitchen(letters: readonly string[]) {
  const session = openSession(newFile(), 'create', `${TODAY}T10:00:00+02:00`);
  const tin = must(session, 'source.save', plainSource('Blue Tin')).id;
  const made = letters.map((one) => plainJar(one, { seedings: [fromSource(tin)], vessel: 'quart jar' }));
  const { batch } = must(session, 'batch.record', batchOf('2026-05-14', made));
  const records = (): readonly Jar[] => must(session, 'batch.get', { id: batch }).jars;
  const id = (at: number): string => records()[at]?.jar.id ?? '';
  const read = (text: RecordText) => {
    const together = new Set(records().flatMap(({ jar, outcome }) => (outcome === null ? [jar.id] : [])));
    return readSheet(text, records(), { together, mates: new Map() }, reader, writer);
  };
  /** As read, of a hold of which it is noted that it failed. */
  const readFailed = (text: RecordText) => {
    const together = new Set(records().map(({ jar }) => jar.id));
    return readSheet(text, records(), { together, mates: new Map(), failed: true }, reader, writer);
  };
  const record = (text: RecordText) => must(session, 'jars.correct', { jars: read(text).jars });
  return { session, records, id, read, readFailed, record };
}
const cells = (text: RecordText, jar: string, typed: Parameters<typeof withTyped>[2]['cells']): RecordText =>
  withTyped(text, jar, { cells: { ...text.jars[jar]?.cells, ...typed } });
const well: RecordText = { ...nothingTyped, allWell: true };

describe('typing in cells', () => {
  it('two figures are a pH with its point, and p is spoonable', () => {
    expect(['43', '4.3', '438', '4', '10', '4,3'].map(phTyped)).toEqual(['4.3', '4.3', '4.38', '4', '10', '4,3']); // prettier-ignore
    expect(['p', 's', 'P', 'spoonable'].map(setTyped)).toEqual(['spoonable', 's', 'spoonable', 'spoonable']);
  });

  it('one press says of a hold that failed what was seen, and leaves the failure as it is noted', () => {
    const { readFailed, read } = kitchen(['a', 'b']);
    const [a] = readFailed(well).jars;
    expect(a?.outcome).toMatchObject({ sour: true, setAtTakeOut: true, signs: [], powerCut: null });
    expect(read(well).jars[0]?.outcome?.powerCut).toBe(false);
  });

  it('nothing typed is nothing to record, before and after something is recorded', () => {
    const { id, read, record } = kitchen(['a', 'b']);
    expect(read(nothingTyped).jars).toEqual([]);
    record(cells(well, id(0), { setWord: 'Firm', ph: '4.3', note: 'level' }));
    expect(read(nothingTyped).jars).toEqual([]);
    // A cell typed over with what stands there already corrects nothing.
    expect(read(cells(nothingTyped, id(0), { setWord: 'firm' })).jars).toEqual([]);
  });

  it('several jars are one act, undone as one, and refused whole', () => {
    const { session, id, records, record, read } = kitchen(['a', 'b', 'c']);
    const seen = () => records().map(({ outcome }) => outcome?.setWord ?? null);
    const text = cells(cells(well, id(0), { setWord: 'firm', vessel: 'pint jar' }), id(1), {
      setWord: 'soft',
    });
    record(text);
    expect(seen()).toEqual(['firm', 'soft', null]);
    expect(records()[2]?.outcome).toMatchObject({
      sour: true,
      setAtTakeOut: true,
      powerCut: false,
      signs: [],
    });
    expect(records()[0]?.jar.vessel).toBe('pint jar');
    must(session, 'act.undo', { act: null });
    expect(records().map(({ outcome }) => outcome)).toEqual([null, null, null]);
    expect(records()[0]?.jar.vessel).toBe('quart jar');
    const jars = read(text).jars;
    refusalOf(session, 'jars.correct', { jars: [...jars, { ...jars[0]!, jar: '019a0000-0000-7000-8000-000000000001' }] }); // prettier-ignore
    expect(seen()).toEqual([null, null, null]);
  });

  it('a correction leaves all else of the outcome as it was, signs and early check too', () => {
    const { session, id, records, record } = kitchen(['a']);
    const told = { ...unseen, earlyPh: 5.1, earlySet: 'starting' as const, signs: ['fuzz' as const], seenAt: 'after opening' as const, openedDays: 0, texture: 'smooth', powerCut: true, powerCutHours: 2 }; // prettier-ignore
    must(session, 'outcome.save', { jar: id(0), outcome: told, onShelf: null });
    const before = records()[0]?.outcome;
    record(cells(nothingTyped, id(0), { whey: 'some' }));
    expect(records()[0]?.outcome).toEqual({ ...before, whey: 'some' });
    const asked = { together: new Set<string>(), mates: new Map() };
    expect(
      (['signs', 'power', 'whey'] as const).map((cell) =>
        cellText(nothingTyped, records()[0]!, asked, cell, writer),
      ),
    ).toEqual(['fuzz', '2 h', 'some']);
  });

  it('what can’t be read is said at its cell, and nothing is sent for it unread', () => {
    const { id, read } = kitchen(['a']);
    const { problems } = read(cells(well, id(0), { ph: 'sour', milkAmount: '3 spoonz', setWord: 'hard' }));
    expect([...problems.keys()].toSorted()).toEqual(['milkAmount', 'ph', 'setWord'].map((one) => `${id(0)}.${one}`)); // prettier-ignore
  });
});

describe('a jar that differs', () => {
  it('waits for its own answers and keeps what was typed, while the others are recorded', () => {
    const { id, records, read, record } = kitchen(['a', 'b']);
    const text = withTyped(cells(well, id(1), { smell: 'of yeast' }), id(1), { different: true, cells: { smell: 'of yeast' } }); // prettier-ignore
    const sent = read(text).jars;
    expect(sent.map(({ jar }) => jar)).toEqual([id(0)]);
    const left = leftOver(text, sent);
    expect(left?.jars[id(1)]).toMatchObject({ different: true, cells: { smell: 'of yeast' } });
    record(text);
    expect(read(left!).problems.get(`${id(1)}.setAtTakeOut`)).toBe(
      'Look and smell first, and answer that above.',
    );
    record(cells(left!, id(1), { setAtTakeOut: 'no', sour: 'no', signs: 'pink, foam', power: '3 h' }));
    expect(records()[1]?.outcome).toMatchObject({
      signs: expect.arrayContaining(['pink', 'foam']) as string[],
      setAtTakeOut: false, sour: false, powerCut: true, powerCutHours: 3, smell: 'of yeast',
    }); // prettier-ignore
  });

  it('is not recorded by words of what was seen alone: the gate comes first', () => {
    const { id, read } = kitchen(['a']);
    const { jars, problems } = read(cells(nothingTyped, id(0), { setWord: 'firm' }));
    expect(jars).toEqual([]);
    expect([...problems.values()]).toEqual(['Look and smell first, and answer that above.']);
  });
});

it('words of spoilage are asked about, and whatever is answered is recorded with the jar', () => {
  const { id, read, record, records } = kitchen(['a']);
  const text = cells(well, id(0), { setWord: 'firm', note: 'a pink spot on top' });
  expect(read(text).odd?.asks.length).toBe(1);
  const spoiled = read(withTyped(text, id(0), { answer: { spoiled: true } }));
  expect(spoiled.odd).toBeNull();
  expect(spoiled.jars[0]?.outcome).toMatchObject({
    signs: ['pink'],
    note: 'a pink spot on top',
    setWord: 'firm',
  });
  const fine = withTyped(text, id(0), { answer: { what: 'a berry' } });
  expect(read(fine).jars[0]).toMatchObject({ readAs: 'fine' });
  record(fine);
  expect(records()[0]?.outcome?.note).toContain('a berry');
  // Asked once: correcting another cell asks nothing.
  expect(read(cells(nothingTyped, id(0), { smell: 'milky' })).odd).toBeNull();
});

it.each([
  ['firm', { setAtTakeOut: 'firm', setWord: 'firm' }],
  [' Very firm', { setAtTakeOut: ' Very firm', setWord: 'very firm' }],
  // Both may be milk that has not set: neither says yes.
  ['soft', { setAtTakeOut: 'soft' }],
  ['runny', { setAtTakeOut: 'runny' }],
  ['no', { setAtTakeOut: 'no' }],
])('“%s” typed where it is asked whether it is set', (typed, comes) => {
  expect(cellsTyped('setAtTakeOut', typed)).toEqual(comes);
  expect(cellsTyped('note', typed)).toEqual({ note: typed });
});

describe('where a batch stands', () => {
  const jar = (letter: string, more: Partial<Jar> = {}, of: Partial<Jar['jar']> = {}) => ({
    label: `16 May ${letter}`, outcome: null, discard: null, safety: null, ...more,
    jar: { id: letter, letter, state: 'made' as const, onShelf: true as boolean | null, hold: 'h' as string | null, ...of },
  }); // prettier-ignore
  const outcome = { jar: 'x', ...unseen, sour: true };
  const safety = { eat: true, seed: true, stops: [], looks: [], noAcid: null };
  it.each([
    [[jar('a', {}, { state: 'planned' })], [], 'planned', /Make them/],
    [[jar('a'), jar('b')], ['a', 'b'], 'in warmth', /^In warmth until about at six/],
    [[jar('a'), jar('b')], ['b'], 'in warmth', /^Look at 16 May a, and smell/],
    [[jar('a', {}, { hold: null })], [], 'made', /^Look at 16 May a, and smell/],
    [[jar('a', { outcome, safety }), jar('b')], [], 'in warmth', /^Look at 16 May b/],
    [[jar('a', { outcome, safety }), jar('b', { outcome, discard: 'spoiled' })], [], 'looked at', /^Discard 16 May b/], // prettier-ignore
    [[jar('a', { outcome, safety }), jar('b', { outcome, safety })], [], 'kept', /^16 May a, b on the shelf/],
    [[jar('a', { outcome, safety: { ...safety, eat: false } })], [], 'kept', /not to be eaten/],
    [[jar('a', { outcome, safety }, { onShelf: false })], [], 'used up', /Nothing of it is left/],
  ] as const)('%#', (jars, warm, step, next) => {
    const standing = standingOf(jars, new Set(warm), { at: 'at six', over: false });
    expect(standing.step).toBe(step);
    // Out of warmth and not looked at, it is in no step: warmth is behind.
    if (step === 'in warmth') expect(standing.over ?? false).toBe(warm.length === 0);
    expect(standing.next).toMatch(next);
  });

  it('a jar that is not to be eaten is never offered', () => {
    for (const stop of [
      { ...safety, eat: false },
      { ...safety, eat: false, seed: false },
    ])
      expect(standingOf([jar('a', { outcome, safety: stop })], new Set(), null).next).not.toMatch(
        /shelf|smell/,
      );
  });
});

describe('looked at today', () => {
  const hold = (hours: number | null, endedAt: string | null = null) => ({ id: 'h', batch: 'b', startedAt: '2026-05-18T20:00:00+02:00', endedAt, hours, planned: null, probe: null, readings: [], note: null, basis: 'recorded' as const }); // prettier-ignore
  const looked = (more = {}) => ({
    ...kitchen(['a']).records()[0]!,
    outcome: { jar: 'x', ...unseen, sour: true, setAtTakeOut: true, powerCut: false, seenAt: 'take-out' as const, ...more },
  }); // prettier-ignore
  const inHold = (record: Jar): Jar => ({ ...record, jar: { ...record.jar, hold: 'h', onShelf: true } });
  it('counts only for a jar that came out today and passed its gate', () => {
    const passed = (more: object, hours: number | null, ended: string | null = null) =>
      passedToday(inHold(looked(more)), [hold(hours, ended)], '2026-05-18', TODAY);
    expect(passed({}, 40)).toBe(true);
    expect(passed({}, null, '2026-05-20T08:00:00+02:00')).toBe(true);
    expect(passed({}, 12)).toBe(false);
    expect(passed({}, 40, '2026-05-19T08:00:00+02:00')).toBe(false);
    expect(passed({ sour: false }, 40)).toBe(false);
    expect(passed({ sour: null }, 40)).toBe(false);
    expect(passed({ signs: ['pink'] }, 40)).toBe(false);
    expect(passed({ powerCut: true }, 40)).toBe(false);
  });
  it('asks for no second look on that day, and still says that it is no proof', () => {
    const safety = { eat: true, seed: true, stops: [], looks: [], noAcid: null };
    const record = { ...inHold(looked()), safety };
    expect(eatsWords(record, [hold(40)], '2026-05-18', TODAY)).toMatch(
      /^Looked at and smelled today.*no proof/,
    );
    expect(eatsWords(record, [hold(12)], '2026-05-18', TODAY)).toMatch(/no proof: look and smell first/);
    expect(eatsWords({ ...record, discard: 'spoiled' }, [hold(40)], '2026-05-18', TODAY)).toBeNull();
    const gone = { ...record, jar: { ...record.jar, onShelf: false } };
    expect(eatsWords(gone, [hold(40)], '2026-05-18', TODAY)).toBeNull();
  });
});

it('columns are as many as can be read: four jars at 800, 1280 and 1600 pixels', () => {
  expect([740, 980, 1270, 320, 100].map(jarsAcross)).toEqual([4, 4, 6, 1, 1]);
});

// One more jar of a recorded batch, and what hold-mates tell of one another. Common practice, no source.
import { describe, expect, it } from 'vitest';
import { contract, type BatchReply } from '../../core/contract';
import { NEUTRAL_PREFERENCES } from '../../core/ledger/default-preferences';
import { powerCutOfMates, withMatesPowerCut } from '../../core/safety/hold-mates';
import { addedJarEntry, addedJarText } from '../../renderer/batch/added-jar';
import { isSetAside } from '../../renderer/batch/is-set-aside';
import { makeReader } from '../../renderer/parts/reading';
import { makeWriter } from '../../renderer/parts/use-reader';
import { unseen } from '../ledger/ledger-files';

const reader = makeReader(NEUTRAL_PREFERENCES, '2026-03-20', () => 'Z');
const writer = makeWriter(NEUTRAL_PREFERENCES);
const uid = (n: number): string => `01890000-0000-7000-8000-${String(n).padStart(12, '0')}`;
type One = BatchReply['jars'][number];

const jar = (n: number, letter: string, hold: number | null, outcome: Partial<One['outcome']> | null = null): One => ({
  label: `9 Mar ${letter}`,
  jar: {
    id: uid(n), batch: uid(1), letter, hold: hold === null ? null : uid(hold), state: 'made', vessel: 'quart jar',
    finalVolume: null, finalVolumeKnown: null, milk: 'whole milk', milkAmount: { value: 946.35, unit: 'mL', typed: '1 qt' },
    milkPackage: null, countPerMl: null, onShelf: true, goneOn: null, note: null,
  },
  additions: [
    { id: uid(n + 20), jar: uid(n), name: 'oat bran', planned: null, actual: { value: 15, unit: 'mL', typed: '1 tbsp' }, package: null },
  ],
  seedings: [
    {
      seeding: {
        id: uid(n + 40), jar: uid(n), fromJar: uid(99), portion: uid(98), part: 'curd', source: null, package: null,
        amount: { value: 2, unit: 'pieces', typed: '2 cubes' },
      },
      label: '5 Mar a', kept: 'freezer cubes', share: 1,
    },
  ],
  discard: null, caution: null, safety: null, remarks: [], cautions: [],
  outcome: outcome === null ? null : { ...unseen, jar: uid(n), ...outcome },
  portions: [],
  photographs: [],
}); // prettier-ignore
const batch = (jars: One[]): BatchReply => ({
  batch: { id: uid(1), madeOn: '2026-03-09', madeFrom: null, madeTo: null, word: null, note: null },
  holds: [],
  interruptions: [],
  plannedStarts: [],
  jars,
});

describe('one more jar', () => {
  const reply = batch([jar(2, 'a', 10), jar(3, 'b', 10)]);
  const text = addedJarText(reply, writer);
  it('is filled in as the first, with the next letter, and as much stirred in', () => {
    expect(text).toMatchObject({
      letter: 'c',
      hold: uid(10),
      milk: { milkAmount: '1 qt', vessel: 'quart jar' },
    });
    expect(text.additions).toEqual([{ name: 'oat bran', planned: '', actual: '1 tbsp', package: '' }]);
    expect(text.seeds[0]).toMatchObject({ amount: '2 cubes', part: 'curd', portion: uid(98) });
  });
  it('comes to an entry that the contract takes, with the cubes it was seeded from', () => {
    const { jar: entry, problems } = addedJarEntry(text, reply, reader);
    expect([...problems]).toEqual([]);
    const input = { batch: uid(1), jar: entry, sameLabelMeant: false };
    expect(contract['batch.addJar'].input.safeParse(input).success).toBe(true);
    expect(entry.seedings[0]).toMatchObject({ fromJar: uid(99), portion: uid(98), part: 'curd', amount: { value: 2, unit: 'pieces' } });
  }); // prettier-ignore
  it.each([
    ['letter', { letter: 'B' }, /is “b” already/],
    ['letter', { letter: ' ' }, /Give this jar a letter/],
    ['seeds.0.find', { seeds: [] }, /Say what seeded it/],
  ] as const)('says what is wrong with %s', (path, part, says) =>
    expect(addedJarEntry({ ...text, ...part }, reply, reader).problems.get(path)).toMatch(says),
  );
});

describe('a power cut', () => {
  const cut = { powerCut: true, powerCutHours: 3 };
  it('holds for the jars of the same hold, and for those whose hold nobody said', () => {
    const told = jar(2, 'a', 10, cut);
    const jars = [told, jar(3, 'b', 10), jar(4, 'c', 11), jar(5, 'd', null)];
    expect(jars.map((one) => powerCutOfMates(one, jars)?.label ?? null)).toEqual([
      null,
      '9 Mar a',
      null,
      '9 Mar a',
    ]);
  });
  it('is not put over what was said of the jar itself', () => {
    const mates = { label: '9 Mar a', hours: 3 };
    expect(withMatesPowerCut({ ...unseen, powerCut: false }, mates).powerCut).toBe(false);
    expect(withMatesPowerCut(unseen, mates)).toMatchObject(cut);
    expect(withMatesPowerCut(unseen, null)).toBe(unseen);
  });
});

it('a jar is set aside where that is the gravest caution that stands', () => {
  expect(isSetAside({ caution: 'set aside' })).toBe(true);
  expect(isSetAside({ caution: null })).toBe(false);
  expect(isSetAside({ caution: 'look' })).toBe(false);
});

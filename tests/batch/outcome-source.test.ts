// Outcomes, sources and packages as typed. Readings: common practice, no source.
import { describe, expect, it } from 'vitest';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { discardOf, takeOutGate } from '../../core/safety/take-out';
import { Outcome, Package, Source, type Preferences } from '../../core/ledger/records';
import {
  outcomeText,
  readOutcome,
  saysAnything,
  type OutcomeText,
  contradiction,
  passagesAnswered,
} from '../../renderer/batch/outcome-text';
import type { Writer } from '../../renderer/parts/reading';
import { makeReader } from '../../renderer/parts/reading';
import {
  noStrain,
  packageText,
  pricePerUnit,
  readPackage,
  readSource,
  sourceText,
} from '../../renderer/sources/source-text';

const preferences: Preferences = {
  theme: 'system',
  temperatures: '°F',
  volumes: 'spoons',
  spoons: 'US',
  dates: 'month first',
  currency: 'USD',
  ...NEUTRAL_LIMITS,
};
const reader = makeReader(preferences, '2026-03-20', () => 'Z');
const writer: Writer = {
  amount: (amount) => amount.typed ?? '',
  noted: (amount) => amount.typed ?? '',
  temperature: (temperature) => temperature.typed ?? '',
  moment: (moment) => moment,
  day: (day) => day,
  made: ({ madeOn }) => madeOn ?? '',
  number: String,
};
const id = '01890000-0000-7000-8000-000000000001';
const empty = outcomeText(null, true, writer);
const read = (text: Partial<OutcomeText>) => readOutcome({ ...empty, ...text }, reader);

describe('an outcome', () => {
  it('with nothing said is not recorded', () => expect(saysAnything(read({}).outcome)).toBe(false));
  it('fits the record and comes back into the same fields', () => {
    const text: OutcomeText = {
      ...empty,
      earlyCheckHours: '8',
      earlySet: 'starting',
      earlyPh: '5.2',
      earlySour: 'yes',
      setAfterHours: '8',
      setByHours: '12',
      setAtTakeOut: 'yes',
      ph: '4.3',
      phHow: 'meter',
      noneSeen: true,
      seenAt: 'take-out',
      setWord: 'firm',
      texture: 'smooth',
      whey: 'a little',
      tang: 'clear',
      smell: 'clean',
      colour: 'white',
      fibreDidThis: true,
      note: 'good',
      shelf: 'kept',
    };
    const { outcome, problems } = readOutcome(text, reader);
    expect([...problems]).toEqual([]);
    expect(Outcome.safeParse({ ...outcome, jar: id }).success).toBe(true);
    expect(outcomeText(outcome, true, writer)).toEqual(text);
  });
  it('tells "looked and saw none" from nothing said', () => {
    expect(read({ noneSeen: true }).looked).toBe(true);
    expect(read({ noneSeen: true }).outcome.seenAt).toBe('take-out');
    expect(read({}).looked).toBe(false);
    expect(read({}).outcome.seenAt).toBeNull();
  });
  it.each([
    ['none', 'open'],
    ['fine', 'ask'],
    ['foam', 'discard'],
  ] as const)('bubbles, %s: %s; and they come back as they were said', (bubbles, verdict) => {
    const text = { bubbles, setAtTakeOut: 'yes', sour: 'yes', noneSeen: bubbles !== 'foam' } as const;
    const { outcome, looked } = read(text);
    expect(outcome.bubbles).toBe(bubbles === 'foam' ? null : bubbles);
    expect(outcome.signs).toEqual(bubbles === 'foam' ? ['foam'] : []);
    expect(takeOutGate(outcome, looked).verdict).toBe(verdict);
    expect(outcomeText(outcome, null, writer)).toMatchObject({ ...text, signs: [] });
  });
  it('keeps the hours of a power cut only where there was one, and the gate asks', () => {
    const cut = read({
      powerCut: 'yes',
      powerCutHours: '2,5 h',
      setAtTakeOut: 'yes',
      sour: 'yes',
      noneSeen: true,
    });
    expect(cut.outcome).toMatchObject({ powerCut: true, powerCutHours: 2.5 });
    expect(takeOutGate(cut.outcome, cut.looked).verdict).toBe('ask');
    expect(read({ powerCut: 'no', powerCutHours: '3' }).outcome.powerCutHours).toBeNull();
  });
  it('never lets the fibre explain a sign', () => {
    const { outcome, looked } = read({ fibreDidThis: true, signs: ['pink'], setAtTakeOut: 'yes' });
    expect(takeOutGate(outcome, looked).verdict).toBe('discard');
  });
  it('keeps the opened day only for signs seen after opening', () => {
    expect(read({ signs: ['fuzz'], seenAt: 'after opening', openedDays: '18' }).outcome.openedDays).toBe(18);
    expect(read({ signs: ['fuzz'], seenAt: 'after opening', openedDays: '0' }).outcome.openedDays).toBe(0);
    expect(read({ signs: ['fuzz'], seenAt: 'take-out', openedDays: '18' }).outcome.openedDays).toBeNull();
  });
  it.each([
    ['powerCutHours', { powerCut: 'yes', powerCutHours: 'a while' }],
    ['ph', { ph: '43' }],
    ['ph', { ph: 'sour' }],
    ['setByHours', { setAfterHours: '12', setByHours: '8' }],
    ['earlyCheckHours', { earlyCheckHours: 'morning' }],
    ['openedDays', { signs: ['fuzz'], seenAt: 'after opening', openedDays: 'some' }],
  ] as const)('says what is wrong with %s', (path, text) =>
    expect(read(text as Partial<OutcomeText>).problems.get(path)).toMatch(/^[A-Z].*\.$/),
  );
});

describe('a source', () => {
  const text = {
    ...sourceText(null),
    name: 'Meadow Pot',
    form: 'tablets' as const,
    strains: [
      { genus: 'Lactobacillus', species: 'inventus', designation: 'K-12', count: '100 million' },
      { ...noStrain, designation: 'M-3', count: '' },
      noStrain,
    ],
    total: '5 billion',
    guaranteed: 'expiry' as const,
  };
  it('is read with strains, counts and the blend total', () => {
    const { source, problems } = readSource(text, id, reader);
    expect([...problems]).toEqual([]);
    expect(Source.safeParse(source).success).toBe(true);
    expect(source.strains.map((strain) => strain.countPerPiece)).toEqual([1e8, null]);
    expect(source.blendTotalPerPiece).toBe(5e9);
  });
  it('comes back into the same fields', () =>
    expect(sourceText(readSource(text, id, reader).source as Source).strains[0]).toEqual(text.strains[0]));
  it('refuses a total smaller than its strains, a count of nothing, and no name', () => {
    expect(readSource({ ...text, total: '50 million' }, id, reader).problems.has('total')).toBe(true);
    expect(
      readSource({ ...text, strains: [{ ...noStrain, count: '1e9' }] }, id, reader).problems.has(
        'strains.0.designation',
      ),
    ).toBe(true);
    expect(readSource({ ...text, name: ' ' }, id, reader).problems.has('name')).toBe(true);
  });
  it('keeps an unknown past of a received culture unknown', () => {
    const culture = { ...sourceText(null, 'culture'), name: 'Lantern', receivedFrom: 'a neighbouring club' };
    expect(readSource(culture, id, reader).source.knownGenerations).toBeNull();
    expect(readSource({ ...culture, generations: '7' }, id, reader).source.knownGenerations).toBe(7);
    expect(readSource({ ...culture, generations: '0' }, id, reader).problems.has('generations')).toBe(true);
  });
  it.each([
    ['5 billion', 5e9],
    ['100 million', 1e8],
    ['2e9', 2e9],
    ['1 000 000', 1e6],
    ['3 × 10^9 CFU', 3e9],
    ['20 bn', 2e10],
  ])('reads a count of %s', (typed, count) =>
    expect(reader.count(typed)).toMatchObject({ ok: true, value: count }),
  );
});

describe('a package', () => {
  it('is read with size, price and days, the best-before day looking ahead', () => {
    const text = {
      ...packageText('milk', 'whole milk', null, writer),
      size: '1 l',
      price: '$2.49',
      openedOn: '3/14',
      bestBefore: '1/10',
    };
    const { package: read, problems } = readPackage(text, id, reader);
    expect([...problems]).toEqual([]);
    expect(Package.safeParse(read).success).toBe(true);
    expect(read.price).toMatchObject({ minor: 249, currency: 'USD' });
    expect(read.openedOn).toBe('2026-03-14');
    expect(read.bestBefore).toBe('2027-01-10');
  });
  it.each([
    ['60 pieces at 18.50', { value: 60, unit: 'pieces' }, 1850, '0.31 EUR a piece'],
    ['500 g at 2.40', { value: 500, unit: 'g' }, 240, '0.48 EUR per 100 g'],
    ['a litre at 1.19', { value: 1000, unit: 'mL' }, 119, '1.19 EUR a litre'],
    ['a thousand for a cent', { value: 1000, unit: 'pieces' }, 1, null],
    ['a count for some money', { value: 1e9, unit: 'CFU' }, 500, null],
  ] as const)('costs, %s', (_, size, minor, words) =>
    expect(
      pricePerUnit({ size: { ...size, typed: null }, price: { minor, currency: 'EUR', typed: null } }),
    ).toBe(words),
  );
  it('costs nobody knows what where size or price is not known', () => {
    expect(pricePerUnit({ size: null, price: { minor: 100, currency: 'EUR', typed: null } })).toBeNull();
    expect(pricePerUnit({ size: { value: 1, unit: 'g', typed: null }, price: null })).toBeNull();
  });
  it('refuses an opening before the purchase', () => {
    const text = { ...packageText(id, 'Blue Tin', null, writer), boughtOn: '3/10', openedOn: '3/9' };
    expect(readPackage(text, null, reader).problems.has('openedOn')).toBe(true);
  });
});

describe('words that tell of spoilage, once they are answered', () => {
  const passages = [
    { words: 'pink streaks', signs: ['pink' as const] },
    { words: 'foamy', signs: ['foam' as const] },
  ];
  it('yes ticks the signs they name, and takes back that none was seen', () => {
    const text = passagesAnswered({ ...empty, colour: 'pink streaks', noneSeen: true }, passages, {
      spoiled: true,
    });
    const { outcome } = read(text);
    expect(outcome).toMatchObject({ signs: ['pink', 'foam'], spoiledSaid: false, seenAt: 'take-out' });
    expect(discardOf(outcome)).not.toBeNull();
    expect(text.noneSeen).toBe(false);
  });
  it('yes, where they name no sign, says that it is spoiled', () => {
    const { outcome } = read(passagesAnswered(empty, [{ words: 'went bad', signs: [] }], { spoiled: true }));
    expect(outcome).toMatchObject({ signs: [], spoiledSaid: true });
  });
  it('no keeps in the note what it is, and that its words are fine, which is kept as an answer and not as text', () => {
    const text = passagesAnswered({ ...empty, colour: 'pink streaks' }, passages.slice(0, 1), {
      what: 'raspberries',
    });
    expect(text.wordsFine).toBe(true);
    expect(read(text).outcome).toMatchObject({ signs: [], colour: 'pink streaks', note: 'raspberries' });
  });
});

describe('not set at take-out and firm after the chill', () => {
  it.each([
    ['no', 'firm', true],
    ['no', 'spoonable', true],
    ['no', 'very firm', true],
    ['no', 'runny', false],
    ['no', 'soft', false],
    ['no', '', false],
    ['yes', 'firm', false],
    ['', 'firm', false],
  ] as const)('set “%s” and “%s”: said %s', (setAtTakeOut, setWord, said) => {
    expect(contradiction({ ...empty, setAtTakeOut, setWord }) !== null).toBe(said);
  });
  it('counts as not set, so without a pH it is spoiled', () => {
    expect(discardOf(read({ setAtTakeOut: 'no', setWord: 'firm' }).outcome)).not.toBeNull();
  });
});

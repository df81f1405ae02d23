// What a keeper types into the batch form, and what it comes to. US measures: NIST Handbook 44, appendix C (1 US tbsp =
// 14.78676478125 mL, 1 US quart = 946.352946 mL); °F: exact by definition. The rest: common practice, no source.
import { describe, expect, it } from 'vitest';
import { BatchEntry, type BatchReply } from '../../core/contract';
import { NEUTRAL_LIMITS } from '../../core/ledger/default-preferences';
import { readBatch } from '../../renderer/batch/batch-entry';
import { repeatBatch } from '../../renderer/batch/batch-repeat';
import type { Writer } from '../../renderer/parts/reading';
import {
  emptyBatch,
  letterAt,
  nextLetter,
  noHold,
  noSeed,
  pickSeed,
  plainJar,
  recipeOf,
  withJarCount,
  withoutHold,
  withSharedSeeds,
  type BatchText,
} from '../../renderer/batch/batch-text';
import { withAmountForAll, withName } from '../../renderer/batch/usual-amounts';
import { namesAgain } from '../../renderer/batch/numbered-jars';
import { completed } from '../../renderer/batch/completed';
import { changedOnly } from '../../renderer/parts/changed-only';
import { makeReader } from '../../renderer/parts/reading';
import type { Preferences } from '../../core/ledger/records';

const preferences: Preferences = {
  theme: 'system',
  temperatures: '°C',
  volumes: 'metric',
  spoons: 'US',
  dates: 'day first',
  currency: 'EUR',
  ...NEUTRAL_LIMITS,
};
const reader = makeReader(preferences, '2026-03-20', () => '+01:00');
const writer: Writer = {
  amount: (amount) => amount.typed ?? `${amount.value} ${amount.unit}`,
  noted: (amount) => amount.typed ?? '',
  temperature: (temperature) => temperature.typed ?? `${temperature.value} °C`,
  moment: (moment) => moment,
  day: (day) => day,
  made: ({ madeOn }) => madeOn ?? '',
  number: String,
};
const uid = (n: number): string => `01890000-0000-7000-8000-${String(n).padStart(12, '0')}`;
const jarSeed = (n: number, amount = '3 tbsp') =>
  ({ ...noSeed, picked: { kind: 'jar', id: uid(n), label: `jar ${n}` }, amount }) as const;
const options = { sameLabelMeant: false, draft: null };

const four = (): BatchText => {
  const text = withJarCount(emptyBatch('20 Mar'), 4);
  return {
    ...text,
    all: {
      ...text.all,
      milk: { ...text.all.milk, milk: 'whole milk', milkAmount: '1 qt', finalVolume: '946' },
      seeds: [jarSeed(1)],
      additions: [{ name: 'potato starch', planned: '2 tbsp', actual: '', package: '' }],
    },
    holds: [{ ...noHold, hours: '36', planned: '101 F' }],
  };
};

describe('a plain jar', () => {
  const of = (...names: string[]): BatchText => ({
    ...four(),
    all: { ...four().all, additions: names.map((name) => ({ name, planned: '', actual: '', package: '' })) },
  });
  it.each(['none', 'None.', 'nothing', 'plain', '-', '–', 'no fibre', '0'])('“%s” is no addition', (said) => {
    const { entry, problems } = readBatch(of(said), reader, options);
    expect([...problems]).toEqual([]);
    expect(entry?.jars.map(({ additions }) => additions)).toEqual([[], [], [], []]);
  });
  it('is not one with something else stirred in, nor where an amount says that something was', () => {
    expect(readBatch(of('none', 'oat bran'), reader, options).entry?.jars[0]?.additions.map(({ name }) => name)).toEqual(['oat bran']); // prettier-ignore
    const [first] = of('plain').all.additions;
    const amount = {
      ...of('plain'),
      all: { ...of('plain').all, additions: [{ ...first!, planned: '2 tbsp' }] },
    };
    expect(readBatch(amount, reader, options).entry?.jars[0]?.additions).toMatchObject([{ name: 'plain' }]);
  });
});

describe('letters', () => {
  it('run a, b, c … z, aa', () =>
    expect([0, 1, 25, 26, 51, 52].map(letterAt)).toEqual(['a', 'b', 'z', 'aa', 'az', 'ba']));
  it('fill the first gap, without regard to case', () =>
    expect(nextLetter([{ letter: 'A' }, { letter: 'c' }])).toBe('b'));
});

describe('a batch of four jars typed once', () => {
  const { entry, problems } = readBatch(four(), reader, options);
  it('is an entry that the contract takes', () => {
    expect([...problems]).toEqual([]);
    expect(BatchEntry.safeParse(entry).success).toBe(true);
  });
  it('gives every jar the shared values', () => {
    expect(entry?.jars.map((jar) => jar.letter)).toEqual(['a', 'b', 'c', 'd']);
    for (const jar of entry?.jars ?? []) {
      expect(jar.seedings[0]?.amount?.value).toBeCloseTo(3 * 14.78676478125, 9);
      expect(jar.milkAmount?.value).toBeCloseTo(946.352946, 6);
      expect(jar.finalVolume).toEqual({ value: 946, unit: 'mL', typed: '946' });
      expect(jar.hold).toBe(0);
    }
    expect(entry?.holds[0]?.planned?.value).toBeCloseTo(38.3333333, 6);
    expect(entry?.holds[0]?.hours).toBe(36);
  });
  it('keeps a spoon of powder as volume, never grams', () =>
    expect(entry?.jars[0]?.additions[0]?.planned?.unit).toBe('mL'));
});

describe('a jar that differs', () => {
  it('takes its own seeds and additions, and nothing else changes', () => {
    const text = four();
    const jars = text.jars.with(2, {
      ...text.jars[2]!,
      seeds: [jarSeed(7, '50 ml'), jarSeed(8, '10 ml')],
      additions: [],
    });
    const { entry } = readBatch({ ...text, jars }, reader, options);
    expect(entry?.jars[2]?.seedings.map((seeding) => seeding.fromJar)).toEqual([uid(7), uid(8)]);
    expect(entry?.jars[2]?.additions).toEqual([]);
    expect(entry?.jars[3]?.seedings.map((seeding) => seeding.fromJar)).toEqual([uid(1)]);
  });
});

describe('cells of the sheet', () => {
  const stirred = (all: Partial<BatchText['all']['additions'][number]>, ...jars: BatchText['jars'][number]['additions'][]) => {
    const text = withJarCount(four(), jars.length);
    const [row] = text.all.additions;
    return readBatch(
      {
        ...text,
        all: { ...text.all, additions: [{ ...row!, ...all }] },
        jars: text.jars.map((jar, at) => ({ ...jar, additions: jars[at] ?? null })),
      },
      reader,
      options,
    );
  };
  const words = ({ entry }: ReturnType<typeof stirred>) =>
    entry?.jars.map(({ additions }) => additions.map(({ name, planned }) => `${planned?.typed ?? '?'} ${name}`));
  it('one amount for all goes with each jar’s own fibre, and a jar with none is plain', () => {
    const named = stirred({ name: '', planned: '2 tbsp' }, null, [{ name: 'inulin' }], [{ name: 'oat bran', planned: '1 tsp' }], [{ name: 'bran', planned: '' }]);
    expect(words(named)).toEqual([[], ['2 tbsp inulin'], ['1 tsp oat bran'], ['? bran']]);
  });
  it('“plain” in one jar stands against a fibre for all, also with its amount', () =>
    expect(words(stirred({ name: 'inulin', planned: '2 tbsp' }, [{ name: 'plain' }], null, [{ planned: '3 tbsp' }]))).toEqual([
      [], ['2 tbsp inulin'], ['3 tbsp inulin'],
    ]));
  it('an amount of nothing is asked about, at the cell it was typed in', () => {
    expect([...stirred({ name: '', planned: '2 tbsp' }, null, null).problems.keys()]).toEqual(['all.additions.0.name']);
    expect([...stirred({ name: '', planned: '' }, null, [{ planned: '1 tsp' }]).problems.keys()]).toEqual(['all.additions.0.name']);
    expect([...stirred({ planned: 'some' }, null, [{ planned: 'x' }]).problems.keys()]).toEqual(['all.additions.0.planned', 'jars.1.additions.0.planned']);
  });
  it('one jar’s own milk leaves the rest of it as all, and an emptied cell is not noted', () => {
    const text = four();
    const jars = text.jars.with(1, { ...text.jars[1]!, milk: { milkAmount: '500 ml', milk: '' } });
    const { entry } = readBatch({ ...text, jars }, reader, options);
    expect(entry?.jars[1]).toMatchObject({ milk: null, milkAmount: { value: 500 }, finalVolume: { value: 946 } });
    expect(entry?.jars[0]?.milk).toBe('whole milk');
  });
  it('a word is completed from its beginning only', () => {
    expect(completed('po', ['plain', 'potato starch'])).toBe('potato starch');
    expect(completed(' ', ['plain'])).toBeNull();
    expect(completed('lain', ['plain'])).toBeNull();
  });
}); // prettier-ignore

const problemsOf = (change: (text: BatchText) => BatchText) =>
  readBatch(change(four()), reader, options).problems;

describe('what is wrong is said under its field', () => {
  it.each([
    ['date', (text: BatchText) => ({ ...text, date: '' })],
    ['count', (text: BatchText) => ({ ...text, count: '' })],
    ['count', (text: BatchText) => ({ ...text, count: 'four' })],
    ['date', (text: BatchText) => ({ ...text, date: '31 Feb' })],
    ['date', (text: BatchText) => ({ ...text, date: '21 Mar 2026' })], // made on a day to come
    [
      'all.milk.milkAmount',
      (text: BatchText) => ({
        ...text,
        all: { ...text.all, milk: { ...text.all.milk, milkAmount: 'lots' } },
      }),
    ],
    ['all.seeds.0.find', (text: BatchText) => ({ ...text, all: { ...text.all, seeds: [noSeed] } })],
    [
      'all.seeds.0.find',
      (text: BatchText) => ({ ...text, all: { ...text.all, seeds: [{ ...noSeed, find: '14 M' }] } }),
    ],
    [
      'all.seeds.0.amount',
      (text: BatchText) => ({ ...text, all: { ...text.all, seeds: [jarSeed(1, '3')] } }),
    ],
    ['holds.0.planned', (text: BatchText) => ({ ...text, holds: [{ ...noHold, planned: '1010 F' }] })],
    [
      'holds.0.ended',
      (text: BatchText) => ({ ...text, holds: [{ ...noHold, started: '18:30', ended: '19 Mar 6:00' }] }),
    ],
    [
      'holds.0.hours',
      (text: BatchText) => ({
        ...text,
        holds: [{ ...noHold, started: '18 Mar 18:30', ended: '20 Mar 6:30', hours: '24' }],
      }),
    ],
    ['jars.1.letter', (text: BatchText) => ({ ...text, count: '2', jars: [plainJar('a'), plainJar('A')] })],
  ] as const)('%s', (path, change) => {
    const problems = problemsOf(change);
    expect([...problems.keys()]).toContain(path);
    for (const sentence of problems.values()) expect(sentence).toMatch(/^[A-Z].*[.?]$/);
  });
  it('asks nothing about the seed of a planned jar', () =>
    expect(
      problemsOf((text) => ({ ...text, all: { ...text.all, state: 'planned', seeds: [noSeed] } })).size,
    ).toBe(0));
});

describe('picking another seed', () => {
  it('keeps a spoon from one jar to the next, and drops pieces when a jar takes their place', () => {
    const pieces = {
      ...noSeed,
      picked: { kind: 'source', id: uid(3), label: 'Blue Tin' },
      amount: '10',
    } as const;
    expect(pickSeed(jarSeed(1), { kind: 'jar', id: uid(2), label: 'x' }).amount).toBe('3 tbsp');
    expect(pickSeed(pieces, { kind: 'jar', id: uid(2), label: 'x' }).amount).toBe('');
  });
});

describe('taking a hold away', () => {
  it('moves its jars to the first and leaves the others where they were', () => {
    const text = { ...four(), holds: [noHold, noHold, noHold] };
    const jars = [0, 1, 2, null].map((hold, at) => ({ ...plainJar(letterAt(at)), hold }));
    expect(withoutHold({ ...text, jars }, 1).jars.map((jar) => jar.hold)).toEqual([0, 0, 1, null]);
  });
});

const bare = (jars: BatchEntry['jars'] | undefined) =>
  jars?.map((jar) => ({ ...jar, additions: jar.additions.map((one) => ({ ...one, actual: null })) }));

describe('making a batch again', () => {
  const { entry } = readBatch(
    {
      ...four(),
      jars: four().jars.with(1, {
        ...four().jars[1]!,
        additions: [{ name: 'oat bran', planned: '2 tbsp', actual: '1 tbsp', package: '' }],
      }),
    },
    reader,
    options,
  );
  const reply: BatchReply = {
    batch: { id: uid(50), madeOn: '2026-03-20', madeFrom: null, madeTo: null, word: null, note: 'a note' },
    interruptions: [],
    plannedStarts: [],
    holds: entry!.holds.map((hold, at) => ({
      ...hold,
      id: uid(60 + at),
      batch: uid(50),
      basis: 'recorded' as const,
    })),
    jars: entry!.jars.map(({ additions, seedings, outcome: _outcome, hold: _hold, ...jar }, at) => ({
      label: `20 Mar ${jar.letter}`,
      jar: { ...jar, id: uid(70 + at), batch: uid(50), hold: uid(60) },
      additions: additions.map((addition, n) => ({ ...addition, id: uid(80 + n), jar: uid(70 + at) })),
      seedings: seedings.map((seeding, n) => ({
        seeding: { ...seeding, id: uid(90 + n), jar: uid(70 + at) },
        label: 'jar 1',
        kept: null,
        share: 1,
      })),
      discard: null,
      caution: null,
      safety: null,
      remarks: [],
      cautions: [],
      outcome: null,
      portions: [],
      photographs: [],
    })),
  };
  const again = repeatBatch(reply, '24 Mar 2026', writer);
  it('brings four jars, their milk, additions and warmth, on the new day', () => {
    expect(again.jars.map((jar) => jar.letter)).toEqual(['a', 'b', 'c', 'd']);
    expect(again.date).toBe('24 Mar 2026');
    expect(again.all.milk).toMatchObject({ milk: 'whole milk', milkAmount: '1 qt', finalVolume: '946' });
    const starch = again.jars.toSpliced(1, 1).map((jar) => recipeOf(again, jar).additions);
    const two = { name: 'potato starch', planned: '2 tbsp', actual: '', package: '' };
    expect(starch).toEqual([[two], [two], [two]]);
    expect(again.holds).toEqual([{ ...noHold, hours: '36', planned: '101 F' }]);
    expect(again.note).toBe('');
  });
  it('a further jar is plain where the jars differed, and as all where they did not', () => {
    const named = (text: BatchText) => {
      const five = withJarCount(text, 5);
      return recipeOf(five, five.jars[4]!).additions.map(({ name }) => name);
    };
    expect(named(again)).toEqual(['']);
    const alike = reply.jars.map((one) => ({ ...one, additions: reply.jars[0]!.additions }));
    expect(named(repeatBatch({ ...reply, jars: alike }, '24 Mar 2026', writer))).toEqual(['potato starch']);
  });
  it('keeps what one jar did differently, as planned and not as it went', () =>
    expect(recipeOf(again, again.jars[1]!).additions).toEqual([
      { name: 'oat bran', planned: '2 tbsp', actual: '', package: '' },
    ]));
  it('takes holds that a thermometer told apart in passing for one plan, and another warmth for another', () => {
    const hold = reply.holds[0]!;
    const at = (celsius: number, hours: number, n: number): typeof hold => ({
      ...hold, id: uid(60 + n), hours, planned: { value: celsius, unit: '°C', typed: `${celsius} °C` },
    }); // prettier-ignore
    const jars = reply.jars.map((one, n) => ({ ...one, jar: { ...one.jar, hold: uid(60 + (n % 3)) } }));
    const three = repeatBatch(
      { ...reply, holds: [at(38, 36, 0), at(37.5, 35, 1), at(42, 36, 2)], jars },
      '24 Mar 2026',
      writer,
    );
    expect(three.holds.map(({ hours }) => hours)).toEqual(['36', '36']);
    expect(three.jars.map((jar) => jar.hold ?? three.all.hold)).toEqual([0, 0, 1, 0]);
  });
  it('asks for the seed anew and keeps how much of it', () => {
    expect(again.all.seeds).toEqual([{ ...noSeed, amount: '3 tbsp' }]);
    expect(again.jars.every((jar) => jar.seeds === null)).toBe(true);
  });
  it('records the same recipe once a seed is picked', () => {
    const made = {
      ...again,
      all: {
        ...again.all,
        seeds: [pickSeed(again.all.seeds[0]!, { kind: 'jar', id: uid(1), label: 'jar 1' })],
      },
    };
    const second = readBatch(
      made,
      makeReader(preferences, '2026-03-24', () => '+01:00'),
      options,
    ).entry;
    expect(bare(second?.jars)).toEqual(bare(entry?.jars));
    expect(second?.holds).toEqual(entry?.holds);
  });
});

describe('a correction', () => {
  it('sends only what changed', () => {
    expect(changedOnly({ a: 1, b: { c: 2 } }, { a: 1, b: { c: 3 } })).toEqual({ b: { c: 3 } });
    expect(changedOnly({ a: 1 }, { a: 1 })).toBeNull();
  });
});

describe('names of jars that are numbered', () => {
  it('go on after those the ledger has, and keep the numbers within the batch', () => {
    expect(namesAgain(['s39.1', 's39.2'], [])).toEqual(['s40.1', 's40.2']);
    expect(namesAgain(['S39.1', 'S39.2'], ['k70.1', 's41.3', 'a'])).toEqual(['s42.1', 's42.2']);
    expect(namesAgain(['17a', '17b'], [])).toEqual(['18a', '18b']);
    expect(namesAgain(['k17', 'k18'], ['k16'])).toEqual(['k19', 'k20']);
    expect(namesAgain(['k17-2'], [])).toEqual(['k18-2']);
  });
  it('stay where no such rule is seen', () => {
    for (const names of [['a', 'b'], ['1', '2', '3'], ['jar 1', 'jar 2'], ['big', 'k17'], ['k17', 's18'], ['k17.1', 'k18']])
      expect(namesAgain(names, ['k99', 's99.9', '4'])).toEqual(names);
  }); // prettier-ignore
  it('a further jar takes the next number or letter of its mates', () => {
    const next = (...names: string[]): string => nextLetter(names.map((letter) => ({ letter })));
    expect([next('s40.1', 's40.2'), next('17a'), next('k7', 'k8'), next('1', '3', '2'), next('2', '3')]).toEqual(['s40.3', '17b', 'k9', '4', '4']); // prettier-ignore
    expect([next(), next('a', 'big'), next('17z'), next('k1', 'c')]).toEqual(['a', 'b', 'a', 'a']);
  });
});

describe('a seed that is changed for all jars', () => {
  const start = (): BatchText => {
    const text = withJarCount(four(), 3);
    return { ...text, jars: [text.jars[0]!, { ...text.jars[1]!, seeds: [jarSeed(1, '30 ml')] }, { ...text.jars[2]!, seeds: [jarSeed(9, '20 ml')] }] };
  }; // prettier-ignore
  const of = (text: BatchText) => text.jars.map((jar) => recipeOf(text, jar).seeds.map(({ picked, amount }) => `${amount} of ${picked?.label ?? '?'}`).join()); // prettier-ignore
  it('is changed in each that had it, with its own amount, and in none that had another', () => {
    const typing = withSharedSeeds(start(), [{ ...noSeed, find: 'jar 2', amount: '3 tbsp' }]);
    expect(of(typing)).toEqual(['3 tbsp of ?', '30 ml of ?', '20 ml of jar 9']);
    expect(of(withSharedSeeds(typing, [jarSeed(2)]))).toEqual(['3 tbsp of jar 2', '30 ml of jar 2', '20 ml of jar 9']); // prettier-ignore
  });
  it('leaves the jars alone while only its amount is typed, or a second seed is added', () => {
    expect(of(withSharedSeeds(start(), [jarSeed(1, '5 tbsp')]))).toEqual(['5 tbsp of jar 1', '30 ml of jar 1', '20 ml of jar 9']); // prettier-ignore
    expect(of(withSharedSeeds(start(), [jarSeed(1), jarSeed(4)]))[1]).toBe('30 ml of jar 1');
  });
});

describe('an amount that is filled in with a name', () => {
  const usual = new Map([['inulin', '12 g'], ['oat bran', '10 g']]); // prettier-ignore
  const start = (): BatchText => {
    const text = withJarCount(four(), 2);
    return { ...text, all: { ...text.all, additions: [{ name: '', planned: '10 g', actual: '', package: '' }] }, jars: [text.jars[0]!, { ...text.jars[1]!, additions: [{ name: 'oat bran' }] }] };
  }; // prettier-ignore
  const amounts = (text: BatchText) => text.jars.map((jar) => recipeOf(text, jar).additions.map(({ name, planned }) => `${planned} ${name}`.trim()).join()); // prettier-ignore
  const typed = (text: BatchText, ...steps: readonly (readonly [number | null, string])[]) =>
    steps.reduce((now, [at, name]) => withName(now, start(), 0, at, name, usual), text);
  it('is that of the thing itself, letter by letter, and goes with the name', () => {
    expect(amounts(typed(start(), [1, 'inulin']))).toEqual(['', '12 g inulin']);
    expect(amounts(typed(start(), [1, 'inulin'], [1, 'oat bran']))).toEqual(['', '10 g oat bran']);
    expect(amounts(typed(start(), [0, 'inulin'], [0, 'moss']))).toEqual(['10 g moss', '10 g oat bran']);
    expect(amounts(typed(start(), [null, 'inulin']))).toEqual(['12 g inulin', '12 g oat bran']);
  });
  it('never takes the place of one that was typed, for a jar or for all', () => {
    const own = { ...start(), jars: start().jars.with(1, { ...start().jars[1]!, additions: [{ name: 'oat bran', planned: '7 g' }] }) }; // prettier-ignore
    expect(amounts(typed(own, [1, 'inulin']))[1]).toBe('7 g inulin');
    const all = withAmountForAll(start(), start(), 0, '2 tbsp', usual);
    expect(amounts(typed(all, [1, 'inulin']))[1]).toBe('2 tbsp inulin');
    expect(amounts(withAmountForAll(typed(start(), [1, 'inulin']), start(), 0, '2 tbsp', usual))[1]).toBe('2 tbsp inulin'); // prettier-ignore
  });
});

it('a bare number counts pieces: it does not stay where a jar is picked, also after its field was emptied', () => {
  const product = {
    ...noSeed,
    picked: { kind: 'source', id: uid(1), label: 'Blue Tin' },
    amount: '10',
  } as const;
  const jar = { kind: 'jar', id: uid(2), label: '3 May a' } as const;
  const typing = { ...product, picked: null, find: '3 may' };
  expect([product, typing].map((seed) => pickSeed(seed, jar).amount)).toEqual(['', '']);
  expect(pickSeed({ ...typing, amount: '3 tbsp' }, jar).amount).toBe('3 tbsp');
  expect(pickSeed(typing, { ...jar, pieces: true }).amount).toBe('10');
});

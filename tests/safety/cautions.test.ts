// Cautions from a spoiled jar, in the words of the design: what each level covers, and what it must not.
import { describe, expect, it } from 'vitest';
import { buildFamily } from '../../core/lineage/family';
import type { FamilyClearing } from '../../core/lineage/lineage-shapes';
import { fromMateOf, heldJars, setAsideOf } from '../../core/safety/set-aside';
import { cautionSentence, cautionWords, cautionWordsNaming } from '../../core/says/safety-says';
import { tell, type Told } from '../lineage/short-families';
import { stands } from '../../core/shapes/caution-codes';
import { UNSEEN, type JarSafety } from '../../core/shapes/safety-codes';

/** Seed 1 made batch 2 (jars 2, 3, 4); jar 2 seeded 5, that 6. Jar 7 is of the seed, in a batch of its own; 8 is far off. */
const KITCHEN: Told[] = [
  { key: 1, batch: 1, hold: 1, from: [{ source: 1, pieces: 8 }] },
  { key: 2, batch: 2, hold: 20, packages: [7], from: [{ fromJar: 1 }] },
  { key: 3, batch: 2, hold: 20, from: [{ fromJar: 1 }] },
  { key: 4, batch: 2, hold: 21, from: [{ fromJar: 9 }] },
  { key: 5, batch: 3, hold: 3, from: [{ fromJar: 2 }] },
  { key: 6, batch: 4, hold: 4, from: [{ fromJar: 5 }] },
  { key: 7, batch: 5, hold: 5, from: [{ fromJar: 1 }] },
  { key: 8, batch: 6, hold: 6, packages: [7], from: [{ source: 1, pieces: 8 }] },
  { key: 9, batch: 7, hold: 7, from: [{ source: 1, pieces: 8 }] },
  { key: 10, batch: 8, hold: 8, from: [{ fromJar: 9 }] },
];

function cautions(
  change: (jar: Told) => Partial<Told> = () => ({}),
  clearings: FamilyClearing[] = [],
): Record<number, string> {
  const records = tell(KITCHEN.map((jar) => ({ ...jar, ...change(jar) })));
  const family = buildFamily({ ...records, clearings });
  const told: Record<number, string> = {};
  for (const key of family.keys) {
    const standing = family.cautionsOf(key);
    const words = standing.map(
      (caution) =>
        `${cautionWords(caution)}${caution.cleared !== null ? ' (lifted)' : caution.ended ? ' (ended)' : ''}`,
    );
    if (words.length > 0) told[key] = words.join('; ');
    const gravest = ['condemned', 'set aside', 'look'].find((level) => standing.some((one) => one.level === level && stands(one))); // prettier-ignore
    expect(family.cautionLevelOf(key)).toBe(gravest ?? null);
  }
  return told;
}

const spoil =
  (...keys: number[]) =>
  (jar: Told): Partial<Told> =>
    keys.includes(jar.key) ? { spoiled: true } : {};

it('a spoiled jar condemns itself, holds what it seeded and its batch-mates of the hold, and asks for a look elsewhere', () => {
  expect(cautions(spoil(2))).toEqual({
    1: 'look: it seeded the spoiled jar',
    2: 'condemned: spoiled itself',
    3: 'set aside: from the same batch, kept warm together',
    5: 'set aside: seeded by it',
    6: 'set aside: seeded by it, 2 steps down',
    7: 'look: from the same seed',
    8: 'look: used the same package',
  });
});

it('a family without a spoiled jar has no cautions', () => expect(cautions()).toEqual({}));

it('what a set-aside mate seeded, and does not descend from the spoiled jar, is to be looked at, at any depth', () => {
  const told = cautions((jar) => (jar.key === 10 ? { from: [{ fromJar: 3 }] } : spoil(2)(jar)));
  expect(told[3]).toBe('set aside: from the same batch, kept warm together');
  expect(told[10]).toBe('look: descends from a jar of its batch');
  const deeper = cautions((jar) => (jar.key === 8 ? { from: [{ fromJar: 10 }] } : jar.key === 10 ? { from: [{ fromJar: 3 }] } : spoil(2)(jar))); // prettier-ignore
  expect(deeper[8]).toContain('look: descends from a jar of its batch, 2 steps down');
  // What descends from both is set aside.
  const both = cautions((jar) =>
    jar.key === 6 ? { from: [{ fromJar: 3 }, { fromJar: 5 }] } : spoil(2)(jar),
  );
  expect(both[6]).toBe('set aside: seeded by it, 2 steps down');
});

it('says so of the jar, and lets it speak for no other; once the mate’s own caution is lifted it is said no more', () => {
  const records = tell(KITCHEN.map((jar) => ({ ...jar, ...(jar.key === 10 ? { from: [{ fromJar: 3 }] } : spoil(2)(jar)) })));
  const family = buildFamily({ ...records, clearings: [] });
  expect([family, buildFamily({ ...records, clearings: [{ jar: 3, of: 2, reason: 'It stood in another bath.' }] })].map((one) => [heldJars(one).get(3), heldJars(one).get(10)])).toEqual([['set aside', 'from a mate'], [undefined, undefined]]);
  expect(setAsideOf(family, 3)).toMatchObject({ relation: 'same hold', spoiled: 'jar 2' });
  expect(setAsideOf(family, 10)).toBeNull();
  expect(fromMateOf(family, 10)).toEqual({ mate: 'jar 3', spoiled: 'jar 2' });
}); // prettier-ignore

/** Seen to be spoiled after opening: on 19 March, opened on the 1st, unless said otherwise. */
const opened = (
  signOn: string | null = '2026-03-19',
  openedOn: string | null = '2026-03-01',
): Partial<Told> => ({
  spoiled: true,
  safety: { ...UNSEEN, discard: 'spoiled', opened: { signOn, openedOn } },
});

describe('a sign first seen after opening', () => {
  const madeOn = (day: string) => (jar: Told): Partial<Told> => (jar.key === 2 ? opened() : jar.key === 5 ? { madeOn: day } : {}); // prettier-ignore
  it('mould on a jar opened 18 days ago says nothing of its seed, its mates, its packages, nor of the seed’s other jars', () => {
    const told = cautions(madeOn('2026-03-15'));
    expect(Object.keys(told).map(Number)).toEqual([2, 5, 6]);
    expect(told[2]).toBe('condemned: spoiled itself');
  });
  it('sets aside what was seeded from it in the seven days before the sign, or later', () => {
    for (const day of ['2026-03-12', '2026-03-19', '2026-04-01'])
      expect(cautions(madeOn(day))).toMatchObject({ 5: 'set aside: seeded by it', 6: 'set aside: seeded by it, 2 steps down' }); // prettier-ignore
  });
  it('what was seeded earlier is to be looked at', () =>
    expect(cautions(madeOn('2026-03-11'))).toMatchObject({
      5: 'look: seeded by it more than seven days before the sign',
      6: 'look: seeded by it more than seven days before the sign, 2 steps down',
    }));
  it('a pot or a cube parted before it was opened is to be looked at, however late it was used', () => {
    const parted = (takenOn: string) => (jar: Told): Partial<Told> => (jar.key === 2 ? opened('2026-03-05') : jar.key === 5 ? { madeOn: '2026-04-20', from: [{ fromJar: 2, takenOn }] } : {}); // prettier-ignore
    expect(cautions(parted('2026-02-28'))[5]).toBe('look: seeded by it more than seven days before the sign');
    // A cube has its jar’s caution by the day it was parted: freezing makes nothing safe.
    expect(cautions(parted('2026-03-02'))[5]).toBe('set aside: seeded by it');
  });
  it('where nobody knows the day of the sign, all that was seeded is set aside', () => {
    const told = cautions((jar) => (jar.key === 2 ? opened(null, null) : {}));
    expect(told[5]).toBe('set aside: seeded by it');
  });
});

describe('a jar that only did not set', () => {
  const notSet = (jar: Told): Partial<Told> => (jar.key === 2 ? { spoiled: true, safety: { ...UNSEEN, discard: 'not set' } } : {}); // prettier-ignore
  it('asks for a look at its mates, whose descendants it does not touch', () => {
    const told = cautions((jar) => (jar.key === 10 ? { from: [{ fromJar: 3 }] } : notSet(jar)));
    expect(told[3]).toBe('look: from the same batch as a jar that did not set');
    expect(told[10]).toBeUndefined();
    expect(told[5]).toBe('set aside: seeded by it');
  });
});

describe('a caution ends by itself', () => {
  /** Mates 2 (spoiled) and 3; 3 seeded 4, that 5, that 6; the safety of each may be given. */
  const line = (
    clean: readonly number[],
    more: (jar: Told) => Partial<Told> = () => ({}),
    sources = [{ key: 1 }],
  ) => {
    const jars: Told[] = [
      { key: 1, batch: 1, hold: 1, from: [{ source: 1 }] },
      { key: 2, batch: 2, hold: 2, spoiled: true, from: [{ source: 1 }] },
      { key: 3, batch: 2, hold: 2, from: [{ source: 1 }] },
      ...[4, 5, 6].map((key): Told => ({ key, batch: key, hold: key, from: [{ fromJar: key - 1 }] })),
    ];
    const safety: JarSafety = { ...UNSEEN, clean: true };
    const family = buildFamily(tell(jars.map((jar) => ({ ...jar, ...(clean.includes(jar.key) ? { safety } : {}), ...more(jar) })), sources)); // prettier-ignore
    return [3, 4, 5, 6].map((key) => family.cautionLevelOf(key));
  };
  it.each([
    ['no generation was seen clean', [], ['set aside', 'look', 'look', 'look']],
    ['one alone is not enough', [4], ['set aside', 'look', 'look', 'look']],
    ['two in a row end it, the mate’s own with it', [4, 5], [null, null, null, null]],
    ['a generation between them that nobody saw starts the count again', [4, 6], ['set aside', 'look', 'look', 'look']],
    ['two later ones end it too', [5, 6], [null, null, null, null]],
  ] as const)('%s', (_why, clean, levels) => expect(line(clean)).toEqual(levels)); // prettier-ignore
  it('on each path: another that was not seen clean keeps its own caution, and the mate’s', () => {
    const branch = (jar: Told): Partial<Told> => (jar.key === 6 ? { from: [{ fromJar: 3 }] } : {});
    expect(line([4, 5], branch)).toEqual(['set aside', null, null, 'look']);
  });
  it('a new sign starts the count again', () => {
    const pink = (jar: Told): Partial<Told> => (jar.key === 5 ? { spoiled: true, safety: { ...UNSEEN, discard: 'spoiled' } } : {}); // prettier-ignore
    expect(line([4, 6], pink)).toEqual(['set aside', 'look', 'condemned', 'set aside']);
  });
  it.each([
    [
      'bath water, a foul smell or a slow start',
      { safety: { ...UNSEEN, discard: 'spoiled' as const, forever: true } },
    ],
    ['raw milk', { rawMilk: true }],
  ])('never for %s', (_why, of) =>
    expect(line([4, 5], (jar) => (jar.key === 2 ? of : {}))).toEqual(['set aside', 'look', 'look', 'look']),
  );
  it('never for a received culture', () =>
    expect(line([4, 5], undefined, [{ key: 1, culture: true } as { key: number }])).toEqual(['set aside', 'look', 'look', 'look'])); // prettier-ignore
  it('never for what the spoiled jar seeded itself', () => {
    const told = cautions((jar) =>
      jar.key === 2 ? { spoiled: true } : { safety: { ...UNSEEN, clean: true } },
    );
    expect(told[5]).toBe('set aside: seeded by it');
    expect(told[6]).toBe('set aside: seeded by it, 2 steps down');
  });
});

const TOGETHER = 'set aside: from the same batch, kept warm together';
const PERHAPS = 'set aside: from the same batch, perhaps kept warm together';
it.each([
  ['the hold is one', { hold: 20 }, { hold: 20 }, TOGETHER],
  ['both holds are known and differ', { hold: 20 }, { hold: 21 }, undefined],
  ['one hold is unknown', { hold: 20 }, { hold: null }, PERHAPS],
  ['both holds are unknown', { hold: null }, { hold: null }, PERHAPS],
])('batch-mates where %s', (_, two, four, said) => {
  const told = cautions((jar) => (jar.key === 2 ? { ...two, spoiled: true } : jar.key === 4 ? four : {}));
  expect(told[4]).toBe(said);
});

it('gives the strongest relation, one for each spoiled jar', () => {
  // 5 was seeded by spoiled 2 and is itself the seed of spoiled 6.
  expect(cautions(spoil(2, 6))[5]).toBe('set aside: seeded by it; look: it seeded the spoiled jar');
  // Seeded by it, and a batch-mate as well.
  const mates = cautions((jar) => (jar.key === 5 ? { batch: 2, hold: 20 } : spoil(2)(jar)));
  expect(mates[5]).toBe('set aside: seeded by it');
  // The shorter of two ways down is told.
  const twice = cautions((jar) =>
    jar.key === 6 ? { from: [{ fromJar: 5 }, { fromJar: 2 }] } : spoil(2)(jar),
  );
  expect(twice[6]).toBe('set aside: seeded by it');
});

it('is lifted only by a written reason, for that jar and that spoiled jar; a condemned jar stays condemned', () => {
  const clearings = [
    { jar: 5, of: 2, reason: 'looked and smelled fine, pH 4.3' },
    { jar: 2, of: 2, reason: 'I like it' },
  ];
  const told = cautions(spoil(2), clearings);
  expect(told[5]).toBe('set aside: seeded by it (lifted)');
  expect(told[6]).toBe('set aside: seeded by it, 2 steps down');
  expect(told[2]).toBe('condemned: spoiled itself');
});

it('where the spoiled jar has a name, the words name it', () => {
  expect(cautionWordsNaming({ relation: 'seeded by it', steps: 2 }, '1 Apr c')).toBe(
    'set aside: seeded from 1 Apr c, 2 steps down',
  );
  expect(cautionWordsNaming({ relation: 'same seed', steps: 1 }, '1 Apr c')).toBe('look: from the same seed');
});

it('as a sentence, the spoiled jar is named once, and a jar that spoiled itself names none', () => {
  const down = { relation: 'seeded by it', steps: 1 } as const;
  expect(cautionSentence(down, '1 Apr c')).toBe('It is set aside: seeded from 1 Apr c.');
  expect(cautionSentence({ ...down, relation: 'same hold' }, '1 Apr c')).toBe(
    'It is set aside: from the same batch, kept warm together (1 Apr c).',
  );
  expect(cautionSentence({ ...down, relation: 'seeded it' }, '1 Apr c')).toBe(
    'Look at it first: it seeded the spoiled jar 1 Apr c.',
  );
  expect(cautionSentence({ ...down, relation: 'same package' }, null)).toBe(
    'Look at it first: it was made with the same package as the spoiled jar.',
  );
  expect(cautionSentence({ relation: 'itself', steps: 0 }, null)).toBe('It is condemned: spoiled itself.');
});

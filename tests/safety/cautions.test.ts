// Cautions from a spoiled jar, in the words of the design: what each level covers, and what it must not.
import { expect, it } from 'vitest';
import { buildFamily } from '../../core/lineage/family';
import { cautionSentence, cautionWords, cautionWordsNaming } from '../../core/safety/cautions';
import type { FamilyClearing } from '../../core/lineage/types';
import { tell, type Told } from '../lineage/helpers';

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
      (caution) => `${cautionWords(caution)}${caution.cleared === null ? '' : ' (lifted)'}`,
    );
    if (words.length > 0) told[key] = words.join('; ');
    const gravest = ['condemned', 'on hold', 'look'].find((level) => standing.some((one) => one.level === level && one.cleared === null)); // prettier-ignore
    expect(family.cautionLevelOf(key)).toBe(gravest ?? null);
  }
  const reached = KITCHEN.flatMap(({ key }) => (family.jar(key).spoiled ? family.cautionedBy(key) : []));
  expect(new Set(Object.keys(told).map(Number))).toEqual(new Set(reached));
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
    3: 'on hold: from the same batch, kept warm together',
    5: 'on hold: seeded by it',
    6: 'on hold: seeded by it, 2 steps down',
    7: 'look: from the same seed',
    8: 'look: used the same package',
  });
});

it('a family without a spoiled jar has no cautions', () => expect(cautions()).toEqual({}));

it('a caution never causes another: what a held batch-mate seeded is left alone', () => {
  const told = cautions((jar) => (jar.key === 10 ? { from: [{ fromJar: 3 }] } : spoil(2)(jar)));
  expect(told[3]).toBe('on hold: from the same batch, kept warm together');
  expect(told[10]).toBeUndefined();
});

it('mould on a jar opened 18 days ago says nothing of its seed, nor of the seed’s other jars', () => {
  const told = cautions((jar) => (jar.key === 2 ? { spoiled: true, spoiledOpenedDays: 18 } : {}));
  expect(told[1]).toBeUndefined();
  expect(told[7]).toBeUndefined();
  expect(told[2]).toBe('condemned: spoiled itself');
  expect(told[5]).toBe('on hold: seeded by it');
  expect(told[6]).toBe('on hold: seeded by it, 2 steps down');
});

it('a sign on the very day of opening was there before, and does speak of the seed', () => {
  const told = cautions((jar) => (jar.key === 2 ? { spoiled: true, spoiledOpenedDays: 0 } : {}));
  expect(told[1]).toBe('look: it seeded the spoiled jar');
});

it.each([
  [
    'both holds are told apart only by notes',
    { hold: 20, holdFromNotes: true },
    { hold: 21, holdFromNotes: true },
    true,
  ],
  [
    'one of the two was recorded',
    { hold: 20, holdFromNotes: false },
    { hold: 21, holdFromNotes: true },
    false,
  ],
  ['both were recorded and differ', { hold: 20 }, { hold: 21 }, false],
  ['one hold is unknown', { hold: 20 }, { hold: null }, true],
  ['both holds are unknown', { hold: null }, { hold: null }, true],
])('batch-mates where %s', (_, two, four, held) => {
  const told = cautions((jar) => (jar.key === 2 ? { ...two, spoiled: true } : jar.key === 4 ? four : {}));
  expect(told[4]).toBe(held ? 'on hold: from the same batch, kept warm together' : undefined);
});

it('gives the strongest relation, one for each spoiled jar', () => {
  // 5 was seeded by spoiled 2 and is itself the seed of spoiled 6.
  expect(cautions(spoil(2, 6))[5]).toBe('on hold: seeded by it; look: it seeded the spoiled jar');
  // Seeded by it, and a batch-mate as well.
  const mates = cautions((jar) => (jar.key === 5 ? { batch: 2, hold: 20 } : spoil(2)(jar)));
  expect(mates[5]).toBe('on hold: seeded by it');
  // The shorter of two ways down is told.
  const twice = cautions((jar) =>
    jar.key === 6 ? { from: [{ fromJar: 5 }, { fromJar: 2 }] } : spoil(2)(jar),
  );
  expect(twice[6]).toBe('on hold: seeded by it');
});

it('is lifted only by a written reason, for that jar and that spoiled jar; a condemned jar stays condemned', () => {
  const clearings = [
    { jar: 5, of: 2, reason: 'looked and smelled fine, pH 4.3' },
    { jar: 2, of: 2, reason: 'I like it' },
  ];
  const told = cautions(spoil(2), clearings);
  expect(told[5]).toBe('on hold: seeded by it (lifted)');
  expect(told[6]).toBe('on hold: seeded by it, 2 steps down');
  expect(told[2]).toBe('condemned: spoiled itself');
});

it('where the spoiled jar has a name, the words name it', () => {
  expect(cautionWordsNaming('on hold: seeded by it, 2 steps down', '1 Apr c')).toBe(
    'on hold: seeded from 1 Apr c, 2 steps down',
  );
  expect(cautionWordsNaming('look: from the same seed', '1 Apr c')).toBe('look: from the same seed');
});

it('as a sentence, the spoiled jar is named once, and a jar that spoiled itself names none', () => {
  const down = { level: 'on hold', relation: 'seeded by it', steps: 1 } as const;
  expect(cautionSentence(down, '1 Apr c')).toBe('It is on hold: seeded from 1 Apr c.');
  expect(cautionSentence({ ...down, relation: 'same hold' }, '1 Apr c')).toBe(
    'It is on hold: from the same batch, kept warm together (1 Apr c).',
  );
  expect(cautionSentence({ ...down, level: 'look', relation: 'seeded it' }, '1 Apr c')).toBe(
    'Look at it first: it seeded the spoiled jar 1 Apr c.',
  );
  expect(cautionSentence({ ...down, level: 'look', relation: 'same package' }, null)).toBe(
    'Look at it first: it was made with the same package as the spoiled jar.',
  );
  expect(cautionSentence({ level: 'condemned', relation: 'itself', steps: 0 }, null)).toBe(
    'It is condemned: spoiled itself.',
  );
});

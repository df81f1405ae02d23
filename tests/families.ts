// Synthetic families of any size and shape, from a seed: the same numbers give the same family on every machine.
import type { FamilyJar, FamilyRecords, FamilySeeding, FamilySource } from '../core/lineage/lineage-shapes';

/** A small deterministic stream of numbers in [0, 1): a 32-bit linear congruential step, mixed (Park & Miller style). */
export function seededNumbers(seed: number): () => number {
  let state = (seed >>> 0) + 0x9e3779b9;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    let mixed = state ^ (state >>> 15);
    mixed = Math.imul(mixed, 0x2c1b3c6d);
    mixed ^= mixed >>> 12;
    return (mixed >>> 0) / 4294967296;
  };
}

/** A made jar with nothing special about it. */
export const plainJar = (jar: Partial<FamilyJar> & { key: number }): FamilyJar => ({
  madeOn: '2025-10-15',
  batch: jar.key,
  hold: null,
  letter: 'a',
  label: `jar ${jar.key}`,
  lost: false,
  finalVolumeMl: 946.352946,
  countPerMl: null,
  spoiled: false,
  packages: [],
  ...jar,
});

/** A seeding with nothing recorded but where it comes from. */
export const plainSeeding = (
  seeding: Partial<FamilySeeding> & { key: number; jar: number },
): FamilySeeding => ({
  fromJar: null,
  source: null,
  volumeMl: null,
  pieces: null,
  countPerPiece: null,
  countDirect: null,
  ...seeding,
});

export const plainSource = (source: Partial<FamilySource> & { key: number }): FamilySource => ({
  name: `source ${source.key}`,
  culture: false,
  knownGenerations: null,
  ...source,
});

/** The civil day `days` after 2000-01-01, in the proleptic calendar of UTC. */
export const dayAfter = (days: number): string =>
  new Date(Date.UTC(2000, 0, 1) + days * 86_400_000).toISOString().slice(0, 10);

export interface FamilyShape {
  readonly jars: number;
  /**
   * 'bushy': batches of one to four jars from recent jars, one in eight mixed from two. 'line': each jar from the one
   * before. 'lines': batches of three and four, each from one jar of the batch before, and a fresh start every 25 batches.
   */
  readonly shape: 'bushy' | 'line' | 'lines';
  readonly seed?: number;
  /** One jar in this many is spoiled; 0: none. */
  readonly spoiledOneIn?: number;
}

const LETTERS = 'abcdefghijklmnopqrstuvwxyz';

/** Records of an invented family of exactly `jars` jars. */
export function syntheticFamily(wanted: FamilyShape): FamilyRecords {
  const random = seededNumbers(wanted.seed ?? 1);
  const upTo = (n: number): number => Math.floor(random() * n);
  const jars: FamilyJar[] = [];
  const seedings: FamilySeeding[] = [];
  const sources = [
    plainSource({ key: 1, name: 'first source' }),
    plainSource({ key: 2, name: 'second source' }),
    plainSource({ key: 3, name: 'received culture', culture: true }),
  ];
  const seedWith = (seeding: Omit<Parameters<typeof plainSeeding>[0], 'key'>): void => {
    seedings.push(plainSeeding({ key: seedings.length + 1, ...seeding }));
  };
  const found = (jar: number): void => {
    seedWith({ jar, source: 1, pieces: 8 + upTo(4), countPerPiece: 1e8 });
    if (upTo(2)) seedWith({ jar, source: 2, pieces: 4 + upTo(4), countPerPiece: 5e8 });
  };
  let batch = 0;
  /** The first jar of the batch before. */
  let last = 0;
  while (jars.length < wanted.jars) {
    batch++;
    const before = jars.length;
    const wish = { bushy: () => 1 + upTo(4), line: () => 1, lines: () => 3 + upTo(2) }[wanted.shape]();
    const many = Math.min(wish, wanted.jars - before);
    const seed = wanted.shape === 'lines' && before > 0 ? last + upTo(before + 1 - last) : before;
    const fresh = { bushy: batch % 500 === 0, line: false, lines: batch % 25 === 0 }[wanted.shape];
    last = before + 1;
    for (let letter = 0; letter < many; letter++) {
      const key = jars.length + 1;
      const spoiled = wanted.spoiledOneIn ? upTo(wanted.spoiledOneIn) === 0 : false;
      const madeOn = dayAfter(Math.floor(batch / 4));
      jars.push(
        plainJar({ key, batch, hold: batch, madeOn, letter: LETTERS[letter] as string, label: `${madeOn} ${LETTERS[letter]} ${batch}`, spoiled }), // prettier-ignore
      );
      if (before === 0 || fresh) {
        found(key);
      } else if (wanted.shape !== 'bushy') {
        seedWith({ jar: key, fromJar: seed, volumeMl: 44.36 });
      } else {
        // Recent jars are likelier seeds, some old ones (cubes from the freezer) come back.
        const pick = (): number =>
          1 + (upTo(10) === 0 ? upTo(before) : before - 1 - upTo(Math.min(before, 60)));
        const first = pick();
        seedWith({ jar: key, fromJar: first, volumeMl: 30 + upTo(30) });
        const second = upTo(8) === 0 ? pick() : first;
        if (second !== first) seedWith({ jar: key, fromJar: second, volumeMl: 30 + upTo(30) });
      }
    }
  }
  return { jars, seedings, sources, clearings: [] };
}

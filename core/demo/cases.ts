// What is planted in the invented scenario on purpose, and where: the tests of lineage and judgement read it here.
import type { JarName } from './scenario-shapes';

const jars = (day: `${number}-${number}-${number}`, letters: string): readonly JarName[] =>
  [...letters].map((letter): JarName => `${day} ${letter}`);

export const cases = {
  /** Seeded from two jars of one batch. A leaf. */
  twoJars: { jar: '2026-01-25 d', seeds: ['2026-01-11 a', '2026-01-11 b'] },
  /** Seeded from both lines: belongs to both. A leaf whose outcome nobody wrote down, so it speaks for neither. */
  bothLines: { jar: '2026-02-22 d', seeds: ['2026-02-08 b', '2026-02-18 a'] },
  /** Heron, a batch a generation: even from the second to the ninth, falling from the tenth, weak at the end. */
  slip: {
    line: 'Heron',
    batches: [
      '2025-10-19', '2025-11-02', '2025-11-16', '2025-11-30', '2025-12-14', '2025-12-28', '2026-01-11',
      '2026-01-25', '2026-02-08', '2026-02-22', '2026-03-08', '2026-03-22', '2026-04-05', '2026-04-19',
    ], // prettier-ignore
    lastEven: '2026-02-08',
    /** Two weak batches in a row: a fresh start is suggested for what descends from them. */
    weak: ['2026-04-05', '2026-04-19'],
  },
  /** Oat bran wrecked two jars; their siblings of the same seed in the same hold were firm, so the culture was healthy. */
  fibre: {
    addition: 'oat bran',
    wrecked: jars('2025-12-14', 'cd'),
    healthy: jars('2025-12-14', 'ab'),
  },
  /** Found pink on 16 April. Two jars were seeded from it and one from those: three set aside. It had a hold of its own. */
  spoiled: {
    jar: '2026-04-01 c',
    setAside: ['2026-04-08 a', '2026-04-08 b', '2026-04-15 a'],
  },
  /** Put into the freezer; the Lantern cubes seeded one jar, the Heron cubes are all still there. */
  cubes: {
    thawedInto: '2026-03-11 c',
    of: '2025-11-26 a',
    reserveOf: '2025-11-30 a',
  },
  /** The bath lost its heat one night: the whole batch was soft, its daughters firm again. */
  coldNight: { line: 'Lantern', batch: '2026-01-28', nextBatch: '2026-02-18' },
  /** In the bath on the scenario's last morning, with a probe's readings and a power cut: the look at 12 h is due. */
  inWarmth: { line: 'Lantern', batch: '2026-05-02', seed: '2026-04-22 b' },
  /** Tasted by four: once it tells, since all like the plain jar best; once they disagree, and it does not. */
  tasted: {
    tells: { batch: '2025-12-14', preferred: 'plain' },
    not: { batch: '2026-02-08' },
  },
  /** Over the holidays nobody wrote down an outcome: unknown, neither weak nor fine. */
  forgotten: { batches: ['2025-12-28', '2026-01-07'] },
} as const;

// npm run bench:judgement: what the words "steady", "slipping" and "worn out" are worth. Invented lines of twelve batches
// whose truth is known are judged after every batch by the program's own rule, beside the best that any rule could do.
// Seeded: the same numbers every time.
import { batchMedian } from '../../core/vigour/batch-median';
import { LineLevel } from '../../core/vigour/level/line-level';
import { StandingWalk } from '../../core/vigour/standing';
import { trendOf, type TrendPoint } from '../../core/vigour/trend';
import { judgeLine, keepersUsual } from '../../core/vigour/line';
import { EVEN, inventOutcomes, KEEPINGS, SLIPPING, type Keeping } from './judgement-outcomes';
import { likelihoodRatio } from './judgement-bound';
import { BATCHES, HABITS, inventLine, seeded, type Habits, type LineTruth } from './judgement-lines';
import type { Standing } from '../../core/shapes/vigour-codes';

const lines = Number(process.argv[2] ?? 2000);
const SPREADS = [3, 4, 5, 8, 10];
const CORRELATIONS = [0, 0.3, 0.5];
const LOSS = 5;

interface Looks {
  /** Batch at which slipping or worn out was first said; none: beyond any batch. */
  readonly called: number;
  readonly standings: readonly Standing[];
}

/** Judges a line after each of its batches, as the keeper would have seen it. */
function look(recorded: readonly (readonly { score: number; width: number }[])[]): Looks {
  const points: TrendPoint[] = [];
  const level = new LineLevel();
  const walk = new StandingWalk();
  let called = Number.POSITIVE_INFINITY;
  let standing: Standing = 'too few batches to say';
  const standings = recorded.map((jars, index): Standing => {
    const score = index === 0 ? null : batchMedian(jars);
    const seedBatch = index === 0 ? null : index - 1;
    const look = level.add([{ batch: index, seedBatch, jars: index === 0 ? [] : jars }]);
    if (score !== null && look) {
      points.push({ generation: index + 1, score });
      standing = walk.next(trendOf(points), look);
    }
    if (standing === 'slipping' || standing === 'worn out') called = Math.min(called, index + 1);
    return standing;
  });
  return { called, standings };
}

const seedOf = (truth: LineTruth, salt: number): number =>
  Math.round(truth.spread * 1000 + truth.autocorrelation * 100 + truth.loss * 10 + salt * 1e6);

const judged = (truth: LineTruth, habits: Habits, count = lines, batches = BATCHES): Looks[] => {
  const random = seeded(seedOf(truth, 1));
  return Array.from({ length: count }, () => look(inventLine(truth, random, habits, batches).recorded));
};
const share = (looks: readonly Looks[], is: (look: Looks) => boolean): number =>
  looks.filter(is).length / looks.length;
const percent = (x: number): string => `${(100 * x).toFixed(1)} %`.padStart(8);

const bounds = new Map<string, number>();
/** Share of losing lines that the likelihood-ratio test calls by batch 8, at 5 % false calls over all twelve looks. */
function boundBy8(spread: number, autocorrelation: number): number {
  const key = `${spread} ${autocorrelation}`;
  const bound = bounds.get(key) ?? reckonBound(spread, autocorrelation);
  bounds.set(key, bound);
  return bound;
}

function reckonBound(spread: number, autocorrelation: number): number {
  const seen = BATCHES - 1;
  const highest = (loss: number, by: number, salt: number): number[] => {
    const truth = { spread, autocorrelation, loss };
    const random = seeded(seedOf(truth, salt));
    const ratios = Array.from({ length: seen + 1 }, (_, k) =>
      likelihoodRatio({ ...truth, loss: LOSS }, LOSS, k),
    );
    return Array.from({ length: lines }, () => {
      const { full } = inventLine(truth, random, HABITS['in full']);
      let most = Number.NEGATIVE_INFINITY;
      for (let k = 2; k < by; k++) most = Math.max(most, ratios[k]?.(full.slice(1, k + 1)) ?? most);
      return most;
    });
  };
  const steady = highest(0, BATCHES, 2).toSorted((a, b) => b - a);
  const threshold = steady[Math.floor(0.05 * lines)] ?? Number.POSITIVE_INFINITY;
  return highest(LOSS, 8, 3).filter((x) => x > threshold).length / lines;
}

const table = (title: string, head: readonly string[], rows: readonly (readonly string[])[]): void => {
  console.log(`\n${title}\n`);
  console.log(`| ${head.join(' | ')} |\n|${head.map(() => '---|').join('')}`);
  for (const row of rows) console.log(`| ${row.join(' | ')} |`);
};

const started = performance.now();
console.log(`Judgement bench: ${lines} invented lines a cell, twelve batches of four jars, seeded.`);
console.log('Spread: standard deviation (points) of what a batch shares; jars differ by half as much again.');

for (const [name, habits] of Object.entries(HABITS)) {
  const rows = CORRELATIONS.flatMap((autocorrelation) =>
    SPREADS.map((spread) => {
      const steady = judged({ spread, autocorrelation, loss: 0 }, habits);
      const losing = judged({ spread, autocorrelation, loss: LOSS }, habits);
      return [
        String(autocorrelation),
        String(spread),
        percent(share(steady, (l) => l.called <= BATCHES)),
        percent(share(losing, (l) => l.called <= 8)),
        percent(boundBy8(spread, autocorrelation)),
        percent(share(losing, (l) => l.called <= 10)),
        percent(share(losing, (l) => l.called <= BATCHES)),
        percent(share(losing, (l) => l.standings.at(-1) === 'worn out')),
      ];
    }),
  );
  table(
    `Recorded: ${name}`,
    ['autocorrelation', 'spread', 'steady line ever called', `loss of ${LOSS} called by batch 8`, 'best possible by 8', 'by 10', 'by 12', 'worn out at 12'],
    rows,
  ); // prettier-ignore
}

table(
  'What is said at batch 12 (recorded: usual, autocorrelation 0.3)',
  ['loss a generation', 'spread', 'steady', 'no slip seen', 'slipping', 'worn out', 'ever called "steady"'],
  [0, 1, 2, 3, 5].flatMap((loss) =>
    [3, 5, 8, 10].map((spread) => {
      const looks = judged({ spread, autocorrelation: 0.3, loss }, HABITS.usual);
      const last = (word: Standing): string => percent(share(looks, (l) => l.standings.at(-1) === word));
      const ever = percent(share(looks, (l) => l.standings.includes('steady')));
      return [String(loss), String(spread), last('steady'), last('no slip seen'), last('slipping'), last('worn out'), ever];
    }),
  ),
); // prettier-ignore

table(
  `Lines that lose ${LOSS} a generation only after eight even batches (autocorrelation 0.3): share called by batch`,
  ['recorded', 'spread', '10', '11', '12', '13', '14', '15', '16', '18'],
  (['in full', 'usual', 'careless'] as const).flatMap((name) =>
    [4, 8].map((spread) => {
      const looks = judged({ spread, autocorrelation: 0.3, loss: LOSS, from: 8 }, HABITS[name], Math.round(lines / 2), 18);
      return [name, String(spread), ...[10, 11, 12, 13, 14, 15, 16, 18].map((by) => percent(share(looks, (l) => l.called <= by)))];
    }),
  ),
); // prettier-ignore

table(
  'Jars that differ by another part of what batches differ by than the half expected (recorded: usual, autocorrelation 0.3)',
  ['part', 'spread', 'steady line ever called', `loss of ${LOSS} called by batch 8`],
  [0.25, 1].flatMap((jarPart) =>
    SPREADS.map((spread) => {
      const truth = { spread, autocorrelation: 0.3, jarPart };
      const steady = judged({ ...truth, loss: 0 }, HABITS.usual, Math.round(lines / 2));
      const losing = judged({ ...truth, loss: LOSS }, HABITS.usual, Math.round(lines / 2));
      return [String(jarPart), String(spread), percent(share(steady, (l) => l.called <= BATCHES)), percent(share(losing, (l) => l.called <= 8))];
    }),
  ),
); // prettier-ignore

table(
  'Longer and wilder lines that are steady (recorded: usual): share ever called',
  ['batches', 'jars differ by', 'spread', 'autocorrelation 0', 'autocorrelation 0.3', 'autocorrelation 0.5'],
  [
    [12, 0.1, 5], [12, 0.1, 10], [30, 0.5, 5], [30, 0.5, 10], [30, 0.1, 8], [104, 0.5, 5], [104, 0.5, 10],
  ].map(([batches = 12, jarPart = 0.5, spread = 5]) => [
    String(batches),
    `${jarPart} of that`,
    String(spread),
    ...CORRELATIONS.map((autocorrelation) =>
      percent(share(judged({ spread, autocorrelation, jarPart, loss: 0 }, HABITS.usual, Math.ceil(lines / 4), batches), (l) => l.called <= batches)),
    ),
  ]),
); // prettier-ignore

/** Lines of spread 4 that fall once and stay there: looks from the fall on. */
const afterDrop = (drop: number): { called: number; still: number }[] => {
  const random = seeded(drop);
  return Array.from({ length: Math.ceil(lines / 4) }, (_, k) => {
    const at = 7 + (k % 12);
    const { recorded } = inventLine(
      { spread: 4, autocorrelation: 0, loss: 0 },
      random,
      HABITS['in full'],
      at + 12,
    );
    const { standings } = look(
      recorded.map((jars, i) => (i < at ? jars : jars.map((jar) => ({ ...jar, score: jar.score - drop })))),
    );
    const is = (word: Standing | undefined): boolean => word === 'slipping' || word === 'worn out';
    const first = standings.findIndex((word, i) => i >= at && is(word));
    return {
      called: first < 0 ? Number.POSITIVE_INFINITY : first - at + 1,
      still: is(standings[Math.max(at, first) + 8]) ? 1 : 0,
    };
  });
};
table(
  'Lines of spread 4 that fall at once and stay there: called within so many batches, and still eight batches later',
  ['fall', '1', '2', '3', '4', 'still called'],
  [20, 40, 60].map((drop) => {
    const looks = afterDrop(drop);
    return [String(drop), ...[1, 2, 3, 4].map((n) => percent(looks.filter(({ called }) => called <= n).length / looks.length)), percent(looks.reduce((sum, { still }) => sum + still, 0) / looks.length)];
  }),
); // prettier-ignore

/** Whole lines from what was seen in the jars, judged after each batch by the program from end to end: batch at which each is first called. */
const calledFrom = (uneven: number, slip: typeof SLIPPING | typeof EVEN, keeping: Keeping): number[] => {
  const random = seeded(Math.round(uneven * 1000) + (slip === EVEN ? 1 : 2));
  return Array.from({ length: Math.round(lines / 4) }, () => {
    const jars = inventOutcomes({ uneven, ...slip }, keeping, BATCHES, random);
    for (let batch = 5; batch <= BATCHES; batch++) {
      const seen = jars.filter((jar) => jar.batch <= batch);
      const { standing } = judgeLine(1, seen, keepersUsual([1], seen), 1);
      if (standing === 'slipping' || standing === 'worn out') return batch;
    }
    return Number.POSITIVE_INFINITY;
  });
};
const by = (called: readonly number[], batch: number): string =>
  percent(called.filter((at) => at <= batch).length / called.length);

table(
  'From what was seen in the jars to the word: set times 9 % longer, 0.03 less sour and a fifth of a set word softer a generation',
  ['written down', 'set times differ by', 'steady line ever called', 'slipping called by batch 8', 'by 10', 'by 12'],
  Object.entries(KEEPINGS).flatMap(([name, keeping]) =>
    [0.05, 0.1, 0.15].map((uneven) => {
      const losing = calledFrom(uneven, SLIPPING, keeping);
      return [name, `${Math.round(100 * uneven)} %`, by(calledFrom(uneven, EVEN, keeping), BATCHES), by(losing, 8), by(losing, 10), by(losing, 12)];
    }),
  ),
); // prettier-ignore
console.log(`\n${((performance.now() - started) / 1000).toFixed(1)} s`);

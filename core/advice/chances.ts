// The chance of a weak jar, of a discarded one, and that a line must end, by generation: the stated ones until the keeper's own
// lines tell, and then what the posteriors of those lines have (line-told.ts). Every line that was seen counts at every
// generation, one that ended or is younger as it was last seen: those that went on may be the better ones.
import { normalQuantile } from '../vigour/distributions';
import type { LineTold } from './line-told';

/** Belief before any jar: so many bad in so many. Stated, editable; no published figure exists. */
export const CHANCE_PRIORS = {
  weak: { bad: 0.3, of: 3 },
  discarded: { bad: 0.1, of: 5 },
  ended: { bad: 0.1, of: 5 },
} as const;
type ChanceKind = keyof typeof CHANCE_PRIORS;

/** Jars of one line share its luck: for how sure a chance is, no line counts for more of them than this. */
const LINE_TELLS = 12;
/** Beyond the last generation of a line, what it tells makes a chance less sure with each step; the chance stays the same. */
const FADES = 0.8;

/** By generation, index 0 is generation 1. */
export interface Chances {
  readonly weak: readonly number[];
  readonly discarded: readonly number[];
  readonly ended: readonly number[];
}

export interface PooledChances {
  /** What is to be expected. */
  readonly mean: Chances;
  /** What may be instead: each draw moves smoothly from one generation to the next, so that chance alone makes no step. */
  readonly draws: readonly Chances[];
  /** Last generation of which jars were seen; later ones are reckoned on, and wider. */
  readonly lastSeen: number;
  /** From this generation on, fewer lines tell than told before: the others ended, were restarted or are still younger. */
  readonly fewer: { readonly from: number; readonly lines: number; readonly of: number } | null;
}

/** A chance, and of how many jars it counts as known. */
interface Belief {
  readonly mean: number;
  readonly of: number;
}

const logOdds = (p: number): number => Math.log(p / (1 - p));
const chanceOf = (odds: number): number => 1 / (1 + Math.exp(-odds));

/**
 * Chances away from the stated one come out a little further from it than the posterior has them, in simulated
 * kitchens: so much further, in log odds, fitted on seeds 1 and 2 of npm run bench:verdict, which prints what was said beside
 * what came (tests/bench/verdict.md tells of seed 4).
 */
const FURTHER = 0.15;

/**
 * The chance of a weak jar as it is said: the stated one, until jars tell.
 * @param told jars that tell of it
 */
export function saidChance(modelled: number, told: number): number {
  const { bad, of } = CHANCE_PRIORS.weak;
  const stated = logOdds(bad / of);
  const off = logOdds((told * modelled + bad) / (told + of)) - stated;
  return chanceOf(stated + (1 + FURTHER) * off);
}

const sumOf = (lines: readonly LineTold[], of: (line: LineTold) => number): number =>
  lines.reduce((sum, line) => sum + of(line), 0);

/** The stated belief moved by what was counted. */
const counted = (kind: ChanceKind, bad: number, of: number): Belief => ({
  mean: (CHANCE_PRIORS[kind].bad + bad) / (CHANCE_PRIORS[kind].of + of),
  of: CHANCE_PRIORS[kind].of + of,
});

/** Part of jars, first batches apart, that are discarded: the stated one until the keeper's own tell. */
export const discardedShare = (lines: readonly LineTold[]): number =>
  counted('discarded', sumOf(lines, ({ later }) => later.discarded), sumOf(lines, ({ later }) => later.jars)).mean; // prettier-ignore

function fewerLines(lines: readonly LineTold[], lastSeen: number): PooledChances['fewer'] {
  const went = lines.filter(({ last }) => last > 1);
  for (let from = 3; from <= lastSeen; from++) {
    const tell = went.filter(({ last }) => last >= from).length;
    if (tell < went.length) return { from, lines: tell, of: went.length };
  }
  return null;
}

/** What one line has for a generation: as it was seen next to it. */
const weakOf = ({ weak }: LineTold, generation: number): number =>
  weak[Math.min(weak.length, generation) - 1] ?? 0;

/** Chance of a weak jar at a generation later than the first. */
function weakAtGeneration(lines: readonly LineTold[], generation: number): Belief {
  const tells = (line: LineTold): number => Math.min(LINE_TELLS, line.told);
  const all = sumOf(lines, tells);
  const modelled = all === 0 ? 0 : sumOf(lines, (line) => tells(line) * weakOf(line, generation)) / all;
  const sure = sumOf(lines, (line) => tells(line) * FADES ** Math.max(0, generation - line.last));
  return {
    mean: saidChance(
      modelled,
      sumOf(lines, ({ told }) => told),
    ),
    of: CHANCE_PRIORS.weak.of + sure,
  };
}

/** What is believed of each generation: the first batch by its own jars, accidents the same for all that follow. */
function beliefs(lines: readonly LineTold[], generations: number): Record<ChanceKind, readonly Belief[]> {
  const later = counted('discarded', sumOf(lines, (one) => one.later.discarded), sumOf(lines, (one) => one.later.jars)); // prettier-ignore
  const first = counted('discarded', sumOf(lines, (one) => one.first.discarded), sumOf(lines, (one) => one.first.jars)); // prettier-ignore
  const ended = counted(
    'ended',
    lines.filter((one) => one.ended).length,
    sumOf(lines, ({ last }) => last),
  );
  const each = (of: (generation: number) => Belief): Belief[] =>
    Array.from({ length: generations }, (_, i) => of(i + 1));
  return {
    weak: each((generation) =>
      generation === 1
        ? counted(
            'weak',
            sumOf(lines, (one) => one.first.weak),
            sumOf(lines, (one) => one.first.jars - one.first.discarded),
          )
        : weakAtGeneration(lines, generation),
    ),
    discarded: each((generation) => (generation === 1 ? first : later)),
    ended: each(() => ended),
  };
}

/** A chance moved by so many of its standard errors (of log odds, with half a jar added either way: Haldane 1956, from memory). */
function moved({ mean, of }: Belief, errors: number): number {
  const sd = Math.sqrt(1 / (of * mean + 0.5) + 1 / (of * (1 - mean) + 0.5));
  return chanceOf(logOdds(mean) + sd * errors);
}

/** A standard normal number from a uniform one. */
export const normalFrom = (random: () => number): number =>
  normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, random())));

/**
 * The chances by generation, and draws of what they may be.
 * @param lines what each line tells; @param generations how many are looked at
 * @param random uniform numbers in (0, 1), passed in: the same ones give the same draws
 */
export function chancesBy(
  lines: readonly LineTold[],
  generations: number,
  draws: number,
  random: () => number,
): PooledChances {
  const believed = beliefs(lines, generations);
  const lastSeen = Math.max(0, ...lines.map(({ last }) => last));
  const drawn = (kind: ChanceKind): number[] => {
    const [first, early, late] = [normalFrom(random), normalFrom(random), normalFrom(random)];
    return believed[kind].map((belief, i) => {
      if (i === 0) return moved(belief, first);
      // Neighbours are moved alike, the early and the late each by its own.
      const turn = (Math.PI / 2) * Math.min(1, i / Math.max(2, lastSeen));
      return moved(belief, kind === 'weak' ? Math.cos(turn) * early + Math.sin(turn) * late : early);
    });
  };
  const meanOf = (kind: ChanceKind): number[] => believed[kind].map(({ mean }) => mean);
  return {
    mean: { weak: meanOf('weak'), discarded: meanOf('discarded'), ended: meanOf('ended') },
    draws: Array.from({ length: draws }, () => ({
      weak: drawn('weak'),
      discarded: drawn('discarded'),
      ended: drawn('ended'),
    })),
    lastSeen,
    fewer: fewerLines(lines, lastSeen),
  };
}

// What a seed's card says of it, the deciding thing first: at most two lines under its name. All else that is known of it
// stands behind "How this was worked out".
import { daysSpan } from '../quantities/typed-days';
import { lastDaySays, weakJars } from './verdict-says';

const MOST = 2;

/** Of a seed of which nobody has said that it is kept. */
export const MAY_BE_USED_UP = 'Nobody has noted whether it is still there.';

/** What is known of a seed that may be used. */
export interface CardFacts {
  readonly doubts: readonly string[];
  readonly looks: readonly string[];
  /** Remarks that nobody has answered. */
  readonly quotes: readonly string[];
  readonly outcomeKnown: boolean;
  readonly keptSaid: boolean;
  /** 0 to 1. */
  readonly weakChance: number;
  readonly place: 'fridge' | 'freezer' | 'dried';
  readonly days: number;
  readonly daysLeast?: number;
  /** The keeper's limit in days, where it reaches that today; else null. */
  readonly lastOf: number | null;
  /** Its storage makes a slow start likely. */
  readonly slow: boolean;
}

const keptWords = ({ place, days, daysLeast }: CardFacts): string => {
  const long = daysSpan(days, daysLeast);
  if (place === 'fridge') return days === 0 ? 'It was made today.' : `It is ${long} old.`;
  return place === 'freezer' ? `It has been frozen for ${long}.` : `It was dried ${long} ago.`;
};

/** What is to be minded comes before how well it promises, and that before how long it has been kept. */
export function cardLines(seed: CardFacts): string[] {
  const lines = mostPressing(seed);
  // What nobody has answered is never crowded out: it is the third line where two more pressing ones stand.
  const [quote] = seed.quotes;
  return quote === undefined || lines.includes(quote) ? lines : [...lines, quote];
}

/** "About 9 in 100 jars would come out weak." */
const weakSays = (chance: number): string => {
  const weak = weakJars(Math.round(100 * chance));
  return `${weak.charAt(0).toUpperCase()}${weak.slice(1)}.`;
};

function mostPressing(seed: CardFacts): string[] {
  return [
    ...seed.doubts,
    ...seed.looks,
    ...seed.quotes,
    ...(seed.outcomeKnown ? [] : ['Nobody has written down how it came out: look at it first.']),
    ...(seed.keptSaid ? [] : [MAY_BE_USED_UP]),
    ...(seed.lastOf === null ? [] : [lastDaySays(seed.lastOf)]),
    weakSays(seed.weakChance),
    ...(seed.slow ? ['Slow at first: keep to the early check.'] : []),
    keptWords(seed),
  ].slice(0, MOST);
}

/** Of starting afresh. Common practice, no source. */
export const FRESH_START_LINES: readonly string[] = ['A first batch often sets unevenly.'];

/** What a card is made of: a seed as it is ranked. */
interface Ranked {
  /** null: a fresh start, of which nothing is shared. */
  readonly jar: string | null;
  readonly doubts: readonly string[];
  readonly lines: readonly string[];
  readonly weakChance: number | null;
}

/** The same said of other days and figures is no difference to lead with. */
const shapeOf = (line: string): string => line.replaceAll(/\d+/g, '#');

/**
 * Cards that stand side by side: what all seeds among them share is said once, above, and each card leads with what fewest
 * others say. A doubt stays on its card, and first.
 */
export function cardsBeside(ranked: readonly Ranked[]): {
  readonly shared: readonly string[];
  readonly lines: readonly (readonly string[])[];
} {
  const seeds = ranked.filter(({ jar }) => jar !== null);
  const [first] = seeds;
  const shared =
    first === undefined || seeds.length === 1
      ? []
      : first.lines.filter((line) =>
          seeds.every(({ doubts, lines }) => lines.includes(line) && !doubts.includes(line)),
        );
  const saidBy = (line: string): number =>
    seeds.filter(({ lines }) => lines.some((one) => shapeOf(one) === shapeOf(line))).length;
  return {
    shared,
    lines: ranked.map(({ jar, doubts, lines, weakChance }) => {
      if (jar === null) return lines;
      const place = (line: string): number => (doubts.includes(line) ? 0 : saidBy(line));
      const own = lines.filter((line) => !shared.includes(line)).toSorted((a, b) => place(a) - place(b));
      if (weakChance === null) return own;
      const weak = weakSays(weakChance);
      return own.length < MOST && !own.includes(weak) ? [...own, weak] : own;
    }),
  };
}

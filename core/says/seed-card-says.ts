// What a seed's card says of it, the deciding thing first: at most two lines under its name. All else that is known of it
// stands behind "How this was worked out".
import { weakJars } from './verdict-says';

const MOST = 2;

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
  /** Its storage makes a slow start likely. */
  readonly slow: boolean;
}

const keptWords = ({ place, days }: CardFacts): string => {
  const long = days === 1 ? '1 day' : `${days} days`;
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

function mostPressing(seed: CardFacts): string[] {
  const weak = weakJars(Math.round(100 * seed.weakChance));
  return [
    ...seed.doubts,
    ...seed.looks,
    ...seed.quotes,
    ...(seed.outcomeKnown ? [] : ['Nobody has written down how it came out: look at it first.']),
    ...(seed.keptSaid ? [] : ['Nobody has said whether it is still kept.']),
    `${weak.charAt(0).toUpperCase()}${weak.slice(1)}.`,
    ...(seed.slow ? ['Slow at first: keep to the early check.'] : []),
    keptWords(seed),
  ].slice(0, MOST);
}

/** Of starting afresh. Common practice, no source. */
export const FRESH_START_LINES: readonly string[] = ['A first batch often sets unevenly.'];

// Tests where one of two is preferred, or the odd one of three is found: exact binomials (ISO 5495, ISO 4120 are the
// standards that they are called by; figures here are computed). And how many tastings would tell.
import { binomialAt, binomialFrom } from './tails';

/** Of `n` choices between two, `x` for one: chance of so uneven a split or more, either way round. */
export function preference(x: number, n: number): number {
  const most = Math.max(x, n - x);
  return Math.min(1, 2 * binomialFrom(most, n, 1 / 2));
}

/** Of `n` tries to find the odd one of three, `x` right: chance of so many or more by guessing. */
export const triangle = (x: number, n: number): number => binomialFrom(x, n, 1 / 3);

export type Choice = 'preference' | 'directed' | 'triangle';
const GUESS: Readonly<Record<Choice, number>> = { preference: 1 / 2, directed: 1 / 2, triangle: 1 / 3 };

/** The fewest right (or for the winner) that tell; null where not even all do. */
export function fewestThatTell(kind: Choice, n: number, alpha = 0.05): number | null {
  const ways = kind === 'preference' ? 2 : 1;
  let sum = 0;
  for (let x = n; x >= 0; x--) {
    sum += ways * binomialAt(x, n, GUESS[kind]);
    if (sum > alpha + 1e-12) return x === n ? null : x + 1;
  }
  return null;
}

/** The chance that `n` tastings tell what is true: `share` choose the better one, or find the odd one. */
export function power(kind: Choice, n: number, share: number, alpha = 0.05): number {
  const least = fewestThatTell(kind, n, alpha);
  if (least === null) return 0;
  const found = binomialFrom(least, n, share);
  // A preference is told either way round; the wrong way counts too, as little as it is.
  return kind === 'preference' ? found + sumTo(n - least, n, share) : found;
}
function sumTo(x: number, n: number, p: number): number {
  let sum = 0;
  for (let i = 0; i <= x; i++) sum += binomialAt(i, n, p);
  return sum;
}

/** So many tastings are never asked of anybody. */
const MOST = 400;

export interface Needed {
  /** The fewest tastings that reach it; more may fall below again, since choices are counted whole. */
  readonly first: number;
  /** From here on it stays reached. */
  readonly stable: number;
}

/** How many tastings find a true share with a chance; null where more than 400 would be needed. */
export function tastingsNeeded(kind: Choice, share: number, wanted = 0.8, alpha = 0.05): Needed | null {
  let first: number | null = null;
  let below = 0;
  for (let n = 1; n <= MOST; n++) {
    const reached = power(kind, n, share, alpha) >= wanted;
    if (reached) first ??= n;
    else below = n;
  }
  return first === null || below >= MOST ? null : { first, stable: below + 1 };
}

/** Of a triangle: the share that answers right where a part can truly tell, the others guess. */
export const triangleShare = (canTell: number): number => canTell + (1 - canTell) / 3;

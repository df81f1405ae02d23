// In which order each taster gets the jars, and under which code. Orders are balanced as Williams has them: each jar follows
// each other one equally often. Randomness is passed in.

/**
 * Orders for k jars: k of them where k is even, 2k where it is odd (each with its mirror image). In every place each jar
 * stands equally often, and each follows each other one equally often.
 * Williams 1949, Austral. J. Sci. Res. A 2:149 (from memory); rule as in the documentation of R's crossdes.
 */
export function williams(jars: number): number[][] {
  if (jars < 2) return [Array.from({ length: jars }, (_, i) => i)];
  // 0, 1, k−1, 2, k−2 …
  const first = Array.from({ length: jars }, (_, i) => (i % 2 === 1 ? (i + 1) / 2 : (jars - i / 2) % jars));
  const rows = Array.from({ length: jars }, (_, shift) => first.map((jar) => (jar + shift) % jars));
  return jars % 2 === 0 ? rows : [...rows, ...rows.map((row) => row.toReversed())];
}

/** A number from 0 on, below 1. */
export type Draw = () => number;

/** In any order, each as likely (Fisher and Yates). */
function shuffled<T>(items: readonly T[], draw: Draw): T[] {
  const out = [...items];
  for (let i = out.length - 1; i > 0; i--) {
    const j = Math.floor(draw() * (i + 1));
    [out[i], out[j]] = [out[j] as T, out[i] as T];
  }
  return out;
}

/** An order for each taster: whole sets of balanced orders first, drawn afresh, the jars named by chance. */
export function servingOrders(tasters: number, jars: number, draw: Draw): number[][] {
  const names = shuffled(Array.from({ length: jars }, (_, i) => i), draw); // prettier-ignore
  const orders: number[][] = [];
  while (orders.length < tasters)
    orders.push(...shuffled(williams(jars), draw).map((row) => row.map((jar) => names[jar] ?? jar)));
  return orders.slice(0, tasters);
}

/** The six ways to serve two alike and one other, equally often over groups of six tasters (ISO 4120). */
const TRIANGLES = [[0, 0, 1], [0, 1, 0], [1, 0, 0], [1, 1, 0], [1, 0, 1], [0, 1, 1]] as const; // prettier-ignore
export function triangleOrders(tasters: number, draw: Draw): number[][] {
  const orders: number[][] = [];
  while (orders.length < tasters) orders.push(...shuffled(TRIANGLES, draw).map((row) => [...row]));
  return orders.slice(0, tasters);
}

const CODES = 900;

/**
 * Codes of three digits, no two alike in one tasting, so that nobody can compare notes by them.
 * @throws RangeError where more than 900 are asked for
 */
export function servingCodes(count: number, draw: Draw): number[] {
  if (count > CODES) throw new RangeError('there are 900 codes of three digits');
  return shuffled(Array.from({ length: CODES }, (_, i) => 100 + i), draw).slice(0, count); // prettier-ignore
}

// Every test of taste against its published example; sources stand beside each (check-values §1f and §14 of the project).
import { describe, expect, it } from 'vitest';
import { kendallW } from '../../core/trials/agreement';
import {
  fewestThatTell,
  power,
  preference,
  tastingsNeeded,
  triangle,
  triangleShare,
} from '../../core/trials/choices';
import { friedman, leastFriedman } from '../../core/trials/friedman';
import { reachOf, tastingsFor } from '../../core/trials/least';
import { reachSays } from '../../core/says/trial-says';
import { leastPage, page, pageBeyond } from '../../core/trials/page';
import { servingCodes, servingOrders, triangleOrders, williams } from '../../core/trials/serving-order';
import { chiSquareBeyond } from '../../core/trials/tails';
import { seededRandom } from '../../core/advice/random'; // prettier-ignore

/** Columns to rows. */
const rows = (...columns: readonly (readonly number[])[]): number[][] =>
  (columns[0] ?? []).map((_, i) => columns.map((column) => column[i] ?? 0));

// SciPy tutorial, from Sprent & Smeeton 3rd ed. 6.3.2.
const F1 = rows([72, 96, 88, 92, 74, 76, 82], [120, 120, 132, 120, 101, 96, 112], [76, 95, 104, 96, 84, 72, 76]); // prettier-ignore
// NAG g08ae example.
const F2 = rows(
  [1, 2, 1, 1, 3, 2, 3, 1, 3, 3, 2, 2, 3, 2, 2.5, 3, 3, 2],
  [3, 3, 3, 2, 1, 3, 2, 3, 1, 1, 3, 3, 2, 3, 2.5, 2, 2, 3],
  [2, 1, 2, 3, 2, 1, 1, 2, 2, 2, 1, 1, 1, 1, 1, 1, 1, 1],
);
// Hollander & Wolfe, Example 7.1; R's friedman.test prints 11.143, df 2, p 0.003805.
const BASES = [
  5.4, 5.5, 5.55, 5.85, 5.7, 5.75, 5.2, 5.6, 5.5, 5.55, 5.5, 5.4, 5.9, 5.85, 5.7, 5.45, 5.55, 5.6, 5.4, 5.4, 5.35, 5.45, 5.5, 5.35,
  5.25, 5.15, 5, 5.85, 5.8, 5.7, 5.25, 5.2, 5.1, 5.65, 5.55, 5.45, 5.6, 5.35, 5.45, 5.05, 5, 4.95, 5.5, 5.5, 5.4, 5.45, 5.55, 5.5,
  5.55, 5.55, 5.35, 5.45, 5.5, 5.55, 5.5, 5.45, 5.25, 5.65, 5.6, 5.4, 5.7, 5.65, 5.55, 6.3, 6.3, 6.25,
]; // prettier-ignore
const F3 = Array.from({ length: 22 }, (_, i) => BASES.slice(3 * i, 3 * i + 3));

describe('Friedman', () => {
  it.each([
    ['Sprent & Smeeton', F1, [10, 21, 11], 10.571429, 10.571429, 0.0050634142, 0.755102],
    ['NAG, corrected for ties as SciPy and R do', F2, [39.5, 42.5, 26], 8.583333, 8.704225, 0.0128796, 0.241784],
    ['Hollander & Wolfe', F3, [53, 47, 32], 10.636364, 11.142857, 0.0038050408, 0.253247],
  ] as const)('%s', (_, table, sums, uncorrected, q, p, w) => {
    const found = friedman(table)!;
    expect(found.rankSums).toEqual(sums);
    expect(found.uncorrected).toBeCloseTo(uncorrected, 6);
    expect(found.q).toBeCloseTo(q, 6);
    expect(chiSquareBeyond(found.q, found.rankSums.length - 1)).toBeCloseTo(p, 6);
    expect(found.w).toBeCloseTo(w, 6);
    expect(kendallW(table)!.w).toBeCloseTo(w, 6);
  }); // prettier-ignore
  // Exact tables (check-values §14, table from a secondary page, chances computed again).
  it.each([
    [3, 3, 6, 0.027778], [4, 3, 6.5, 0.041667], [5, 3, 6.4, 0.039352], [6, 3, 7, 0.028935], [2, 4, 6, 0.041667], [3, 4, 7.4, 0.032986],
    [4, 4, 7.8, 0.036386], [2, 5, 7.6, 0.041667],
  ])('%s tasters and %s jars tell from Q %s on, exactly', (n, k, q, p) => {
    const least = leastFriedman(n, k)!;
    expect(least.q).toBeCloseTo(q, 9);
    expect(least.p).toBeCloseTo(p, 6);
  }); // prettier-ignore
  it.each([[4, 3, 8, 0.00463], [5, 3, 8.4, 0.008488], [3, 4, 9, 0.001736]])('%s tasters and %s jars: P(Q ≥ %s)', (n, k, q, p) => {
    expect(leastFriedman(n, k, p + 1e-6)!.q).toBeCloseTo(q, 9);
    expect(leastFriedman(n, k, p + 1e-6)!.p).toBeCloseTo(p, 6);
  }); // prettier-ignore
  it('is exact of tables with few blocks, ties and all: as counting every order of every row', () => {
    const table = [[1, 2, 2], [1, 3, 2], [1, 2, 3]]; // prettier-ignore
    const found = friedman(table)!;
    expect(found.method).toBe('exact');
    const perms = (row: number[]): number[][] => row.length < 2 ? [row] : row.flatMap((one, i) => perms([...row.slice(0, i), ...row.slice(i + 1)]).map((rest) => [one, ...rest])); // prettier-ignore
    const all = perms(table[0]!).flatMap((a) => perms(table[1]!).flatMap((b) => perms(table[2]!).map((c) => friedman([a, b, c])?.q ?? 0))); // prettier-ignore
    expect(found.p).toBeCloseTo(all.filter((q) => q >= found.q - 1e-9).length / all.length, 9);
  });
  it('says nothing where nobody told any two apart', () => {
    expect(friedman([[1, 1, 1], [1, 1, 1]])).toBeNull(); // prettier-ignore
    expect(friedman([[1, 2, 3]])).toBeNull();
  });
});

describe("Page's trend", () => {
  it('is that of SciPy, which rounds a statistic with ties down', () => {
    // SciPy page_trend_test, example from Statext; method Page 1963, JASA 58:216-230.
    const table = [[3, 4, 3], [2, 2, 4], [3, 3, 5], [1, 3, 2], [2, 3, 2], [2, 4, 5], [1, 2, 4], [3, 4, 4], [2, 4, 5], [1, 3, 4]]; // prettier-ignore
    const found = page(table)!;
    expect(found.l).toBe(133.5);
    expect(found.p).toBeCloseTo(0.0018191162, 9);
    expect(found.byNormal).toBeCloseTo(0.0012693434, 9);
    expect(pageBeyond(134, 10, 3)).toBeCloseTo(0.0007365275, 9);
    expect(friedman(table)!.q).toBeCloseTo(11.485714, 6);
  });
  // Exact, computed (check-values §14).
  it.each([[2, 3, 28, 0.027778], [3, 3, 41, 0.032407], [4, 3, 54, 0.025463], [2, 4, 58, 0.03125], [3, 4, 84, 0.044633]])(
    '%s tasters and %s doses tell from L %s on', (n, k, l, p) => {
      expect(leastPage(n, k)!.l).toBe(l);
      expect(leastPage(n, k)!.p).toBeCloseTo(p, 6);
    }); // prettier-ignore
  it('has the critical values of R’s crank', () => {
    // R crank, page.trend.test, k = 3, rows from 2 on, at .05 and .01.
    expect([2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => leastPage(n, 3)!.l)).toEqual([28, 41, 54, 66, 79, 91, 104, 116, 128]); // prettier-ignore
    expect([3, 4, 5, 6, 7, 8, 9, 10].map((n) => leastPage(n, 3, 0.01)!.l)).toEqual([42, 55, 68, 81, 93, 106, 119, 131]); // prettier-ignore
    expect(leastPage(2, 3, 0.01)).toBeNull();
  });
});

const each = (text: string): [number, number][] => text.split(' ').map((pair) => pair.split(':').map(Number) as [number, number]); // prettier-ignore
describe('choices', () => {
  it('of one among three have the fewest right of the table (ISO 4120:2021, computed)', () => {
    const five = '3:3 4:4 5:4 6:5 7:5 8:6 9:6 10:7 11:7 12:8 13:8 14:9 15:9 16:9 17:10 18:10 19:11 20:11 21:12 22:12 23:12 24:13 25:13 26:14 27:14 28:15 29:15 30:15 36:18 42:20 48:22 54:25 60:27';
    for (const [n, least] of each(five)) expect([n, fewestThatTell('triangle', n)]).toEqual([n, least]);
    for (const [n, least] of each('5:5 6:6 12:9 24:15 36:20 60:30')) expect([n, fewestThatTell('triangle', n, 0.01)]).toEqual([n, least]);
    expect(triangle(8, 12)).toBeCloseTo(0.018758432, 9);
    expect(triangle(13, 24)).toBeCloseTo(0.028441128, 9);
  }); // prettier-ignore
  it('of one of two have the fewest of the table (ISO 5495, computed)', () => {
    const two = '6:6 7:7 8:8 9:8 10:9 11:10 12:10 13:11 14:12 15:12 16:13 17:13 18:14 19:15 20:15 24:18 30:21 40:27 50:33 60:39';
    for (const [n, least] of each(two)) expect([n, fewestThatTell('preference', n)]).toEqual([n, least]);
    for (const [n, least] of each('5:5 6:6 7:7 8:7 9:8 10:9 20:15 30:20 60:37')) expect([n, fewestThatTell('directed', n)]).toEqual([n, least]);
    expect(fewestThatTell('preference', 5)).toBeNull();
    expect(preference(34, 60)).toBeCloseTo(0.366294, 6);
    expect(preference(6, 6)).toBeCloseTo(0.03125, 12);
  }); // prettier-ignore
  it('need as many tastings as is published', () => {
    // sensR discrimSS(pdA .5, pGuess .5, power .8, alpha .05): exact 23, stable 28; the power at 24 falls to .766204.
    expect(tastingsNeeded('directed', 0.75)).toEqual({ first: 23, stable: 28 });
    expect(power('directed', 24, 0.75)).toBeCloseTo(0.766204, 6);
    // Paired, two-sided, power .8 (computed, check-values §14).
    expect([0.7, 0.75, 0.8, 0.9].map((share) => tastingsNeeded('preference', share))).toEqual([
      { first: 49, stable: 54 }, { first: 30, stable: 35 }, { first: 20, stable: 23 }, { first: 12, stable: 12 },
    ]);
    expect([0.5, 0.4, 0.3].map((part) => tastingsNeeded('triangle', triangleShare(part)))).toEqual([
      { first: 16, stable: 16 }, { first: 23, stable: 25 }, { first: 40, stable: 42 },
    ]);
    expect(tastingsFor()).toEqual([{ of100: 70, tastings: 49 }, { of100: 80, tastings: 20 }, { of100: 90, tastings: 12 }]);
  }); // prettier-ignore
});

it("Kendall's W is that of the published ratings", () => {
  // "anxiety", 20 subjects and 3 raters, as in R's irr and DescTools (KendallW): raw 0.501921, corrected 0.539657, p .042883.
  // The ratings are typed from memory; that all four published figures come out of them is what speaks for them.
  const anxiety = [
    [3, 3, 3, 4, 5, 5, 2, 3, 5, 2, 2, 6, 1, 5, 2, 2, 1, 2, 4, 3],
    [3, 6, 4, 6, 2, 4, 2, 4, 3, 3, 2, 3, 3, 3, 2, 2, 1, 3, 3, 4],
    [2, 1, 4, 4, 3, 2, 1, 6, 1, 1, 1, 2, 3, 3, 1, 1, 3, 3, 2, 2],
  ];
  const found = kendallW(anxiety)!;
  expect(found.raw).toBeCloseTo(0.501921, 6);
  expect(found.w).toBeCloseTo(0.539657, 6);
  expect(found.chiSquare).toBeCloseTo(30.76044, 4);
  expect(found.p).toBeCloseTo(0.042883, 6);
});

describe('what a tasting can tell at all', () => {
  // check-values §14, least that can tell.
  it.each([
    ['rank', 2, 2, false, false], ['rank', 2, 3, false, false], ['rank', 2, 4, false, true], ['rank', 2, 3, true, true], ['rank', 3, 2, false, false],
    ['rank', 3, 3, false, true], ['rank', 4, 2, false, false], ['rank', 4, 3, false, true], ['pair', 3, 2, false, false], ['pair', 6, 2, false, true],
    ['triangle', 2, 2, false, false], ['triangle', 3, 2, false, true],
  ] as const)('%s by %s of %s jars, doses: %s: %s', (task, tasters, jars, ordered, tells) => {
    expect(reachOf(task, tasters, jars, ordered).canTell).toBe(tells);
  }); // prettier-ignore
  it('is said in one sentence', () => {
    expect(reachSays('rank', 3, 2)).toBe('Three tasters and two jars can never tell: it takes six tasters.');
    expect(reachSays('rank', 3, 3)).toBe('Three tasters and three jars can tell only if all put them in the same order.'); // prettier-ignore
    expect(reachSays('rank', 4, 3)).toBe('Four tasters and three jars can tell if they mostly agree.');
    expect(reachSays('pair', 6, 2)).toBe('Six tasters and two jars can tell only if all choose alike.');
    expect(reachOf('rank', 2, 3).best).toBeCloseTo(1 / 6, 9);
    expect(reachOf('rank', 2, 4).best).toBeCloseTo(1 / 24, 9);
    expect(reachOf('rank', 3, 3).best).toBeCloseTo(1 / 36, 9);
  });
});

describe('orders and codes', () => {
  it('are balanced as Williams has them', () => {
    // R crossdes: four jars in four orders, each ordered pair once; three in six, each twice.
    const pairs = (orders: readonly (readonly number[])[]): number[] => {
      const counts = new Map<string, number>();
      for (const order of orders) order.slice(1).forEach((jar, i) => counts.set(`${order[i]}${jar}`, (counts.get(`${order[i]}${jar}`) ?? 0) + 1)); // prettier-ignore
      return [...counts.values()];
    };
    expect(williams(4)).toHaveLength(4);
    expect(pairs(williams(4))).toEqual(Array.from({ length: 12 }, () => 1));
    expect(williams(3)).toHaveLength(6);
    expect(pairs(williams(3))).toEqual(Array.from({ length: 6 }, () => 2));
    for (const jars of [2, 3, 4, 5, 6]) {
      const orders = servingOrders(williams(jars).length, jars, seededRandom(jars));
      expect(new Set(pairs(orders)).size).toBe(1);
      for (let place = 0; place < jars; place++)
        expect(new Set(orders.map((order) => order[place])).size).toBe(jars);
    }
  });
  it('are drawn afresh, and no code comes twice', () => {
    const draw = seededRandom(7);
    const [one, two] = [servingCodes(60, draw), servingCodes(60, draw)];
    expect(one).not.toEqual(two);
    expect(new Set(one).size).toBe(60);
    expect(one.every((code) => code >= 100 && code <= 999)).toBe(true);
    expect(() => servingCodes(901, draw)).toThrow(RangeError);
    const six = triangleOrders(6, draw).map((order) => order.join(''));
    expect(six.toSorted()).toEqual(['001', '010', '011', '100', '101', '110']);
  });
});

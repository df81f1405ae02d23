// The belief of every batch of a tree that grows, held against all of it reckoned at once (Pearl 1988, belief propagation,
// from memory: up from the newest batches what each tells of its seed, then down from the first what each hands on).
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { movesOf } from '../../core/vigour/level/moves';
import { LEVEL_RULES } from '../../core/vigour/level/rules';
import { LevelTree } from '../../core/vigour/level/tree';

const RULES = {
  ...LEVEL_RULES,
  spreads: LEVEL_RULES.spreads.slice(0, 2),
  drifts: LEVEL_RULES.drifts.slice(0, 2),
};
/** Batches tell of all their forebears. */
const WHOLE = { ...RULES, back: 99 };
const SIZE = RULES.levels * RULES.rates.length;

/** A batch: which one seeded it, how its jars came out (none: nothing was seen), and which batches are asked about then. */
const batch = fc.record({
  seed: fc.nat(),
  // More often the newest than another.
  newest: fc.boolean(),
  scores: fc.array(fc.integer({ min: 20, max: 100 }), { maxLength: 3 }),
  asked: fc.array(fc.nat(), { maxLength: 3 }),
});
type Batch = typeof batch extends fc.Arbitrary<infer T> ? T : never;

const parentOf = ({ seed, newest }: Batch, place: number): number | null =>
  place === 0 ? null : newest ? place - 1 : seed % place;

function grow(rules: typeof RULES, batches: readonly Batch[], asking: boolean): LevelTree {
  const tree = new LevelTree(rules);
  batches.forEach((one, place) => {
    tree.add({ parent: parentOf(one, place), jars: one.scores.map((score) => ({ score, width: 0 })) });
    if (asking) for (const asked of one.asked) tree.belief(asked % (place + 1));
  });
  return tree;
}

const most = (a: Float64Array, b: Float64Array): number =>
  a.reduce((worst, one, i) => Math.max(worst, Math.abs(one - (b[i] as number))), 0);

it('is the same whatever was asked while it grew (property)', () => {
  fc.assert(
    // Longer than what is kept, so that batches are left behind.
    fc.property(fc.array(batch, { minLength: 2, maxLength: 34, size: 'max' }), (batches) => {
      const [asked, silent] = [grow(RULES, batches, true), grow(RULES, batches, false)];
      for (const [place] of batches.entries())
        expect(most(asked.belief(place), silent.belief(place))).toBe(0);
    }),
    { numRuns: 12, endOnFailure: true },
  );
});

function normalised(row: Float64Array): Float64Array {
  for (let from = 0; from < row.length; from += SIZE) {
    const sum = row.subarray(from, from + SIZE).reduce((a, b) => a + b, 0);
    for (let i = from; i < from + SIZE; i++) row[i] = (row[i] as number) / sum;
  }
  return row;
}

it('equals all of it reckoned at once (property)', () => {
  fc.assert(
    fc.property(fc.array(batch, { minLength: 2, maxLength: 12, size: 'max' }), (batches) => {
      const tree = new LevelTree(WHOLE);
      const moves = RULES.spreads.flatMap(() => RULES.drifts.map((drift) => movesOf(RULES, drift)));
      const through = (way: 'forward' | 'back', row: Float64Array): Float64Array => {
        const out = new Float64Array(row.length);
        moves.forEach((one, h) => one[way](row, h * SIZE, out));
        return out;
      };
      const parents = batches.map(parentOf);
      // What is seen of a batch alone is what moves its belief at first: the one before over what it inherits.
      let first = new Float64Array(0);
      const seen = batches.map((one, place) => {
        const parent = parents[place] as number | null;
        const before = parent === null ? null : tree.next(parent);
        tree.add({ parent, jars: one.scores.map((score) => ({ score, width: 0 })) });
        const after = tree.belief(place);
        if (before === null) {
          first = Float64Array.from(after);
          return new Float64Array(after.length).fill(1);
        }
        return after.map((value, i) => ((before[i] as number) > 0 ? value / (before[i] as number) : 0));
      });
      const evidence = seen.map((row) => Float64Array.from(row));
      const messages: Float64Array[] = [];
      for (let place = batches.length - 1; place > 0; place--) {
        const message = through('back', evidence[place] as Float64Array);
        messages[place] = message;
        const above = evidence[parents[place] as number] as Float64Array;
        message.forEach((told, i) => (above[i] = (above[i] as number) * told));
      }
      const beliefs: Float64Array[] = [];
      for (const [place] of batches.entries()) {
        const parent = parents[place] ?? null;
        const inherited =
          parent === null
            ? first
            : through('forward', (beliefs[parent] as Float64Array).map((one, i) => ((messages[place]?.[i] as number) > 0 ? one / (messages[place]?.[i] as number) : 0)));
        beliefs[place] = normalised(inherited.map((one, i) => one * (evidence[place]?.[i] as number)));
      }
      for (const [place] of batches.entries())
        expect(most(tree.belief(place), beliefs[place] as Float64Array)).toBeLessThan(1e-6);
    }),
    { numRuns: 15, endOnFailure: true },
  );
}); // prettier-ignore

// Whatever is written, undone and done again, in every order that is allowed, leaves a ledger that passes a check in plain SQL.
import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkLedger, equalLabels } from './ledger-check';
import { KINDS, pairOf, RandomKeeper } from './random-keeper';
import { runs } from '../runs';

/** Sequences. JARLINE_SHRINK=1 shortens one that fails. */
const RUNS = runs(15);

// Every number as likely as any other: small ones would all speak of the same few jars.
const move = fc.noBias(fc.tuple(fc.nat(KINDS - 1), fc.nat(60), fc.nat(60), fc.nat(60)));
const moves = fc.array(move, { minLength: 20, maxLength: 60, size: 'max' });

/** What does not hold of a keeper's ledger, in words. */
function wrongWith(keeper: RandomKeeper): string[] {
  const { db } = keeper.ledger;
  const labels = equalLabels(db).filter((pair) => {
    const [one = '', other = ''] = pair.split(' ');
    return !keeper.meant.has(pairOf(one, other));
  });
  return [
    ...checkLedger(db, keeper.today).map(({ check, rows }) => `${check}: ${rows.join(', ')}`),
    ...labels.map((pair) => `equal labels were meant: ${pair}`),
  ];
}

describe('any sequence of writes, imports, undoes and redoes', () => {
  it('leaves a ledger as it must be', () => {
    let recorded = 0;
    fc.assert(
      fc.property(moves, (sequence) => {
        const keeper = new RandomKeeper();
        for (const move of sequence) {
          const before = keeper.recorded;
          try {
            keeper.make(move);
          } catch (error) {
            throw new Error(`a fault after\n${keeper.told.join('\n')}`, { cause: error });
          }
          if (keeper.recorded === before) continue;
          const wrong = wrongWith(keeper);
          if (wrong.length > 0) throw new Error(`${wrong.join('\n')}\nafter\n${keeper.told.join('\n')}`);
        }
        recorded += keeper.recorded;
        keeper.ledger.close();
      }),
      { seed: 20260314, numRuns: RUNS, endOnFailure: process.env.JARLINE_SHRINK === undefined },
    );
    expect(recorded, 'too little was recorded to show anything').toBeGreaterThan(5 * RUNS);
  }, 120_000);
});

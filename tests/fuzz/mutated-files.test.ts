// A few hundred mutated files at each door; npm run fuzz tries ten thousand.
import { expect, it } from 'vitest';
import { runs } from '../runs';
import { tryMutated } from './mutated-files';
import { INPUT_DOORS, tryInputs } from './mutated-input';

const CASES = runs(100);
const INPUTS = runs(12);

it.each(['archive', 'hand-over'] as const)(
  `%s: ${CASES} files that are not as they were written are refused in order, or whole after all`,
  (door) => {
    const tally = tryMutated(door, CASES);
    expect(tally.refused).toBeGreaterThan(CASES / 4);
    expect(tally.taken).toBeGreaterThan(0);
  },
  3_600_000,
);

// Requests are a property of their own (tests/contract/never-unexpected.test.ts).
it.each(INPUT_DOORS)(
  `%s: ${INPUTS} inputs that nobody meant are refused in order, or whole after all`,
  (door) => {
    const tally = tryInputs(door, INPUTS);
    expect(tally.taken).toBeGreaterThan(0);
    expect(tally.refused + tally.taken).toBeGreaterThanOrEqual(INPUTS);
  },
  3_600_000,
);

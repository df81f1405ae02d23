// A few hundred mutated files at each door; npm run fuzz tries ten thousand.
import { expect, it } from 'vitest';
import { runs } from '../runs';
import { tryMutated } from './mutated-files';

const CASES = runs(100);

it.each(['archive', 'hand-over'] as const)(
  `%s: ${CASES} files that are not as they were written are refused in order, or whole after all`,
  (door) => {
    const tally = tryMutated(door, CASES);
    expect(tally.refused).toBeGreaterThan(CASES / 4);
    expect(tally.taken).toBeGreaterThan(0);
  },
  3_600_000,
);

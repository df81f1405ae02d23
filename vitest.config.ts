import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take seconds: they come first, so that no worker is left alone with one of them at the end. */
const LONG = [
  'bench/bench-verdict', 'notes/proof', 'advice/verdict', 'ledger/full-disk', 'notes/growth', 'ledger/headless', 'contract/never-unexpected', 'ledger/recovery',
  'notes/notes-in-ledger', 'headless/calls', 'ledger/first-calls', 'rules/any-order', 'notes/again',
  'ledger/kills', 'advice/any-ledger', 'ledger/moved', 'fuzz/mutated-files', 'hand-over/hand-over', 'host/notes-beside',
  'host/worker-killed',
]; // prettier-ignore

/** Longest first; a file that is not listed keeps the place that vitest gives it. */
class LongFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification): number => {
      const at = LONG.findIndex((name) => moduleId.endsWith(`/tests/${name}.test.ts`));
      return at < 0 ? LONG.length : at;
    };
    // oxlint-disable-next-line unicorn/no-array-sort -- vitest's own, not a list's
    return (await super.sort(files)).toSorted((a, b) => rank(a) - rank(b));
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/temporary-folder.ts',
    setupFiles: 'tests/fixed-seed.ts',
    sequence: { sequencer: LongFirst },
    testTimeout: 60_000,
    // A worker for each core, and each loads the program once for all its files: loading took as long as testing. So no
    // test may leave anything behind in a module.
    pool: 'forks',
    isolate: false,
    maxWorkers: availableParallelism(),
  },
});

import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: ['tests/**/*.test.{ts,tsx}'],
    globalSetup: 'tests/temporary-folder.ts',
    setupFiles: 'tests/fixed-seed.ts',
    testTimeout: 60_000,
    // A worker for each core, and each loads the program once for all its files: loading took as long as testing. So no
    // test may leave anything behind in a module.
    pool: 'forks',
    isolate: false,
    maxWorkers: availableParallelism(),
  },
});

import { defineConfig } from '@playwright/test';
import { displays } from './displays';

// The window is driven through main/launch: see `npm test`. One window a display: focus belongs to one window only.
export default defineConfig({
  testDir: '.',
  outputDir: '../test-results/playwright',
  globalSetup: '../tests/temporary-folder.ts',
  workers: displays.length,
  timeout: 60_000,
  // A wait ends as soon as it sees what it waits for; a busy machine may be slow.
  expect: { timeout: 15_000 },
  forbidOnly: true,
  reporter: [['list'], ['json']],
  projects: [
    // Any window takes the next test: none stands idle while another has a long file before it.
    { name: 'window', testIgnore: ['pictures.spec.ts', 'bench.spec.ts'], fullyParallel: true },
    { name: 'pictures', testMatch: 'pictures.spec.ts', fullyParallel: true }, // npm run screenshots
    { name: 'bench', testMatch: 'bench.spec.ts' }, // npm run bench:window
  ],
});

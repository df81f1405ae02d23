import { defineConfig } from '@playwright/test';

// The window is driven through main/launch: see `npm test`. One at a time: focus belongs to one window only.
export default defineConfig({
  testDir: '.',
  outputDir: '../test-results/playwright',
  workers: 1,
  timeout: 60_000,
  forbidOnly: true,
  reporter: [['list'], ['json']],
  projects: [
    { name: 'window', testIgnore: 'pictures.spec.ts' },
    { name: 'pictures', testMatch: 'pictures.spec.ts' }, // npm run screenshots
  ],
});

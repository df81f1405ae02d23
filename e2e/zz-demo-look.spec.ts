import { test } from './window';
for (const colorScheme of ['light', 'dark'] as const)
  test.describe(colorScheme, () => {
    test.use({ seed: 'demo', colorScheme, size: { width: 1600, height: 900 } });
    test('x', async ({ page }) => {
      await page.getByRole('main').waitFor();
      await page.waitForTimeout(1500);
      await page.screenshot({ path: `/tmp/dn/shots/family-${colorScheme}.png` });
    });
  });

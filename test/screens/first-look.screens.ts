import { contractVersion } from '@coreward/contract';
import { expect, test } from '@playwright/test';

test('there is a browser', async ({ page }) => {
  await page.setContent(`<title>Coreward</title><h1>${contractVersion}</h1>`);
  await expect(page.getByRole('heading')).toHaveText('1');
});

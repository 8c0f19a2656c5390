/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { examplePath, expect, test } from './bench-test.ts';
import { expectFits } from './fits.ts';

const pages = [
  '/',
  examplePath,
  `${examplePath}/versions`,
  '/launch/new',
  // with a laser, and a fibre with lists in it, unfolded
  '/drawer#e8a3b1e0-0000-4000-8000-000000000002',
  '/drawer#e8a3b1e0-0000-4000-8000-00000000000e',
  '/drawer/e8a3b1e0-0000-4000-8000-000000000002/versions',
  '/match?for=total&laser=green+module',
  '/book',
  '/pair',
  '/nowhere',
] as const;

async function open(page: Page, address: string, path: string): Promise<void> {
  await page.goto('about:blank');
  await page.goto(`${address}${path}`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  if (path === examplePath) await expect(page.getByText('nine times in ten')).toBeVisible();
  await expect(page.getByText(/^(?:Opening|Asking the station) …$/u)).toHaveCount(0);
  if (path.startsWith('/match'))
    await expect(page.getByRole('table', { name: 'All combinations' })).toBeVisible();
}

test('at 1280, 768 and 360 px no page is wider than the screen, and every control is large enough to press', async ({
  opened: page,
  station,
}) => {
  for (const path of pages) {
    await open(page, station.address, path);
    await expectFits(page, path);
  }
});

for (const theme of ['dark', 'light'] as const) {
  test(`axe finds nothing to complain about in the ${theme} theme`, async ({ opened: page, station }) => {
    await page.getByRole('radio', { name: theme, exact: true }).check();
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
    await expect(page.locator('.kept')).toHaveAttribute('data-unkept', '0');
    // the themes differ in their colours and in nothing else
    const only = theme === 'dark' ? undefined : ['color-contrast'];
    for (const path of pages) {
      await open(page, station.address, path);
      await expect(page.locator('html')).toHaveAttribute('data-theme', theme);
      expect.soft(await complaints(page, only), path).toEqual([]);
    }
  });
}

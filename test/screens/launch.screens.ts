import type { Page } from '@playwright/test';
import { allKept, examplePath, expect, test } from './bench-test.ts';

const line = (page: Page) => page.getByRole('list', { name: 'Parts in the order of the light' });

/** The power at the far end, once its range is computed. */
async function answer(page: Page): Promise<string> {
  const told = page.locator('.answer');
  await expect(told).toHaveAttribute('aria-busy', 'false');
  await expect(told).toContainText('nine times in ten');
  return (await told.textContent()) ?? '';
}

test('from the first page to a changed forecast, which is there tomorrow', async ({
  opened: page,
  station,
}) => {
  await page.getByRole('link', { name: 'green guide light to the observing loft' }).click();
  const before = await answer(page);
  expect(before).toMatch(/^\d+(?:\.\d+)?\smW leaves the far end \d.*\sto \d.*\smW, nine times in ten/u);
  await line(page)
    .getByRole('button', { name: /^red one, 6\.2 mm/u })
    .click();
  const focal = page.getByRole('textbox', { name: 'focal length', exact: true });
  await focal.fill('4.1 mm');
  await focal.press('Enter');
  await expect(page.getByRole('button', { name: /^Undo: .*focal length 6\.2 mm to 4\.1 mm/u })).toBeVisible();
  await expect.poll(() => answer(page)).not.toBe(before);
  const after = await answer(page);
  await allKept(page);
  // the power goes out over night
  await page.close();
  await station.kill();
  await station.start();
  const next = await page.context().newPage();
  await next.goto(`${station.address}${examplePath}`);
  expect(await answer(next)).toBe(after);
});

test('every part of the line unfolds its tag, and a refused value says why there', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}`);
  await answer(page);
  const parts = line(page).getByRole('button');
  expect(await parts.count()).toBeGreaterThan(6);
  for (const part of await parts.all()) {
    await part.click();
    await expect(part).toHaveAttribute('aria-expanded', 'true');
    const name = ((await part.textContent()) ?? '').slice(0, 2);
    await expect(page.getByRole('heading', { level: 2 }).first()).toContainText(name);
  }
  await line(page)
    .getByRole('button', { name: /^loft line/u })
    .click();
  const length = page.getByRole('textbox', { name: 'length', exact: true });
  await length.fill('18 kg');
  await length.press('Enter');
  await expect(page.getByRole('alert')).toContainText('kg is no unit');
  await length.fill('25 m');
  await length.press('Enter');
  await expect(page.getByRole('alert')).toHaveCount(0);
  await allKept(page);
});

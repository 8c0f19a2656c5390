import type { Page } from '@playwright/test';
import { examplePath, expect, test } from './bench-test.ts';

test.use({ viewport: { width: 360, height: 740 } });

/** Whether the middle of what has the focus can be seen: nothing that stays in sight lies upon it. */
const focusIsClear = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const focused = document.activeElement;
    if (focused === null) return false;
    const { left, top, width, height } = focused.getBoundingClientRect();
    const there = document.elementFromPoint(left + width / 2, top + height / 2);
    return there !== null && (focused.contains(there) || there.contains(focused));
  });

test('on a phone the answer stays in sight while a tag far below it is edited, and covers no focus', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}`);
  const answer = page.locator('.answer');
  await expect(answer).toContainText('nine times in ten');
  const parts = page.getByRole('list', { name: 'Parts in the order of the light' }).getByRole('button');
  // a finger lands in the middle of each, and no mark of a hazard takes it away
  for (const part of await parts.all()) {
    await part.click();
    await expect(part).toHaveAttribute('aria-expanded', 'true');
  }
  await page
    .getByRole('button', { name: /^loft line/u })
    .first()
    .click();
  const length = page.getByRole('textbox', { name: 'length', exact: true });
  await length.fill('10 m');
  await expect(answer).toBeInViewport({ ratio: 1 });
  const { height = 740 } = (await answer.boundingBox()) ?? {};
  expect(height).toBeLessThan(62); // two lines, a twelfth of the screen
  const before = await answer.textContent();
  await length.press('Enter');
  await expect(answer).not.toHaveText(before ?? '');
  await expect(answer).toBeInViewport({ ratio: 1 });
  for (const key of ['Tab', 'Shift+Tab']) {
    for (let press = 0; press < 12; press += 1) {
      await page.keyboard.press(key);
      expect(await focusIsClear(page), `${key}, press ${press + 1}`).toBe(true);
    }
  }
  // without a tag the whole screen is the page's
  await page.keyboard.press('Escape');
  await expect(page.locator('#tag')).toHaveCount(0);
  await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
  await expect(answer).not.toBeInViewport();
});

/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { allKept, expect, test } from './bench-test.ts';
import { expectFits } from './fits.ts';
import { openExample, typeOnMeter } from './gauge-reading.ts';

const looked = [
  '/gauge',
  '/gauge/knife-edge',
  '/gauge/caustic',
  '/gauge/spot-picture',
  '/gauge/mode-count',
  '/gauge/card-offset',
] as const;

/** Opens what is folded: readings of an instrument, and a part that is begun from the answer. */
async function unfold(page: Page): Promise<void> {
  for (const folded of await page.locator('details:not([open]) > summary').all()) await folded.click();
  const fills = page.getByRole('combobox', { name: 'fills' });
  if ((await fills.count()) === 0) return;
  const labels = await fills.locator('option').allTextContents();
  const begins = labels.find((label) => label.startsWith('a new '));
  if (begins === undefined) return;
  await fills.selectOption({ label: begins });
  await expect(page.locator('.new-part')).toBeVisible();
}

for (const theme of ['dark', 'light'] as const) {
  test(`axe finds nothing to complain about on the gauges in the ${theme} theme`, async ({
    opened: page,
    station,
  }) => {
    await page.getByRole('radio', { name: theme, exact: true }).check();
    await allKept(page);
    await typeOnMeter(page, station.address, '88 mV');
    for (const path of looked) {
      await openExample(page, `${station.address}${path}`);
      await unfold(page);
      expect.soft(await complaints(page), path).toEqual([]);
    }
  });
}

test('no gauge is wider than the screen at 1280, 768 and 360 px, and every control can be pressed', async ({
  opened: page,
  station,
}) => {
  await typeOnMeter(page, station.address, '88 mV');
  for (const path of looked) {
    await openExample(page, `${station.address}${path}`);
    await unfold(page);
    await expectFits(page, path);
  }
});

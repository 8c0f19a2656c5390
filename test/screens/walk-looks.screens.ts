/// <reference lib="dom" />
import { complaints } from './axe.ts';
import { allKept, examplePath, expect, test } from './bench-test.ts';
import { expectNoWider } from './fits.ts';
import { handDoes, instruction, practise } from './walk-page.ts';

test('a trace that breaks takes only itself away', async ({ opened: page, station, mayComplain }) => {
  mayComplain.push(/trace-plot|ERR_FAILED|dynamically imported/u);
  await page.route(/trace-plot/u, (route) => route.abort());
  await practise(page, station.address);
  await expect(page.getByRole('alert')).toContainText('This drawing broke');
  await handDoes(page, 1);
  await expect(page.locator('.take')).toBeVisible();
});

test('the longest reading fits its column', async ({ opened: page, station }) => {
  await practise(page, station.address);
  const output = page.locator('.walk-top output');
  await expect(output).toBeVisible();
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    // three digits behind three zeros is the longest that is written of a power
    const over = await output.evaluate((one) => {
      const long = one.cloneNode() as HTMLElement;
      long.textContent = '0.00290 mW';
      one.after(long);
      const wider = long.scrollWidth - long.clientWidth;
      long.remove();
      return wider;
    });
    expect(over).toBeLessThanOrEqual(0);
  }
});

test('axe, both themes, 360 px, and buttons for a wet thumb', async ({ opened: page, station }) => {
  for (const theme of ['dark', 'light'] as const) {
    await page.goto(station.address);
    await page.getByRole('radio', { name: theme, exact: true }).check();
    await allKept(page);
    await page.goto(`${station.address}${examplePath}/walk`);
    const begin = page.getByRole('button', { name: 'Practise on a simulated bench' });
    if (theme === 'dark') await begin.click();
    await expect(instruction(page)).toBeVisible();
    await handDoes(page, 6);
    expect(await complaints(page), theme).toEqual([]);
    await page.setViewportSize({ width: 360, height: 740 });
    await expectNoWider(page, theme);
    const heights = await page
      .locator('.pad button')
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
    for (const height of heights) expect(height).toBeGreaterThanOrEqual(56);
    if (process.env.LOOK !== undefined)
      await page.screenshot({ path: `/tmp/walk-360-${theme}.png`, fullPage: true });
    await page.setViewportSize({ width: 1280, height: 800 });
    if (process.env.LOOK !== undefined)
      await page.screenshot({ path: `/tmp/walk-1280-${theme}.png`, fullPage: true });
  }
});

/// <reference lib="dom" />
import type { BrowserContext, Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { allKept, examplePath, expect, stationGone, test } from './bench-test.ts';

const instruction = (page: Page) => page.locator('.instruction');
const moves = (page: Page) => page.getByRole('list').and(page.locator('.moves')).getByRole('listitem');
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

async function practise(page: Page, address: string): Promise<void> {
  await page.goto(`${address}${examplePath}/walk`);
  await press(page, 'Practise on a simulated bench');
  await expect(instruction(page)).toContainText('Block the beam');
}

/** Lets the practised hand do so many steps, each only when the one before is kept. */
async function handDoes(page: Page, steps: number): Promise<void> {
  for (let done = 0; done < steps; done += 1) {
    const before = await moves(page).count();
    await press(page, 'Let the practised hand do it');
    await expect(moves(page)).toHaveCount(before + 1);
  }
}

/** A second page on the same walk. */
async function beside(context: BrowserContext, address: string): Promise<Page> {
  const other = await context.newPage();
  await other.goto(`${address}${examplePath}/walk`);
  return other;
}

test('a practice walk from the launch to its end, phone and laptop in step', async ({
  opened: laptop,
  station,
  context,
}) => {
  test.setTimeout(180_000);
  await laptop.goto(`${station.address}${examplePath}`);
  await laptop.getByRole('link', { name: 'then walk' }).click();
  await expect(laptop.getByText('LP01 is one round spot')).toBeVisible();
  // a real bench is walked only when its cautions are read
  await expect(laptop.getByRole('button', { name: 'Walk this bench' })).toBeDisabled();
  await press(laptop, 'Practise on a simulated bench');
  await expect(instruction(laptop)).toContainText('Block the beam');
  const phone = await context.newPage();
  await phone.setViewportSize({ width: 360, height: 740 });
  await phone.goto(`${station.address}${examplePath}/walk`);
  await expect(instruction(phone)).toContainText('Block the beam');
  await handDoes(phone, 3);
  await expect(moves(laptop)).toHaveCount(3);
  await expect(instruction(laptop)).toHaveText((await instruction(phone).textContent()) ?? '');
  const verdict = laptop.getByRole('region', { name: 'The climb is over' });
  for (let steps = 0; steps < 170 && !(await verdict.isVisible()); steps += 1) await handDoes(laptop, 1);
  await expect(verdict).toBeVisible();
  await expect(phone.getByRole('region', { name: 'The climb is over' })).toBeVisible();
  await expect(verdict).toContainText('95 %');
  for (
    let left = 0;
    left < 6 && (await laptop.getByRole('button', { name: 'Skip' }).isVisible());
    left += 1
  ) {
    const before = await moves(laptop).count();
    await press(laptop, 'Skip');
    await expect(moves(laptop)).toHaveCount(before + 1);
  }
  await expect(instruction(phone)).toContainText('Nothing is left to do');
});

test('undo takes one answer back on both pages, and a typed reading counts in the unit shown', async ({
  opened: page,
  station,
  context,
}) => {
  await practise(page, station.address);
  const other = await beside(context, station.address);
  await handDoes(page, 2);
  await expect(moves(other)).toHaveCount(2);
  await press(other, 'Undo');
  await expect(moves(page)).toHaveCount(1);
  // a hand may type for the meter, in its unit, and nothing of the walk is lost
  await other.getByText('read by Practice meter').click();
  await other.getByRole('radio', { name: 'me, typing what a meter shows' }).check();
  await press(other, 'Read by this');
  await expect(page.getByText('readings typed')).toBeVisible();
  await expect(moves(page)).toHaveCount(1);
  const field = page.getByRole('textbox');
  await field.fill('plenty');
  await press(page, 'Done');
  await expect(page.getByRole('alert')).toBeVisible();
  await field.fill('5 mW');
  await field.press('Enter');
  await expect(page.locator('.reading-best')).toContainText('5 mW');
});

/** What the large number shows, W; it is read ten times a second. */
async function shown(page: Page): Promise<number> {
  const written = (await page.locator('.reading-large output').textContent()) ?? '';
  const [, number = '', unit = ''] = /^([\d.]+)\s*(\S*)$/u.exec(written) ?? [];
  return Number(number) * ({ W: 1, mW: 1e-3, µW: 1e-6, nW: 1e-9, pW: 1e-12 }[unit] ?? Number.NaN);
}

test('a screw turned the wrong way is seen at once on both pages and can be turned back', async ({
  opened: page,
  station,
  context,
}) => {
  await practise(page, station.address);
  const other = await beside(context, station.address);
  await handDoes(page, 3);
  await expect.poll(() => shown(page)).toBeGreaterThan(0);
  const before = await shown(page);
  const knob = page.getByRole('group', { name: 'M2 horizontal' });
  await knob.getByRole('button', { name: 'M2 horizontal, +1/4 turn' }).click();
  // a quarter turn is many half-widths of the peak: the light is gone on both
  await expect.poll(() => shown(page)).toBeLessThan(before / 3);
  await expect.poll(() => shown(other)).toBeLessThan(before / 3);
  // by keys alone, and past the slack
  await knob.focus();
  for (let turns = 0; turns < 3; turns += 1) await page.keyboard.press('Shift+ArrowLeft');
  const lost = await shown(other);
  await expect
    .poll(async () => {
      await page.keyboard.press('ArrowLeft');
      return shown(other);
    })
    .toBeGreaterThan(3 * lost);
  // the hand finds the light again from wherever it was left
  await handDoes(page, 1);
});

test('a station that is killed in the middle of a walk goes on where it was', async ({
  opened: page,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  await practise(page, station.address);
  await handDoes(page, 4);
  const asked = await instruction(page).textContent();
  await station.kill();
  await press(page, 'Skip');
  await expect(page.getByRole('alert')).toContainText('Press again');
  await station.start();
  await page.reload();
  await expect(instruction(page)).toHaveText(asked ?? '');
  await expect(moves(page)).toHaveCount(4);
  await handDoes(page, 1);
});

test('by eye no share is claimed, and what is told is brighter, the same or dimmer', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}/walk`);
  await page.getByRole('radio', { name: 'my eye: brighter, the same, dimmer' }).check();
  await press(page, 'Practise on a simulated bench');
  await expect(instruction(page)).toContainText('Rock M2');
  for (const seen of ['Brighter', 'The same', 'Dimmer', 'Brighter']) {
    const before = await moves(page).count();
    const told = page.getByRole('button', { name: seen, exact: true });
    const done = page.getByRole('button', { name: 'Done', exact: true });
    // a screw that is only turned has nothing to be told
    await expect(told.or(done).first()).toBeEnabled();
    await ((await told.isVisible()) ? told : done).click();
    await expect(moves(page)).toHaveCount(before + 1);
  }
  await expect(page.locator('.estimate')).not.toContainText('%');
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
    const over = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    await expect.poll(over).toBeLessThanOrEqual(0);
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

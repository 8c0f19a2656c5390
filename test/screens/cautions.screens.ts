/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { allKept, asksLate, examplePath, expect, test } from './bench-test.ts';
import { expectNoWider } from './fits.ts';

const marks = (page: Page) => page.getByRole('list', { name: 'Places that can hurt' });
const deferral = 'Caution only, computed from what you entered.';

/** Enters another power of the laser on its tag. */
async function setPower(page: Page, power: string): Promise<void> {
  const laser = page
    .getByRole('list', { name: 'Parts in the order of the light' })
    .getByRole('button', { name: /^green module/u });
  if ((await laser.getAttribute('aria-expanded')) === 'false') await laser.click();
  const field = page.getByRole('textbox', { name: 'power', exact: true });
  await field.fill(power);
  await field.press('Enter');
  await allKept(page);
}

test('raised power is a caution on the line, on the page and on paper', async ({ opened: page, station }) => {
  await page.goto(`${station.address}${examplePath}`);
  const laser = marks(page).getByRole('button', { name: /green module/u });
  await expect(laser).toContainText('severe');
  await setPower(page, '100 nW');
  // 0.2 µW, twice as much as written, is far below 10 W/m² over 7 mm: 0.38 mW, both published numbers
  await expect(laser).not.toContainText('severe');
  const mildest = await laser.textContent();
  await setPower(page, '80 mW');
  await expect(laser).toContainText('severe');
  expect(await laser.textContent()).not.toBe(mildest);

  // by keys alone: open it, read it, and on to the page
  await laser.focus();
  await page.keyboard.press('Enter');
  await expect(laser).toHaveAttribute('aria-expanded', 'true');
  const here = page.getByRole('region', { name: /^Places that can hurt: green module/u });
  await expect(here.getByRole('listitem').first()).toContainText('severe');
  await expect(here).toContainText('Laser exit, 520 nm: above the eye limit');
  await here.getByRole('link', { name: 'all cautions' }).press('Enter');

  await expect(page).toHaveURL(new RegExp(`${examplePath}/cautions$`, 'u'));
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  const worst = page.getByRole('article').first();
  await expect(worst).toHaveAttribute('data-level', /not evaluated|severe/u);
  const exit = page.locator('#laser-exit');
  await expect(exit).toContainText('Block the beam at the exit');
  await expect(exit).toContainText('160 mW');
  // what it is and what to do stands there without a press; its numbers unfold
  await expect(exit.getByRole('term')).toHaveCount(0);
  await exit.getByText('Its numbers').click();
  for (const term of ['at risk', 'estimate', 'limit', 'limit set', 'time', 'reaches'])
    await expect(exit.getByRole('term').filter({ hasText: new RegExp(`^${term}$`, 'u') })).toHaveCount(1);
  await expect(page.locator('#laser-exit-infrared')).toContainText('invisible light');
  await expect(page.getByText(deferral)).toHaveCount(1);

  const folded = page.locator('.folded');
  await expect(folded.locator('#no-interlock')).toBeHidden();
  expect(await folded.locator('[data-level="severe"], [data-level="serious"]').count()).toBe(0);

  await page.emulateMedia({ media: 'print' });
  await expect(exit).toBeVisible();
  // on paper nothing can be unfolded: all of it stands there
  await expect(folded.locator('#no-interlock')).toBeVisible();
  await expect(page.locator('#mirror-M1').getByText('limit set')).toBeVisible();
  await expect(page.getByText(deferral)).toBeVisible();
  await expect(page.getByRole('navigation')).toBeHidden();
  await expect(page.getByRole('button', { name: 'Print' })).toBeHidden();
  // A4 between its margins at 96 px to the inch
  await page.setViewportSize({ width: 680, height: 1000 });
  await expectNoWider(page, 'on paper');
});

test('an answer counts at once, is there after loading again, and can be taken back', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}/cautions`);
  const infrared = page.locator('#laser-exit-infrared');
  await expect(infrared).toBeVisible();
  const question = page.getByRole('listitem').filter({ hasText: 'Was the infrared' });
  await question.getByRole('button', { name: 'none', exact: true }).click();
  await expect(infrared).toHaveCount(0);
  await expect(question).toContainText(/Answered .*: none/u);

  const highest = page.getByRole('listitem').filter({ hasText: 'What is the most that green module' });
  await highest.getByRole('textbox').fill('plenty');
  await highest.getByRole('button', { name: 'Answer' }).click();
  await expect(highest.getByRole('alert')).toContainText('Answer `30 mW`');
  await highest.getByRole('textbox').fill('30 mW');
  await highest.getByRole('button', { name: 'Answer' }).click();
  await expect(highest).toContainText(/Answered .*: 30 mW/u);

  await page.reload();
  await expect(question).toContainText(/Answered .*: none/u);
  await expect(infrared).toHaveCount(0);
  await question.getByRole('button', { name: /^Withdraw/u }).click();
  await expect(infrared).toBeVisible();
  await expect(question).toContainText('Until then infrared of twice the rated power');
  await page.reload();
  await expect(infrared).toBeVisible();
  await expect(highest).toContainText(/Answered .*: 30 mW/u);
});

test('a step is ticked off with its time, and asked again when the power is another', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}/steps`);
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(11);
  const step = page.getByRole('region', { name: '1 First light' });
  const tick = step.getByRole('checkbox');
  await expect(step).toContainText('Not read yet.');
  // seen at once, before the station has it
  await asksLate(page, 'POST', '**/api/entries', () => expect(tick).toBeChecked());
  await tick.click();
  await expect(step).toContainText(/Read \d.*\./u);
  await page.unroute('**/api/entries');
  await page.reload();
  await expect(tick).toBeChecked();
  await page.getByRole('link', { name: 'To the launch' }).click();
  await setPower(page, '14 mW');
  await page.getByRole('link', { name: 'step by step' }).click();
  await expect(tick).not.toBeChecked();
  await expect(step).toContainText('read it again');
  await tick.click();
  await expect(tick).toBeChecked();
  await tick.click();
  await expect(tick).not.toBeChecked();
  await expect(page.getByText(deferral)).toHaveCount(1);
});

test('at 360 px no mark lies on a name or a power', async ({ opened: page, station }) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.goto(`${station.address}${examplePath}`);
  await expect(page.locator('.hazard-place').first()).toBeVisible();
  // what costs most stands above the line: with it all moves down
  await expect(page.getByText('nine times in ten')).toBeVisible();
  const boxes = (selector: string) =>
    page
      .locator(selector)
      .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().toJSON() as DOMRectReadOnly));
  const marks = await boxes('.hazard-place .hazard-mark span');
  const told = await boxes('.part-name, .part-power');
  expect(marks.length).toBeGreaterThan(5);
  const covered = told.filter((text) =>
    marks.some(
      (mark) =>
        mark.left < text.right && text.left < mark.right && mark.top < text.bottom && text.top < mark.bottom,
    ),
  );
  expect(covered).toEqual([]);
});

test('axe, both themes, 360 px, and five lines about hazards at the first start', async ({
  opened: page,
  station,
}) => {
  const lines = page.getByRole('list', { name: 'What it does and does not do about hazards' });
  await expect(lines.getByRole('listitem')).toHaveCount(5);
  await expect(lines).toContainText('Local codes');
  for (const theme of ['dark', 'light'] as const) {
    await page.goto(station.address);
    await page.getByRole('radio', { name: theme, exact: true }).check();
    await allKept(page);
    for (const path of [`${examplePath}/cautions`, `${examplePath}/steps`, examplePath]) {
      await page.goto(`${station.address}${path}`);
      await expect(page.locator('.hazard, .work-step, .hazard-mark').first()).toBeVisible();
      if (path === examplePath) await expect(page.getByText('nine times in ten')).toBeVisible();
      // the themes differ in their colours and in nothing else
      const only = theme === 'dark' ? undefined : ['color-contrast'];
      expect(await complaints(page, only), `${path} ${theme}`).toEqual([]);
      if (theme === 'light') continue;
      await page.setViewportSize({ width: 360, height: 740 });
      await expectNoWider(page, path);
      await page.setViewportSize({ width: 1280, height: 720 });
    }
  }
});

/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { expect, test } from './bench-test.ts';
import { beside, handDoes, instruction, moves, practise, press } from './walk-page.ts';

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
  // a screw that is not asked lies folded beneath the one that is
  if (!(await knob.isVisible())) await page.locator('.screws summary').click();
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

/** The screw that is asked, and one that is not. */
async function screwsOf(page: Page) {
  const asked =
    /M[12] (?:horizontal|vertical)/u.exec((await instruction(page).textContent()) ?? '')?.[0] ?? '';
  const other = asked.endsWith('horizontal') ? asked.replace('horizontal', 'vertical') : 'M1 horizontal';
  return { asked, other };
}

test('a wrong screw of a practice bench is named at once on every page, and the asked one is marked and first', async ({
  opened: page,
  station,
  context,
}) => {
  await practise(page, station.address);
  const laptop = await beside(context, station.address);
  await handDoes(page, 3);
  const { asked, other } = await screwsOf(page);
  const first = page.locator('.knob').first();
  await expect(first).toHaveAccessibleName(asked);
  await expect(first).toContainText('asked now');
  await page.getByText('The other three screws').click();
  await page.getByRole('button', { name: `${other}, +1/256 turn` }).click();
  // said once, by the sign, and nothing is to be taken
  const said = page.locator('.sign');
  await expect(said).toHaveText(`You turned ${other}; asked is ${asked}.`);
  await expect(page.locator('.mend')).toHaveText(/^Turn it back by as much/u);
  await expect(laptop.locator('.sign')).toHaveText(`You turned ${other}; asked is ${asked}.`);
  // and on one that is opened anew
  await laptop.reload();
  await expect(laptop.locator('.sign')).toHaveText(`You turned ${other}; asked is ${asked}.`);
  await expect(page.locator('.walk-top').getByRole('alert')).toHaveCount(0);
  await expect(page.locator('.take')).toBeDisabled();
  if (process.env.LOOK !== undefined)
    await page.screenshot({ path: '/tmp/walk-wrong-1280.png', fullPage: true });
  // on a phone the reading, its words and the press stay above the screws
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('button', { name: `${other}, −1/4 turn` }).scrollIntoViewIfNeeded();
  await first.evaluate((one) => one.scrollIntoView());
  for (const held of ['.reading-large', '.sign', '.take'])
    await expect(page.locator(held)).toBeInViewport({ ratio: 1 });
  await expect(first.getByRole('button').last()).toBeInViewport({ ratio: 1 });
  const sizes = await page
    .locator('.knob button:visible')
    .evaluateAll((all) =>
      all.map((one) => one.getBoundingClientRect()).map(({ width, height }) => [width, height]),
    );
  // the least size of a target: WCAG 2.2, 2.5.5
  for (const size of sizes.flat()) expect(size).toBeGreaterThanOrEqual(44);
  if (process.env.LOOK !== undefined) await page.screenshot({ path: '/tmp/walk-wrong-360.png' });
  await page.getByRole('button', { name: `${asked}, +1/256 turn` }).click();
  await expect(said).not.toHaveText(/^You turned/u);
  // and so it is once the wrong one stands where it stood
  await page.getByRole('button', { name: `${other}, +1/64 turn` }).click();
  await expect(said).toHaveText(/^You turned/u);
  await page.getByRole('button', { name: `${other}, −1/64 turn` }).click();
  await expect(said).not.toHaveText(/^You turned/u);
  await expect(laptop.locator('.sign')).not.toHaveText(/^You turned/u);
});

test('what is not ready is taken by a second press that says what it takes, and never by a double tap', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address);
  // the beam is not blocked: what the meter shows is no dark reading
  await expect(page.locator('.sign')).toHaveText('Block the beam.');
  const take = page.locator('.take');
  await expect(take).toHaveText(/^Take [\d.]+ [mµnp]?W$/u);
  const instead = page.locator('.instead');
  await take.dblclick();
  await expect(instead).toHaveText('The light has not fallen. Press again to take it all the same.');
  await expect(take).toHaveText(/^Take [\d.]+ [mµnp]?W all the same$/u);
  await expect(moves(page)).toHaveCount(0);
  if (process.env.LOOK !== undefined) {
    await page.screenshot({ path: '/tmp/walk-instead-1280.png' });
    await page.setViewportSize({ width: 360, height: 740 });
    await page.screenshot({ path: '/tmp/walk-instead-360.png' });
  }
  // once it is ready one press is enough
  await press(page, 'Block the beam');
  await expect(page.locator('.sign')).toHaveText('At rest: take it.');
  await expect(instead).toHaveCount(0);
  await expect(take).toHaveText(/^Take [\d.]+ [mµnp]?W$/u);
  await take.click();
  await expect(moves(page)).toHaveCount(1);
  // and it can be taken all the same by somebody who means it
  await expect(page.locator('.sign')).toHaveText('Let the beam through.');
  await take.click();
  await expect(instead).toHaveText(
    'It is no more than the dark reading. Press again to take it all the same.',
  );
  await expect(take).toHaveAttribute('aria-disabled', 'false');
  await take.click();
  await expect(moves(page)).toHaveCount(2);
});

test('a wheel turns the screw that has the focus, and the page stays; over any other it scrolls', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address);
  await handDoes(page, 3);
  await page.setViewportSize({ width: 1280, height: 500 });
  const top = () => page.evaluate(() => window.scrollY);
  const knob = page.locator('.knob').first();
  await knob.scrollIntoViewIfNeeded();
  await knob.locator('.grip').hover();
  const turns: string[] = [];
  page.on('request', (request) => request.url().endsWith('/turns') && turns.push(request.url()));
  const before = await top();
  await knob.focus();
  await page.mouse.wheel(0, 100);
  await expect.poll(() => turns.length).toBe(1);
  expect(await top()).toBe(before);
  await page.getByRole('button', { name: 'Undo' }).focus();
  await page.mouse.wheel(0, before > 0 ? -100 : 100);
  await expect.poll(top).not.toBe(before);
  expect(turns).toHaveLength(1);
});

test('a double tap answers one step', async ({ opened: page, station }) => {
  await practise(page, station.address);
  await handDoes(page, 1);
  const skip = page.getByRole('button', { name: 'Skip', exact: true });
  await expect(skip).toBeEnabled();
  let answers = 0;
  page.on('request', (request) => {
    if (request.url().endsWith('/acts')) answers += 1;
  });
  // twice on the same spot, as a thumb does, and once more when the next step is just there
  const { x = 0, y = 0, width = 0, height = 0 } = (await skip.boundingBox()) ?? {};
  await page.mouse.click(x + width / 2, y + height / 2, { clickCount: 2, delay: 30 });
  await expect(moves(page)).toHaveCount(2);
  await skip.dispatchEvent('click');
  await expect(skip).toBeEnabled();
  expect(answers).toBe(1);
  await expect(moves(page)).toHaveCount(2);
});

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
  // only now what was hidden is told, and on both pages
  for (const page of [laptop, phone])
    await expect(page.getByRole('region', { name: 'The climb is over' })).toContainText('In truth');
  // the truth follows the screws that are turned after the end
  const told = () => verdict.getByText('Off their places at the peak').textContent();
  const before = await told();
  if (!(await laptop.getByRole('group', { name: 'M1 vertical' }).isVisible()))
    await laptop.locator('.screws summary').click();
  await laptop.getByRole('button', { name: 'M1 vertical, +1/4 turn' }).click();
  await expect.poll(told).not.toBe(before);
  await laptop.getByRole('button', { name: 'M1 vertical, −1/4 turn' }).click();
  if (process.env.LOOK !== undefined) {
    await laptop.screenshot({ path: '/tmp/walk-over-1280.png' });
    await phone.screenshot({ path: '/tmp/walk-over-360.png', fullPage: true });
  }
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
  // the last reading stays in sight, and another walk is begun where it is chosen
  await expect(phone.locator('.reading-large')).toHaveText(/last reading [\d.]+/u);
  await press(phone, 'Begin another walk');
  await expect(phone.getByRole('heading', { name: 'Begin a walk' })).toBeInViewport();
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

test('a wrong screw of a practice bench is named at once, and the asked one is marked and first', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address);
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

/** An instrument of the bench book whose readings are typed. */
async function addTyped(page: Page): Promise<void> {
  const status = await page.evaluate(async () => {
    const send = (path: string, method: string, what: unknown) =>
      fetch(path, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(what) });
    const path = `/api/instruments/${crypto.randomUUID()}`;
    const made = await send(path, 'PUT', {
      name: 'handheld meter',
      setup: { kind: 'typed', unit: 'W' },
      floor: null,
      saturation: null,
    });
    const on = await send(`${path}/switch`, 'POST', { on: true });
    return [made.status, on.status];
  });
  expect(status).toEqual([200, 200]);
}

test('a walk that reads a typed instrument asks for its reading, and a single one counts', async ({
  opened: page,
  station,
}) => {
  await addTyped(page);
  await page.goto(`${station.address}${examplePath}/walk`);
  await page.getByRole('radio', { name: /^handheld meter/u }).check();
  for (const caution of await page.getByRole('checkbox').all()) {
    await caution.click();
    await expect(caution).toBeChecked();
  }
  await press(page, 'Walk this bench');
  await expect(instruction(page)).toContainText('Block the beam');
  const field = page.getByRole('textbox');
  await field.fill('2 nW');
  await press(page, 'Done');
  await expect(moves(page)).toHaveCount(1);
  // it stands in the bench book as a reading of that instrument
  await expect(page.locator('.reading-large')).toContainText('2 nW');
  if (process.env.LOOK !== undefined)
    await page.screenshot({ path: '/tmp/walk-typed-1280.png', fullPage: true });
  // one that is typed on the page of the instruments is offered to be taken
  await page.getByRole('link', { name: 'instruments', exact: true }).click();
  await page.getByRole('button', { name: /^handheld meter/u }).click();
  await page.getByRole('textbox', { name: 'reading' }).first().fill('5 µW');
  await press(page, 'Keep reading');
  await page.goBack();
  await press(page, 'Take 5 µW');
  await expect(moves(page)).toHaveCount(2);
});

test('a walk offers no undoing of the launch', async ({ opened: page, station }) => {
  await page.goto(`${station.address}/drawer`);
  await page.goto(`${station.address}${examplePath}`);
  await press(page, 'Rename');
  const name = page.getByRole('textbox', { name: 'name of the launch' });
  await name.fill('another name');
  await name.press('Enter');
  const undo = page.getByRole('button', { name: /^Undo: /u });
  await expect(undo).toBeVisible();
  await page.goto(`${station.address}${examplePath}/walk`);
  await expect(page.getByRole('button', { name: 'Practise on a simulated bench' })).toBeVisible();
  await expect(undo).toHaveCount(0);
  // nor by its keys
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Walk: another name');
  await page.goto(`${station.address}${examplePath}`);
  await expect(undo).toBeVisible();
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
  // the meter that fell silent with it may be told beside it
  await expect(page.getByRole('alert').filter({ hasText: 'Press again' })).toBeVisible();
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

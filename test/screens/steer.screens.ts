/// <reference lib="dom" />
import type { Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { allKept, examplePath, expect, test } from './bench-test.ts';
import { spotScene } from './camera-film.ts';
import { expectNoWider } from './fits.ts';
import { pngOf } from './steer-picture.ts';

const order = (page: Page) => page.locator('[aria-live] .steer-order');
const hand = (page: Page) => page.getByRole('button', { name: 'Let the simulated hand do it' });

async function practise(page: Page, address: string, seed: number): Promise<void> {
  await page.goto(`${address}${examplePath}/steer`);
  await page.getByRole('textbox', { name: 'seed of the practice bench' }).fill(`${seed}`);
  await page.getByRole('button', { name: 'Practise without hardware' }).click();
  await expect(order(page)).toContainText('clockwise');
}

/** Presses a button and waits until the page has gone on. */
async function goOn(page: Page, press: () => Promise<void>): Promise<string> {
  const done = page.locator('.steer-moves li');
  const count = await done.count();
  await press();
  await expect(done).toHaveCount(count + 1);
  return (await order(page).textContent()) ?? '';
}

test('practice is steered from nothing to light, and a reload loses nothing', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address, 3);
  // by hand on the screen: a screw, then the rest by the simulated hand
  await expect(order(page)).toHaveText(
    'M1, horizontal screw: turn it 0.25 turn clockwise, seen from the knob.',
  );
  for (let i = 0; i < 4; i++) await goOn(page, () => hand(page).click());
  await expect(order(page)).toContainText('Read both cards');
  await expect(page.getByRole('img', { name: /^Card behind M1: the laser’s spot lies/u })).toBeVisible();
  await goOn(page, () => hand(page).click());
  await expect(order(page)).toContainText(/M\d, (?:horizontal|vertical) screw, [\d.]+ turn/u);

  const before = await order(page).textContent();
  await page.reload();
  await expect(order(page)).toHaveText(before ?? '');
  await expect(page.locator('.steer-moves li')).toHaveCount(5);
  await page.getByRole('button', { name: 'Undo the last answer' }).click();
  await expect(order(page)).toContainText('Read both cards');
  await goOn(page, () => hand(page).click());
  await expect(order(page)).toHaveText(before ?? '');

  let said = '';
  for (let i = 0; i < 80 && !said.includes('The steer is done'); i++) {
    said = await goOn(page, () => hand(page).click());
  }
  expect(said).toContain('The steer is done');
  await expect(page.getByText('The walk takes it from here to the peak.')).toBeVisible();
  await page.getByRole('link', { name: 'Walk to the peak' }).click();
  await expect(page).toHaveURL(/\/walk$/u);
  await expect(page.getByRole('heading', { level: 1 })).toContainText('Walk');
});

test('screws learned the wrong way round are noticed before they do harm', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address, 7);
  const wrong = { 'left or right': ['left', 'right'], 'up or down': ['up', 'down'] } as const;
  // the hand knows; it is told the other way on the horizontal screws, by what it would have answered
  for (let i = 0; i < 4; i++) {
    const isHorizontal = (await order(page).textContent())?.includes('horizontal') === true;
    if (!isHorizontal) {
      await goOn(page, () => hand(page).click());
      continue;
    }
    await goOn(page, () => hand(page).click());
    const told = (await page.locator('.steer-moves li').last().textContent()) ?? '';
    await page.getByRole('button', { name: 'Undo the last answer' }).click();
    await expect(page.locator('.steer-moves li')).toHaveCount(i);
    const [first, second] = wrong['left or right'];
    const other = told.includes(first) ? second : first;
    await page.getByRole('button', { name: 'Turn it, and watch the cards' }).click();
    await expect(page.locator('.card-before').first()).toBeVisible();
    await goOn(page, () => page.getByRole('button', { name: other, exact: true }).click());
  }
  const warning = page.getByRole('alert').filter({ hasText: 'Swap the mirrors' });
  for (let i = 0; i < 20 && (await warning.count()) === 0; i++) await goOn(page, () => hand(page).click());
  await expect(warning).toContainText('grew twice running');
  await expect(order(page)).toContainText('clockwise');
});

test('a real bench begins behind its cautions; offsets are typed, a slip is said, places are kept', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}/steer`);
  const begin = page.getByRole('button', { name: 'Begin at the bench' });
  await expect(begin).toBeDisabled();
  await expect(page.getByText('Caution only, computed from what you entered.')).toHaveCount(1);
  await expect(page.getByText('Unplug the reference source before the laser goes on')).toBeVisible();
  await expect(
    page.getByText(/Up to .* of laser light.* reaches the reference source/u).first(),
  ).toBeVisible();
  // ticked are they once the station has it; then they fold away
  await page.getByRole('checkbox', { name: 'I have read this' }).first().click();
  await expect(page.getByRole('checkbox', { name: 'I have read this' }).first()).toBeChecked();
  await page.getByRole('checkbox', { name: 'I have read this' }).last().click();
  await expect(begin).toBeEnabled();

  const far = page.getByRole('textbox', { name: 'far card, behind M1' });
  await far.fill('far away');
  await far.press('Enter');
  await expect(page.getByRole('alert').filter({ hasText: 'far away' })).toBeVisible();
  const forecast = page.locator('.steer-forecast li').first();
  const short = await forecast.textContent();
  await far.fill('900');
  await far.press('Enter');
  await expect(far).toHaveValue('900 mm');
  await expect(forecast).not.toHaveText(short ?? '');
  await begin.click();
  await expect(order(page)).toContainText('clockwise');
  for (const way of ['left', 'up', 'right', 'down'])
    await goOn(page, () => page.getByRole('button', { name: way, exact: true }).click());
  for (const [name, typed] of [
    ['Card before the lens: right (mm)', '-1.2'],
    ['Card before the lens: up (mm)', '0.4 mm'],
    ['Card behind M1: right (mm)', 'left'],
    ['Card behind M1: up (mm)', '−2'],
  ] as const)
    await page.getByRole('textbox', { name, exact: true }).fill(typed);
  await page.getByRole('button', { name: 'Enter these offsets' }).click();
  await expect(page.getByRole('alert').filter({ hasText: 'left' })).toBeVisible();
  await page.getByRole('textbox', { name: 'Card behind M1: right (mm)' }).fill('3');
  await goOn(page, () => page.getByRole('button', { name: 'Enter these offsets' }).click());
  await expect(order(page)).toContainText('M1, horizontal screw');
  await page.reload();
  await expect(order(page)).toContainText('M1, horizontal screw');
  await page.getByRole('button', { name: 'Start anew' }).click();
  await expect(far).toHaveValue('900 mm');
  await page.goto(`${station.address}/book`);
  await expect(page.getByText('steer begun').first()).toBeVisible();
});

const pictureOf = {
  forward: 'a picture of the laser’s spot alone',
  reverse: 'a picture of the reverse spot alone',
} as const;

/** Chooses a picture of one spot for one beam. */
async function choosePicture(
  page: Page,
  beam: keyof typeof pictureOf,
  peak: number,
  x: number,
  y: number,
): Promise<void> {
  const file = { name: `${beam}.png`, mimeType: 'image/png', buffer: pngOf(spotScene(peak, 14, x, y)) };
  await page.getByLabel(pictureOf[beam]).setInputFiles(file);
  await expect(page.getByText(file.name)).toBeVisible();
}

test('both cards are read from two picture files each, and what a picture lacks is said', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address, 3);
  for (let i = 0; i < 4; i++) await goOn(page, () => hand(page).click());
  await page.getByRole('button', { name: 'by camera' }).click();
  /** Pixels a millimetre, and offsets right and up, mm, as the pictures are drawn. */
  const drawn = [
    ['Card before the lens', 12.5, 3.2, 1.5],
    ['Card behind M1', 10, -4, 2.5],
  ] as const;
  for (const [name, scale, right, up] of drawn) {
    await page.getByRole('button', { name }).click();
    const card = page.getByRole('region', { name });
    await card.getByRole('radio', { name: 'a figure' }).check();
    await card.getByRole('textbox').fill(`${scale} px/mm`);
    await choosePicture(page, 'reverse', 0.5, 300, 260);
    // a picture whose middle is white says nothing of where the middle is
    await choosePicture(page, 'forward', 4, 300 + scale * right, 260 - scale * up);
    await card.getByRole('button', { name: 'Read both pictures' }).click();
    await expect(card.getByRole('alert')).toContainText('the spot is clipped');
    await choosePicture(page, 'forward', 0.6, 300 + scale * right, 260 - scale * up);
    await card.getByRole('button', { name: 'Read both pictures' }).click();
    await expect(card.getByRole('alert')).toHaveCount(0);
    await expect(card.locator('.card-read')).toContainText(/^Read: /u);
    await looked(page, `by-files-${scale}`);
  }
  await goOn(page, () => page.getByRole('button', { name: 'Enter both offsets' }).click());
  const words = (await page.locator('.steer-moves li').last().textContent()) ?? '';
  const read = [...words.matchAll(/([−-]?[\d.]+) mm (?:right|up)/gu)].map(([, one]) =>
    Number(one?.replace('−', '-')),
  );
  expect(read).toHaveLength(4);
  // a round spot drawn on 8 bits is found to a tenth of a pixel: 0.01 mm, and three digits are written
  for (const [rank, [, , right, up]] of drawn.entries()) {
    expect(Math.abs((read[2 * rank] ?? Number.NaN) - right)).toBeLessThan(0.02);
    expect(Math.abs((read[2 * rank + 1] ?? Number.NaN) - up)).toBeLessThan(0.02);
  }
  await expect(page.locator('.steer-moves li').last()).toContainText('by camera to ±');
});

/** Changes the first length of the launch. */
async function moveMirror(page: Page, length: string): Promise<void> {
  const status = await page.evaluate(async (written) => {
    const at = location.pathname.split('/')[2] ?? '';
    const kept = await (await fetch(`/api/launches/${at}`)).json();
    const launch = kept.launch ?? kept;
    const text = launch.text.replace(/space: \d+ mm/u, `space: ${written}`);
    const body = { write: crypto.randomUUID(), base: launch.version, text, putAway: false, invented: false };
    const headers = { 'content-type': 'application/json' };
    return (await fetch(`/api/launches/${at}`, { method: 'PUT', headers, body: JSON.stringify(body) }))
      .status;
  }, length);
  expect(status).toBe(200);
}

test('a steer keeps to the lengths it was begun with, says that they were changed, and offers to begin anew', async ({
  opened: page,
  station,
}) => {
  await practise(page, station.address, 3);
  for (let i = 0; i < 5; i++) await goOn(page, () => hand(page).click());
  const asked = (await order(page).textContent()) ?? '';
  expect(asked).toMatch(/[\d.]+ turn/u);
  await moveMirror(page, '520 mm');
  const changed = page.getByRole('status').filter({ hasText: 'were changed since this steer was begun' });
  await expect(changed).toBeVisible();
  await expect(order(page)).toHaveText(asked);
  await page.reload();
  await expect(order(page)).toHaveText(asked);
  await looked(page, 'changed');
  await changed.getByRole('button', { name: 'Start anew' }).click();
  await expect(page.getByRole('button', { name: 'Practise without hardware' })).toBeVisible();
  await page.getByRole('button', { name: 'Practise without hardware' }).click();
  await expect(order(page)).toContainText('clockwise');
  await expect(changed).toHaveCount(0);
});

test('axe, both themes, and 360 px, at every kind of step', async ({ opened: page, station }) => {
  test.setTimeout(300_000);
  await page.setViewportSize({ width: 360, height: 740 });
  const checked = async (name: string): Promise<void> => {
    for (const theme of ['light', 'dark'] as const) {
      await page.getByRole('radio', { name: theme, exact: true }).check();
      await allKept(page);
      expect(await complaints(page), `${name} ${theme}`).toEqual([]);
    }
    await expectNoWider(page, name);
    await looked(page, name);
  };
  await page.goto(`${station.address}${examplePath}/steer`);
  await expect(page.getByText('The walk will begin at')).toBeVisible();
  await checked('begin');
  await page.getByRole('textbox', { name: 'seed of the practice bench' }).fill('5');
  await page.getByRole('button', { name: 'Practise without hardware' }).click();
  await expect(order(page)).toContainText('clockwise');
  await checked('sense');
  for (let i = 0; i < 4; i++) await goOn(page, () => hand(page).click());
  await checked('offsets');
  await goOn(page, () => hand(page).click());
  await checked('turn');
  for (let i = 0; i < 40 && !(await order(page).textContent())?.includes('unplug it'); i++)
    await goOn(page, () => hand(page).click());
  await checked('light');
  await goOn(page, () => page.getByRole('button', { name: 'Nothing', exact: true }).click());
  await goOn(page, () => page.getByRole('button', { name: 'Turn it', exact: true }).click());
  await goOn(page, () => page.getByRole('button', { name: 'Nothing on this line' }).click());
  await expect(page.getByText('The search, line by line: line 2 of')).toBeVisible();
  await checked('search');
  await goOn(page, () => page.getByRole('button', { name: 'There is light' }).click());
  await checked('done');
});

/** Leaves pictures to look at where they are asked for. */
async function looked(page: Page, name: string): Promise<void> {
  const folder = process.env.COREWARD_LOOKS;
  if (folder === undefined) return;
  for (const width of [360, 1280]) {
    await page.setViewportSize({ width, height: 740 });
    await page.screenshot({ path: `${folder}/steer-${name}-${width}.png`, fullPage: true });
  }
  await page.setViewportSize({ width: 360, height: 740 });
}

/// <reference lib="dom" />
import type { Locator, Page } from '@playwright/test';
import { complaints } from './axe.ts';
import { drawsLate, examplePath, expect, test, worksLate } from './bench-test.ts';
import { cameraArguments, darkScene, spotScene, writeFilm } from './camera-film.ts';

/*
 * The camera is Chromium's own fake one, which plays a film that each test draws. No exposure can be set on it: what asks
 * for that is tried in packages/web/src/camera/settings-held.test.ts.
 */
test.use({
  permissions: ['camera'],
  launchOptions: async ({ launchOptions }, use) =>
    use({ ...launchOptions, args: [...(launchOptions.args ?? []), ...cameraArguments] }),
});

// a film, a page and a worker share two cores with the station
test.describe.configure({ timeout: 300_000 });

const answer = (page: Page, name: string): Locator =>
  page.locator('.answers li').filter({ has: page.getByRole('heading', { name, exact: true }) });

/** Nothing is cut off at 360 and 1280 px, and axe has nothing to say in both themes. */
async function looksWell(page: Page, name: string): Promise<void> {
  for (const width of [1280, 360]) {
    await page.setViewportSize({ width, height: 800 });
    await expect
      .poll(() => page.evaluate(() => document.documentElement.scrollWidth))
      .toBeLessThanOrEqual(width);
    for (const theme of ['light', 'dark'] as const) {
      await page.evaluate((chosen) => {
        document.documentElement.dataset.theme = chosen;
      }, theme);
      expect(await complaints(page)).toEqual([]);
      const folder = process.env.COREWARD_SHOTS;
      if (folder !== undefined)
        await page.screenshot({ path: `${folder}/${name}-${width}-${theme}.png`, fullPage: true });
    }
  }
  await page.setViewportSize({ width: 1280, height: 800 });
}

/** The camera's picture is there and moves. */
async function openCamera(within: Locator | Page): Promise<void> {
  await within.getByRole('button', { name: 'Open the camera' }).click();
  await expect(within.locator('.camera-over')).toBeVisible();
}

test('a gauge takes its picture from the camera: a drawn spot is as wide as it was drawn', async ({
  opened: page,
  station,
}) => {
  writeFilm([spotScene(0.7, 24, 320, 240)]);
  await page.goto(`${station.address}/gauge/spot-picture`);
  // what is typed before the page has drawn the picture takes nothing away
  await drawsLate(page);
  await page.getByText('Take it with the camera', { exact: true }).click();
  await openCamera(page);
  await page.getByRole('button', { name: 'Take the picture' }).click();
  const pixel = page.getByRole('textbox', { name: 'pixel', exact: true });
  await pixel.pressSequentially('10.000 µm', { delay: 100 });
  // 4 deviations of 24 pixels of 10 µm; the film has 219 steps of code: within a per cent
  await expect(answer(page, 'second-moment diameter (4σ)').locator('strong')).toHaveText(/^0\.9[567]\d* mm/u);
  await expect(page.getByRole('combobox', { name: 'encoding' })).toHaveValue('srgb');
  await looksWell(page, 'gauge');
});

test('the offset of two beams on a card is read from two pictures of the camera, one beam blocked at a time', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/card-offset`);
  await expect(page.getByText('Both pictures are needed')).toBeVisible();
  await page.getByText('Take it with the camera', { exact: true }).click();
  await page.getByRole('textbox', { name: 'scale' }).fill('12.5 px/mm');
  // the forward spot 12.5 px to the right and 25 px below the reverse one
  writeFilm([spotScene(0.6, 14, 312.5, 265)]);
  await openCamera(page);
  await page.getByRole('button', { name: 'Take the forward beam alone' }).click();
  await expect(page.getByText('Picture: camera-1.png')).toBeVisible();
  await page.getByRole('button', { name: 'Close the camera' }).click();
  writeFilm([spotScene(0.5, 16, 300, 240)]);
  await openCamera(page);
  await page.getByRole('button', { name: 'Take the reverse beam alone' }).click();
  await expect(answer(page, 'horizontal offset, right positive').locator('strong')).toHaveText(
    /^1(?:\.0\d*)? mm/u,
  );
  await expect(answer(page, 'vertical offset, up positive').locator('strong')).toHaveText(
    /^[-−]2(?:\.0\d*)? mm/u,
  );
  await looksWell(page, 'card-offset');
});

/** The newest reading of the meter on the page. */
const reading = (page: Page): Locator => page.locator('.camera-reading strong');
const numberOf = async (page: Page): Promise<number> =>
  Number((await reading(page).textContent())?.replaceAll(' ', ''));

/** Another film for a camera that is open. */
async function play(page: Page, ...scenes: Parameters<typeof writeFilm>): Promise<void> {
  await page.getByRole('button', { name: 'Close the camera' }).click();
  writeFilm(...scenes);
  await openCamera(page);
}

async function addCamera(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/instruments`);
  await page.getByRole('radio', { name: /^camera/u }).check();
  await page.getByRole('button', { name: 'Add and switch on' }).click();
  await expect(page.getByRole('button', { name: 'Open the camera' })).toBeVisible();
}

test('the camera as a meter follows a known power, refuses full pixels and notices a covered lens', async ({
  opened: page,
  station,
}) => {
  await addCamera(page, station.address);
  const deviation = 15;
  const at = (peak: number) => spotScene(peak, deviation, 250, 210);
  // all of a Gaussian's light in full pixels: 2π·deviation²·peak
  const power = (peak: number): number => 2 * Math.PI * deviation ** 2 * peak;
  writeFilm([at(0.8)]);
  await openCamera(page);
  await expect(reading(page)).toBeVisible();
  await expect(
    page.getByRole('application', { name: /^Region of the picture: \d+ by \d+ pixels/u }),
  ).toBeVisible();
  // to half a per cent: the film has 219 steps of code, and skirts below the first are lost
  await expect.poll(async () => (await numberOf(page)) / power(0.8)).toBeCloseTo(1, 2);
  await expect(page.getByText('take the dark frame with the beam blocked')).toBeVisible();

  await play(page, [darkScene]);
  await expect(page.getByText('No light is seen yet')).toBeVisible();
  await page.getByRole('button', { name: 'Take the dark frame' }).click();
  await expect(page.getByText('The dark frame is taken off.')).toBeVisible();
  await expect(page.getByText('No light in the region')).toBeVisible();

  for (const peak of [0.4, 0.1]) {
    await play(page, [at(peak)]);
    await expect(page.getByText('No light in the region')).toHaveCount(0);
    await expect.poll(async () => (await numberOf(page)) / power(peak)).toBeCloseTo(1, 2);
  }
  await looksWell(page, 'meter');

  // a region that is drawn while a picture of the one before is being looked at counts all the same
  await worksLate(page, 300);
  const picture = (await page.locator('.camera-over').boundingBox())!;
  await page.mouse.move(picture.x, picture.y);
  await page.mouse.down();
  await page.mouse.move(picture.x + picture.width, picture.y + picture.height, { steps: 3 });
  await page.mouse.up();
  await page.waitForTimeout(1000);
  await expect(
    page.getByRole('application', { name: 'Region of the picture: 640 by 480 pixels' }),
  ).toBeVisible();
  await play(page, [at(1.5)]);
  await expect(page.getByText(/full: what lies above is cut off/u)).toBeVisible();
  await expect(page.getByText('Shorten the exposure or dim the light')).toBeVisible();
  await expect(reading(page)).toHaveCount(0);
});

/** A real steer of the example, its screws learned: which way the spot went for each. */
async function steerToOffsets(page: Page, address: string): Promise<void> {
  await page.goto(`${address}${examplePath}/steer`);
  for (const which of ['first', 'last'] as const) {
    const box = page.getByRole('checkbox', { name: 'I have read this' })[which]();
    await box.click();
    if (which === 'first') await expect(box).toBeChecked();
  }
  await page.getByRole('button', { name: 'Begin at the bench' }).click();
  for (const [rank, way] of ['right', 'up', 'right', 'up'].entries()) {
    await page.getByRole('button', { name: way, exact: true }).click();
    await expect(page.locator('.steer-moves li')).toHaveCount(rank + 1);
  }
  await page.getByRole('button', { name: 'by camera' }).click();
}

/** Where a camera 200 mm before a card and 20° aslant of it sees a place of the card, mm to the right and up; pinhole, by hand. */
function seenAslant(right: number, up: number): readonly [number, number] {
  const tilt = (20 * Math.PI) / 180;
  const depth = 200 + right * Math.sin(tilt);
  return [320 + (2000 * right * Math.cos(tilt)) / depth, 240 - (2000 * up) / depth];
}

/** Drags a mark to a place of the picture, pixel centres at whole numbers. */
async function dragMark(page: Page, rank: number, [x, y]: readonly [number, number]): Promise<void> {
  const picture = page.locator('.camera-over');
  await picture.evaluate((element) => element.scrollIntoView({ block: 'center' }));
  const over = await picture.boundingBox();
  const mark = await page
    .getByRole('button', { name: `Mark ${rank + 1} at` })
    .locator('circle')
    .boundingBox();
  if (over === null || mark === null) throw new Error('no mark');
  await page.mouse.move(mark.x + mark.width / 2, mark.y + mark.height / 2);
  await page.mouse.down();
  await page.mouse.move(over.x + (over.width * (x + 0.5)) / 640, over.y + (over.height * (y + 0.5)) / 480, {
    steps: 3,
  });
  await page.mouse.up();
}

/** Pixels a millimetre on the card that is looked at squarely. */
const perMillimetre = 10;

test('a steer takes its offsets from the camera: live, with doubt, which screw and which way, and two cards’ answer', async ({
  opened: page,
  station,
}) => {
  await steerToOffsets(page, station.address);
  const card = page.getByRole('region', { name: 'Card before the lens' });
  // on the near card the reverse spot stays; the laser’s lies 3.2 mm right of it and 1.5 mm above
  const reverse = { x: 300, y: 260 };
  writeFilm([spotScene(0.5, 16, reverse.x, reverse.y)]);
  await openCamera(page);
  // the marks begin at a fifth and four fifths of the picture: 384 pixels apart
  await expect(page.getByRole('button', { name: 'Mark 1 at 128, 408' })).toBeVisible();
  await card.getByRole('button', { name: 'Keep the reverse spot' }).click();
  // typed while the pictures are taken: the spot that comes of them takes it not away
  await card.getByRole('textbox').fill('38.4 mm');
  await expect(card.getByText('Kept, the mean of 12 pictures.')).toBeVisible();
  await play(page, [spotScene(0.6, 14, reverse.x + 3.2 * perMillimetre, reverse.y - 1.5 * perMillimetre)]);
  const live = card.getByRole('list', { name: 'the offset now' }).getByRole('listitem');
  // within 0.1 mm of what was drawn
  await expect(live.first()).toHaveText(
    /^3\.[12]\d* mm ± 0\.\d+ mm to the right\. M1, horizontal screw, back/u,
  );
  await expect(live.last()).toHaveText(
    /^1\.[45]\d* mm ± 0\.\d+ mm above\. M1, vertical screw, back.*spot goes down/u,
  );
  await card.getByRole('button', { name: 'Take this offset' }).click();
  await expect(
    card.getByText(/^Read: from the reverse spot the laser’s lies 3\.[12]\d* mm ± /u),
  ).toBeVisible();
  await looksWell(page, 'steer-near');

  await page.getByRole('button', { name: 'Card behind M1' }).click();
  const far = page.getByRole('region', { name: 'Card behind M1' });
  // seen from aslant, to be put right by the corners of a rectangle of 40 mm by 30 mm on the card
  await far.getByRole('radio', { name: 'four corners' }).check();
  await far.getByRole('textbox').fill('40 mm x 30 mm');
  for (const [rank, [right, up]] of [
    [-20, 15],
    [20, 15],
    [20, -15],
    [-20, -15],
  ].entries())
    await dragMark(page, rank, seenAslant(right ?? 0, up ?? 0));
  const at = (right: number, up: number, peak: number) => {
    const [x, y] = seenAslant(right, up);
    return spotScene(peak, 14, x, y);
  };
  await play(page, [at(6, -2, 0.5)]);
  await expect(far.getByText('Block the reverse light. Only the laser’s spot')).toBeVisible();
  await far.getByRole('button', { name: 'Keep the laser’s spot' }).click();
  await expect(far.getByText('Kept, the mean of 12 pictures.')).toBeVisible();
  // there the reverse spot moves, to meet the laser’s
  await play(page, [at(-3, -1, 0.55)]);
  await expect(far.getByRole('listitem').filter({ hasText: 'mm to the right' })).toContainText(
    /M2, horizontal screw, the way you learned as \+: the reverse spot goes right/u,
  );
  await far.getByRole('button', { name: 'Take this offset' }).click();
  await expect(far.getByText(/^Read:.* 9\.0\d* mm ± .* to the right/u)).toBeVisible();
  await looksWell(page, 'steer-far');
  await page.getByRole('button', { name: 'Enter both offsets' }).click();
  const said = page.locator('.steer-moves li').last();
  await expect(said).toContainText('by camera to ±');
  const words = (await said.textContent()) ?? '';
  const [nearX, nearY, farX, farY] = [...words.matchAll(/([−-]?[\d.]+) mm (?:right|up)/gu)].map(([, one]) =>
    Number(one?.replace('−', '-')),
  );
  for (const [read, drawn] of [
    [nearX, 3.2],
    [nearY, 1.5],
    [farX, 9],
    [farY, -1],
  ] as const)
    expect(Math.abs((read ?? Number.NaN) - drawn)).toBeLessThan(0.1);
});

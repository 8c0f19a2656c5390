import type { Page } from '@playwright/test';
import { allKept, drawsLate, examplePath, expect, test } from './bench-test.ts';
import type { StationUnderTest } from './station-under-test.ts';

async function openExample(page: Page, station: StationUnderTest): Promise<void> {
  await page.goto(`${station.address}${examplePath}`);
  await expect(page.locator('.answer')).toHaveAttribute('aria-busy', 'false');
}

const part = (page: Page, name: string) =>
  page.getByRole('list', { name: 'Parts in the order of the light' }).getByRole('button', { name });
const answer = (page: Page) => page.locator('.answer strong');
const tag = (page: Page) => page.locator('#tag');

test('the example is drawn with the power at each part, its range and its ledger', async ({
  page,
  station,
}) => {
  await openExample(page, station);
  await expect(part(page, 'green module')).toContainText('11.5 mW');
  await expect(page.locator('.answer')).toContainText(/to\s.*\smW, nine times in ten/u);
  await expect(page.getByRole('table')).toContainText('attenuation');
  await expect(page.getByRole('heading', { name: 'Cautions' })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'What to measure next' })).toBeVisible();
});

test('a focal length that is typed moves the light, is kept, and is undone', async ({ page, station }) => {
  await openExample(page, station);
  const before = await answer(page).textContent();
  await part(page, 'red one').click();
  const field = tag(page).getByRole('textbox', { name: 'focal length', exact: true });
  await field.fill('9 mm');
  await field.press('Enter');
  await expect(answer(page)).not.toHaveText(before ?? '');
  await allKept(page);
  await page.getByRole('button', { name: /undo/iu }).click();
  await expect(answer(page)).toHaveText(before ?? '');
  await expect(field).toHaveValue('6.2 mm');
});

test('what cannot be read stays as typed, and its mend is one press away', async ({ page, station }) => {
  await openExample(page, station);
  const before = await answer(page).textContent();
  await part(page, 'red one').click();
  const field = tag(page).getByRole('textbox', { name: 'focal length', exact: true });
  await field.fill('9');
  await field.press('Enter');
  await expect(tag(page).getByRole('alert')).toContainText('has no unit');
  await expect(field).toHaveValue('9');
  await expect(answer(page)).toHaveText(before ?? '');
  await tag(page).getByRole('alert').getByRole('button', { name: '9 mm' }).click();
  await expect(tag(page).getByRole('alert')).toHaveCount(0);
  await expect(field).toHaveValue('9 mm');
  await expect(answer(page)).not.toHaveText(before ?? '');
});

test('a dragged focal length takes the light with it, and is one change when it is let go', async ({
  page,
  station,
}) => {
  await openExample(page, station);
  await part(page, 'red one').click();
  const wheel = tag(page).getByRole('slider', { name: 'turn focal length' });
  await wheel.scrollIntoViewIfNeeded();
  const box = (await wheel.boundingBox())!;
  const before = await answer(page).textContent();
  await page.mouse.move(box.x + 40, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 240, box.y + box.height / 2, { steps: 10 });
  await expect(wheel).not.toHaveAttribute('aria-valuetext', '6.2 mm');
  await expect(answer(page)).not.toHaveText(before ?? '');
  await page.mouse.up();
  // 200 px of a quarter per cent each: 6.2 mm times e^0.4994
  await expect(tag(page).getByRole('textbox', { name: 'focal length', exact: true })).toHaveValue('10.2 mm');
  await allKept(page);
  await page.getByRole('button', { name: /undo/iu }).click();
  await expect(wheel).toHaveAttribute('aria-valuetext', '6.2 mm');
  // a flick that is over before it was drawn: 40 px are 6.2 mm times e^0.0999
  await drawsLate(page);
  await page.mouse.move(box.x + 40, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + 80, box.y + box.height / 2);
  await page.mouse.up();
  await expect(wheel).toHaveAttribute('aria-valuetext', '6.85 mm');
});

test('the keyboard alone walks the parts, opens one and turns its wheel', async ({ page, station }) => {
  await openExample(page, station);
  await part(page, 'green module').focus();
  for (let i = 0; i < 3; i += 1) await page.keyboard.press('ArrowRight');
  await expect(part(page, 'red one')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(tag(page).getByRole('heading', { level: 2 })).toBeFocused();
  const wheel = tag(page).getByRole('slider', { name: 'turn focal length' });
  await wheel.focus();
  await page.keyboard.press('PageUp');
  await expect(wheel).toHaveAttribute('aria-valuetext', '6.82 mm');
  await expect(tag(page).getByRole('textbox', { name: 'focal length', exact: true })).toHaveValue('6.82 mm');
  // whoever closes the tag at once has turned it all the same
  await page.keyboard.press('PageDown');
  await tag(page).getByRole('button', { name: 'close' }).press('Enter');
  await expect(part(page, 'red one')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(wheel).toHaveAttribute('aria-valuetext', '6.2 mm');
  await page.keyboard.press('Escape');
  await expect(part(page, 'red one')).toBeFocused();
});

test('another fibre is swapped in from the drawer', async ({ page, station }) => {
  await openExample(page, station);
  await part(page, 'loft line').click();
  await tag(page)
    .getByRole('combobox', { name: 'swap in from the drawer' })
    .selectOption('yellow patch lead');
  await expect(part(page, 'yellow patch lead')).toBeVisible();
  await allKept(page);
});

test('a launch of five lines is given its mirrors at the laser’s tag, and can be steered then', async ({
  opened: page,
}) => {
  await page.getByRole('link', { name: 'Begin a launch' }).click();
  const lines = [
    ['name', 'red to the bench'],
    ['wavelength', '650 nm'],
    ['power of the laser', '4 mW'],
    ['beam diameter', '2.5 mm'],
    ['seen at, from the laser', '400 mm'],
    ['focal length of the lens', '11 mm'],
  ] as const;
  for (const [line, value] of lines) await page.getByLabel(line, { exact: true }).fill(value);
  await page.getByLabel('type of the fibre').selectOption('G.652.D');
  await page.getByRole('button', { name: 'Draw its light' }).click();
  await page.getByRole('link', { name: 'walk', exact: true }).click();
  await expect(page.getByText('steering and walking take two mirrors with screws')).toBeVisible();
  await page.getByRole('link', { name: 'To the launch' }).click();
  await part(page, 'laser').click();
  await tag(page).getByRole('button', { name: 'Lay in the way of your drawer' }).click();
  await expect(part(page, 'M2')).toBeVisible();
  await tag(page).getByRole('button', { name: 'add filter' }).click();
  await expect(part(page, 'F1')).toBeVisible();
  await page.getByRole('link', { name: /^steer/u }).click();
  await expect(page.getByRole('button', { name: 'Begin at the bench' })).toBeVisible();
});

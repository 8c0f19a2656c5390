/// <reference lib="dom" />
import { allKept, asksLate, examplePath, expect, test, unfold } from './bench-test.ts';

const pages = [
  { path: '/', title: 'Launches' },
  { path: examplePath, title: 'green guide light to the observing loft' },
  { path: `${examplePath}/versions`, title: 'Versions of “green guide light to the observing loft”' },
  { path: '/launch/new', title: 'A new launch' },
  { path: '/drawer', title: 'The drawer' },
  { path: '/match', title: 'What goes with what' },
  { path: '/book', title: 'The bench book' },
  { path: '/pair', title: 'Other devices' },
] as const;

test('every address can be opened, reloaded and walked back to', async ({ opened: page, station }) => {
  for (const { path, title } of pages) {
    await page.goto(`${station.address}${path}`);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText(title);
    await expect(page).toHaveTitle(`${title} · Coreward`);
  }
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Other devices');
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await expect(page).toHaveURL(/\/drawer$/u);
  // whoever goes to another page is put at its title
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  await page.goBack();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Other devices');
  await expect(page.getByRole('link', { name: 'devices', exact: true })).toHaveAttribute(
    'aria-current',
    'page',
  );
});

test('an address that leads nowhere says so and shows the way', async ({ opened: page, station }) => {
  await page.goto(`${station.address}/drawer/of/somebody`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no such page');
  await page.goto(`${station.address}/launch/00000000-0000-4000-8000-000000000000`);
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('There is no such launch');
  await page.getByRole('link', { name: 'To the launches' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Launches');
});

test('the first start shows what this is, our example, and an empty bench', async ({ opened: page }) => {
  await expect(page.getByRole('list', { name: 'What this is' }).getByRole('listitem')).toHaveCount(5);
  await expect(page.getByText(/certifies nothing/u).first()).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Your own bench' })).toBeVisible();
  await expect(page.getByText('our invention', { exact: true })).toBeVisible();
  await page.getByRole('link', { name: 'green guide light to the observing loft' }).click();
  await expect(page.getByText('Our invention: an example, nobody’s bench.')).toBeVisible();
});

test('five lines make a launch; what is missing or wrong is said in its place', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'Begin a launch' }).click();
  await page.getByRole('button', { name: 'Draw its light' }).click();
  await expect(page.getByRole('alert')).toHaveText(
    'Still needed: wavelength, power of the laser, beam diameter, seen at, from the laser, focal length of the lens, type of the fibre.',
  );
  const fill = (name: string, value: string) => page.getByRole('textbox', { name, exact: true }).fill(value);
  await fill('name', 'my first');
  await fill('wavelength', '638');
  await fill('power of the laser', '4 mW');
  await fill('beam diameter', '1.4 mm');
  await fill('seen at, from the laser', '250 mm');
  await fill('focal length of the lens', '9 mm');
  await page.getByRole('combobox', { name: 'type of the fibre' }).selectOption('OM2');
  await expect(page.getByRole('alert').filter({ hasText: 'has no unit' })).toBeVisible();
  await page.locator('.mend').first().click();
  await expect(page.getByRole('textbox', { name: 'wavelength', exact: true })).toHaveValue('638 nm');
  await page.getByRole('button', { name: 'Draw its light' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('my first');
  await allKept(page);
  await page.getByRole('link', { name: 'launches', exact: true }).click();
  await expect(page.getByRole('heading', { name: 'Your launches' })).toBeVisible();
  await page.getByRole('button', { name: 'Put away: my first' }).click();
  await page.getByText('1 launch put away').click();
  await page.getByRole('button', { name: 'Bring back: my first' }).click();
  await expect(page.getByRole('link', { name: 'my first' })).toBeVisible();
});

test('earlier versions are told apart, and any of them is brought back', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}`);
  for (const name of ['second name', 'third name']) {
    await page.getByRole('button', { name: 'Rename' }).click();
    const field = page.getByRole('textbox', { name: 'name of the launch' });
    await field.fill(name);
    await field.press('Enter');
    await allKept(page);
  }
  await page.getByRole('link', { name: 'earlier versions' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(3);
  await expect(page.getByText('name: second name to third name')).toBeVisible();
  await page.getByRole('button', { name: 'Bring version 1 back' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(4);
  await page.getByRole('link', { name: 'To the launch', exact: true }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('green guide light to the observing loft');
});

test('the bench book tells what was done, takes a note and prints', async ({ opened: page, station }) => {
  await page.goto(`${station.address}${examplePath}`);
  await page.getByRole('button', { name: 'Rename' }).click();
  const field = page.getByRole('textbox', { name: 'name of the launch' });
  await field.fill('told in the book');
  await field.press('Enter');
  await allKept(page);
  await page.getByRole('link', { name: 'bench book', exact: true }).click();
  await expect(
    page.getByText('name: green guide light to the observing loft to told in the book'),
  ).toBeVisible();
  const note = page.getByRole('textbox', { name: 'note for the bench book' });
  // the next one is begun while the first is on its way
  await asksLate(page, 'POST', '**/api/entries', () => note.fill('and the'));
  await note.fill('cleaned both facets');
  await page.getByRole('button', { name: 'Enter it' }).click();
  await expect(page.getByText('Entered.')).toBeVisible();
  await expect(note).toHaveValue('and the');
  await page.unroute('**/api/entries');
  await expect(page.getByText('cleaned both facets')).toBeVisible();
  await page.getByRole('button', { name: 'Withdraw: cleaned both facets' }).click();
  await expect(page.getByText('withdrawn', { exact: true })).toBeVisible();
  // on paper there is nothing to press, and the ink is dark
  await page.emulateMedia({ media: 'print' });
  await expect(page.getByRole('navigation')).toBeHidden();
  await expect(page.getByText('cleaned both facets')).toBeVisible();
  expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).color)).toBe('rgb(0, 0, 0)');
});

test('everything is reached by keyboard alone', async ({ opened: page }) => {
  const tabTo = async (name: string | RegExp, role: 'link' | 'button' | 'textbox'): Promise<void> => {
    const target = page.getByRole(role, { name, exact: true });
    for (let steps = 0; steps < 60; steps += 1) {
      if (
        (await target.count()) > 0 &&
        (await target.first().evaluate((one) => one === document.activeElement))
      )
        return;
      await page.keyboard.press('Tab');
    }
    throw new Error(`${name} is not reached`);
  };
  await page.keyboard.press('Tab');
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeFocused();
  await expect(page.getByRole('link', { name: 'Skip to the page' })).toBeInViewport();
  await tabTo('drawer', 'link');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'The drawer' })).toBeFocused();
  await tabTo(/^red alignment laser/u, 'button');
  await page.keyboard.press('Enter');
  await tabTo('power', 'textbox');
  await page.keyboard.press('ArrowUp');
  await expect(page.getByRole('textbox', { name: 'power', exact: true })).toHaveValue('0.9 mW');
  await page.keyboard.press('Shift+ArrowDown');
  await expect(page.getByRole('textbox', { name: 'power', exact: true })).toHaveValue('-0.1 mW');
  await expect(page.getByRole('alert')).toBeVisible();
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await expect(page.getByRole('textbox', { name: 'power', exact: true })).toHaveValue('0.1 mW');
  await tabTo(/^Undo: red alignment laser/u, 'button');
  await page.keyboard.press('Enter');
  await allKept(page);
});

test('the theme is dark, light or the device’s, and is remembered', async ({ opened: page }) => {
  const theme = page.locator('html');
  await expect(theme).toHaveAttribute('data-theme', 'dark');
  await page.getByRole('radio', { name: 'light', exact: true }).check();
  await expect(theme).toHaveAttribute('data-theme', 'light');
  await allKept(page);
  await page.reload();
  await expect(theme).toHaveAttribute('data-theme', 'light');
  await page.getByRole('radio', { name: 'as this device is set' }).check();
  await page.emulateMedia({ colorScheme: 'dark' });
  await expect(theme).toHaveAttribute('data-theme', 'dark');
  await page.emulateMedia({ colorScheme: 'light' });
  await expect(theme).toHaveAttribute('data-theme', 'light');
  await page.getByRole('button', { name: /^Undo: colours as this device is set/u }).click();
  await expect(page.getByRole('radio', { name: 'light', exact: true })).toBeChecked();
});

test('a device is told how to be let in', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'devices', exact: true }).click();
  await expect(page.getByText('coreward station --lan')).toBeVisible();
  await expect(page.getByText('None besides this computer.')).toBeVisible();
});

test('a part that is unfolded is part of the address', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'loft line');
  await expect(page).toHaveURL(/\/drawer#[0-9a-f-]{36}$/u);
  await page.reload();
  await expect(page.getByRole('button', { name: /^loft line/u })).toHaveAttribute('aria-expanded', 'true');
});

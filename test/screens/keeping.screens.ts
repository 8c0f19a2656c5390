import type { Page } from '@playwright/test';
import { allKept, examplePath, expect, stationGone, test, unfold } from './bench-test.ts';

/** Opens the drawer and gives the long lens a focal length. */
async function longOne(page: Page, value?: string): Promise<void> {
  if (value === undefined) return;
  const focal = page.getByRole('textbox', { name: 'focal length', exact: true });
  await focal.fill(value);
  await focal.press('Enter');
}

const focalOf = (page: Page) => page.getByRole('textbox', { name: 'focal length', exact: true });

test('every change is undone and redone, by words and by keys', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  await longOne(page, '12 mm');
  await longOne(page, '13 mm');
  await page.getByRole('button', { name: /^Undo: long one, 11 mm: focal length 12 mm to 13 mm/u }).click();
  await expect(focalOf(page)).toHaveValue('12 mm');
  // a text field undoes its own letters: the keys of the page work outside of them
  await page.getByRole('heading', { level: 1 }).click();
  await page.keyboard.press('Control+z');
  await expect(focalOf(page)).toHaveValue('11 mm');
  await page.keyboard.press('Control+Shift+z');
  await expect(focalOf(page)).toHaveValue('12 mm');
  // steps outlive a reload
  await allKept(page);
  await page.reload();
  await page.getByRole('button', { name: /^Redo: long one, 11 mm: focal length 12 mm to 13 mm/u }).click();
  await expect(focalOf(page)).toHaveValue('13 mm');
  // undone on another page, it shows where it was done
  await page.getByRole('link', { name: 'launches', exact: true }).click();
  await page.getByRole('button', { name: /^Undo/u }).click();
  await expect(page).toHaveURL(/\/drawer/u);
});

test('two pages stay in step, and each says what the other did', async ({
  opened: page,
  context,
  station,
}) => {
  const other = await context.newPage();
  await page.goto(`${station.address}/drawer`);
  await other.goto(`${station.address}/drawer`);
  await unfold(page, 'long one');
  await unfold(other, 'long one');
  await longOne(page, '12.5 mm');
  await expect(focalOf(other)).toHaveValue('12.5 mm');
  await expect(other.getByRole('status').first()).toContainText(
    '“long one, 11 mm” was changed on another page',
  );
  await longOne(other, '12.6 mm');
  await expect(focalOf(page)).toHaveValue('12.6 mm');
});

test('the station is killed under an edit, and nothing is lost', async ({
  opened: page,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  await longOne(page, '12 mm');
  await allKept(page);
  await station.kill();
  await longOne(page, '12.1 mm');
  await longOne(page, '12.2 mm');
  await expect(page.getByRole('status').first()).toContainText('The station does not answer');
  await expect(page.locator('.kept')).toHaveText('2 changes wait');
  // half typed, not entered
  await focalOf(page).fill('12.3 m');
  await station.start();
  await allKept(page);
  await expect(page.getByText('The station does not answer')).toHaveCount(0);
  await expect(focalOf(page)).toHaveValue('12.3 m');
  await focalOf(page).press('Escape');
  await page.reload();
  await expect(focalOf(page)).toHaveValue('12.2 mm');
});

test('a page that is closed while the station is away sends what waits when it comes back', async ({
  opened: page,
  context,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  await station.kill();
  await longOne(page, '14 mm');
  await expect(page.locator('.kept')).toHaveText('1 change waits');
  await page.close();
  await station.start();
  const next = await context.newPage();
  await next.goto(`${station.address}/drawer`);
  await unfold(next, 'long one');
  await expect(focalOf(next)).toHaveValue('14 mm');
  await allKept(next);
});

test('one launch changed on two pages at once: both are shown, and one goes on', async ({
  opened: page,
  context,
  station,
  mayComplain,
}) => {
  // the refusal of the second write is an answer the browser reports, too
  mayComplain.push(stationGone, /status of 409/u);
  await page.goto(`${station.address}${examplePath}`);
  const rename = async (on: Page, name: string): Promise<void> => {
    await on.getByRole('button', { name: 'Rename' }).click();
    const field = on.getByRole('textbox', { name: 'name of the launch' });
    await field.fill(name);
    await field.press('Enter');
  };
  await page.getByRole('button', { name: 'Rename' }).waitFor();
  await context.setOffline(true);
  await rename(page, 'named here');
  await expect(page.locator('.kept')).not.toHaveText('Kept');
  // somebody else, who is not offline
  const elsewhere = await context.browser()?.newContext();
  if (elsewhere === undefined) throw new Error('no browser');
  const other = await elsewhere.newPage();
  await other.goto(`${station.address}${examplePath}`);
  await rename(other, 'named there');
  await allKept(other);
  await elsewhere.close();
  await context.setOffline(false);
  const clash = page.getByRole('alert');
  await expect(clash).toContainText('was changed on two pages at once');
  await expect(clash.getByRole('row', { name: 'name named here named there' })).toBeVisible();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('named here');
  await clash.getByRole('button', { name: 'Go on with the other' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('named there');
  // what was given up is one step back
  await page.getByRole('button', { name: /^Undo/u }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('named here');
  await allKept(page);
});

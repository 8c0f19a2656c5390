import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { type FakeSerial, fakeSerial } from '../../packages/station/src/instruments/fake-device.ts';
import { expect } from './bench-test.ts';

/** An instrument in use, by its name. */
export const row = (page: Page, name: string) =>
  page
    .getByRole('list', { name: 'Instruments in use' })
    .getByRole('button', { name: new RegExp(`^${name}`, 'u') });
/** What unfolds of the one chosen. */
export const tag = (page: Page) => page.locator('.instrument-tag');
/** Its newest reading. */
export const large = (page: Page) => page.locator('.reading-now');
/** Presses a button of exactly this name. */
export const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

/** The page with its form. */
export async function openPage(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/instruments`);
  await expect(page.getByRole('heading', { level: 2, name: 'Add an instrument' })).toBeVisible();
}

/** Takes a kind of instrument. */
export async function choose(page: Page, kind: string): Promise<void> {
  await page.getByRole('radio', { name: new RegExp(`^${kind}`, 'u') }).check();
}

/** Adds what the form has. */
export const add = (page: Page) => press(page, 'Add and switch on');

/** A port of this machine's own, for one test at a time. */
export const portPath = join('/dev/shm', `coreward-screens-${process.pid}`);

/** A device that says a number every 50 ms until it is unplugged. */
export async function talking(
  line: (count: number) => string,
): Promise<FakeSerial & { readonly end: () => Promise<void> }> {
  const device = await fakeSerial(portPath);
  let count = 0;
  const timer = setInterval(() => {
    count += 1;
    device.say(line(count));
  }, 50);
  return {
    ...device,
    end: async () => {
      clearInterval(timer);
      await device.unplug();
    },
  };
}

/** Adds the device at `portPath`, its form recognised from what it says. */
export async function addSerial(page: Page): Promise<void> {
  await choose(page, 'serial line');
  const port = page.getByRole('combobox', { name: 'port', exact: true });
  await port.selectOption({ label: 'another, by its name' });
  await page.getByRole('textbox', { name: 'name of the port' }).fill(portPath);
  await press(page, 'Listen for a moment');
  await expect(page.getByText(/lines were heard/u)).toBeVisible();
  await expect(page.getByRole('table', { name: 'The last lines it said' })).not.toContainText('passed over');
  await add(page);
  await expect(tag(page)).toBeVisible();
}

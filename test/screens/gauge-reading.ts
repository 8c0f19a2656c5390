/// <reference lib="dom" />
import type { Locator, Page } from '@playwright/test';
import { encode } from 'fast-png';

/** Power past an edge at half a radius a step, in per cent: tables of Φ at 0, 1, 2 and 3 deviations (from memory). */
export const past = ['0.13', '2.28', '15.87', '50', '84.13', '97.72', '99.87'] as const;
/** Steps of 0.25 mm are one deviation: the 1/e² radius, two of them, is 0.5 mm. */
export const radius = /^0\.(?:49|50)\d* mm/u;

export const answer = (page: Page, name: string): Locator =>
  page.locator('.answers li').filter({ has: page.getByRole('heading', { name, exact: true }) });

export async function openGauge(page: Page, name: string): Promise<void> {
  await page.getByRole('link', { name: 'gauges', exact: true }).click();
  await page.getByRole('link', { name, exact: false }).first().click();
}

/** What a spreadsheet lays on the clipboard, brought to an element as a browser brings it. */
export async function paste(target: Locator, text: string): Promise<void> {
  await target.focus();
  await target.evaluate((element, pasted) => {
    const data = new DataTransfer();
    data.setData('text/plain', pasted);
    element.dispatchEvent(
      new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }, text);
}

export const asFile = (name: string, text: string) => ({
  name,
  mimeType: 'text/csv',
  buffer: Buffer.from(text),
});

/** A Gaussian spot of 4σ widths 40 and 28 pixels, in codes of 16 bits. */
export function spotPng(peak = 50_000): Buffer {
  const [width, height] = [160, 140];
  const data = Uint16Array.from({ length: width * height }, (_, i) => {
    const [x, y] = [((i % width) - 82) / 10, (Math.floor(i / width) - 66) / 7];
    return Math.round(peak * Math.exp(-(x * x + y * y) / 2) + 1500 + ((i * 7919) % 13));
  });
  return Buffer.from(encode({ width, height, data, channels: 1, depth: 16 }));
}

/** Ten thousand places of an edge and the light past them, a row each: a logistic step is symmetric about its middle, 5 mm. */
export const tenThousand = (between: string): string =>
  Array.from(
    { length: 10_000 },
    (_, i) => `${i / 1000}${between}${1 / (1 + Math.exp((5000 - i) / 300))}`,
  ).join('\n');

/** The page of a gauge, its example tried where it has one. */
export async function openExample(page: Page, address: string): Promise<void> {
  await page.goto(address);
  await page.getByRole('heading', { level: 1 }).waitFor();
  const example = page.getByRole('button', { name: 'Try the example' });
  if ((await example.count()) === 0) return;
  await example.click();
  await page.locator('.answers li').first().waitFor();
}

/** A typed voltmeter, added and switched on, with one reading. */
export async function typeOnMeter(page: Page, address: string, text: string): Promise<void> {
  await page.goto(`${address}/instruments`);
  await page.getByRole('radio', { name: /^typed/u }).check();
  await page.getByRole('combobox', { name: 'counted in' }).selectOption({ label: 'voltage, V' });
  await page.getByRole('button', { name: 'Add and switch on', exact: true }).click();
  const reading = page.getByRole('textbox', { name: 'reading', exact: true });
  await reading.fill(text);
  await reading.press('Enter');
}

/// <reference lib="dom" />

import type { BrowserContext, Locator, Page } from '@playwright/test';
import type { InstrumentSetup } from '../../packages/contract/src/index.ts';
import { examplePath, expect } from './bench-test.ts';

export const instruction = (page: Page): Locator => page.locator('.instruction');

/** What was done, a step each. */
export const moves = (page: Page): Locator =>
  page.getByRole('list').and(page.locator('.moves')).getByRole('listitem');

export const press = (page: Page, name: string): Promise<void> =>
  page.getByRole('button', { name, exact: true }).click();

/** Begins a walk of a simulated bench. */
export async function practise(page: Page, address: string): Promise<void> {
  await page.goto(`${address}${examplePath}/walk`);
  await press(page, 'Practise on a simulated bench');
  await expect(instruction(page)).toContainText('Block the beam');
}

/** Lets the practised hand do so many steps, each only when the one before is kept. */
export async function handDoes(page: Page, steps: number): Promise<void> {
  for (let done = 0; done < steps; done += 1) {
    const before = await moves(page).count();
    await press(page, 'Let the practised hand do it');
    await expect(moves(page)).toHaveCount(before + 1);
  }
}

/** A second page on the same walk. */
export async function beside(context: BrowserContext, address: string): Promise<Page> {
  const other = await context.newPage();
  await other.goto(`${address}${examplePath}/walk`);
  return other;
}

/** Puts an instrument into the bench book and switches it on. */
export async function addInstrument(page: Page, name: string, setup: InstrumentSetup): Promise<void> {
  const body = { name, setup, floor: null, saturation: null };
  const status = await page.evaluate(async (written) => {
    const path = `/api/instruments/${crypto.randomUUID()}`;
    const send = (to: string, method: string, what: unknown) =>
      fetch(to, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(what) });
    const made = await send(path, 'PUT', written);
    const on = await send(`${path}/switch`, 'POST', { on: true });
    return [made.status, on.status];
  }, body);
  expect(status).toEqual([200, 200]);
}

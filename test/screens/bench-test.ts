/// <reference lib="dom" />
import { test as base, expect, type Page } from '@playwright/test';
import { type StationUnderTest, startStation } from './station-under-test.ts';

interface Fixtures {
  readonly station: StationUnderTest;
  /** What the browser's console may complain about in this test: a killed station is missed by the browser, too. */
  readonly mayComplain: RegExp[];
  readonly opened: Page;
}

/** A test in a real browser against a real station of its own; the browser's console must stay free of errors. */
export const test = base.extend<Fixtures>({
  // biome-ignore lint/correctness/noEmptyPattern: Playwright reads the names of fixtures off this pattern
  station: async ({}, use) => {
    const station = await startStation();
    await use(station);
    await station.clear();
  },
  // biome-ignore lint/correctness/noEmptyPattern: as above
  mayComplain: async ({}, use) => use([]),
  // the station outlives the pages: an answer cut off at the end is nobody's fault
  context: async ({ context, mayComplain, station: _ }, use) => {
    const complaints: string[] = [];
    context.on('console', (message) => {
      if (message.type() === 'error') complaints.push(message.text());
    });
    context.on('weberror', (error) => complaints.push(`${error.error()}`));
    await use(context);
    expect(complaints.filter((one) => !mayComplain.some((allowed) => allowed.test(one)))).toEqual([]);
  },
  opened: async ({ page, station }, use) => {
    await page.goto(station.address);
    await expect(page.getByRole('heading', { level: 1 })).toHaveText('Launches');
    await use(page);
  },
});

export { expect };

/** The browser itself says this of a station that is not there. */
export const stationGone = /ERR_CONNECTION|ERR_INTERNET_DISCONNECTED|WebSocket connection to/u;

/** Our example, kept under the same id in every bench book. */
export const examplePath = '/launch/e8a3b1e0-0000-4000-8000-000000000001';

/** Waits until nothing is left that the station has not acknowledged. */
export async function allKept(page: Page): Promise<void> {
  await expect(page.locator('.kept')).toHaveAttribute('data-unkept', '0');
}

/** Unfolds a part of the drawer. */
export async function unfold(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${name}`, 'u') }).click();
}

/** From here on what is posted by one kind of sender leaves it late. */
const postsLate = (page: Page, sender: 'MessagePort' | 'Worker', by: number): Promise<void> =>
  page.evaluate(
    ({ name, delay }) => {
      const { prototype } = globalThis[name] as { prototype: { postMessage(...message: never[]): void } };
      const post = prototype.postMessage;
      prototype.postMessage = function (...message) {
        setTimeout(() => post.apply(this, message), delay);
      };
    },
    { name: sender, delay: by },
  );

/**
 * From here on the page draws late, as on a slow phone: what comes in between meets what is not drawn yet. React asks for its
 * next drawing through a port.
 */
export const drawsLate = (page: Page, by = 300): Promise<void> => postsLate(page, 'MessagePort', by);

/** From here on what a page asks of its workers comes to them late. */
export const worksLate = (page: Page, by: number): Promise<void> => postsLate(page, 'Worker', by);

/** From here on requests of a kind reach the station late, after something was done meanwhile. */
export async function asksLate(
  page: Page,
  method: 'GET' | 'POST' | 'PUT',
  path: string,
  meanwhile: () => Promise<unknown>,
): Promise<void> {
  await page.route(path, async (route) => {
    if (route.request().method() === method) await meanwhile();
    await route.fallback();
  });
}

import { hostname } from 'node:os';
import { type Browser, type BrowserContext, expect, type Page, test } from '@playwright/test';
import { complaints } from './axe.ts';
import { expectNoWider } from './fits.ts';
import { type StationUnderTest, startStation } from './station-under-test.ts';

/** The name this computer goes by in its network; the browser is told where it is, so that no network is needed. */
const name = hostname().toLowerCase();

test.use({
  launchOptions: {
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: ['--no-sandbox', '--disable-gpu', `--host-resolver-rules=MAP ${name} 127.0.0.1`],
  },
});

let station: StationUnderTest;
test.beforeEach(async () => {
  station = await startStation(['--lan']);
});
test.afterEach(async () => station.clear());

/** A phone that has accepted the station's own certificate. */
async function phoneOf(
  browser: Browser,
): Promise<{ readonly phone: Page; readonly context: BrowserContext }> {
  const context = await browser.newContext({
    ignoreHTTPSErrors: true,
    viewport: { width: 360, height: 740 },
  });
  return { phone: await context.newPage(), context };
}

/** What the station's own computer shows to whoever pairs a device. */
async function pairingCode(laptop: Page): Promise<string> {
  await laptop.goto(`${station.address}/pair`);
  await laptop.getByRole('button', { name: 'Make a pairing code' }).click();
  return (await laptop.locator('.code').textContent()) ?? '';
}

const phonesDoor = (): string => `https://${name}:${station.networkPort}`;

test('a phone is let in with a code that works once, sees what changes, and is shut out again', async ({
  page: laptop,
  browser,
}) => {
  const code = await pairingCode(laptop);
  const { phone, context } = await phoneOf(browser);
  await phone.goto(`${phonesDoor()}/`);
  await expect(phone.getByRole('heading', { level: 1 })).toHaveText('Pair this device');
  await phone.getByLabel('pairing code').fill('WRONG-CODE');
  await phone.getByRole('button', { name: 'Pair', exact: true }).click();
  await expect(phone.getByRole('alert')).toBeVisible();
  await phone.getByLabel('pairing code').fill(code);
  await phone.getByLabel('what this device is called').fill('the loft phone');
  await phone.getByRole('button', { name: 'Pair', exact: true }).click();
  await expect(phone.getByRole('heading', { level: 1 })).toHaveText('Launches');
  await expect(phone.getByText('green guide light').first()).toBeVisible();

  // a second phone with the same code stays outside
  const { phone: second, context: other } = await phoneOf(browser);
  await second.goto(`${phonesDoor()}/pair#${code}`);
  await second.getByRole('button', { name: 'Pair', exact: true }).click();
  await expect(second.getByRole('alert')).toBeVisible();
  await other.close();

  await laptop.reload();
  await laptop.getByRole('button', { name: 'Let in no longer: the loft phone' }).click();
  await expect(laptop.getByText('None besides this computer.')).toBeVisible();
  // what it showed is gone at once, without a reload
  await expect(phone.getByRole('heading', { level: 1 })).toHaveText('Pair this device');
  await expect(phone.getByText('green guide light')).toHaveCount(0);
  await phone.reload();
  await expect(phone.getByText(/it was never paired, or is let in no longer/u)).toBeVisible();
  await expect(phone.getByText('green guide light')).toHaveCount(0);
  await context.close();
});

test('a phone that was never paired is told so on every address, is paired there, and gets what it asked for', async ({
  page: laptop,
  browser,
}) => {
  const code = await pairingCode(laptop);
  const { phone, context } = await phoneOf(browser);
  for (const path of ['/', '/match', '/nowhere', '/drawer']) {
    await phone.goto(`${phonesDoor()}${path}`);
    await expect(phone.getByRole('heading', { level: 1 })).toHaveText('Pair this device');
    await expect(phone.getByText(/^Press “Make a pairing code”/u)).toBeVisible();
    await expect(phone.getByText('Asking the station …')).toHaveCount(0);
    await expectNoWider(phone, path);
  }
  expect(await complaints(phone)).toEqual([]);
  await phone.getByRole('button', { name: 'Pair', exact: true }).click();
  await expect(phone.getByRole('alert')).toHaveText(/^No code is typed yet/u);
  await phone.getByLabel('pairing code').fill(code.toLowerCase());
  await phone.getByRole('button', { name: 'Pair', exact: true }).click();
  await expect(phone.getByRole('heading', { level: 1 })).toHaveText('The drawer');
  await expect(phone).toHaveURL(/\/drawer$/u);
  await context.close();
});

/// <reference lib="dom" />
import type { KeptLaunch } from '../../packages/contract/src/index.ts';
import { allKept, asksLate, examplePath, expect, test, worksLate } from './bench-test.ts';
import { answer, asFile, paste, tenThousand } from './gauge-reading.ts';

test('from a forecast to its gauge, and the answer narrows the forecast; the readings are opened again', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}`);
  const range = page.locator('.answer .range');
  await expect(range).toContainText('nine times in ten');
  const before = await range.textContent();
  await page.getByRole('link', { name: 'to the gauge: photodiode' }).click();
  await expect(page).toHaveURL(/\/gauge\/photodiode\/launch\/.*#laser\.power$/u);
  const table =
    '# load: 22 ohm ± 1 %\n# responsivity: 0.25 A/W ± 2 %\nvoltage (mV)\n63.2\n63.3\n63.1\n63.2\n';
  await paste(page.getByRole('textbox', { name: /^voltage \(mV\), row 1$/u }), table);
  // 63.2 mV over 22 Ω is 2.87 mA, at 0.25 A/W 11.5 mW
  await expect(answer(page, 'power').locator('strong')).toHaveText(/^11\.[45]\d* mW/u);
  const fills = page.getByRole('combobox', { name: 'fills' });
  await expect(fills.locator('option:checked')).toHaveText(/: power of the laser$/u);
  await expect(page.locator('.before-after')).toContainText('11.5 mW ± 8 %');
  // its readings are measured anew: until that is done nothing is written of those before
  const write = page.getByRole('button', { name: 'Write it' });
  await worksLate(page, 500);
  await page.getByRole('textbox', { name: 'load', exact: true }).fill('22 ohm ± 1.0 %');
  await expect(write).toBeDisabled();
  await expect(write).toBeEnabled();
  // the launch is changed elsewhere while the readings are on their way: both changes stand
  await asksLate(page, 'POST', '**/api/entries', async () => {
    const changed = page.evaluate(
      async (path) => {
        const { version, text, putAway } = (await (await fetch(path)).json()) as KeptLaunch;
        const moved = text.replace('6.2 mm', '6.3 mm');
        const body = { write: crypto.randomUUID(), base: version, text: moved, putAway, invented: false };
        const headers = { 'content-type': 'application/json' };
        return (await fetch(path, { method: 'PUT', headers, body: JSON.stringify(body) })).status;
      },
      `/api/launches/${examplePath.split('/').at(-1)}`,
    );
    expect(await changed).toBe(200);
  });
  await write.click();
  await expect(
    page.getByText(/^Written to “green guide light to the observing loft”, power of the laser;/u),
  ).toBeVisible();
  await allKept(page);
  await page.unroute('**/api/entries');
  await page.getByRole('link', { name: 'See the launch' }).click();
  await expect(range).toContainText('nine times in ten');
  await expect(page.getByRole('button', { name: /^red one, 6\.3\smm$/u })).toBeVisible();
  await expect(range).not.toHaveText(before ?? '');
  const width = (text: string): number => {
    const [low = 0, high = 0] = [...text.matchAll(/[\d.]+/gu)].map(([one]) => Number(one));
    return high - low;
  };
  expect(width((await range.textContent()) ?? '')).toBeLessThan(width(before ?? ''));
  await page.getByRole('link', { name: 'bench book', exact: true }).click();
  await expect(
    page.getByText(
      /photodiode with a load: power 11\.[45]\d*\smW\s.*; into “green guide light .*”, power of the laser/u,
    ),
  ).toBeVisible();
  // nothing is typed where they will stand before they are here
  const waiting = page.getByText('Asking the station for these readings');
  await asksLate(page, 'GET', '**/api/entries?*', async () => {
    await expect(waiting).toBeVisible();
    await expect(page.getByRole('textbox', { name: 'load', exact: true })).toHaveCount(0);
  });
  await page.getByRole('link', { name: 'open the readings' }).click();
  await expect(page.getByRole('textbox', { name: 'voltage (mV), row 2' })).toHaveValue('63.3');
  await expect(page.getByRole('textbox', { name: 'load', exact: true })).toHaveValue('22 ohm ± 1.0 %');
  await expect(answer(page, 'power').locator('strong')).toHaveText(/^11\.[45]\d* mW/u);
});

test('from a part of the drawer to a gauge and back into the part; ten thousand readings are kept whole', async ({
  opened: page,
}) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: /^red alignment laser/u }).click();
  await page.locator('.part-fields').getByRole('link', { name: 'knife edge', exact: true }).click();
  await page
    .getByLabel('a file with readings')
    .setInputFiles(asFile('long.csv', `position (mm),power (mW)\n${tenThousand(',')}\n`));
  await expect(page.getByRole('combobox', { name: 'fills' }).locator('option:checked')).toHaveText(
    /“red alignment laser” in the drawer: diameter of the beam/u,
  );
  await page.getByRole('textbox', { name: /^at: where along the beam/u }).fill('480 mm');
  await page.getByRole('button', { name: 'Write it' }).click();
  await expect(page.getByText(/^Written to/u)).toBeVisible();
  await allKept(page);
  await page.getByRole('link', { name: 'bench book', exact: true }).click();
  await expect(page.getByRole('link', { name: 'open the readings' })).toHaveCount(1);
  await page.getByRole('link', { name: 'open the readings' }).click();
  await expect(page.getByRole('textbox', { name: 'readings as text' })).toHaveValue(/9\.999,[\d.]+\n$/u);
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: /^red alignment laser/u }).click();
  await expect(page.getByRole('textbox', { name: 'at', exact: true })).toHaveValue('480 mm');
});

test('a lens that was measured becomes a new part of the drawer, and its readings stand in the bench book', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/far-wall-spot`);
  await page.getByRole('button', { name: 'Try the example' }).click();
  await expect(page.getByText('not of your bench')).toBeVisible();
  const found = await answer(page, 'focal length').locator('strong').textContent();
  await page
    .getByRole('combobox', { name: 'fills' })
    .selectOption({ label: 'a new lens or collimator, into the drawer' });
  await expect(page.getByRole('textbox', { name: 'focal length', exact: true })).toHaveValue(/mm/u);
  const name = page.getByRole('textbox', { name: 'name', exact: true });
  // a name that another lens has is refused with its place, and nothing is written
  await name.fill('the wall lens');
  await name.press('Enter');
  await page.getByRole('button', { name: 'Put it into the drawer' }).click();
  await expect(page.getByText(/^Written to a new lens or collimator, “the wall lens”/u)).toBeVisible();
  await allKept(page);
  await page.getByRole('link', { name: 'bench book', exact: true }).click();
  await expect(page.getByText(/spot at the far wall: focal length .*; into a new lens/u)).toBeVisible();
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: /^the wall lens/u }).click();
  const focal = page.locator('.part-fields').getByRole('textbox', { name: 'focal length', exact: true });
  await expect(focal).toHaveValue(/^\d/u);
  expect((await focal.inputValue()).slice(0, 3)).toBe((found ?? '').slice(0, 3));
  await expect(page.locator('.part-fields')).toContainText('measured');
});

test('a laser begun from a caustic asks for what no gauge told, and a new mirror takes lever and pitch', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/caustic`);
  await page.getByRole('button', { name: 'Try the example' }).click();
  await expect(page.locator('.answers li').first()).toBeVisible();
  const fills = page.getByRole('combobox', { name: 'fills' });
  await fills.selectOption({ label: 'a new laser, into the drawer' });
  await expect(page.getByText('Still needed before it is kept: wavelength, power.')).toBeVisible();
  const put = page.getByRole('button', { name: 'Put it into the drawer' });
  await expect(put).toBeDisabled();
  await page.getByRole('textbox', { name: 'name', exact: true }).fill('caustic laser');
  for (const [key, text] of [
    ['wavelength', '520 nm'],
    ['power', '5 mW'],
  ] as const) {
    const field = page.locator('.new-part').getByRole('textbox', { name: key, exact: true });
    await field.fill(text);
    await field.press('Tab');
  }
  await put.click();
  await expect(page.getByText(/^Written to a new laser, “caustic laser”/u)).toBeVisible();
  await page.goto(`${station.address}/gauge/screw-turns`);
  await page.getByRole('button', { name: 'Try the example' }).click();
  await page
    .getByRole('combobox', { name: 'fills' })
    .selectOption({ label: 'a new mirror, into the drawer' });
  await expect(page.locator('.new-part').getByRole('textbox', { name: 'pitch', exact: true })).toHaveValue(
    '0.25 mm',
  );
  await expect(page.getByText('Slack and sense have no key')).toBeVisible();
});

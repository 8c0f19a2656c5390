import { allKept, expect, test } from './bench-test.ts';
import { answer, paste, typeOnMeter } from './gauge-reading.ts';

test('the reading of an instrument goes into the cells one press at a time, the place goes on by its step', async ({
  opened: page,
  station,
}) => {
  await typeOnMeter(page, station.address, '88 mV');
  await expect(page.locator('.reading-now')).toHaveText('88.00 mV');
  await page.goto(`${station.address}/gauge/knife-edge`);
  await page.getByText('From an instrument, reading by reading').click();
  await page.getByRole('combobox', { name: 'instrument' }).selectOption({ label: 'typed meter' });
  await page.getByRole('textbox', { name: 'position (mm), row 1' }).fill('0,5');
  await page.getByRole('textbox', { name: /goes on by$/u }).fill('0,25');
  await page.getByRole('button', { name: 'Take it into power (mV), row 1' }).click();
  await expect(page.getByRole('textbox', { name: 'power (mV), row 1' })).toHaveValue('88');
  await page.getByRole('button', { name: 'Take it into power (mV), row 2' }).click();
  await expect(page.getByRole('textbox', { name: 'power (mV), row 2' })).toHaveValue('88');
  await expect(page.getByRole('textbox', { name: 'position (mm), row 2' })).toHaveValue('0.75');
  await page.getByRole('button', { name: 'as text' }).click();
  await expect(page.getByRole('textbox', { name: 'readings as text' })).toHaveValue(
    /row 2, column power, is the mean of 1 readings of typed meter/u,
  );
});

test('a diode judged by a known power becomes a detector, and an instrument shows its light in watts', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/photodiode`);
  await paste(
    page.getByRole('textbox', { name: /^voltage \(mV\), row 1$/u }),
    '# load: 220 ohm ± 1 %\n# known power: 1 mW ± 5 %\n# wavelength: 635 nm\nvoltage (mV)\n88\n88.1\n87.9\n88\n',
  );
  await expect(answer(page, 'responsivity').locator('strong')).toHaveText(/^0\.40* A\/W/u);
  await page
    .getByRole('combobox', { name: 'fills' })
    .selectOption({ label: 'a new detector, into the drawer' });
  const name = page.locator('.new-part').getByRole('textbox', { name: 'name', exact: true });
  await name.fill('judged diode');
  await name.press('Tab');
  await expect(page.locator('.new-part').getByRole('textbox', { name: 'load', exact: true })).toHaveValue(
    /^220\.0 Ω/u,
  );
  await page.getByRole('button', { name: 'Put it into the drawer' }).click();
  await expect(page.getByText(/^Written to a new detector, “judged diode”/u)).toBeVisible();
  await allKept(page);
  await typeOnMeter(page, station.address, '44 mV');
  await page
    .getByRole('combobox', { name: 'detector of the drawer before it' })
    .selectOption({ label: 'judged diode' });
  // half the voltage is half the milliwatt; 5 % of power and the like of load and meter stay
  await expect(page.locator('.detector-watts')).toContainText(
    /(?:0\.50*|500) [mµ]W ± .* for light of 635 nm/u,
  );
  await allKept(page);
  await page.reload();
  await expect(page.getByRole('button', { name: /^typed meter/u }).first()).toBeVisible();
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: /^judged diode/u }).click();
  await expect(page.getByRole('textbox', { name: 'read by', exact: true })).toHaveValue('typed meter');
});

import { gauges, howToFor } from '../../packages/bench/src/index.ts';
import { expect, test } from './bench-test.ts';
import { asFile, paste } from './gauge-reading.ts';

const read = gauges.flatMap(({ name, columns }) => {
  const example = howToFor(name)?.example ?? null;
  return columns.length > 0 && example !== null ? [{ name, example }] : [];
});

test('every gauge that reads a table says the same of its example, of a file and of what is pasted', async ({
  opened: page,
  station,
}) => {
  test.setTimeout(240_000);
  expect(read.length).toBeGreaterThan(15);
  for (const { name, example } of read) {
    await page.goto(`${station.address}/gauge/${name}`);
    const told = page.locator('.answers');
    const afresh = page.getByRole('button', { name: 'Start afresh' });
    const nothing = page.getByText('Nothing is read yet');
    await page.getByRole('button', { name: 'Try the example' }).click();
    await expect(told.getByRole('heading').first(), name).toBeVisible();
    await expect(page.getByRole('alert'), name).toHaveCount(0);
    const said = (await told.textContent()) ?? '';

    await afresh.click();
    await expect(nothing, name).toBeVisible();
    await page.getByLabel('a file with readings').setInputFiles(asFile(`${name}.csv`, example));
    await expect(told, name).toHaveText(said);

    await afresh.click();
    await expect(nothing, name).toBeVisible();
    await paste(page.locator('.readings td input').first(), example);
    await expect(told, name).toHaveText(said);
  }
});

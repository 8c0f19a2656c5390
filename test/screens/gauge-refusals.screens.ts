import { expect, test } from './bench-test.ts';
import { asFile, spotPng } from './gauge-reading.ts';

test('what cannot be read is told with its mend: wrong columns, decimal commas between commas, units, nothing', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/knife-edge`);
  const file = page.getByLabel('a file with readings');
  const said = page.locator('.gauge-said');
  const refusals: readonly (readonly [string, RegExp])[] = [
    ['power (mW)\n1\n2\n', /there is no column position/u],
    ['position (mm),power (mW)\n0,25,1,5\n0,50,1,6\n', /Decimal commas\? Put semicolons/u],
    ['position (mW),power (mm)\n0,1\n1,2\n', /mW, which is not a length/u],
    ['0,1\n1,2\n', /nothing says what the columns are/u],
    ['position (mm),power (mW)\n0.25,bright\n0.5,dark\n', /bright is no number/u],
  ];
  for (const [text, expected] of refusals) {
    await file.setInputFiles(asFile('scan.csv', text));
    await expect(said).toContainText(expected);
    await expect(page.locator('.answers')).toHaveCount(0);
  }
  await file.setInputFiles(asFile('empty.csv', ''));
  await expect(page.getByRole('alert')).toContainText('there are no readings in it');
  await file.setInputFiles({ name: 'spot.png', mimeType: 'image/png', buffer: spotPng() });
  await expect(page.getByRole('alert')).toContainText('spot.png: this is a picture, and readings are asked');
  await file.setInputFiles({ name: 'a.bin', mimeType: 'text/csv', buffer: Buffer.from([1, 0, 2]) });
  await expect(page.getByRole('alert')).toContainText('neither a text nor a picture');
});

/** The least that each kind of gauge is given wrong, and where, what and mend of its one refusal. */
const wrongOf: readonly (readonly [string, string, string, RegExp])[] = [
  [
    'far-wall-spot',
    'wrong columns',
    '# wavelength: 650 nm\n# mode field diameter: 4.3 µm\nturns,spot (mm)\n1,2\n',
    /readings: there is no column distance .*Head that column distance \(mm\)/u,
  ],
  [
    'imaging',
    'decimal commas between commas',
    'object distance (cm),image distance (cm)\n20,5,20,5\n',
    /readings:2: there are 4 cells under 2 headings.*Put semicolons between the columns/u,
  ],
  [
    'imaging',
    'decimal commas between semicolons',
    'object distance (cm);image distance (cm)\n20,0;20,0\n',
    /^$/u,
  ],
  [
    'cut-back',
    'mixed units',
    'length (mW),power (µW)\n18,402\n2,701\n',
    /readings: the column length is in mW, which is not a length.*Head it length \(mm\)/u,
  ],
  [
    'photodiode',
    'a setting without its unit',
    '# load: 220\n# wavelength: 635 nm\nvoltage (mV)\n88\n',
    /readings load: .*220.* has no unit.*Write/u,
  ],
  [
    'photodiode',
    'a colour that silicon does not see',
    '# load: 220 ohm\n# wavelength: 1550 nm\nvoltage (mV)\n88\n',
    /photodiode wavelength: of 1\.55 µm nothing is known of a typical silicon diode.*Set responsivity to/u,
  ],
  [
    'screw-turns',
    'a missing setting',
    'turns,spot (mm)\n0,1\n1,60\n',
    /readings: distance is missing .*Set distance to/u,
  ],
  [
    'mode-count',
    'nothing but the aperture',
    '# numerical aperture: 0.12\n',
    /neither a cut-off nor a count of modes.*Set cut-off to 620 nm/u,
  ],
];

test('each kind of gauge refuses the wrong thing once, with where, what and mend, and nothing typed is lost', async ({
  opened: page,
  station,
}) => {
  // eight pages, each twice
  test.slow();
  for (const [gauge, what, text, refused] of wrongOf) {
    await page.goto(`${station.address}/gauge/${gauge}`);
    await page.getByRole('button', { name: 'Start afresh' }).click();
    const table = page.getByLabel('a file with readings');
    if ((await table.count()) > 0) await table.setInputFiles(asFile('wrong.csv', text));
    else {
      for (const [, name = '', value = ''] of text.matchAll(/^# (.*?): (.*)$/gmu))
        await page.getByRole('textbox', { name, exact: true }).fill(value);
    }
    const said = page.locator('.gauge-said');
    if (refused.source === '^$') await expect(page.locator('.answers li').first(), what).toBeVisible();
    else {
      await expect(said.locator('.refusal p'), what).toHaveCount(1);
      await expect(said.locator('.refusal p'), what).toHaveText(refused);
      await expect(said, what).not.toContainText(/--|command|fault/u);
    }
    // what was given stands where it was given, a reload later, too
    const last = text.trimEnd().split('\n').at(-1)!.split(/[;,]/u)[0]!;
    if (gauge !== 'mode-count') {
      await page.reload();
      await page.getByRole('button', { name: 'as text' }).click();
      await expect(page.getByRole('textbox', { name: 'readings as text' }), what).toHaveValue(
        new RegExp(last, 'u'),
      );
    }
  }
});

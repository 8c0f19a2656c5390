/// <reference lib="dom" />
import { encode } from 'fast-png';
import { expect, test } from './bench-test.ts';
import { answer, asFile, past, radius, spotPng } from './gauge-reading.ts';

test('a spot is measured in a picture of 16 bits, and a picture of nothing is told as such', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/spot-picture`);
  const picture = page.getByLabel('a picture of the spot');
  await picture.setInputFiles({ name: 'spot.png', mimeType: 'image/png', buffer: spotPng() });
  await page.getByRole('textbox', { name: 'pixel', exact: true }).fill('5 µm');
  // 4σ of ten pixels of deviation, at 5 µm each, is 200 µm; the background leaves some per cent
  const width = answer(page, 'second-moment diameter, long axis').locator('strong');
  await expect(width).toHaveText(/^(?:19[6-9]|20[0-4])/u);
  const nothing = Buffer.from(
    encode({ width: 160, height: 140, data: new Uint8Array(160 * 140).fill(9), channels: 1, depth: 8 }),
  );
  await picture.setInputFiles({ name: 'wall.png', mimeType: 'image/png', buffer: nothing });
  await expect(page.locator('.answers li[data-verdict="undetermined"]').first()).toBeVisible();
  await expect(page.locator('.answers')).toContainText('No single spot stands out');
  await picture.setInputFiles({
    name: 'text.png',
    mimeType: 'image/png',
    buffer: Buffer.from('not a picture'),
  });
  await expect(page.locator('.gauge-said')).toContainText('neither a PNG nor a JPEG');
});

test('a JPEG is unpacked by the browser, and an upload of JSON is read', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}/gauge/spot-picture`);
  const bytes = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(160, 140);
    const context = canvas.getContext('2d')!;
    const image = context.createImageData(160, 140);
    for (let i = 0; i < 160 * 140; i += 1) {
      const [x, y] = [((i % 160) - 82) / 10, (Math.floor(i / 160) - 66) / 7];
      const code = Math.round(200 * Math.exp(-(x * x + y * y) / 2) + 6);
      image.data.set([code, code, code, 255], 4 * i);
    }
    context.putImageData(image, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.95 });
    return [...new Uint8Array(await blob.arrayBuffer())];
  });
  await page
    .getByLabel('a picture of the spot')
    .setInputFiles({ name: 'spot.jpg', mimeType: 'image/jpeg', buffer: Buffer.from(bytes) });
  await page.getByRole('textbox', { name: 'pixel', exact: true }).fill('5 µm');
  // rounded by the format: some per cent
  await expect(answer(page, 'second-moment diameter, long axis').locator('strong')).toHaveText(
    /^(?:19|20)\d/u,
  );
  await page.goto(`${station.address}/gauge/knife-edge`);
  const json = { positions_m: past.map((_, i) => i * 0.25e-3), power: past.map(Number) };
  await page.getByLabel('a file with readings').setInputFiles(asFile('scan.json', JSON.stringify(json)));
  await expect(answer(page, '1/e² radius').locator('strong')).toHaveText(radius);
});

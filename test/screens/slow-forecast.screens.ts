import { examplePath, expect, test } from './bench-test.ts';

test('a forecast that takes long is stopped where it is, and worked out when asked again', async ({
  opened: page,
  station,
}) => {
  let loaded = 0;
  // a worker that works and never answers, as one does on a launch of thousands of modes
  const endless = '**/assets/forecast-worker-*.js';
  await page.route(endless, async (route) => {
    loaded += 1;
    await route.fulfill({ contentType: 'text/javascript', body: 'for (;;);' });
  });
  await page.goto(`${station.address}${examplePath}`);
  const answer = page.locator('.answer');
  await expect(answer).toHaveAttribute('aria-busy', 'true');
  await expect(page.getByText('The ranges of this launch take long to work out.')).toBeVisible();
  // what is told meanwhile is told without a range
  await expect(answer).toHaveText(/ mW leaves the far end the range follows/u);
  await expect.poll(() => page.workers().length).toBe(1);
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.getByText(/^Stopped: the powers are those of the stated values/u)).toBeVisible();
  await expect(answer).toHaveAttribute('aria-busy', 'false');
  await expect(answer).toHaveText(/ mW leaves the far end range not worked out/u);
  await expect.poll(() => page.workers().length).toBe(0);
  expect(loaded).toBe(1);

  await page.unroute(endless);
  await page.getByRole('button', { name: 'Work them out' }).click();
  await expect(answer).toHaveText(/nine times in ten/u);
  await expect(page.getByText(/^Stopped/u)).toHaveCount(0);
});

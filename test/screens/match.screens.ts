import { allKept, expect, test, worksLate } from './bench-test.ts';

test('from the match into a launch with one press', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'match', exact: true }).click();
  const table = page.getByRole('table', { name: 'All combinations' });
  const best = table.getByRole('row').nth(1);
  await expect(best).toBeVisible();
  const lens = (await best.getByRole('rowheader').textContent()) ?? '';
  await best.getByRole('button', { name: /^make a launch/u }).click();
  await expect(page).toHaveURL(/\/launch\/[0-9a-f-]{36}$/u);
  await expect(page.getByRole('heading', { level: 1 })).toContainText(lens);
  await allKept(page);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toContainText(lens);
  // undone, it is put away and the match is shown again
  await page.getByRole('button', { name: /^Undo: launch/u }).click();
  await expect(page).toHaveURL(/\/match/u);
});

test('the table is sorted by any column, and says so', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'match', exact: true }).click();
  await page.getByRole('combobox', { name: 'laser' }).selectOption('green module');
  const table = page.getByRole('table', { name: 'All combinations' });
  const header = (name: string) => table.getByRole('columnheader', { name: new RegExp(`^${name}`, 'u') });
  await expect(header('share')).toHaveAttribute('aria-sort', 'descending');
  await expect(table.getByRole('row')).toHaveCount(31);
  await expect(page.getByText('Pairs whose plug and barrel must not meet stand behind')).toBeVisible();
  // what must not meet stands behind what may, in either direction
  const ranked = async (behind: number): Promise<number[]> =>
    (await table.locator('tbody tr').allTextContents()).map(
      (text) =>
        Number.parseFloat(/([\d.]+) %/u.exec(text)?.[1] ?? 'none') +
        (text.includes('must not meet') ? behind : 0),
    );
  const descending = await ranked(-1000);
  expect(descending).not.toContain(Number.NaN);
  expect(descending).toEqual([...descending].sort((a, b) => b - a));
  await header('share').getByRole('button').click();
  await expect(header('share')).toHaveAttribute('aria-sort', 'ascending');
  const ascending = await ranked(1000);
  expect(ascending).toEqual([...ascending].sort((a, b) => a - b));
  await header('fibre').getByRole('button').click();
  await expect(header('fibre')).toHaveAttribute('aria-sort', 'ascending');
  await expect(header('share')).toHaveAttribute('aria-sort', 'none');
  // each row has its one reason and its range
  for (const text of await table.locator('tbody .column-reason').allTextContents()) expect(text).not.toBe('');
});

test('the map is walked by arrow keys, and the purpose is part of the address', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'match', exact: true }).click();
  await page.getByRole('combobox', { name: 'ranked by' }).selectOption('lp01');
  await page.getByRole('combobox', { name: 'laser' }).selectOption('green module');
  await expect(page).toHaveURL(/for=lp01&laser=green\+module/u);
  await page.reload();
  const map = page.getByRole('table', { name: /^Lens by fibre, for green module/u });
  await map.locator('[data-cell="0 0"]').focus();
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('ArrowRight');
  await expect(map.locator('[data-cell="1 1"]')).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.locator('.chosen')).toContainText('%');
  await expect(page.locator('.chosen').getByRole('button', { name: 'make a launch' })).toBeVisible();
  // what was found for another question is no answer to this one: it is said, and no launch is made of it
  await worksLate(page, 60_000);
  await page.getByRole('combobox', { name: 'ranked by' }).selectOption('total');
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Below still stands what was found before')).toBeVisible();
  await expect(page.locator('[inert]').getByRole('button', { name: 'make a launch' }).first()).toBeVisible();
});

test('a long match shows how far it is and can be stopped', async ({ opened: page, station }) => {
  // as many lasers as it takes: each part is copied under another name
  await page.evaluate(async () => {
    const { parts } = (await (await fetch('/api/parts')).json()) as {
      parts: { kind: string; text: string }[];
    };
    for (let copy = 0; copy < 12; copy += 1) {
      for (const part of parts.filter(({ kind }) => kind !== 'mirror' && kind !== 'detector')) {
        const text = part.text.replace(/(name: "?)/u, `$1copy ${copy} `);
        const body = {
          write: crypto.randomUUID(),
          base: 0,
          kind: part.kind,
          text,
          putAway: false,
          invented: true,
        };
        const answer = await fetch(`/api/parts/${crypto.randomUUID()}`, {
          method: 'PUT',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        });
        if (!answer.ok) throw new Error(await answer.text());
      }
    }
  });
  await page.goto(`${station.address}/match`);
  await expect(page.getByRole('progressbar')).toBeVisible();
  await expect(page.getByText(/\d+ of \d{4,} combinations/u)).toBeVisible();
  await page.getByRole('button', { name: 'Stop' }).click();
  await expect(page.getByText('Stopped.')).toBeVisible();
  await expect(page.getByRole('progressbar')).toHaveCount(0);
});

test('on a phone every combination stands whole, and its launch is one press away', async ({
  opened: page,
}) => {
  await page.setViewportSize({ width: 360, height: 740 });
  await page.getByRole('link', { name: 'match', exact: true }).click();
  const first = page.getByRole('table', { name: 'All combinations' }).locator('tbody tr').first();
  await expect(first).toBeVisible();
  const right = await first.evaluate((row) =>
    Math.max(...[...row.querySelectorAll('*')].map((one) => one.getBoundingClientRect().right)),
  );
  expect(right).toBeLessThanOrEqual(360);
  // each cell is still known by what it holds
  await expect(first.getByRole('rowheader')).toHaveCount(1);
  await first.getByRole('button', { name: /^make a launch/u }).click();
  await expect(page).toHaveURL(/\/launch\/[0-9a-f-]{36}$/u);
});

test('on paper the map has its figures and the table its headings', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'match', exact: true }).click();
  const table = page.getByRole('table', { name: 'All combinations' });
  await expect(table).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(page.locator('.map-cell').first()).toBeVisible();
  await expect(table.locator('.sort').first()).toBeVisible();
  await expect(table.getByText('make a launch').first()).toBeHidden();
});

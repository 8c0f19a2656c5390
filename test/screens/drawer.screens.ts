import { allKept, asksLate, expect, test, unfold } from './bench-test.ts';

test('a part is changed in the drawer, and the change is there after a reload', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  const focal = page.getByRole('textbox', { name: 'focal length', exact: true });
  await expect(focal).toHaveValue('11 mm');
  await focal.fill('11.2 mm ± 1 %');
  await focal.press('Enter');
  await allKept(page);
  await expect(
    page.getByRole('button', { name: /^Undo: long one, 11 mm: focal length 11 mm to 11.2 mm/u }),
  ).toBeVisible();
  await page.reload();
  await expect(page.getByRole('textbox', { name: 'focal length', exact: true })).toHaveValue('11.2 mm ± 1 %');
  await expect(
    page.getByRole('button', { name: /^long one, 11 mm focal length 11\.2\smm\s±\s1\s%/u }),
  ).toBeVisible();
});

test('a refused value says why in its place, and its mend is one press away', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  const focal = page.getByRole('textbox', { name: 'focal length', exact: true });
  await focal.fill('11.2');
  await focal.press('Enter');
  await expect(page.getByRole('alert')).toContainText('`11.2` has no unit'.replaceAll('`', ''));
  await expect(focal).toHaveAttribute('aria-invalid', 'true');
  // what was typed outlives a reload, though it is not kept
  await page.reload();
  await expect(focal).toHaveValue('11.2');
  await page.locator('.mend').first().click();
  await expect(page.getByRole('alert')).toHaveCount(0);
  await expect(focal).toHaveValue(/^11\.2 .m$/u);
  await allKept(page);
});

test('a part is added as soon as it says enough, put away and brought back', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: 'add a fibre' }).click();
  await expect(page.getByText(/^Still needed before it is kept/u)).toBeVisible();
  const name = page.getByRole('textbox', { name: 'name', exact: true });
  await name.fill('grey cable');
  await name.press('Enter');
  await page.getByRole('combobox', { name: 'type', exact: true }).selectOption('OM3');
  const grey = page.getByRole('button', { name: /^grey cable OM3/u });
  await expect(grey).toBeVisible();
  await allKept(page);
  await page.getByRole('button', { name: 'Put this fibre away' }).click();
  await expect(grey).toHaveCount(0);
  await page.getByText('1 part put away').click();
  await page.getByRole('button', { name: 'Bring back: grey cable' }).click();
  await expect(grey).toBeVisible();
  await allKept(page);
});

test('a name that another part has is refused', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  const name = page.getByRole('textbox', { name: 'name', exact: true });
  await name.fill('stubby one, 4 mm');
  await name.press('Enter');
  await expect(page.getByRole('alert')).toContainText('is the name of another');
  await page.locator('.mend', { hasText: 'stubby one, 4 mm 2' }).click();
  await expect(page.getByRole('button', { name: /^stubby one, 4 mm 2/u })).toBeVisible();
});

test('the beam of a laser is told in another way, and what both hold is carried over', async ({
  opened: page,
}) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'red alignment laser');
  await page.getByRole('combobox', { name: 'told by' }).selectOption({ label: 'waist diameter' });
  await expect(page.getByRole('textbox', { name: 'waist diameter', exact: true })).toHaveValue('1.6 mm');
  await allKept(page);
});

test('the way between is taken from a launch, and changed element by element', async ({ opened: page }) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await page.getByText('element by element').click();
  const way = page.locator('.way-between');
  await way.getByRole('button', { name: 'take out path 5' }).click();
  await expect(way.getByText('210 mm, M1, 150 mm, M2', { exact: true })).toBeVisible();
  await way.getByRole('button', { name: 'add filter' }).click();
  await expect(way.getByText(/^210 mm, M1, 150 mm, M2, 10 %/u)).toBeVisible();
  // the theme is chosen while the launch is on its way: both stand
  const light = page.getByRole('radio', { name: 'light', exact: true });
  await asksLate(page, 'GET', '**/api/launches/*', () => light.check());
  await way.getByRole('combobox', { name: /^Take the way from/u }).selectOption({ index: 1 });
  await expect(way.getByText('210 mm, M1, 150 mm, M2, 95 mm', { exact: true })).toBeVisible();
  await expect(light).toBeChecked();
  await allKept(page);
});

test('a part’s earlier versions are told apart and brought back, and the bench book tells of them', async ({
  opened: page,
}) => {
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await unfold(page, 'long one');
  const focal = page.getByRole('textbox', { name: 'focal length', exact: true });
  await focal.fill('11.2 mm ± 1 %');
  await focal.press('Enter');
  await allKept(page);
  await page.getByRole('button', { name: 'Put this lens or collimator away' }).click();
  await allKept(page);
  await page.getByText('1 part put away').click();
  await page.getByRole('link', { name: 'earlier versions' }).click();
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Versions of “long one, 11 mm”');
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(3);
  // the list a part lies in, and its rank there, are nobody’s business
  await expect(page.getByText('focal length: 11 mm to 11.2 mm ± 1 %', { exact: true })).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Bring version 1 back' }).click();
  await expect(page.getByRole('heading', { level: 2 })).toHaveCount(4);
  await allKept(page);
  await page.getByRole('link', { name: 'To the drawer' }).click();
  await expect(focal).toHaveValue('11 mm');
  await page.getByRole('link', { name: 'bench book', exact: true }).click();
  const told = page.locator('.book-line', { hasText: 'version 4' });
  await expect(told.getByText('brought back', { exact: true })).toBeVisible();
  await expect(told.getByText('focal length: 11.2 mm ± 1 % to 11 mm', { exact: true })).toBeVisible();
  await expect(page.getByText(/^Invented parts laid into the drawer/u)).toHaveCount(1);
  await told.getByRole('link', { name: 'long one, 11 mm' }).click();
  await expect(focal).toBeVisible();
});

test('a version whose name another part has by now is not brought back', async ({ opened: page }) => {
  const rename = async (from: string, to: string): Promise<void> => {
    await unfold(page, from);
    const name = page.getByRole('textbox', { name: 'name', exact: true });
    await name.fill(to);
    await name.press('Enter');
    await allKept(page);
  };
  await page.getByRole('link', { name: 'drawer', exact: true }).click();
  await rename('long one, 11 mm', 'the longest');
  await rename('stubby one, 4 mm', 'long one, 11 mm');
  await unfold(page, 'the longest');
  await page.getByRole('link', { name: 'earlier versions' }).click();
  await expect(page.getByText(/^It cannot be brought back as it is: .*the name of another/u)).toBeVisible();
  await expect(page.getByRole('button', { name: /^Bring version/u })).toHaveCount(0);
});

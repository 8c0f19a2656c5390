import { examplePath, expect, stationGone, test } from './bench-test.ts';
import { addInstrument, beside, handDoes, instruction, moves, practise, press } from './walk-page.ts';

test('a practice walk from the launch to its end, phone and laptop in step', async ({
  opened: laptop,
  station,
  context,
}) => {
  test.setTimeout(180_000);
  await laptop.goto(`${station.address}${examplePath}`);
  await laptop.getByRole('link', { name: 'then walk' }).click();
  await expect(laptop.getByText('LP01 is one round spot')).toBeVisible();
  // a real bench is walked only when its cautions are read
  await expect(laptop.getByRole('button', { name: 'Walk this bench' })).toBeDisabled();
  await press(laptop, 'Practise on a simulated bench');
  await expect(instruction(laptop)).toContainText('Block the beam');
  const phone = await context.newPage();
  await phone.setViewportSize({ width: 360, height: 740 });
  await phone.goto(`${station.address}${examplePath}/walk`);
  await expect(instruction(phone)).toContainText('Block the beam');
  await handDoes(phone, 3);
  await expect(moves(laptop)).toHaveCount(3);
  await expect(instruction(laptop)).toHaveText((await instruction(phone).textContent()) ?? '');
  const verdict = laptop.getByRole('region', { name: 'The climb is over' });
  for (let steps = 0; steps < 170 && !(await verdict.isVisible()); steps += 1) await handDoes(laptop, 1);
  await expect(verdict).toBeVisible();
  await expect(phone.getByRole('region', { name: 'The climb is over' })).toBeVisible();
  await expect(verdict).toContainText('95 %');
  // only now what was hidden is told, and on both pages
  for (const page of [laptop, phone])
    await expect(page.getByRole('region', { name: 'The climb is over' })).toContainText('In truth');
  // the truth follows the screws that are turned after the end
  const told = () => verdict.getByText('Off their places at the peak').textContent();
  const before = await told();
  if (!(await laptop.getByRole('group', { name: 'M1 vertical' }).isVisible()))
    await laptop.locator('.screws summary').click();
  await laptop.getByRole('button', { name: 'M1 vertical, +1/4 turn' }).click();
  await expect.poll(told).not.toBe(before);
  await laptop.getByRole('button', { name: 'M1 vertical, −1/4 turn' }).click();
  if (process.env.LOOK !== undefined) {
    await laptop.screenshot({ path: '/tmp/walk-over-1280.png' });
    await phone.screenshot({ path: '/tmp/walk-over-360.png', fullPage: true });
  }
  for (
    let left = 0;
    left < 6 && (await laptop.getByRole('button', { name: 'Skip' }).isVisible());
    left += 1
  ) {
    const before = await moves(laptop).count();
    await press(laptop, 'Skip');
    await expect(moves(laptop)).toHaveCount(before + 1);
  }
  await expect(instruction(phone)).toContainText('Nothing is left to do');
  // the last reading stays in sight, and another walk is begun where it is chosen
  await expect(phone.locator('.reading-large')).toHaveText(/last reading [\d.]+/u);
  await press(phone, 'Begin another walk');
  await expect(phone.getByRole('heading', { name: 'Begin a walk' })).toBeInViewport();
});

test('undo takes one answer back on both pages, and a typed reading counts in the unit shown', async ({
  opened: page,
  station,
  context,
}) => {
  await practise(page, station.address);
  const other = await beside(context, station.address);
  await handDoes(page, 2);
  await expect(moves(other)).toHaveCount(2);
  await press(other, 'Undo');
  await expect(moves(page)).toHaveCount(1);
  // a hand may type for the meter, in its unit, and nothing of the walk is lost
  await other.getByText('read by Practice meter').click();
  await other.getByRole('radio', { name: 'me, typing what a meter shows' }).check();
  await press(other, 'Read by this');
  await expect(page.getByText('readings typed')).toBeVisible();
  await expect(moves(page)).toHaveCount(1);
  const field = page.getByRole('textbox');
  await field.fill('plenty');
  await press(page, 'Done');
  await expect(page.getByRole('alert')).toBeVisible();
  await field.fill('5 mW');
  await field.press('Enter');
  await expect(page.locator('.reading-best')).toContainText('5 mW');
});

test('a walk that reads a typed instrument asks for its reading, and a single one counts', async ({
  opened: page,
  station,
}) => {
  await addInstrument(page, 'handheld meter', { kind: 'typed', unit: 'W' });
  await page.goto(`${station.address}${examplePath}/walk`);
  await page.getByRole('radio', { name: /^handheld meter/u }).check();
  for (const caution of await page.getByRole('checkbox').all()) {
    await caution.click();
    await expect(caution).toBeChecked();
  }
  await press(page, 'Walk this bench');
  await expect(instruction(page)).toContainText('Block the beam');
  const field = page.getByRole('textbox');
  await field.fill('2 nW');
  await press(page, 'Done');
  await expect(moves(page)).toHaveCount(1);
  // it stands in the bench book as a reading of that instrument
  await expect(page.locator('.reading-large')).toContainText('2 nW');
  if (process.env.LOOK !== undefined)
    await page.screenshot({ path: '/tmp/walk-typed-1280.png', fullPage: true });
  // one that is typed on the page of the instruments is offered to be taken
  await page.getByRole('link', { name: 'instruments', exact: true }).click();
  await page.getByRole('button', { name: /^handheld meter/u }).click();
  await page.getByRole('textbox', { name: 'reading' }).first().fill('5 µW');
  await press(page, 'Keep reading');
  await page.goBack();
  await press(page, 'Take 5 µW');
  await expect(moves(page)).toHaveCount(2);
});

test('a walk offers no undoing of the launch', async ({ opened: page, station }) => {
  await page.goto(`${station.address}/drawer`);
  await page.goto(`${station.address}${examplePath}`);
  await press(page, 'Rename');
  const name = page.getByRole('textbox', { name: 'name of the launch' });
  await name.fill('another name');
  await name.press('Enter');
  const undo = page.getByRole('button', { name: /^Undo: /u });
  await expect(undo).toBeVisible();
  await page.goto(`${station.address}${examplePath}/walk`);
  await expect(page.getByRole('button', { name: 'Practise on a simulated bench' })).toBeVisible();
  await expect(undo).toHaveCount(0);
  // nor by its keys
  await page.keyboard.press('Control+z');
  await expect(page.getByRole('heading', { level: 1 })).toHaveText('Walk: another name');
  await page.goto(`${station.address}${examplePath}`);
  await expect(undo).toBeVisible();
});

test('a station that is killed in the middle of a walk goes on where it was', async ({
  opened: page,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  await practise(page, station.address);
  await handDoes(page, 4);
  const asked = await instruction(page).textContent();
  await station.kill();
  await press(page, 'Skip');
  // the meter that fell silent with it may be told beside it
  await expect(page.getByRole('alert').filter({ hasText: 'Press again' })).toBeVisible();
  await station.start();
  await page.reload();
  await expect(instruction(page)).toHaveText(asked ?? '');
  await expect(moves(page)).toHaveCount(4);
  await handDoes(page, 1);
});

test('by eye no share is claimed, and what is told is brighter, the same or dimmer', async ({
  opened: page,
  station,
}) => {
  await page.goto(`${station.address}${examplePath}/walk`);
  await page.getByRole('radio', { name: 'my eye: brighter, the same, dimmer' }).check();
  await press(page, 'Practise on a simulated bench');
  await expect(instruction(page)).toContainText('Rock M2');
  for (const seen of ['Brighter', 'The same', 'Dimmer', 'Brighter']) {
    const before = await moves(page).count();
    const told = page.getByRole('button', { name: seen, exact: true });
    const done = page.getByRole('button', { name: 'Done', exact: true });
    // a screw that is only turned has nothing to be told
    await expect(told.or(done).first()).toBeEnabled();
    await ((await told.isVisible()) ? told : done).click();
    await expect(moves(page)).toHaveCount(before + 1);
  }
  await expect(page.locator('.estimate')).not.toContainText('%');
});

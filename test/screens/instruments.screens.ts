import { complaints } from './axe.ts';
import { allKept, asksLate, examplePath, expect, stationGone, test } from './bench-test.ts';
import { expectNoWider } from './fits.ts';
import { add, addSerial, choose, large, openPage, press, row, tag, talking } from './instrument-page.ts';

test('a meter that is typed: readings, refusals with a mend, its unit, floor and upper end', async ({
  opened: page,
}) => {
  await page.getByRole('link', { name: 'instruments' }).click();
  await expect(page.getByText('There is none yet')).toBeVisible();
  await choose(page, 'typed');
  await add(page);
  await expect(row(page, 'typed meter')).toContainText('waits for a reading');
  const field = page.getByRole('textbox', { name: 'reading', exact: true });
  await field.fill('12');
  await press(page, 'Keep reading');
  await expect(page.getByRole('alert')).toContainText('mW');
  // the next reading is begun while this one is on its way
  await asksLate(page, 'POST', '**/readings', () => field.fill('1,5'));
  await field.fill('1.25 mW');
  await field.press('Enter');
  await expect(large(page)).toHaveText('1.250 mW');
  await expect(page.getByRole('button', { name: 'Keep reading' })).toBeEnabled();
  await expect(field).toHaveValue('1,5');
  await page.unroute('**/readings');
  await expect(row(page, 'typed meter')).toContainText('reading');
  // a bare number has the unit of the one before
  await field.press('Enter');
  await expect(large(page)).toHaveText('1.500 mW');
  await press(page, 'The beam is blocked: take this as its floor');
  await expect(page.getByText('taken from 2 readings')).toBeVisible();
  await expect(tag(page).locator('.figures')).toContainText('1.375 mW');
  await press(page, 'Forget the floor');
  await expect(tag(page).locator('.figures')).not.toContainText('1.375 mW');
  await page.getByText('Name, upper end and setup').click();
  // two changes at once: neither takes the other back
  await asksLate(page, 'PUT', '**/api/instruments/*', () => page.waitForTimeout(300));
  await press(page, 'The beam is blocked: take this as its floor');
  await page.getByRole('textbox', { name: 'name', exact: true }).first().fill('the other one');
  await page.keyboard.press('Enter');
  await expect(row(page, 'the other one')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Forget the floor' })).toBeVisible();
  await page.unroute('**/api/instruments/*');
  await page.getByRole('textbox', { name: 'upper end' }).fill('1.6 mW');
  await press(page, 'Keep');
  await field.fill('1.7');
  await field.press('Enter');
  await expect(page.getByText('at its upper end: the light may be more')).toBeVisible();
  await expect(page.locator('.trace-words')).toContainText('3 readings, lowest 1.250 mW');
  await expect(page.locator('.trace-words')).toContainText('at its upper end in one place');
});

test('an eye tells brighter and dimmer, and what it told is counted in steps', async ({
  opened: page,
  station,
}) => {
  await openPage(page, station.address);
  await choose(page, 'by eye');
  await add(page);
  await press(page, 'Brighter');
  await press(page, 'Brighter');
  await expect(large(page)).toHaveText('+2 steps');
  await press(page, 'Dimmer');
  await expect(large(page)).toHaveText('+1 step');
  // an eye has no floor to be taken
  await expect(page.getByRole('button', { name: /^The beam is blocked/u })).toHaveCount(0);
  // a walk has a choice of its own for it, and says so where an instrument is chosen
  await page.goto(`${station.address}${examplePath}/walk`);
  await expect(page.getByText(/tells steps by eye, .* choose “my eye”/u)).toBeVisible();
  await expect(page.getByRole('radio', { name: 'my eye: brighter, the same, dimmer' })).toBeVisible();
});

test('a log is played, and a practice bench is read without any device', async ({
  opened: page,
  station,
}) => {
  await openPage(page, station.address);
  await choose(page, 'log from before');
  await page.getByRole('textbox', { name: /^log/u }).fill('nothing in it');
  await expect(page.getByText('no column of it holds readings')).toBeVisible();
  const log = Array.from({ length: 40 }, (_, index) => `${index / 20};${1 + (index % 3)}.25`).join('\n');
  await page.getByRole('textbox', { name: /^log/u }).fill(`t_s;p_mW\n${log}\n`);
  await expect(page.getByText('40 readings over 1.95 s')).toBeVisible();
  await add(page);
  await expect(row(page, 'log')).toContainText('needs a hand');
  await expect(tag(page)).toContainText('the log has come to its end');
  await expect(page.locator('.trace-words')).toContainText('40 readings, lowest 1.250 mW');
  await choose(page, 'practice');
  await add(page);
  await expect(row(page, 'practice meter')).toContainText('reading');
  await expect(large(page)).toHaveText(/^[\d.]/u);
});

test('a station that was killed goes on reading, and what it missed is a gap', async ({
  opened: page,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  const device = await talking((count) => `${(3 + (count % 2) / 10).toFixed(1)} V\n`);
  await openPage(page, station.address);
  await addSerial(page);
  await expect(large(page)).toHaveText(/^3\.\d00 V$/u);
  // a second is what may be lost of a device that nobody can ask again
  await page.waitForTimeout(1_500);
  await station.kill();
  await expect(page.getByText('The station does not answer.').first()).toBeVisible();
  await station.start();
  await expect(page.locator('.trace-words')).toContainText('a gap', { timeout: 20_000 });
  const words = await page.locator('.trace-words').textContent();
  await expect(page.locator('.trace-words')).not.toHaveText(words ?? '');
  await expect(row(page, 'serial meter')).toContainText('reading');
  await press(page, 'Switch it off');
  await expect(row(page, 'serial meter')).toContainText('off');
  await device.end();
});

test('a trace is zoomed by keys, buttons, a drag and two fingers', async ({ opened: page, station }) => {
  await openPage(page, station.address);
  await choose(page, 'log from before');
  const log = Array.from({ length: 400 }, (_, index) => `${index / 100};${(index * 7) % 11}.5`).join('\n');
  await page.getByRole('textbox', { name: /^log/u }).fill(log);
  // as long as it was: the gap behind its end comes late on a busy machine, and must not count
  await add(page);
  await expect(row(page, 'log')).toContainText('needs a hand');
  const words = page.locator('.trace-words');
  const count = async (): Promise<number> =>
    Number(/([\d ]+) readings?,/u.exec((await words.textContent()) ?? '')?.[1]?.replaceAll(' ', '') ?? '0');
  const trace = page.getByRole('group', { name: /^Readings over time/u });
  await trace.focus();
  await page.keyboard.press('Home');
  await expect.poll(count).toBe(400);
  await page.keyboard.press('+');
  await expect.poll(count).toBeLessThan(220);
  await expect.poll(count).toBeGreaterThan(180);
  await page.keyboard.press('ArrowRight');
  await expect(words).not.toContainText('lowest 100');
  await press(page, 'all');
  await expect.poll(count).toBe(400);
  const box = await page.locator('.u-over').boundingBox();
  if (box === null) throw new Error('no plot');
  const at = (share: number) => ({ x: box.x + share * box.width, y: box.y + box.height / 2 });
  await page.mouse.move(at(0.25).x, at(0.25).y);
  await page.mouse.down();
  await page.mouse.move(at(0.5).x, at(0.5).y, { steps: 5 });
  await page.mouse.up();
  // a quarter of 400, to a pixel either side
  await expect.poll(count).toBeLessThan(110);
  await expect.poll(count).toBeGreaterThan(90);
  await press(page, 'all');
  await expect.poll(count).toBe(400);
  const fingers = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', shares: readonly number[]) =>
    fingers.send('Input.dispatchTouchEvent', {
      type,
      touchPoints: shares.map((share, id) => ({ ...at(share), id })),
    });
  await touch('touchStart', [0.4]);
  await touch('touchStart', [0.4, 0.6]);
  await touch('touchMove', [0.3, 0.7]);
  await touch('touchMove', [0.2, 0.8]);
  await touch('touchEnd', []);
  // three times as far apart shows a third of the time
  await expect.poll(count).toBeLessThan(150);
  await expect.poll(count).toBeGreaterThan(115);
});

test('all of it by keys alone, and a name, a setup and a farewell', async ({ opened: page, station }) => {
  await openPage(page, station.address);
  await page.getByRole('radio', { name: /^typed/u }).focus();
  await page.keyboard.press('Space');
  const add = page.getByRole('button', { name: 'Add and switch on' });
  // a button that cannot be pressed yet takes no focus
  await expect(add).toBeEnabled();
  await add.focus();
  await page.keyboard.press('Enter');
  await expect(row(page, 'typed meter')).toBeVisible();
  await page.getByText('Name, upper end and setup').focus();
  await page.keyboard.press('Enter');
  await page.getByRole('textbox', { name: 'name', exact: true }).first().fill('the old one');
  await page.keyboard.press('Enter');
  await expect(row(page, 'the old one')).toBeVisible();
  // its address leads to it
  await page.reload();
  await expect(tag(page)).toBeVisible();
  await page.getByText('Name, upper end and setup').click();
  await press(page, 'Put it away');
  await press(page, 'Put it away now');
  await expect(page.getByText('There is none yet')).toBeVisible();
});

test('two pages are in step', async ({ opened: page, station, context }) => {
  await openPage(page, station.address);
  const other = await context.newPage();
  await openPage(other, station.address);
  await choose(page, 'typed');
  await add(page);
  await row(other, 'typed meter').click();
  await page.getByRole('textbox', { name: 'reading', exact: true }).fill('3 mW');
  await page.keyboard.press('Enter');
  await expect(large(other)).toHaveText('3.000 mW');
  await other.getByRole('button', { name: 'Switch it off' }).click();
  await expect(row(page, 'typed meter')).toContainText('off');
});

test('axe in both themes, and no page wider than the screen at 1280, 768 and 360 px', async ({
  opened: page,
  station,
}) => {
  test.setTimeout(120_000);
  for (const theme of ['dark', 'light'] as const) {
    await page.goto(station.address);
    await page.getByRole('radio', { name: theme, exact: true }).check();
    await allKept(page);
    await openPage(page, station.address);
    if (theme === 'dark') {
      await choose(page, 'practice');
      await add(page);
      await expect(row(page, 'practice meter')).toContainText('reading');
      await press(page, 'The beam is blocked: take this as its floor');
      await choose(page, 'typed');
      await add(page);
      await expect(row(page, 'typed meter')).toHaveAttribute('aria-expanded', 'true');
      await row(page, 'practice meter').click();
    } else await row(page, 'practice meter').click();
    await choose(page, 'serial line');
    await expect(page.locator('.u-over')).toBeVisible();
    for (const width of [1280, 768, 360]) {
      await page.setViewportSize({ width, height: 800 });
      await expectNoWider(page, `${width} px`);
      if (process.env.LOOK !== undefined && width !== 768)
        await page.screenshot({ path: `/tmp/instruments-${width}-${theme}.png`, fullPage: true });
    }
    expect(await complaints(page), theme).toEqual([]);
    await page.setViewportSize({ width: 1280, height: 800 });
  }
});

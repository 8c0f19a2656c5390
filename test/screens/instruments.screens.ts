/// <reference lib="dom" />
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import {
  type FakeSerial,
  fakeMeter,
  fakeSerial,
} from '../../packages/station/src/instruments/fake-device.ts';
import { complaints } from './axe.ts';
import { allKept, asksLate, examplePath, expect, stationGone, test } from './bench-test.ts';
import { expectNoWider } from './fits.ts';

const row = (page: Page, name: string) =>
  page
    .getByRole('list', { name: 'Instruments in use' })
    .getByRole('button', { name: new RegExp(`^${name}`, 'u') });
const tag = (page: Page) => page.locator('.instrument-tag');
const large = (page: Page) => page.locator('.reading-now');
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).click();

async function openPage(page: Page, address: string): Promise<void> {
  await page.goto(`${address}/instruments`);
  await expect(page.getByRole('heading', { level: 2, name: 'Add an instrument' })).toBeVisible();
}

async function choose(page: Page, kind: string): Promise<void> {
  await page.getByRole('radio', { name: new RegExp(`^${kind}`, 'u') }).check();
}

const add = (page: Page) => press(page, 'Add and switch on');

/** A port of this machine's own, for one test at a time. */
const portPath = join('/dev/shm', `coreward-screens-${process.pid}`);

/** A device that says a number every 50 ms until it is unplugged. */
async function talking(
  line: (count: number) => string,
): Promise<FakeSerial & { readonly end: () => Promise<void> }> {
  const device = await fakeSerial(portPath);
  let count = 0;
  const timer = setInterval(() => {
    count += 1;
    device.say(line(count));
  }, 50);
  return {
    ...device,
    end: async () => {
      clearInterval(timer);
      await device.unplug();
    },
  };
}

/** Adds the device at `portPath`, its form recognised from what it says. */
async function addSerial(page: Page): Promise<void> {
  await choose(page, 'serial line');
  const port = page.getByRole('combobox', { name: 'port', exact: true });
  await port.selectOption({ label: 'another, by its name' });
  await page.getByRole('textbox', { name: 'name of the port' }).fill(portPath);
  await press(page, 'Listen for a moment');
  await expect(page.getByText(/lines were heard/u)).toBeVisible();
  await expect(page.getByRole('table', { name: 'The last lines it said' })).not.toContainText('passed over');
  await add(page);
  await expect(tag(page)).toBeVisible();
}

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

test('a serial device is listened to first, read, unplugged with a gap, and read on by itself', async ({
  opened: page,
  station,
}) => {
  const first = await talking((count) => `${count}\t${(1 + (count % 5) / 100).toFixed(3)} mW\r\n`);
  await openPage(page, station.address);
  await addSerial(page);
  await expect(large(page)).toHaveText(/^1\.0\d\d mW$/u);
  await expect(row(page, 'serial meter')).toContainText('reading');
  await expect(tag(page).locator('.figures')).toContainText('a second');
  await first.end();
  await expect(row(page, 'serial meter')).toContainText('silent');
  await expect(tag(page)).toContainText('Plug the device in');
  await expect(large(page)).toHaveText('nothing comes');
  await expect(page.locator('.trace-words')).toContainText('a gap');
  const again = await talking(() => '7\t2.000 mW\r\n');
  await expect(large(page)).toHaveText('2.000 mW');
  await expect(row(page, 'serial meter')).toContainText('reading');
  // the gap stays in what is drawn of it
  await expect(page.locator('.trace-words')).toContainText('a gap');
  await again.end();
});

test('columns of a serial device can be chosen otherwise than they were recognised', async ({
  opened: page,
  station,
}) => {
  const device = await talking((count) => `t=${count}, ref=5.0, light=${(2 + count / 1000).toFixed(3)}\n`);
  await openPage(page, station.address);
  await choose(page, 'serial line');
  await page
    .getByRole('combobox', { name: 'port', exact: true })
    .selectOption({ label: 'another, by its name' });
  await page.getByRole('textbox', { name: 'name of the port' }).fill(portPath);
  await expect(page.getByRole('button', { name: 'Add and switch on' })).toBeDisabled();
  await press(page, 'Listen for a moment');
  const sample = page.getByRole('table', { name: 'The last lines it said' });
  await expect(sample).toContainText('light 2.');
  await page.getByRole('combobox', { name: 'column of the reading' }).selectOption('2');
  await page.getByRole('combobox', { name: 'unit, where the line has none' }).selectOption('V');
  await expect(sample.getByRole('row').last()).toContainText('5.000 V');
  await add(page);
  await expect(large(page)).toHaveText('5.000 V');
  await device.end();
});

test('rubbish from a serial device hurts nothing', async ({ opened: page, station }) => {
  const device = await talking((count) => `${count % 7}.5\n`);
  await openPage(page, station.address);
  await addSerial(page);
  await expect(large(page)).toHaveText(/^\d\.500$/u);
  // bytes that are no text, a line without an end, a number cut in half, an absurd one
  device.say(Buffer.from([0xff, 0xfe, 0x00, 0x80, 0x0a]));
  device.say('x'.repeat(50_000));
  device.say('\n12.3.4.5\n1e99999\n<script>alert(1)</script>\n\u001b[2J\n');
  const words = page.locator('.trace-words');
  const before = await words.textContent();
  await expect(words).not.toHaveText(before ?? '');
  await expect(row(page, 'serial meter')).toContainText('reading');
  await expect(words).not.toContainText('∞');
  await device.end();
});

test('a device in the network is asked who it is, and its query and unit can be written', async ({
  opened: page,
  station,
}) => {
  const meter = await fakeMeter((query) =>
    query === '*IDN?' ? 'Invented Works,Meter 1,0,1.0\n' : query === 'FETC?' ? '+2.5E-03\n' : null,
  );
  await openPage(page, station.address);
  await choose(page, 'asked');
  await page.getByRole('textbox', { name: 'address' }).fill('127.0.0.1');
  await page.getByRole('textbox', { name: 'port in the network' }).fill(String(meter.port));
  // what is typed while it is asked stays; with nothing typed the query that was answered is taken
  const query = page.getByRole('textbox', { name: 'query' });
  const before = await query.inputValue();
  await asksLate(page, 'POST', '**/try', () => query.fill('MEAS?'));
  await press(page, 'Ask who it is');
  await expect(page.getByText('It says it is: Invented Works,Meter 1,0,1.0')).toBeVisible();
  await expect(query).toHaveValue('MEAS?');
  await page.unroute('**/try');
  await query.fill(before);
  await press(page, 'Ask who it is');
  await expect(page.getByText('It says it is: Invented Works,Meter 1,0,1.0')).toBeVisible();
  await expect(page.getByText('FETC? was answered with 2.500 mW')).toBeVisible();
  await page.getByRole('combobox', { name: 'unit of its answer' }).selectOption('V');
  await expect(page.getByText('FETC? was answered with 2.500 mV')).toBeVisible();
  await add(page);
  await expect(large(page)).toHaveText('2.500 mV');
  const { port } = meter;
  await meter.unplug();
  await expect(row(page, 'bench meter')).toContainText('silent');
  await expect(tag(page)).toContainText('Switch the device on');
  const again = await fakeMeter(() => '9.9E37\n', port);
  // SCPI's infinity: more than it can count, at the highest reading there was
  await expect(page.getByText('at its upper end: the light may be more')).toBeVisible();
  await expect(large(page)).toHaveText('2.500 mV');
  await again.unplug();
});

test('a device that is not there is refused with what to do', async ({
  opened: page,
  station,
  mayComplain,
}) => {
  mayComplain.push(/422/u);
  await openPage(page, station.address);
  await choose(page, 'asked');
  await page.getByRole('textbox', { name: 'address' }).fill('127.0.0.1');
  await page.getByRole('textbox', { name: 'port in the network' }).fill('1');
  await press(page, 'Ask who it is');
  await expect(page.getByText('Switch the device on.')).toBeVisible();
  await choose(page, 'serial line');
  await page
    .getByRole('combobox', { name: 'port', exact: true })
    .selectOption({ label: 'another, by its name' });
  await page.getByRole('textbox', { name: 'name of the port' }).fill('/dev/coreward-not-there');
  await press(page, 'Listen for a moment');
  await expect(page.getByText('Plug the device in.')).toBeVisible();
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

import { fakeMeter } from '../../packages/station/src/instruments/fake-device.ts';
import { asksLate, expect, test } from './bench-test.ts';
import {
  add,
  addSerial,
  choose,
  large,
  openPage,
  portPath,
  press,
  row,
  tag,
  talking,
} from './instrument-page.ts';

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

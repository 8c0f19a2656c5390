/// <reference lib="dom" />
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import type { InstrumentSetup } from '../../packages/contract/src/index.ts';
import { type FakeSerial, fakeSerial } from '../../packages/station/src/instruments/fake-device.ts';
import { complaints } from './axe.ts';
import { examplePath, stationGone, test, expect as usualExpect } from './bench-test.ts';
import { expectNoWider } from './fits.ts';
import type { StationUnderTest } from './station-under-test.ts';
import { addInstrument, instruction, moves, press } from './walk-page.ts';
import { type Asked, askedIn, type LiveBench, liveBench, rock, turnDown } from './walking-hand.ts';

/** Two pages, a device and a hand share a machine that may be slow. */
const expect = usualExpect.configure({ timeout: 30_000 });

const text = readFileSync(new URL('../../examples/observing-loft.launch.yaml', import.meta.url), 'utf8');
/** A bench whose start is dark, five floors, and whose walk is short: the darkest of seeds 1000 to 1039 that keep to 20 steps. */
const seed = 1015;

/** A port of this machine's own, for one test at a time. */
const portPath = join('/dev/shm', `coreward-live-${process.pid}`);
const pace = 20;

const sign = (page: Page) => page.locator('.sign');
const take = (page: Page) => page.locator('.take');

/** A meter on a serial line that says what a simulated bench shows. */
interface Device {
  /** More than 1: a gain that was raised. */
  gain: number;
  /** The reading from which on it says that it is over its range, W. */
  range: number;
  readonly unplug: () => Promise<void>;
  readonly plug: () => Promise<void>;
  /** Unplugs it for good. */
  readonly end: () => Promise<void>;
}

async function device(live: LiveBench): Promise<Device> {
  let serial: FakeSerial | null = await fakeSerial(portPath);
  const own: Device = {
    gain: 1,
    range: Number.POSITIVE_INFINITY,
    unplug: async () => {
      const gone = serial;
      serial = null;
      await gone?.unplug();
    },
    plug: async () => {
      serial = await fakeSerial(portPath);
    },
    end: async () => {
      clearInterval(timer);
      await own.unplug();
    },
  };
  const timer = setInterval(() => {
    const reading = own.gain * live.look();
    serial?.say(reading > own.range ? 'OVER\r\n' : `${reading.toExponential(4)} W\r\n`);
  }, pace);
  return own;
}

/** The instrument of the bench book that reads it. */
const meterSetup: InstrumentSetup = {
  kind: 'serial-line',
  link: { by: 'serial', path: portPath, baudRate: 115_200 },
  format: { separator: 'none', decimal: 'point', column: 0, unit: 'W' },
};

/** A laptop and a phone at the same walk of a real bench, read by the photodiode. */
async function begin(laptop: Page, context: BrowserContext, station: StationUnderTest): Promise<Page> {
  await addInstrument(laptop, 'bench photodiode', meterSetup);
  await laptop.goto(`${station.address}${examplePath}/walk`);
  await laptop.getByRole('radio', { name: /^bench photodiode/u }).check();
  for (const caution of await laptop.getByRole('checkbox').all()) {
    await caution.click();
    // ticked once the bench book has it
    await expect(caution).toBeChecked();
  }
  await press(laptop, 'Walk this bench');
  await expect(instruction(laptop)).toContainText('Block the beam');
  const phone = await context.newPage();
  await phone.setViewportSize({ width: 360, height: 740 });
  await phone.goto(`${station.address}${examplePath}/walk`);
  await expect(instruction(phone)).toContainText('Block the beam');
  return phone;
}

/** Does what the phone asks, at the bench; the answer is not given yet. */
async function handDoes(live: LiveBench, phone: Page): Promise<Asked> {
  const asked = askedIn((await instruction(phone).textContent()) ?? '');
  if (asked.do === 'block') live.bench.block(true);
  if (asked.do === 'rock') await rock(live, asked.screw);
  if (asked.do === 'turn down') await turnDown(live, asked.screw, asked.sense, asked.target);
  return asked;
}

/** Takes what the meter has come to: what is not ready any more by two presses, for a machine may be slow. */
async function takeIt(page: Page): Promise<void> {
  await take(page).click();
  const again = page.getByRole('button', { name: / all the same$/u });
  if (await again.isVisible()) await again.click();
}

/** Does a step and confirms it by a press on the phone. */
async function step(live: LiveBench, phone: Page): Promise<void> {
  const before = await moves(phone).count();
  await handDoes(live, phone);
  await expect(sign(phone)).toHaveText(/At rest|At the peak|There: stop/u);
  await takeIt(phone);
  await expect(moves(phone)).toHaveCount(before + 1);
  live.bench.block(false);
}

test('from dark to done: a live photodiode, a hand at the screws, phone and laptop in step', async ({
  opened: laptop,
  context,
  station,
}) => {
  test.setTimeout(360_000);
  const live = liveBench(text, seed);
  const meter = await device(live);
  const phone = await begin(laptop, context, station);
  for (let steps = 0; steps < 4; steps += 1) await step(live, phone);
  await expect(moves(laptop)).toHaveCount(4);
  await expect(instruction(laptop)).toHaveText((await instruction(phone).textContent()) ?? '');
  // the rest needs no press: the hand stays at the screws
  await press(phone, 'Goes on by itself');
  await expect(laptop.getByRole('button', { name: 'Goes on by itself' })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  const verdict = laptop.getByRole('region', { name: 'The climb is over' });
  let pressed = 0;
  for (let steps = 0; steps < 80 && !(await verdict.isVisible()); steps += 1) {
    const before = await moves(phone).count();
    const asked = await handDoes(live, phone);
    // that a focus was turned no meter tells
    const isOn =
      asked.do !== 'after' &&
      (await expect(moves(phone))
        .toHaveCount(before + 1, { timeout: 12_000 })
        .then(
          () => true,
          () => false,
        ));
    live.bench.block(false);
    if (isOn) continue;
    // a meter that is noisy may never show its highest again: one press does
    pressed += 1;
    await takeIt(phone);
    await expect(moves(phone)).toHaveCount(before + 1);
  }
  await expect(verdict).toBeVisible();
  await expect(phone.getByRole('region', { name: 'The climb is over' })).toBeVisible();
  const done = await moves(phone).count();
  // what the verdict claims is true of the bench that nobody but the test can see into
  expect(live.bench.trueShare()).toBeGreaterThan(0.9);
  expect(pressed).toBeLessThan(done / 3);
  await expect(laptop.locator('.trace canvas')).toBeVisible();
  await meter.end();
});

test('unplugged, too much light, a wrong screw and a killed station: each is said, and the walk goes on', async ({
  opened: laptop,
  context,
  station,
  mayComplain,
}) => {
  mayComplain.push(stationGone);
  test.setTimeout(300_000);
  const live = liveBench(text, seed);
  const meter = await device(live);
  const phone = await begin(laptop, context, station);
  await step(live, phone);
  await step(live, phone);

  // unplugged in the middle of a turn: the step waits, and goes on by itself
  await meter.unplug();
  await expect(sign(phone)).toHaveText('No readings: the step waits.');
  await expect(phone.getByRole('alert')).toContainText('bench photodiode');
  await expect(take(phone)).toBeDisabled();
  await meter.plug();
  await expect(sign(phone)).not.toHaveText('No readings: the step waits.');
  await expect(phone.getByRole('alert')).toHaveCount(0);
  await step(live, phone);
  await step(live, phone);

  // killed in the middle of a turn: pages come back to the same step, the instrument with it
  const asked = (await instruction(phone).textContent()) ?? '';
  await station.kill();
  await expect(sign(phone)).toHaveText('No readings: the step waits.', { timeout: 20_000 });
  await station.start();
  await expect(sign(phone)).not.toHaveText('No readings: the step waits.', { timeout: 30_000 });
  for (const page of [phone, laptop]) {
    await expect(instruction(page)).toHaveText(asked);
    await expect(moves(page)).toHaveCount(4);
  }

  // on to the first step of M1, and then the wrong screw of M2
  for (let steps = 0; steps < 8; steps += 1) {
    const next = askedIn((await instruction(phone).textContent()) ?? '');
    await step(live, phone);
    if (next.do === 'turn down') break;
  }
  const right = askedIn((await instruction(phone).textContent()) ?? '');
  if (right.do !== 'rock') throw new Error('M2 does not follow M1');
  const { axis } = right.screw;
  const wrong = { mirror: 'M2', axis: axis === 'horizontal' ? 'vertical' : 'horizontal' } as const;
  await rock(live, wrong);
  await expect(sign(phone)).toHaveText('The light does not come back.');
  await expect(phone.locator('.mend')).toContainText(`Is it M2 ${axis} that you turn`);
  await press(phone, 'Did not work');
  await expect(laptop.getByText('The light did not come back')).toBeVisible();
  await step(live, phone);

  // more light than the range: it is no peak, and after the gain was lowered the walk begins anew
  meter.range = 0.8 * live.look();
  await expect(sign(phone)).toHaveText('Too much light for this meter.');
  await expect(phone.locator('.mend')).toContainText('Lower its gain or the laser power');
  await expect(take(phone)).toBeDisabled();
  meter.gain = 0.1;
  await press(phone, 'Begin anew from here');
  await expect(instruction(laptop)).toContainText('Block the beam');
  // either may hear of it first
  for (const page of [laptop, phone]) await expect(moves(page)).toHaveCount(0);
  await step(live, phone);
  await expect(moves(laptop)).toHaveCount(1);
  await meter.end();
});

test('axe and 360 px while readings stream, and one press that says what it takes', async ({
  opened: laptop,
  context,
  station,
}) => {
  test.setTimeout(120_000);
  const live = liveBench(text, seed);
  const meter = await device(live);
  const phone = await begin(laptop, context, station);
  await step(live, phone);
  await expect(take(phone)).toHaveText(/^Take [\d.]+ [µnpm]?W$/u);
  if (process.env.LOOK !== undefined) {
    await phone.screenshot({ path: '/tmp/live-360.png' });
    await laptop.screenshot({ path: '/tmp/live-1280.png', fullPage: true });
  }
  await expectNoWider(phone, 'a live walk');
  // what a hand needs is on the first screen of a phone: instruction, number, words and the one press
  const { y = 0, height = 0 } = (await take(phone).boundingBox()) ?? {};
  expect(y + height).toBeLessThan(740);
  expect(await complaints(phone)).toEqual([]);
  await meter.end();
});

/**
 * How fluently a million readings are shown and zoomed, in a real browser from a real station: `npm run build && npm run
 * bench:trace`. Prints what it measured; it refuses nothing, for a busy machine is not the page's fault.
 */
import { randomBytes } from 'node:crypto';
import { chromium, type Page } from '@playwright/test';
import { BenchBook } from '../packages/station/src/bench-book/bench-book.ts';
import { startStation } from '../test/screens/station-under-test.ts';

const id = '00000000-0000-4000-8000-0000000ace00';
const count = 1_000_000;
/** From one reading to the next, ms: a thousand seconds of a fast device. */
const apart = 1;

/** A slow swing with noise on it, a gap every 100 000 readings. */
function fill(folder: string): void {
  const book = new BenchBook(folder, { now: () => new Date(), randomBytes });
  const setup = JSON.stringify({ kind: 'typed', unit: 'W' });
  book.readings.write({
    ...{ id, kind: 'typed', unit: 'W', name: 'a million', setup },
    ...{ floor: null, saturation: null, on: false, putAway: false },
  });
  const start = Date.UTC(2026, 10, 1);
  for (let at = 0; at < count; at += 10_000) {
    const readings = Array.from({ length: 10_000 }, (_, index) => {
      const rank = at + index;
      const value = 1e-3 * (1 + 0.2 * Math.sin(rank / 30_000) + 0.05 * Math.sin(rank * rank));
      return { t: start + rank * apart, value: rank % 100_000 === 50_000 ? null : value, saturated: false };
    });
    book.readings.keep(new Map([[id, readings]]));
  }
  book.close();
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** Does something, and waits until the words beside the trace say something else; ms. */
async function until(page: Page, act: () => Promise<void>): Promise<number> {
  const words = page.locator('.trace-words');
  const before = await words.textContent();
  const begun = performance.now();
  await act();
  await page.waitForFunction((was) => document.querySelector('.trace-words')?.textContent !== was, before, {
    polling: 'raf',
  });
  return performance.now() - begun;
}

/** Frames while two fingers zoom for two seconds, ms each. */
const pinching = (page: Page): Promise<readonly number[]> =>
  page.locator('.u-over').evaluate(async (over) => {
    const frames: number[] = [];
    const box = over.getBoundingClientRect();
    let before = await new Promise<number>(requestAnimationFrame);
    for (let turn = 0; turn < 120; turn += 1) {
      over.dispatchEvent(
        new WheelEvent('wheel', {
          bubbles: true,
          cancelable: true,
          ctrlKey: true,
          deltaY: turn % 60 < 30 ? -10 : 10,
          clientX: box.left + box.width / 2,
        }),
      );
      const now = await new Promise<number>(requestAnimationFrame);
      frames.push(now - before);
      before = now;
    }
    return frames;
  });

const station = await startStation();
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
});
try {
  await station.kill();
  fill(station.folder);
  await station.start();
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  // what tsx puts around functions, and the page does not know
  await page.addInitScript('globalThis.__name = (named) => named');
  const begun = performance.now();
  await page.goto(`${station.address}/instruments#${id}`);
  await page.locator('.trace-words', { hasText: 'readings,' }).waitFor();
  const opened = performance.now() - begun;
  const all = await until(page, () => page.getByRole('button', { name: 'all', exact: true }).click());
  const told = (await page.locator('.trace-words').textContent()) ?? '';
  const trace = page.getByRole('group', { name: /^Readings over time/u });
  await trace.focus();
  const zooms: number[] = [];
  for (const key of ['+', '+', '+', '+', 'ArrowRight', 'ArrowLeft', '-', '-']) {
    await page.waitForTimeout(300);
    zooms.push(await until(page, () => page.keyboard.press(key)));
  }
  const frames = await pinching(page);
  const rows = [
    ['page with the last minute of it', opened],
    ['all of it, from the press on', all],
    ['a zoom or a step, middle', median(zooms)],
    ['a zoom or a step, slowest', Math.max(...zooms)],
    [`frames while pinching (${frames.length}), middle`, median(frames)],
    ['frames while pinching, slowest', Math.max(...frames)],
  ] as const;
  console.log(told);
  for (const [what, measured] of rows) console.log(`${what.padEnd(44)}${measured.toFixed(0).padStart(7)} ms`);
} finally {
  await browser.close();
  await station.clear();
}

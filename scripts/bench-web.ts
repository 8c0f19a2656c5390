/**
 * How fast the launch page is, in a real browser from a real station: `npm run build && npm run bench:web`. Prints what
 * it measured beside what it should be; it refuses nothing, for a busy machine is not the page's fault.
 */
import { gzipSync } from 'node:zlib';
import { chromium, type Page } from '@playwright/test';
import { startStation } from '../test/screens/station-under-test.ts';

const examplePath = '/launch/e8a3b1e0-0000-4000-8000-000000000001';

/** The share of the values, in rising order, that lies at or below it. */
function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

const station = await startStation();
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
});
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const scripts = new Map<string, number>();
  const weighing: Promise<void>[] = [];
  page.on('response', (response) => {
    if (!/\.js$/u.test(new URL(response.url()).pathname)) return;
    weighing.push(
      response.body().then((body) => {
        scripts.set(response.url(), gzipSync(body, { level: 9 }).length);
      }),
    );
  });
  // what tsx puts around functions, and the page does not know
  await page.addInitScript('globalThis.__name = (named) => named');
  await page.addInitScript(watchThePage);
  await page.goto(`${station.address}${examplePath}`);
  await page.locator('.answer[aria-busy="false"]').waitFor();
  await Promise.all(weighing);
  const { painted, interactive, ranged } = await page.evaluate(() => {
    const paint = performance.getEntriesByName('first-contentful-paint')[0];
    const at = (name: string) => performance.getEntriesByName(name)[0]?.startTime ?? Number.NaN;
    return { painted: paint?.startTime ?? Number.NaN, interactive: at('parts'), ranged: at('ranged') };
  });
  const isWorker = (address: string) => address.includes('worker');
  const weigh = (which: (address: string) => boolean) =>
    [...scripts].reduce((sum, [address, bytes]) => (which(address) ? sum + bytes : sum), 0) / 1000;
  await dragTheFocalLength(page);
  const { frames, work, settle } = await page.evaluate(() => {
    const { dragged } = window as unknown as {
      readonly dragged: { frames: number[]; work: number[]; settle: number[] };
    };
    return dragged;
  });
  const rows: readonly (readonly [what: string, measured: string, goal: string])[] = [
    ['first paint', `${painted.toFixed(0)} ms`, ''],
    ['first paint to interactive', `${(interactive - painted).toFixed(0)} ms`, '1000 ms'],
    ['first paint to ranges', `${(ranged - painted).toFixed(0)} ms`, ''],
    ['JavaScript of the page, gzip', `${weigh((it) => !isWorker(it)).toFixed(0)} kB`, '250 kB'],
    ['JavaScript of the worker, gzip', `${weigh(isWorker).toFixed(0)} kB`, ''],
    [`frames while dragging (${frames.length}), middle`, `${quantile(frames, 0.5).toFixed(1)} ms`, ''],
    ['frames while dragging, 95 %', `${quantile(frames, 0.95).toFixed(1)} ms`, '16.7 ms'],
    [`forecast and drawing of a move, middle`, `${quantile(work, 0.5).toFixed(1)} ms`, ''],
    ['forecast and drawing of a move, 95 %', `${quantile(work, 0.95).toFixed(1)} ms`, '16 ms'],
    ['ranges after the hand stops, middle', `${quantile(settle, 0.5).toFixed(0)} ms`, '150 ms'],
  ];
  for (const [what, measured, goal] of rows) {
    console.log(`${what.padEnd(44)}${measured.padStart(10)}${goal === '' ? '' : `   goal ${goal}`}`);
  }
} finally {
  await browser.close();
  await station.clear();
}

/** Marks when the parts can be pressed and when the ranges are there; runs in the page. */
function watchThePage(): void {
  const seen = new Set<string>();
  const mark = (name: string, selector: string): void => {
    if (seen.has(name) || document.querySelector(selector) === null) return;
    seen.add(name);
    performance.mark(name);
  };
  const watch = new MutationObserver(() => {
    mark('parts', '.part');
    mark('ranged', '.answer[aria-busy="false"]');
  });
  watch.observe(document, {
    subtree: true,
    childList: true,
    attributes: true,
    attributeFilter: ['aria-busy'],
  });
}

/**
 * Turns the wheel to and fro for four seconds, once a frame, and stops ten times on the way. The hand is as fast at its
 * turning points as in between: every move makes another length, also to the third digit, and none is waited for in vain.
 */
async function dragTheFocalLength(page: Page): Promise<void> {
  await page
    .getByRole('button', { name: /^red one/u })
    .first()
    .click();
  const wheel = page.getByRole('slider', { name: 'turn focal length' });
  await wheel.scrollIntoViewIfNeeded();
  await wheel.evaluate(async (element) => {
    const dragged = { frames: [] as number[], work: [] as number[], settle: [] as number[] };
    Object.assign(window, { dragged });
    const frame = () => new Promise<number>((resolve) => requestAnimationFrame(resolve));
    const placeOfTheHand = (move: number) => 13 - Math.abs(((move + 13) % 52) - 26);
    const box = element.getBoundingClientRect();
    const send = (type: string, x: number) =>
      element.dispatchEvent(
        new PointerEvent(type, {
          bubbles: true,
          pointerId: 1,
          clientX: box.left + x,
          clientY: box.top + 10,
          button: 0,
          isPrimary: true,
        }),
      );
    // a made-up pointer cannot be captured
    element.setPointerCapture = () => undefined;
    send('pointerdown', 40);
    let before = await frame();
    for (let stop = 0; stop < 10; stop += 1) {
      for (let step = 0; step < 24; step += 1) {
        const started = performance.now();
        // the page is done with the move when the wheel says the new length; asking it again and again would take its time
        const told = new Promise<void>((resolve) => {
          const watch = new MutationObserver(() => {
            watch.disconnect();
            resolve();
          });
          watch.observe(element, { attributes: true, attributeFilter: ['aria-valuetext'] });
        });
        send('pointermove', 40 + 10 * placeOfTheHand(stop * 24 + step + 1));
        await told;
        dragged.work.push(performance.now() - started);
        const now = await frame();
        if (step > 0) dragged.frames.push(now - before);
        before = now;
      }
      const halted = performance.now();
      while (document.querySelector('.answer[aria-busy="false"]') === null) await frame();
      dragged.settle.push(performance.now() - halted);
      before = await frame();
    }
    send('pointerup', 40);
  });
}

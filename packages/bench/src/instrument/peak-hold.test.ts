import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { heldPeak, holdFrom, isBackAtPeak, isPeakKnown, type PeakHold, withShown } from './peak-hold.ts';
import type { Reading } from './reading.ts';
import {
  emptyWindow,
  noiseOfWindow,
  type Shown,
  type Standing,
  shownNow,
  standingNow,
  withHeard,
} from './reading-window.ts';

/** A screw that is turned evenly from one place to the next, in 1/e half-widths of the peak; each stretch takes its seconds. */
interface Turned {
  readonly to: number;
  readonly seconds: number;
}

interface Bench {
  readonly noise: number;
  readonly rate: number;
  readonly seed: number;
  /** Change of the source a second. */
  readonly drift?: number;
  /** Instead of a reading, now and then: what a loose plug says. */
  readonly strays?: { readonly share: number; readonly value: number };
}

/** The light of a peak of 1 on no floor, read while a hand turns: e^−x², the overlap of two Gaussian modes. */
function readingsOf(turned: readonly Turned[], from: number, bench: Bench): readonly Reading[] {
  const random = seededUniform(bench.seed);
  const readings: Reading[] = [];
  let [x, t] = [from, 0];
  for (const { to, seconds } of turned) {
    const steps = Math.round(seconds * bench.rate);
    const start = x;
    for (let step = 1; step <= steps; step += 1) {
      x = start + ((to - start) * step) / Math.max(1, steps);
      t += 1000 / bench.rate;
      const light = Math.exp(-x * x) * (1 - ((bench.drift ?? 0) * t) / 1000);
      const isStray = random() < (bench.strays?.share ?? 0);
      const value = isStray ? bench.strays!.value : light * (1 + bench.noise * normalFrom(random));
      readings.push({ t, value, saturated: false });
    }
    x = to;
  }
  return readings;
}

interface Heard {
  readonly hold: PeakHold;
  readonly now: Shown;
  readonly standing: Standing;
}

function heardOf(readings: readonly Reading[]): Heard {
  let window = emptyWindow;
  let hold: PeakHold | null = null;
  let now: Shown | null = null;
  for (const reading of readings) {
    window = withHeard(window, reading);
    const shown = shownNow(window, null, 0);
    if (shown === null || shown.t !== reading.t) continue;
    now = shown;
    hold = hold === null ? holdFrom(shown) : withShown(hold, shown, 0);
  }
  return { hold: hold!, now: now!, standing: standingNow(window, null, 0)! };
}

/** From well below, over the top, to well below, as a hand rocks a screw. */
const rocking: readonly Turned[] = [{ to: 1.2, seconds: 6 }];
const quiet = { noise: 0.01, rate: 10, seed: 4 };

test('the peak is held within noise while a hand rocks through it, and both its sides are known', () => {
  // standing means of 200 throws each: the median of three has 0.67 σ, and the top of a slow pass has some dozen of them
  for (const noise of [0.001, 0.01, 0.03]) {
    const held = Array.from({ length: 200 }, (_, seed) => {
      const { hold } = heardOf(readingsOf(rocking, -1.2, { noise, rate: 10, seed }));
      expect(isPeakKnown(hold)).toBe(true);
      return heldPeak(hold).value;
    });
    const mean = held.reduce((sum, one) => sum + one, 0) / held.length;
    // highest of some medians: above the truth by no more than what practice hands read off, 0.8 σ and 0.7 σ besides;
    // below by what three readings span of the top, (0.04/3)² of it, and by noise
    expect(mean).toBeGreaterThan(1 - 0.003 - 0.5 * noise);
    expect(mean).toBeLessThan(1 + 1.5 * noise);
    expect(Math.max(...held)).toBeLessThan(1 + 3 * noise);
  }
});

test('a single stray reading is never taken for the peak, nor for the fall behind it', () => {
  for (const value of [50, 0]) {
    for (let seed = 0; seed < 40; seed += 1) {
      // one in twenty, as from a loose plug; two within three readings in a row are rarer than these runs are long
      const clean = readingsOf(rocking, -1.2, { ...quiet, seed });
      const spoiled = clean.map((one, i) => (i % 17 === seed % 17 ? { ...one, value } : one));
      const { hold } = heardOf(spoiled);
      expect(heldPeak(hold).value).toBeGreaterThan(0.96);
      expect(heldPeak(hold).value).toBeLessThan(1.03);
      expect(isPeakKnown(hold)).toBe(true);
    }
  }
});

test('a screw that nobody turns has no peak, as a rule, for as long as one looks at it', () => {
  const minutes = Array.from({ length: 200 }, (_, seed) =>
    heardOf(readingsOf([{ to: 0, seconds: 60 }], 0, { noise: 0.03, rate: 10, seed })),
  );
  // noise itself is known from thirty moments to a fifth: where it is taken for less, a minute may show a peak of noise
  expect(minutes.filter(({ hold }) => hold.peaks.length > 0).length).toBeLessThan(10); // 5 in 100, our choice
  // and a peak of noise is soon come back to
  for (const { hold } of minutes) expect(heldPeak(hold).value).toBeLessThan(1.1);
});

test('a turn that begins at the top and falls has seen one side only; back and beyond shows the other', () => {
  const oneSide = heardOf(readingsOf([{ to: 0.8, seconds: 4 }], 0, quiet));
  expect(oneSide.hold.peaks).toHaveLength(1);
  expect(isPeakKnown(oneSide.hold)).toBe(false);
  const both = heardOf(
    readingsOf(
      [
        { to: 0.8, seconds: 4 },
        { to: -0.8, seconds: 8 },
      ],
      0,
      quiet,
    ),
  );
  expect(isPeakKnown(both.hold)).toBe(true);
});

test('past the peak is told once it has fallen clearly, and back at it when it reads as high again', () => {
  const past = heardOf(readingsOf([{ to: 0.4, seconds: 8 }], -1.2, quiet));
  // e^−0.16 is 15 % below
  expect(past.hold.rises).toBe(false);
  expect(isBackAtPeak(past.hold, past.now, 0, past.now.sd)).toBe(false);
  for (let seed = 0; seed < 40; seed += 1) {
    const turned = [
      { to: 0.4, seconds: 8 },
      { to: 0.02, seconds: 3 },
      { to: 0.02, seconds: 2 },
    ];
    const back = heardOf(readingsOf(turned, -1.2, { ...quiet, seed }));
    expect(isBackAtPeak(back.hold, back.standing, 0, back.now.sd)).toBe(true);
    expect(isPeakKnown(back.hold)).toBe(true);
  }
});

test('a source that falls away takes its old peaks with it: the last two passes are what is to come back to', () => {
  const twice = [
    { to: 1, seconds: 6 },
    { to: -1, seconds: 6 },
    { to: 1, seconds: 6 },
    { to: -1, seconds: 6 },
  ];
  // 1 % a second: after four passes a fifth is gone
  const { hold } = heardOf(readingsOf(twice, -1, { ...quiet, drift: 0.01 }));
  expect(heldPeak(hold).value).toBeLessThan(1 - 0.01 * 14);
  expect(heldPeak(hold).value).toBeGreaterThan(1 - 0.01 * 22);
});

test('a hump on the flank takes no peak’s place, however often it is passed', () => {
  const humps = [1.3, 0.9, 1.5, 0.9, 1.5, 0.9, 1.5].map((to) => ({ to, seconds: 5 }));
  const { hold } = heardOf(readingsOf(humps, 0, quiet));
  // e^−0.81 is 44 % of the peak that the turn began at
  expect(heldPeak(hold).value).toBeGreaterThan(0.97);
  expect(isPeakKnown(hold)).toBe(false);
});

test('a fast meter and a slow one hold the same peak', () => {
  for (const rate of [2, 10, 100, 1000]) {
    // the slower the meter, the slower the hand, as its page says
    const seconds = rate < 5 ? 24 : 6;
    const { hold } = heardOf(readingsOf([{ to: 1.2, seconds }], -1.2, { noise: 0.01, rate, seed: 9 }));
    expect(heldPeak(hold).value).toBeGreaterThan(0.97);
    expect(heldPeak(hold).value).toBeLessThan(1.02);
    expect(isPeakKnown(hold)).toBe(true);
  }
});

test('noise is told from second differences, whatever the hand does meanwhile', () => {
  const told = Array.from({ length: 60 }, (_, seed) => {
    let window = emptyWindow;
    // on the flank, where a turning screw changes the light most
    for (const reading of readingsOf([{ to: -0.3, seconds: 3 }], -0.9, { noise: 0, rate: 10, seed })) {
      const random = seededUniform(1000 + seed + reading.t);
      window = withHeard(window, { ...reading, value: (reading.value ?? 0) + 0.01 * normalFrom(random) });
    }
    return noiseOfWindow(window)!;
  });
  const mean = told.reduce((sum, one) => sum + one, 0) / told.length;
  // 18 differences that share readings: their median is within a third of σ a time, and 60 times within a twentieth
  expect(mean).toBeGreaterThan(0.0085);
  expect(mean).toBeLessThan(0.0115);
});

test('a meter rests when only noise moves it, and what it reads then is its middle', () => {
  const rests = (turned: readonly Turned[], from: number) => {
    let window = emptyWindow;
    for (const reading of readingsOf(turned, from, quiet)) window = withHeard(window, reading);
    return standingNow(window, null, 0)!;
  };
  const still = rests([{ to: 0.5, seconds: 3 }], 0.5);
  expect(still.isAtRest).toBe(true);
  // e^−0.25; the median of 16 readings of 1 % is within three times 0.3 %
  expect(Math.abs(still.value / Math.exp(-0.25) - 1)).toBeLessThan(0.01);
  expect(rests([{ to: 0.2, seconds: 3 }], 0.9).isAtRest).toBe(false);
});

test('behind a gap nothing from before it counts, and a reading at the upper end is none', () => {
  let window = emptyWindow;
  for (const reading of readingsOf([{ to: 0, seconds: 2 }], 0, quiet)) window = withHeard(window, reading);
  expect(withHeard(window, { t: 9e9, value: 99, saturated: true })).toBe(window);
  const after = withHeard(window, { t: 3000, value: null, saturated: false });
  expect(shownNow(after, null, 0)).toBeNull();
});

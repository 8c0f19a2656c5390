import { seededUniform } from '@coreward/optics';
import { expect, test, vi } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { withFocus } from '../practice/draw-hidden.ts';
import type { HiddenBench } from '../practice/hidden-bench.ts';
import { doStep } from '../practice/play.ts';
import { type PracticeBench, practiceBench } from '../practice/practice-bench.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import { type Known, knownOf } from './known.ts';
import type { WalkAsk, WalkProcedure } from './procedure.ts';
import { remarkText, walkRemarkIds } from './remark-words.ts';
import { ridgeWalk } from './ridge-walk.ts';
import type { WalkAnswer, WalkStep } from './step.ts';
import { taughtWalk } from './taught-walk.ts';

// a dozen walks a test, on a machine that may be busy with others
vi.setConfig({ testTimeout: 120_000 });

const launch = readLaunch(observingLoftLaunch, 'the example');
const typed = knownOf(launch);
const glued = (seed: number): HiddenBench => ({
  ...hiddenBenchOf(launch, seededUniform(seed), 'steered-by-eye'),
  focus: null,
});

/** Answers in place of the bench; null: the bench answers. */
type Fault = (step: WalkStep, answer: WalkAnswer, asked: readonly WalkAsk[]) => WalkAnswer;

/** Walks a bench on which something is wrong. */
function walked(bench: PracticeBench, walk: WalkProcedure, fault: Fault = (_, answer) => answer) {
  const asked: WalkAsk[] = [];
  let heard = walk.next();
  while (heard.done !== true && asked.length < 600) {
    asked.push(heard.value);
    const { step } = heard.value;
    heard = walk.next(fault(step, doStep(bench, step), asked));
  }
  if (heard.done !== true) throw new Error('the walk does not end');
  const said = heard.value.remarks.map(({ id }) => id);
  return { asked, verdict: heard.value, said, share: bench.trueShare() };
}

const benchOf = (seed: number, hidden = glued(seed)) => practiceBench(hidden, seededUniform(seed + 1_000));
const told = (hidden: HiddenBench, more: Partial<Known> = {}): Known => ({
  ...typed,
  floor: hidden.floor * hidden.peakReading,
  ...more,
});
const scaled = (answer: WalkAnswer, by: number): WalkAnswer =>
  answer.outcome !== 'did' || answer.highest === undefined
    ? answer
    : { ...answer, highest: answer.highest * by };

for (const [name, begin] of Object.entries({
  ridge: ridgeWalk,
  taught: (known: Known) => taughtWalk(known),
})) {
  test(`${name}: an M1 that does nothing is named, and no peak is claimed`, () => {
    const hidden = glued(4);
    const { said, verdict } = walked(benchOf(4, hidden), begin(told(hidden)), (step, answer) =>
      step.kind === 'detune' ? { outcome: 'did-not-work' } : answer,
    );
    expect(said).toContain('far-mirror-does-nothing');
    if (name === 'ridge') expect(verdict).toMatchObject({ reason: 'something-else', claims95: false });
  });
}

test('a focal length that is plainly wrong is noticed in most walks, and which way; a right one hardly ever', () => {
  let [shorter, longer, falsely] = [0, 0, 0];
  for (let seed = 10; seed < 18; seed++) {
    const hidden = glued(seed);
    const at = (factor: number) =>
      walked(benchOf(seed, hidden), ridgeWalk(told(hidden, { focalLength: typed.focalLength * factor })))
        .said;
    // the ridge goes by 1/f²: with f written too long it is steeper than told
    if (at(1.6).includes('ridge-steeper')) longer += 1;
    if (at(0.65).includes('ridge-flatter')) shorter += 1;
    if (at(1).includes('layout-doubtful')) falsely += 1;
  }
  expect(longer).toBeGreaterThanOrEqual(5);
  expect(shorter).toBeGreaterThanOrEqual(5);
  // the beam itself is drawn 15 % off, which is layout enough for now and then
  expect(falsely).toBeLessThanOrEqual(3);
});

test('lengths that explain nothing are left aside: the walk goes on as it is taught, and ends about as well', () => {
  let [left, good, claims] = [0, 0, 0];
  const count = 12;
  for (let seed = 30; seed < 30 + count; seed++) {
    const hidden = glued(seed);
    const wrong = told(hidden, { focalLength: typed.focalLength * 3.5 });
    const { said, share, verdict } = walked(benchOf(seed, hidden), ridgeWalk(wrong));
    if (!said.includes('goes-on-as-taught')) continue;
    left += 1;
    if (verdict.claims95) claims += 1;
    if (share > 0.9) good += 1;
  }
  expect(left).toBeGreaterThanOrEqual(count / 2);
  expect(claims).toBe(0);
  // the taught walk leaves 6 in 100 below 0.9 (docs/walk.md): of a dozen hardly more than three
  expect(good).toBeGreaterThanOrEqual(left - 3);
});

test('a peak that is none is hardly ever taken for a plateau', () => {
  for (let seed = 60; seed < 75; seed++) {
    const hidden = glued(seed);
    expect(walked(benchOf(seed, hidden), ridgeWalk(told(hidden))).said).not.toContain('plateau');
  }
});

test('who stood on a ghost is told when the true peak shows, and what was read before is forgotten', () => {
  const hidden = glued(7);
  const { said, share } = walked(benchOf(7, hidden), ridgeWalk(told(hidden)), (step, answer, asked) => {
    const far = asked.filter(({ step: { kind } }) => kind === 'detune').length;
    return step.kind === 'sweep' && far < 3 ? scaled(answer, 0.3) : answer;
  });
  expect(said).toContain('second-maximum');
  expect(share).toBeGreaterThan(0.85);
});

test('a peak that was missed once is looked for again at once', () => {
  const hidden = glued(8);
  let missed = false;
  const { asked, said } = walked(benchOf(8, hidden), ridgeWalk(told(hidden)), (step, answer, before) => {
    const far = before.filter(({ step: { kind } }) => kind === 'detune').length;
    if (missed || step.kind !== 'sweep' || far < 4 || step.why !== 'bring-back') return answer;
    missed = true;
    return scaled(answer, 0.55);
  });
  expect(said).toContain('peak-does-not-fit');
  const at = asked.findIndex(({ remarks }) => remarks.some(({ id }) => id === 'peak-does-not-fit'));
  expect(asked[at]?.step).toMatchObject({ kind: 'sweep', why: 'bring-back' });
});

test('a source that fades while one screw is swept again and again is named', () => {
  const hidden = glued(9);
  let polishes = 0;
  const { said } = walked(benchOf(9, hidden), ridgeWalk(told(hidden)), (step, answer) => {
    if (step.kind === 'sweep' && step.why === 'polish') {
      polishes += 1;
      return scaled(answer, 0.93 ** polishes);
    }
    // nothing ever stands where the sweep was, so that it is swept again
    if (step.kind === 'stand' && step.why === 'compare' && answer.outcome === 'did')
      return { outcome: 'did', standing: 0.7 * answer.standing! * 0.93 ** polishes };
    return answer;
  });
  expect(said).toContain('source-drifts');
  expect(said).toContain('stands-below-highest');
});

test('a peak that is a tenth of its forecast is said, whatever the screws', () => {
  const hidden = glued(12);
  const peak = hidden.peakReading;
  const walk = (forecastPeak: number) =>
    walked(benchOf(12, hidden), ridgeWalk(told(hidden, { focusThread: null, forecastPeak }))).said;
  expect(walk(10 * peak)).toContain('below-forecast');
  expect(walk(peak)).not.toContain('below-forecast');
});

test('a focus that is off is found by its thread, and one that is not is put back', () => {
  const thread = 0.5e-3;
  const rayleighRange = (Math.PI * typed.modeRadius ** 2) / typed.wavelength;
  let [found, count, put, shares] = [0, 0, 0, 0];
  for (let seed = 80; seed < 88; seed++) {
    const off = withFocus(glued(seed), typed, thread, 1.8 * rayleighRange * (seed % 2 === 0 ? 1 : -1));
    const known = told(off, { focusThread: thread, forecastPeak: off.peakReading });
    const bench = benchOf(seed, off);
    const { asked, share } = walked(bench, ridgeWalk(known));
    // before: 1/(1 + 0.9²), the closed form for matched Gaussians on the axis
    expect(benchOf(seed, off).trueFocus()).toBeCloseTo(1 / (1 + 0.9 ** 2), 10);
    const turned = asked.filter(({ step }) => step.kind === 'focus').length;
    expect(turned).toBeGreaterThanOrEqual(2);
    count += 1;
    if (bench.trueFocus() > 0.9) found += 1;
    shares += share;

    const right = withFocus(glued(seed), typed, thread, 0);
    const other = benchOf(seed, right);
    const asIf = told(right, { focusThread: thread, forecastPeak: 2 * right.peakReading });
    const { said } = walked(other, ridgeWalk(asIf));
    expect(said).toContain('focus-may-be-off');
    if (other.trueFocus() > 0.9) put += 1;
  }
  // 0.9 is two thirds of a Rayleigh range: a thread's run-out makes the three peaks of the parabola scatter by a tenth
  expect(found).toBeGreaterThanOrEqual(count - 2);
  expect(put).toBeGreaterThanOrEqual(count - 1);
  // and what the run-out did to the aim is walked back: a walk alone ends at 0.98 on the mean
  expect(shares / count).toBeGreaterThan(0.9);
});

test('nobody is asked for the focus who has no thread, no forecast, or all the light', () => {
  const hidden = withFocus(glued(90), typed, 0.5e-3, 0);
  for (const more of [
    { focusThread: null, forecastPeak: 2 * hidden.peakReading },
    { focusThread: 0.5e-3, forecastPeak: null },
    { focusThread: 0.5e-3, forecastPeak: hidden.peakReading },
  ])
    expect(
      walked(benchOf(90, hidden), ridgeWalk(told(hidden, more))).asked.some(
        ({ step }) => step.kind === 'focus',
      ),
    ).toBe(false);
});

test('a focus that cannot be turned is skipped, and the walk ends', () => {
  const hidden = glued(91);
  const known = told(hidden, { focusThread: 0.5e-3, forecastPeak: 2 * hidden.peakReading });
  const { asked, said } = walked(benchOf(91, hidden), ridgeWalk(known));
  expect(asked.filter(({ step }) => step.kind === 'focus')).toHaveLength(1);
  expect(said).not.toContain('focus-better');
});

test('every sign is said in words of its own, with something to do', () => {
  const texts = walkRemarkIds.map((id) => remarkText({ id }));
  expect(new Set(texts).size).toBe(texts.length);
  for (const text of texts) expect(text.split(' ').length).toBeGreaterThan(10);
});

/** Turns M1 aside once, between two steps of the walk, where its light was all but in. */
function knocked(seed: number, turns: number) {
  const hidden = glued(seed);
  const bench = benchOf(seed, hidden);
  let isKnocked = false;
  return walked(bench, ridgeWalk(told(hidden)), (_, answer, asked) => {
    if (!isKnocked && asked.length > 8 && bench.trueShare() > 0.8) {
      isKnocked = true;
      bench.turn({ mirror: 'M1', axis: 'horizontal' }, turns);
    }
    return answer;
  });
}

test('a screw that was knocked near the end is noticed, and no peak far below the best is called the peak', () => {
  for (let seed = 40; seed < 46; seed++) {
    const { verdict, share, said } = knocked(seed, 0.05);
    // the light is found again, or it is told that more was there
    if (verdict.claims95) expect(share).toBeGreaterThan(0.85);
    else expect(share > 0.85 || said.some((id) => id.endsWith('below-best'))).toBe(true);
  }
});

test('light that went away for good is told, and nothing is claimed of what is left', () => {
  const hidden = glued(50);
  const bench = benchOf(50, hidden);
  let isDimmed = false;
  const { verdict, said } = walked(bench, ridgeWalk(told(hidden)), (step, answer) => {
    const seen = isDimmed ? scaled(answer, 0.7) : answer;
    if (step.kind === 'sweep' && bench.trueShare() > 0.9) isDimmed = true;
    return seen;
  });
  expect(verdict.claims95).toBe(false);
  expect(said).toEqual(expect.arrayContaining(['below-best', 'stays-below-best']));
});

import { seededUniform, stepModes } from '@coreward/optics';
import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import { practisedSteer } from './practised.ts';
import { replaySteer } from './replay.ts';
import { steerLayout, usualCards } from './steer-layout.ts';
import { startsDark, steerPlan } from './steer-plan.ts';
import type { SteerAnswer, SteerStep } from './step.ts';

const launch = readLaunch(observingLoftLaunch, 'example');
const plan = steerPlan(launch, usualCards(steerLayout(launch)));

/** Plays a steer with the simulated hand until it ends. */
function played(
  seed: number,
  spoil: (step: SteerStep, answer: SteerAnswer) => SteerAnswer = (_, one) => one,
) {
  const hidden = hiddenBenchOf(launch, seededUniform(seed), 'unsteered');
  let answers: readonly SteerAnswer[] = [];
  for (let count = 0; count < 120; count++) {
    const now = replaySteer(plan, answers);
    const { hand } = practisedSteer(hidden, seed, plan, now);
    if (now.ask === null || hand === null) return { now, answers };
    answers = [...answers, spoil(now.ask.step, hand)];
  }
  return { now: replaySteer(plan, answers), answers };
}

test('a bench laid out by ruler is steered to light, most of them without a search', () => {
  const verdicts = Array.from({ length: 24 }, (_, seed) => played(seed).now.verdict);
  const count = (verdict: string) => verdicts.filter((one) => one === verdict).length;
  expect(count('light') + count('found')).toBeGreaterThanOrEqual(22);
  // what the forecast says of benches like these: within three standard errors of so few
  const spread = 3 * Math.sqrt((plan.start.shareSeen * (1 - plan.start.shareSeen)) / 24);
  expect(Math.abs(count('light') / 24 - plan.start.shareSeen)).toBeLessThan(spread + 0.05);
});

test('the same answers lead to the same step, and one fewer is an undo', () => {
  const { answers } = played(3);
  expect(replaySteer(plan, answers)).toEqual(replaySteer(plan, answers));
  const before = replaySteer(plan, answers.slice(0, 5));
  expect(before.ask?.step.kind).toBe('turn');
  expect(replaySteer(plan, answers.slice(0, 4)).ask?.step).toEqual({ kind: 'offsets', pass: 1 });
});

test('offsets read by a camera ask for light as soon as nothing is left that a hand could turn', () => {
  const sense = (to: 'left' | 'up'): SteerAnswer => ({ outcome: 'went', to });
  const learned = [sense('left'), sense('up'), sense('left'), sense('up')];
  const near = { x: 0.02e-3, y: 0 };
  const read: SteerAnswer = { outcome: 'read', offsets: { near, far: near }, readingError: 0.01e-3 };
  // a turn of a 0.25 mm pitch on 38 mm deflects by 13 mrad: 0.02 mm over 160 mm between the mirrors is under 1/64 turn
  expect(replaySteer(plan, [...learned, read]).ask?.step.kind).toBe('light');
  // millimetres are turned
  const far = { x: 4e-3, y: 0 };
  expect(replaySteer(plan, [...learned, { ...read, offsets: { near, far } }]).ask?.step.kind).toBe('turn');
});

test('a sense learned the wrong way makes offsets grow; it is said, and the screws are learned again', () => {
  let learned = 0;
  const { now } = played(7, (step, answer) => {
    if (step.kind !== 'sense' || answer.outcome !== 'went') return answer;
    learned += 1;
    // the first time round both horizontal screws are told the other way
    if (learned > 4 || step.screw.axis !== 'horizontal') return answer;
    return { outcome: 'went', to: answer.to === 'left' ? 'right' : 'left' };
  });
  const warned = now.moves.find(({ remarks }) => remarks.length > 0);
  expect(warned?.step.kind).toBe('sense');
  expect(warned?.remarks[0]).toMatchObject({ id: 'grows', axis: 'horizontal' });
  expect(learned).toBeGreaterThanOrEqual(8);
  expect(now.verdict === 'light' || now.verdict === 'found').toBe(true);
});

test('nothing seen in two searches is the end, and not for ever', () => {
  const { now } = played(1, (step, answer) =>
    (step.kind === 'light' || step.kind === 'raster') && answer.outcome === 'light'
      ? { outcome: 'dark' }
      : answer,
  );
  expect(now.verdict).toBe('dark');
  expect(now.moves.filter(({ step }) => step.kind === 'raster' && step.boxes === 2).length).toBeGreaterThan(
    now.moves.filter(({ step }) => step.kind === 'raster' && step.boxes === 1).length,
  );
});

test('an answer of another kind is refused', () => {
  expect(() => replaySteer(plan, [{ outcome: 'light' }])).toThrow('Start the steer anew');
});

test('a longer distance of the cards and a camera help, a longer focal length does not', () => {
  const { cards } = plan;
  const start = (text: string, far = cards.far, readingError = cards.readingError) =>
    steerPlan(readLaunch(text, 'bench'), { ...cards, far, readingError }).start;
  const usual = start(observingLoftLaunch);
  expect(start(observingLoftLaunch, cards.far + 0.5).median).toBeGreaterThan(usual.median);
  expect(start(observingLoftLaunch, cards.far, 0.05e-3).median).toBeGreaterThan(usual.median);
  const longer = observingLoftLaunch.replace(
    'focal length: { value: 6.2 mm, at: 635 nm',
    'focal length: { value: 12 mm, at: 635 nm',
  );
  expect(start(longer).median).toBeLessThan(usual.median);
  expect(startsDark(start(longer, 0.5))).toBe(true);
});

test('reverse light in four modes wanders by 0.12 mm at an 8 mm collimator, and 0.08 mrad in direction', () => {
  // computed with NumPy and SciPy (packages/optics/reference/mode-wander.json): 14.83 mrad and 0.657 µm at the facet
  const text = observingLoftLaunch
    .replace('value: 6.2 mm, at: 635 nm', 'value: 8 mm, at: 520 nm')
    .replace('numerical aperture: 0.13', 'numerical aperture: 0.12')
    .replace('reference: { wavelength: 635 nm', 'reference: { wavelength: 650 nm');
  const { reverse } = steerPlan(readLaunch(text, 'bench'), plan.cards);
  expect(reverse?.modes).toBe(4);
  // 0.7 % as there
  expect(reverse!.wander.offset / (8e-3 * 14.826e-3)).toBeCloseTo(1, 2);
  expect(reverse!.wander.angle / (0.6568e-6 / 8e-3)).toBeCloseTo(1, 2);
  expect(stepModes(22).length).toBeGreaterThan(40);
});

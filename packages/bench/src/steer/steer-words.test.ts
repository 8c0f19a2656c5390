import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { steerLayout, usualCards } from './steer-layout.ts';
import { steerPlan } from './steer-plan.ts';
import {
  servingWords,
  startWords,
  steerAnswerWords,
  steerRemarkWords,
  steerStepWords,
} from './steer-words.ts';

const launch = readLaunch(observingLoftLaunch, 'example');
const plan = steerPlan(launch, usualCards(steerLayout(launch)));
const turns = { value: -0.312, uncertainty: 0.02, shape: 'normal', origin: 'measured' } as const;
const step = {
  kind: 'turn',
  screw: { mirror: 'M2', axis: 'vertical' },
  turns,
  reverses: true,
} as const;

test('a turn is said with mirror, screw, turns and way, and a reversal with what happens', () => {
  const { order, mind } = steerStepWords(step);
  expect(order).toBe('M2, vertical screw, 0.31 turn back, against the way you learned as +.');
  expect(mind.join(' ')).toContain('nothing happens at first');
  const forwards = steerStepWords({ ...step, turns: { ...turns, value: 0.312 }, reverses: false });
  expect(forwards.order).toBe('M2, vertical screw, 0.31 turn the way you learned as +.');
});

test('the forecast is never a bare figure, and says what helps', () => {
  const [begins, ...rest] = startWords(plan);
  expect(begins).toMatch(/dB.*median.*worst tenth.*% of cases/u);
  expect(rest.join(' ')).toContain('by a camera');
  expect(rest.join(' ')).toContain('modes, so the reverse spot wanders');
});

test('what the shape of a spot cannot promise is not promised: no certainty, no dark to a tenth of a decibel', () => {
  const start = { median: 10 ** -11.37, worstTenth: 1e-30, shareSeen: 1 };
  const [begins] = startWords({ ...plan, start });
  expect(begins).toContain(
    'begin below −60.0 dB of its peak (median; in the worst tenth of cases below −60.0 dB)',
  );
  expect(begins).toContain('Light will show nearly always');
  const [dark] = startWords({ ...plan, start: { ...start, shareSeen: 0.003 } });
  expect(dark).toContain('Light will show hardly ever');
});

test('which mirror for which card, and what comes of swapping them', () => {
  expect(servingWords(plan)).toMatch(
    /with M1 on the card before the lens, with M2 on the card behind M1.*grows/u,
  );
  expect(steerRemarkWords({ id: 'grows', card: 'far', axis: 'vertical' }).order).toContain(
    'Swap the mirrors',
  );
});

test('what was answered stands in the bench book in words', () => {
  expect(
    steerAnswerWords(
      { kind: 'offsets', pass: 1 },
      { outcome: 'read', offsets: { near: { x: 1.2e-3, y: -0.3e-3 }, far: { x: 0, y: 0 } } },
    ),
  ).toBe('offsets before the lens 1.2 mm right, −0.3 mm up, behind M1 0 mm right, 0 mm up');
  expect(steerAnswerWords(step, { outcome: 'did' })).toContain('M2, vertical screw turned by −0.312');
});

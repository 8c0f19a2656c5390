import { describe, expect, test } from 'vitest';
import { cautionsFor } from './cautions.ts';
import { hazardOf, launchOf } from './invented-benches.ts';
import {
  answersFor,
  answersThatStand,
  type BookEntry,
  cautionOfStep,
  readingOf,
  stepsRead,
} from './kept-answers.ts';
import { laserKey } from './laser-key.ts';
import { everyStep, stepCautions } from './step-cautions.ts';
import { stepNames } from './step-names.ts';

const launch = launchOf();
const highest = `${laserKey(launch)}:highest-power`;
const answer = (id: string, question: string, said: string): BookEntry => ({
  id,
  time: `2026-11-25T10:0${id}:00Z`,
  kind: 'answer',
  data: { question, answer: said },
});
const withdrawn = (id: string, entry: string): BookEntry => ({
  id,
  time: `2026-11-25T10:0${id}:00Z`,
  kind: 'withdrawn',
  data: { entry },
});
const power = (entries: readonly BookEntry[]) => answersFor(launch, answersThatStand(entries)).highestPower;

describe('answers in the bench book', () => {
  test('the newest one counts, in whatever order they come', () => {
    const both = [answer('1', highest, '7 mW'), answer('2', highest, '9 mW')];
    expect(power(both)).toBeCloseTo(9e-3, 12);
    expect(power(both.toReversed())).toBeCloseTo(9e-3, 12);
  });

  test('one that is withdrawn does not, and the one before it counts again', () => {
    const first = [answer('1', highest, '7 mW'), answer('2', highest, '9 mW'), withdrawn('3', '2')];
    expect(power(first)).toBeCloseTo(7e-3, 12);
    expect(power([...first, withdrawn('4', '1')])).toBeNull();
  });

  test('those about another laser, and those nobody can read, are left out and take nothing along', () => {
    const kept = [
      answer('1', 'other-module:highest-power', '900 mW'),
      answer('2', `${laserKey(launch)}:profile`, 'roundish'),
      { id: '3', time: '2026-11-25T10:03:00Z', kind: 'answer', data: 'nonsense' },
      answer('4', highest, '7 mW'),
    ];
    expect(power(kept)).toBeCloseTo(7e-3, 12);
    expect(answersFor(launch, answersThatStand(kept)).profile).toBeNull();
  });

  test('an answer that raises the power is counted at the laser’s exit', () => {
    const told = answersFor(launch, answersThatStand([answer('1', highest, '40 mW')]));
    expect(hazardOf(cautionsFor(launch, { answers: told }), 'laser-exit').power).toBeCloseTo(40e-3, 12);
  });
});

describe('what was read before a step', () => {
  const before = stepCautions(launch, 'before-power');
  const read: BookEntry = {
    id: '1',
    time: '2026-11-25T10:01:00Z',
    kind: 'caution read',
    data: { caution: cautionOfStep('before-power'), text: before.title, key: before.readAgainKey },
  };

  test('it stays read, for that step only', () => {
    const kept = stepsRead([read]);
    expect(readingOf(kept.get('before-power'), before)).toBe('read');
    expect(readingOf(kept.get('first-light'), stepCautions(launch, 'first-light'))).toBe('not read');
  });

  test('another power, wavelength, end or lens asks for it again', () => {
    const kept = stepsRead([read]).get('before-power');
    const others = [
      launchOf({ power: '6 mW ± 0 mW' }),
      launchOf({ wavelength: '520 nm ± 0 nm' }),
      launchOf({ collimator: '{ focal length: 11 mm ± 0 mm }' }),
      launchOf({ rest: 'output: { collimator: { focal length: 8 mm } }' }),
    ];
    for (const other of others)
      expect(readingOf(kept, stepCautions(other, 'before-power'))).toBe('read for another bench');
  });

  test('withdrawn, it is to be read again', () => {
    expect(stepsRead([read, withdrawn('2', '1')]).size).toBe(0);
  });

  test('every step at once is what each is alone', () => {
    const all = everyStep(launch);
    expect(all.map(({ step }) => step)).toEqual(stepNames);
    for (const one of all) {
      const alone = stepCautions(launch, one.step);
      expect(one.readAgainKey).toBe(alone.readAgainKey);
      expect(one.numbers).toEqual(alone.numbers);
      expect(one.hazards.map(({ id }) => id)).toEqual(alone.hazards.map(({ id }) => id));
    }
  });
});

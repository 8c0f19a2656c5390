import { normalFrom, seededUniform } from '@coreward/optics';
import { describe, expect, test } from 'vitest';
import { heardInTurn, newTurn, type TurnContext } from './live-turn.ts';
import type { WalkStep } from './step.ts';
import { turnNow } from './turn-now.ts';
import type { TurnSign } from './turn-sign.ts';

const sweep: WalkStep = {
  kind: 'sweep',
  screw: { mirror: 'M2', axis: 'horizontal' },
  reach: null,
  why: 'climb',
};
const floor = 1e-6;
const draws = 30;

/**
 * What is said of a light by a meter whose floor has noise of a quarter of itself and whose light has 2 %, as benches are drawn:
 * our assumption, no source.
 *
 * @param light in floors, at a time in s
 */
function said(
  light: (t: number) => number,
  seconds: number,
  seed: number,
  { perSecond = 10, isKnown = true }: { readonly perSecond?: number; readonly isKnown?: boolean },
): readonly { readonly t: number; readonly sign: TurnSign }[] {
  const context: TurnContext = {
    step: sweep,
    floor: isKnown ? floor : null,
    peak: null,
    noise: null,
    turned: null,
  };
  const random = seededUniform(seed);
  let turn = newTurn;
  return Array.from({ length: seconds * perSecond }, (_, i) => {
    const t = i / perSecond;
    const net = light(t) * (1 + 0.02 * normalFrom(random)) + 0.25 * normalFrom(random);
    const value = Math.max(0, floor * (1 + net));
    turn = heardInTurn(turn, context, { t: 1e12 + 1e3 * t, value, saturated: false });
    return { t, sign: turnNow(turn, context, false).sign };
  });
}

const seeds = Array.from({ length: draws }, (_, i) => i + 1);
const moves: readonly TurnSign[] = ['rising', 'other-way', 'past', 'nearing', 'passed-again', 'back-at-peak'];

describe.each([
  { perSecond: 3, isKnown: true },
  { perSecond: 10, isKnown: true },
  { perSecond: 10, isKnown: false },
])('by $perSecond readings a second, the floor known: $isKnown', (meter) => {
  test.each([0.6, 1])('a light of %f floors that rests is not told to move for 20 s', (light) => {
    const all = seeds.map((seed) => said(() => light, 20, seed, meter));
    const share = (told: (sign: TurnSign) => boolean) =>
      all.filter((signs) => signs.some(({ sign }) => told(sign))).length / draws;
    // of 100 turns 4 at most where the floor is not known, and 1 where it is; less than 3 of these 30 leaves room for chance. Our choice
    expect(share((sign) => moves.includes(sign))).toBeLessThan(0.1);
    expect(share((sign) => sign === 'covered')).toBeLessThan(0.1);
  });

  test.each([1, 10])('a peak of 1000 floors that is climbed from %f of them is told soon', (from) => {
    // a quarter of the 1/e half-width a second: half a minute for the whole peak, as a hand sweeps it
    const start = Math.sqrt(Math.log(1000 / from));
    const rest = 2;
    const climb = (t: number) => 1000 * Math.exp(-((start - 0.25 * Math.max(0, t - rest)) ** 2));
    const waits = seeds
      .map((seed) => said(climb, 8, seed, meter).find(({ t, sign }) => t >= rest && sign === 'rising'))
      .map((found) => (found?.t ?? Number.POSITIVE_INFINITY) - rest)
      .sort((a, b) => a - b);
    // a hand that turns so has changed by a quarter of a half-width in a second; six readings take two at the slowest. Our choice
    expect(waits[Math.floor(0.9 * draws)]).toBeLessThan(meter.perSecond < 5 ? 2 : 1.3);
  });
});

test('a meter whose last digit is all its noise does not make a light at rest move', () => {
  const context: TurnContext = { step: sweep, floor: null, peak: null, noise: null, turned: null };
  const moved = seeds.filter((seed) => {
    const random = seededUniform(seed);
    let turn = newTurn;
    return Array.from({ length: 200 }, (_, i) => {
      // five counts and a little, one more now and then: of ten readings eight are alike
      const value = Math.round(5.2 + 0.3 * normalFrom(random)) * 1e-8;
      turn = heardInTurn(turn, context, { t: 1e12 + 100 * i, value, saturated: false });
      return turnNow(turn, context, false).sign;
    }).some((sign) => moves.includes(sign));
  });
  expect(moved.length / draws).toBeLessThan(0.1);
});

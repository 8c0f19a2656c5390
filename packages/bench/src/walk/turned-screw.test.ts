import { expect, test } from 'vitest';
import { heardInTurn, newTurn, type TurnContext } from './live-turn.ts';
import type { Screw } from './step.ts';
import { turnNow } from './turn-now.ts';
import { turnedOf, withTurned } from './turned-screw.ts';

const asked: Screw = { mirror: 'M2', axis: 'horizontal' };
const other: Screw = { mirror: 'M2', axis: 'vertical' };

test('a screw that was turned counts until it is turned back by as much, or another one is turned', () => {
  let turned = withTurned(null, other, 1 / 4);
  expect(turnedOf(turned)).toEqual(other);
  turned = withTurned(turned, other, -1 / 16);
  expect(turnedOf(turned)).toEqual(other);
  turned = withTurned(turned, other, -3 / 16);
  expect(turnedOf(turned)).toBeNull();
  expect(turnedOf(withTurned(withTurned(null, other, 1 / 4), asked, 1 / 256))).toEqual(asked);
  expect(turnedOf(null)).toBeNull();
});

test('light that a wrong screw brings is no peak of the asked one, and the peak before it is kept', () => {
  const context = (turned: Screw | null): TurnContext => ({
    step: { kind: 'sweep', screw: asked, reach: null, why: 'climb' },
    floor: 0,
    peak: null,
    noise: 0.001,
    turned,
  });
  let turn = newTurn;
  let t = 1e12;
  const hear = (light: number, turned: Screw | null): void => {
    for (let i = 0; i < 10; i += 1) {
      t += 100;
      turn = heardInTurn(turn, context(turned), { t, value: light + 0.001 * (i % 2), saturated: false });
    }
  };
  for (const light of [0.4, 0.6, 0.8, 0.6]) hear(light, asked);
  for (const light of [1.5, 3, 1.5]) hear(light, other);
  const wrong = turnNow(turn, context(other), false);
  expect(wrong).toMatchObject({ sign: 'wrong-screw', wrongScrew: other, take: null, isReady: false });
  expect(wrong.held).toBeLessThan(0.81);
  // turned back by as much: the sweep goes on with what it held
  hear(0.6, null);
  const back = turnNow(turn, context(null), false);
  expect(back.sign).not.toBe('wrong-screw');
  expect(back.held).toBeGreaterThan(0.79);
  expect(back.held).toBeLessThan(0.81);
});

import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { cardSpots } from '../practice/card-spots.ts';
import { axisScrews } from '../practice/draw-hidden.ts';
import { exactTurns, missOf, type Offsets } from './exact-turns.ts';
import { senseThat } from './senses.ts';
import { steerLayout, usualCards } from './steer-layout.ts';

const layout = steerLayout(readLaunch(observingLoftLaunch, 'example'));
const cards = usualCards(layout);
const none = new Map();

/** Offsets of a bench whose screws are this far from their best places: the practice bench's geometry, another file. */
function offsetsAt(turns: readonly number[]): Offsets {
  const screws = {
    horizontal: axisScrews(layout.geometry, 'horizontal'),
    vertical: axisScrews(layout.geometry, 'vertical'),
  };
  const { near, far } = cardSpots(screws, turns, cards);
  return { near: near.forward, far: far.forward };
}

test('one pass of exact turns brings every screw home', () => {
  const away = [0.31, -0.42, -0.17, 0.55];
  const turns = exactTurns(offsetsAt(away), layout, cards, none);
  // M1 horizontal, M1 vertical, M2 horizontal, M2 vertical
  const home = [away[0]!, away[2]!, away[1]!, away[3]!].map((one) => -one);
  for (const [i, { turns: asked }] of turns.entries()) expect(asked.value).toBeCloseTo(home[i]!, 10);
});

test('worked by hand: mirrors at 0.1 and 0.4 m, cards at 0 and 0.9 m, offsets of 3 and −6 mm', () => {
  const quantity = (value: number) =>
    ({ value, uncertainty: 0, shape: 'normal', origin: 'measured' }) as const;
  const plain = {
    ...layout,
    nearMirror: quantity(0.1),
    mirrorsApart: quantity(0.3),
    deflection: () => quantity(0.016),
  };
  const at = { near: 0, far: 0.9, readingError: 0 };
  const read = { near: { x: 3e-3, y: 0 }, far: { x: -6e-3, y: 0 } };
  // θ = 9 mm / 0.9 m; X − θz at 0.1 m is 2 mm, at 0.4 m −1 mm
  const miss = missOf(read, 'horizontal', plain, at);
  expect(miss.angle.value).toBeCloseTo(0.01, 12);
  expect(miss.atNearMirror.value).toBeCloseTo(2e-3, 12);
  expect(miss.atFarMirror.value).toBeCloseTo(-1e-3, 12);
  const [m1, , m2] = exactTurns(read, plain, at, none);
  // −2 mm / 0.3 m / 16 mrad, and −1 mm / 0.3 m / 16 mrad
  expect(m1!.turns.value).toBeCloseTo(-2 / 0.3 / 16, 9);
  expect(m2!.turns.value).toBeCloseTo(-1 / 0.3 / 16, 9);
  // an offset of 0.3 mm, 1σ, on either card: M1 by (1 − 0.1/0.9, 0.1/0.9), M2 by (1 − 0.4/0.9, 0.4/0.9)
  const [d1, , d2] = exactTurns(read, plain, { ...at, readingError: 0.3e-3 }, none);
  const each = 0.3e-3 / 0.3 / 0.016;
  expect(d1!.turns.uncertainty).toBeCloseTo(each * Math.hypot(8 / 9, 1 / 9), 9);
  expect(d2!.turns.uncertainty).toBeCloseTo(each * Math.hypot(5 / 9, 4 / 9), 9);
});

test('a sense learned the other way turns the sign and nothing else', () => {
  const read = offsetsAt([0.2, 0.1, 0.3, -0.2]);
  const plain = exactTurns(read, layout, cards, none);
  const flipped = exactTurns(read, layout, cards, new Map([['M2 vertical', senseThat('down')]]));
  expect(flipped.map(({ turns }) => turns.value)).toEqual(
    plain.map(({ turns }, i) => (i === 3 ? -turns.value : turns.value)),
  );
});

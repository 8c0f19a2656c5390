import { combine } from '../quantity/combine.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Screw, WalkAxis, WalkMirror } from '../walk/step.ts';
import { type ScrewSenses, senseOf } from './senses.ts';
import type { Cards, SteerLayout } from './steer-layout.ts';

/** How far the forward spot lies from the reverse spot, m, seen looking downstream: right and up are positive. */
export interface CardOffset {
  readonly x: number;
  readonly y: number;
}

/** What was read on both cards. */
export interface Offsets {
  readonly near: CardOffset;
  readonly far: CardOffset;
}

/** How the forward beam lies to the fibre's own axis on one axis: X − θz at a distance z upstream of the focal plane. */
export interface Miss {
  /** θ, rad; positive when X grows in the direction of travel. */
  readonly angle: Quantity;
  /** X at the focal plane, m. */
  readonly offset: Quantity;
  /** At the mirrors, m. */
  readonly atFarMirror: Quantity;
  readonly atNearMirror: Quantity;
}

/** One screw and how far to turn it; + is the way it was turned when its sense was learned. */
export interface ScrewTurn {
  readonly screw: Screw;
  readonly turns: Quantity;
}

const axes: readonly WalkAxis[] = ['horizontal', 'vertical'];

/**
 * Angle and offset of the forward beam from two cards, one axis: a straight line through two points.
 *
 * @source geometry, derived here: unfolded, a mirror turns both beams alike, so their distance is X − θz everywhere
 */
export function missOf(offsets: Offsets, axis: WalkAxis, layout: SteerLayout, cards: Cards): Miss {
  const of = (pick: (angle: number, offset: number, near: number, apart: number) => number) =>
    combine(inputsOf(offsets, axis, layout, cards), (near, far, nearMirror, apart) => {
      const angle = (near! - far!) / (cards.far - cards.near);
      return pick(angle, near! + angle * cards.near, nearMirror!, apart!);
    });
  return {
    angle: of((angle) => angle),
    offset: of((_, offset) => offset),
    atFarMirror: of((angle, offset, nearMirror, apart) => offset - angle * (nearMirror + apart)),
    atNearMirror: of((angle, offset, nearMirror) => offset - angle * nearMirror),
  };
}

/**
 * The turns of all four screws that lay the forward beam onto the reverse one, in one pass. M1 brings the forward spot
 * onto the reverse spot on M2; M2 brings the reverse spot onto the forward spot on M1:
 * α₁ = −δ(M2)/L, α₂ = +δ(M1)/L, each over the deflection of a turn.
 *
 * @source geometry, derived here; a mirror tilt deflects by 2 in the plane of incidence and by 2 cos(angle) across it
 */
export function exactTurns(
  offsets: Offsets,
  layout: SteerLayout,
  cards: Cards,
  senses: ScrewSenses,
): readonly ScrewTurn[] {
  return (['M1', 'M2'] as const).flatMap((mirror) =>
    axes.map((axis): ScrewTurn => {
      const screw: Screw = { mirror, axis };
      const sense = senseOf(senses, screw);
      const inputs = [...inputsOf(offsets, axis, layout, cards), layout.deflection(mirror, axis)];
      const turns = combine(inputs, (near, far, nearMirror, apart, deflection) => {
        const angle = (near! - far!) / (cards.far - cards.near);
        const at = (z: number) => near! + angle * (cards.near - z);
        return (sense * wanted(mirror, at, nearMirror!, apart!)) / deflection!;
      });
      return { screw, turns };
    }),
  );
}

function wanted(mirror: WalkMirror, at: (z: number) => number, nearMirror: number, apart: number): number {
  return mirror === 'M1' ? -at(nearMirror) / apart : at(nearMirror + apart) / apart;
}

/** Both offsets of an axis with their doubt, then the distances. Where the cards stand is taken as exact against them. */
function inputsOf(
  { near, far }: Offsets,
  axis: WalkAxis,
  { nearMirror, mirrorsApart }: SteerLayout,
  { readingError }: Cards,
): readonly Quantity[] {
  const read = ({ x, y }: CardOffset): Quantity => ({
    value: axis === 'horizontal' ? x : y,
    uncertainty: readingError,
    shape: 'normal',
    origin: 'measured',
  });
  return [read(near), read(far), nearMirror, mirrorsApart];
}

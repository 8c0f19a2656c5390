import type { Known } from './known.ts';
import type { WalkAxis } from './step.ts';

/** What the lengths of a bench say about the ridge of one axis. */
export interface RidgeLayout {
  /** Sine of the angle between what a turn of M1 and of M2 does to the light, both in 1/e half-widths: small. */
  readonly sinRidge: number;
  /** How far a turn of M2 moves the light, 1/e half-widths a turn. */
  readonly nearPerTurn: number;
  /** Ridge coordinate that a metre of error in both offsets of the steer leaves, 1σ. */
  readonly ridgePerOffset: number;
  /** The same for the direction in which M2 moves the light. */
  readonly alongNearPerOffset: number;
}

/** How far behind the far mirror the second card is taken to have stood, m (our own assumption, no source). */
const cardBehindFarMirror = 0.2;

/**
 * The ridge of one axis, for a beam that fits the mode and stands in focus.
 *
 * @source ln η = −(θ/θc)² − (X/wc)² with θc = w_f/f and wc = λf/(πw_f), from the overlap of two Gaussians; the rest is
 *   geometry, derived here
 */
export function ridgeLayout(known: Known, axis: WalkAxis): RidgeLayout {
  const { wavelength, modeRadius, focalLength, farMirror, nearMirror, tiltPerTurn, verticalGain } = known;
  const angleScale = modeRadius / focalLength;
  const placeScale = (wavelength * focalLength) / (Math.PI * modeRadius);
  const nearTurn = axis === 'horizontal' ? 2 * tiltPerTurn[1] : verticalGain[1] * tiltPerTurn[3];
  const far = { angle: 1 / angleScale, place: farMirror / placeScale };
  const near = { angle: 1 / angleScale, place: nearMirror / placeScale };
  const farLength = Math.hypot(far.angle, far.place);
  const nearLength = Math.hypot(near.angle, near.place);
  const sinRidge = Math.abs(far.angle * near.place - far.place * near.angle) / (farLength * nearLength);
  const farCard = farMirror + cardBehindFarMirror;
  const arm = farMirror - nearMirror;
  const share = nearMirror / farCard;
  return {
    sinRidge,
    nearPerTurn: nearTurn * nearLength,
    // what M1 must still turn is the offset at M2 over the arm between the mirrors
    ridgePerOffset: (Math.hypot(1 - share, share) / arm) * farLength * sinRidge,
    alongNearPerOffset: Math.SQRT2 / (farCard * angleScale),
  };
}

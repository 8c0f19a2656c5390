/**
 * A lens's stop and spherical aberration, seen from the facet in the Debye picture: light that crosses the pupil at
 * height h arrives with direction sine −h/f, and the focal field is the Fourier transform of the pupil field.
 */
export interface Pupil {
  /** Half aperture over focal length, a direction sine; Infinity: no stop. */
  readonly stop: number;
  /** W040 in waves for the direction sine `aberrationAt`; positive: marginal rays focus nearer the lens. */
  readonly sphericalAberration: number;
  readonly aberrationAt: number;
  /** Direction of the lens's axis from the fibre's axis, direction sines; 0 where the lens faces the fibre squarely. */
  readonly axisTiltX: number;
  readonly axisTiltY: number;
}

/** Phase that the aberration adds at a distance from the lens's axis, rad; exp(−ikW) in the time factor exp(−iωt). */
export function aberrationPhase(pupil: Pupil, directionSine: number): number {
  if (pupil.sphericalAberration === 0) return 0;
  return -2 * Math.PI * pupil.sphericalAberration * (directionSine / pupil.aberrationAt) ** 4;
}

/** How fast that phase changes, rad per unit of direction sine, without its sign. */
export function aberrationRate(pupil: Pupil, directionSine: number): number {
  if (pupil.sphericalAberration === 0) return 0;
  return Math.abs((8 * Math.PI * pupil.sphericalAberration * directionSine ** 3) / pupil.aberrationAt ** 4);
}

/** What is drawn of a walk, in a square from 0 to 1; y grows upwards. */
import type { WalkEstimate } from './procedure.ts';
import type { WalkMove } from './replay.ts';

/** The readings in their order against the best, on a logarithmic scale over this factor. */
const decades = 3;

/** A reading as a point: x by its turn, y by the logarithm of its light. */
export interface TracePoint {
  readonly x: number;
  readonly y: number;
}

/** The trace of the readings of light so far. */
export function traceOf(moves: readonly WalkMove[]): readonly TracePoint[] {
  const light = moves.flatMap(({ step, reading }) =>
    reading === null || step.kind === 'floor' || !(reading > 0) ? [] : [reading],
  );
  const best = Math.max(...light);
  return light.map((reading, index) => ({
    x: light.length === 1 ? 0.5 : index / (light.length - 1),
    y: Math.max(0, 1 + Math.log10(reading / best) / decades),
  }));
}

/** Where the bench is believed to stand off the peak, and how doubtful that is. */
export interface RidgePicture {
  readonly x: number;
  readonly y: number;
  /** Half axes of the 90 % ellipse. */
  readonly halfX: number;
  readonly halfY: number;
  /** Length of one 1/e half-width in the square. */
  readonly unit: number;
}

/** So many half-widths reach from the middle of the picture to its edge. */
const reach = 1.5;
/** Of two independent normal quantities, 90 % lie within so many standard deviations. @source √(−2 ln 0.1), the Rayleigh law */
const ninety = Math.sqrt(-2 * Math.log(0.1));

/** The ridge as it is believed; null while none is. */
export function ridgePicture({ ridge }: WalkEstimate): RidgePicture | null {
  if (ridge === null) return null;
  const unit = 0.5 / reach;
  const at = (value: number): number => Math.min(1, Math.max(0, 0.5 + value * unit));
  const half = (uncertainty: number): number => Math.min(0.5, Math.max(0.006, uncertainty * ninety * unit));
  return {
    x: at(ridge.horizontal.value),
    y: at(ridge.vertical.value),
    halfX: half(ridge.horizontal.uncertainty),
    halfY: half(ridge.vertical.uncertainty),
    unit,
  };
}

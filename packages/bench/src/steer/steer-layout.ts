import type { Launch, PathElement } from '../launch/launch.ts';
import type { Quantity } from '../quantity/quantity.ts';
import { type WalkGeometry, walkedLaunch } from '../walk/known.ts';
import type { WalkAxis, WalkMirror } from '../walk/step.ts';

/**
 * What a steer needs to know of a bench. Distances are upstream from the collimator's front focal plane, along the
 * beam; offsets are of the forward over the reverse beam, seen looking downstream, x to the right and y up.
 */
export interface SteerLayout {
  readonly geometry: WalkGeometry;
  /** From the focal plane to the near mirror M2, m. */
  readonly nearMirror: Quantity;
  /** From M2 to the far mirror M1, m. */
  readonly mirrorsApart: Quantity;
  /** Deflection of the beam a turn of a screw, rad. */
  readonly deflection: (mirror: WalkMirror, axis: WalkAxis) => Quantity;
  /** From M1 upstream to the laser's exit, m: as far back as a card can stand. */
  readonly behindFarMirror: number;
}

/** Where the two cards stand, and how well an offset is read on them. */
export interface Cards {
  /** Distance upstream from the focal plane, m; `near` is the smaller one. */
  readonly near: number;
  readonly far: number;
  /** Standard uncertainty of an offset, one axis, m. */
  readonly readingError: number;
}

/** An offset is judged by eye to about this, 1σ, m (our assumption, no source). */
export const eyeError = 0.3e-3;

/** No card stands nearer to the lens, m (our proposal): the mount is in the way. */
const beforeTheLens = 50e-3;

/**
 * The lengths and screws of a launch, as a steer counts with them.
 *
 * @throws {Refusal} if it has no lens, or fewer than two mirrors with screws
 */
export function steerLayout(launch: Launch): SteerLayout {
  const { geometry } = walkedLaunch(launch);
  const mounted = launch.path.flatMap((part, at) =>
    part.kind === 'mirror' && part.mount !== null ? [at] : [],
  );
  const [far, near] = mounted.slice(-2) as [number, number];
  const quantity = (value: number, uncertainty: number): Quantity => ({
    value,
    uncertainty,
    shape: 'normal',
    origin: 'assumed',
  });
  const deflection: SteerLayout['deflection'] = (mirror, axis) => {
    const [at, rank] = mirror === 'M1' ? [far, 0] : [near, 1];
    const part = launch.path[at]!;
    const tilt = geometry.tiltPerTurn[rank + (axis === 'horizontal' ? 0 : 2)]!;
    const gain = axis === 'horizontal' ? 2 : geometry.verticalGain[rank]!;
    return quantity(gain * tilt, gain * tilt * shareOfDoubt(part));
  };
  return {
    geometry,
    nearMirror: quantity(geometry.nearMirror, lengthDoubt(launch.path.slice(near))),
    mirrorsApart: quantity(
      geometry.farMirror - geometry.nearMirror,
      lengthDoubt(launch.path.slice(far, near)),
    ),
    deflection,
    behindFarMirror: launch.path.slice(0, far).reduce((sum, part) => sum + lengthOf(part), 0),
  };
}

/** Where cards would be put if nobody said: one just before the lens, the other almost at the laser. */
export function usualCards({ geometry, behindFarMirror }: SteerLayout): Cards {
  return {
    near: Math.min(beforeTheLens, geometry.nearMirror / 2),
    far: geometry.farMirror + Math.max(0.05, 0.9 * behindFarMirror),
    readingError: eyeError,
  };
}

/** The places of cards as a ruler has them, m: from the lens to the near one, from M1 upstream to the far one. */
export interface CardsByRuler {
  readonly beforeLens: number;
  readonly behindFarMirror: number;
}

/** What a ruler must show for cards at these places. */
export function cardsByRuler({ geometry }: SteerLayout, { near, far }: Cards): CardsByRuler {
  return { beforeLens: near + geometry.focalLength, behindFarMirror: far - geometry.farMirror };
}

/** The cards that a hand has placed by ruler; `readingError` in m, one standard uncertainty of a spot's place. */
export function cardsAt({ geometry }: SteerLayout, ruler: CardsByRuler, readingError: number): Cards {
  return {
    near: ruler.beforeLens - geometry.focalLength,
    far: geometry.farMirror + ruler.behindFarMirror,
    readingError,
  };
}

/** The places between which cards may stand, m by ruler: the near one before M2, the far one anywhere behind M1. */
export const rulerLimits = ({ geometry }: SteerLayout) =>
  ({
    beforeLens: { least: geometry.focalLength, most: geometry.nearMirror + geometry.focalLength },
    behindFarMirror: { least: 0.01, most: 10 },
  }) as const;

const lengthOf = (part: PathElement): number => (part.kind === 'space' ? part.length.value : 0);

const lengthDoubt = (parts: readonly PathElement[]): number =>
  Math.hypot(...parts.map((part) => (part.kind === 'space' ? part.length.uncertainty : 0)));

/** Relative doubt of what a turn does: lever and pitch. */
function shareOfDoubt(part: PathElement): number {
  if (part.kind !== 'mirror' || part.mount === null) return 0;
  const { lever, pitch } = part.mount;
  return Math.hypot(lever.uncertainty / lever.value, pitch.uncertainty / pitch.value);
}

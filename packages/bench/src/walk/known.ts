import { asStated } from '../forecast/draw.ts';
import { fewModedBelow, leastV, modesTaker, modesUpTo } from '../forecast/fibre-taker.ts';
import { type Meeting, meetingOf } from '../forecast/meeting.ts';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';

/** The lengths of a bench with two mirrors before a lens. SI; distances upstream from the front focal plane. */
export interface WalkGeometry {
  readonly wavelength: number;
  /** 1/e² radius of the fibre's mode. */
  readonly modeRadius: number;
  readonly focalLength: number;
  /** To the far mirror M1 and the near mirror M2. */
  readonly farMirror: number;
  readonly nearMirror: number;
  /** Mirror tilt a turn, rad: M1 and M2 horizontal, M1 and M2 vertical. */
  readonly tiltPerTurn: readonly [number, number, number, number];
  /** Beam deflection a rad of mirror tilt across the plane of incidence, M1 and M2; in it, it is 2. */
  readonly verticalGain: readonly [number, number];
}

/** What a walk is told before it begins: what somebody typed, with the errors of a ruler and a label. */
export interface Known extends WalkGeometry {
  /** The fibre has so many modes that its peak is a plateau. */
  readonly manyModes: boolean;
  /** What the meter shows with the beam blocked, in its own unit; null: the walk asks for it. */
  readonly floor: number | null;
  /** What the meter is expected to show at the peak, in its own unit; null: unknown. */
  readonly forecastPeak: number | null;
  /** Advance of the focus thread a turn, m; null: the focus cannot be turned. */
  readonly focusThread: number | null;
}

/** A launch as a walk sees it. */
export interface WalkedLaunch {
  readonly geometry: WalkGeometry;
  /** Null for a fibre of few modes; else what its core takes. */
  readonly manyModes: { readonly coreRadius: number; readonly numericalAperture: number } | null;
  readonly meeting: Meeting;
}

/**
 * What a launch tells a walk. Floor and forecast are the meter's and are added by whoever knows its unit.
 *
 * @throws {Refusal} if it has no lens, or fewer than two mirrors with screws
 */
export function knownOf(launch: Launch): Known {
  const { geometry, manyModes } = walkedLaunch(launch);
  return {
    ...geometry,
    manyModes: manyModes !== null,
    floor: null,
    forecastPeak: null,
    focusThread: launch.collimator?.focusThread?.value ?? null,
  };
}

/** @throws {Refusal} if it has no lens, or fewer than two mirrors with screws */
export function walkedLaunch(launch: Launch): WalkedLaunch {
  if (launch.collimator === null) {
    throw new Refusal({
      where: 'launch.collimator',
      what: 'steering and walking take a lens before the fibre, and this launch has none',
      mend: 'Write the `collimator:` with its `focal length`.',
    });
  }
  const meeting = meetingOf(launch, asStated);
  const { levers } = meeting.arrival;
  const horizontal = levers.filter(({ axis }) => axis === 'horizontal').slice(-2);
  const vertical = levers.filter(({ axis }) => axis === 'vertical').slice(-2);
  const [h1, h2] = horizontal;
  const [v1, v2] = vertical;
  if (h1 === undefined || h2 === undefined || v1 === undefined || v2 === undefined) {
    throw new Refusal({
      where: 'launch.path',
      what: `steering and walking take two mirrors with screws, and this path has ${horizontal.length}`,
      mend: 'Give two mirrors a `mount: { lever: 38 mm, pitch: 0.25 mm }` with the figures of yours.',
    });
  }
  const { lens, vNumber, wavelength, coreRadius, numericalAperture } = meeting;
  const focalLength = lens!.focalLength;
  const manyModes = vNumber >= fewModedBelow ? { coreRadius, numericalAperture } : null;
  // of many modes the size of the core stands for the mode
  const bestRadius =
    manyModes !== null || vNumber > modesUpTo
      ? 1
      : (modesTaker(launch.fibre.profile, Math.max(leastV, vNumber)).bestRadius ?? 1);
  return {
    geometry: {
      wavelength,
      modeRadius: bestRadius * coreRadius,
      focalLength,
      // from the lens to its front focal plane the arm is shorter by f
      farMirror: h1.offsetPerTilt / h1.slopePerTilt - focalLength,
      nearMirror: h2.offsetPerTilt / h2.slopePerTilt - focalLength,
      tiltPerTurn: [h1.tiltPerTurn, h2.tiltPerTurn, v1.tiltPerTurn, v2.tiltPerTurn],
      verticalGain: [v1.slopePerTilt, v2.slopePerTilt],
    },
    manyModes,
    meeting,
  };
}

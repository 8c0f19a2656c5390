import { asStated } from '../forecast/draw.ts';
import { fewModedBelow, leastV, modesTaker, modesUpTo } from '../forecast/fibre-taker.ts';
import { type Meeting, meetingOf } from '../forecast/meeting.ts';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import type { WalkGeometry } from './draw-hidden.ts';

/** A launch as a walk sees it. */
export interface WalkedLaunch {
  readonly geometry: WalkGeometry;
  /** Null for a fibre of few modes; else the fibre and the beam's spot, by which the plateau is as wide as it is. */
  readonly manyModes: { readonly coreRadius: number; readonly numericalAperture: number } | null;
  readonly meeting: Meeting;
}

/**
 * What a launch says of the lengths a walk turns on.
 *
 * @throws {Refusal} if it has no lens, or fewer than two mirrors with screws
 */
export function walkedLaunch(launch: Launch): WalkedLaunch {
  if (launch.collimator === null) {
    throw new Refusal({
      where: 'launch.collimator',
      what: 'a walk needs a lens before the fibre, and this launch has none',
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
      what: `a walk needs two mirrors with screws, and this path has ${horizontal.length}`,
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

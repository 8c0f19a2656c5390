import { type FacetBeam, type Pupil, powerThroughAperture } from '@coreward/optics';

/** Null where neither stop nor aberration touches the light. */
export function pupilOf(
  beam: FacetBeam,
  focalLength: number,
  stopRadius: number,
  aberration: number,
  wavelength: number,
): Pupil | null {
  if (!Number.isFinite(stopRadius)) return null;
  const stop = stopRadius / focalLength;
  // 3.3 radii of the far field let all but 4e-10 through
  if (aberration === 0 && stop > 3.3 * arrivalHalfAngle(beam, wavelength)) return null;
  return { stop, sphericalAberration: aberration, aberrationAt: stop, axisTiltX: 0, axisTiltY: 0 };
}

/** 1/e² half angle of the light at the facet, the larger axis, rad. */
export function arrivalHalfAngle(beam: FacetBeam, wavelength: number): number {
  return Math.max(
    (beam.m2X * wavelength) / (Math.PI * beam.waistRadiusX),
    (beam.m2Y * wavelength) / (Math.PI * beam.waistRadiusY),
  );
}

/** What the stop lets through of a beam that points where it points. */
export function stopTransmission(beam: FacetBeam, pupil: Pupil | null, wavelength: number): number {
  if (pupil === null) return 1;
  return powerThroughAperture(
    {
      radiusX: (beam.m2X * wavelength) / (Math.PI * beam.waistRadiusX),
      radiusY: (beam.m2Y * wavelength) / (Math.PI * beam.waistRadiusY),
      azimuth: beam.azimuth,
      centreX: beam.tiltX,
      centreY: beam.tiltY,
    },
    { semiAxisX: pupil.stop, semiAxisY: pupil.stop },
  );
}

/** A share of what arrives at the stop, counted against what passes it. */
export function perArrivedShare(
  share: number,
  beam: FacetBeam,
  { pupil, wavelength }: { readonly pupil: Pupil | null; readonly wavelength: number },
): number {
  return shareOfPassed(share, stopTransmission(beam, pupil, wavelength));
}

/** A share of what arrives at the stop, counted against the share that passes it. */
export const shareOfPassed = (share: number, passed: number): number =>
  passed === 0 ? share : Math.min(1, share / passed);

import type { Pupil } from '@coreward/optics';
import { asStated } from '../forecast/draw.ts';
import { doubtfulIn } from '../forecast/entries-of.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { surfacesTransmission } from '../forecast/way-to-the-facet.ts';
import type { Collimator } from '../launch/launch.ts';
import { quantileOf } from '../quantity/distribution.ts';
import type { Entry } from '../quantity/quantity.ts';
import type { FastFibre } from './fast-fibre.ts';
import { butFor, halfLogWidth } from './light-doubt.ts';
import { type LogSpread, noSpread, spreadOfRatios, together } from './log-spread.ts';
import type { MatchPurpose } from './matched.ts';
import { throughPupil } from './quick-shares.ts';

/** How doubtful one lens is in one light. */
export interface LensDoubt {
  /** Half of what lies between the 5 and the 95 % point of the focal length, in ln. */
  readonly focalLength: number;
  readonly surfaces: LogSpread;
}

/** How far the doubts of a collimator spread what it lets through, at a vacuum wavelength in m. */
export function lensDoubt(collimator: Collimator, wavelength: number): LensDoubt {
  const stated = surfacesTransmission(collimator, wavelength, asStated);
  const surfaces = doubtfulIn(collimator.surfaces).map((entry) =>
    spreadOfRatios(
      ...[0.05, 0.95].map((p) => surfacesTransmission(collimator, wavelength, butFor(entry, p)) / stated),
    ),
  );
  return { focalLength: halfLogWidth(collimator.focalLength), surfaces: together(surfaces) };
}

/** What the doubt of stop and aberration makes of the light that arrives at the stop. */
export function pupilSpread(
  { clearAperture, sphericalAberration }: Collimator,
  meeting: Meeting,
  pupil: Pupil,
  fibre: FastFibre,
  purpose: MatchPurpose,
): LogSpread {
  const share = (changed: Pupil): number => {
    const { guided, fundamental } = throughPupil(meeting, changed, fibre);
    return purpose === 'total' ? guided : fundamental;
  };
  const stated = Math.max(share(pupil), 1e-30);
  // nothing to tell where the light comes through as good as whole
  if (stated > 0.99) return noSpread;
  const ends = (entry: Entry) => [0.05, 0.95].map((p) => quantileOf(entry, p));
  const aperture = clearAperture === null ? [] : ends(clearAperture).map((end) => end / clearAperture.value);
  return together([
    // the aberration is told over the whole aperture, whatever that is
    spreadOfRatios(
      ...aperture.map(
        (by) => share({ ...pupil, stop: pupil.stop * by, aberrationAt: pupil.stop * by }) / stated,
      ),
    ),
    spreadOfRatios(
      ...ends(sphericalAberration).map((waves) => share({ ...pupil, sphericalAberration: waves }) / stated),
    ),
  ]);
}

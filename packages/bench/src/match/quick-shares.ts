import { aberratedGaussianEstimate, type FacetBeam, gaussianOverlap, type Pupil } from '@coreward/optics';
import { arrivalHalfAngle, stopTransmission } from '../forecast/at-the-stop.ts';
import { roundBeam, type Taken } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import type { FastFibre } from './fast-fibre.ts';

/** For a loss no greater than this a Gaussian's word is taken; what loses more is computed. */
const trustedLoss = 0.99;

/** Offsets, tilts and unlike axes below this share of core, aperture or each other are nothing to many modes. */
const small = 0.02;

/**
 * What a fibre takes of a beam, quickly: by the tables of round beams where it is one, or nearly.
 *
 * Right to a few thousandths where one of the two is true, and to a hundredth otherwise.
 */
export function quickShare(meeting: Meeting, fibre: FastFibre, beam: FacetBeam): Taken {
  const size = Math.sqrt(beam.waistRadiusX * beam.waistRadiusY);
  const m2 = Math.sqrt(beam.m2X * beam.m2Y);
  const round = () => fibre.round(m2)(Math.log(size / meeting.coreRadius));
  if (isRound(beam)) return round();
  const mode = roundBeam((fibre.fundamentalTaker.bestRadius ?? 1) * meeting.coreRadius, 1);
  const kept =
    gaussianOverlap(meeting.wavelength, beam, mode) /
    gaussianOverlap(meeting.wavelength, roundBeam(size, m2), mode);
  const { set } = fibre.taker;
  const trusted = kept > trustedLoss && kept <= 1;
  if (set === null ? !isNearlyRound(meeting, beam) : !trusted) return fibre.other(meeting, beam);
  const plain = round();
  return {
    guided: plain.guided * guidedShare(kept, set?.modes.length ?? null),
    fundamental: Math.min(1, (plain.fundamental ?? 0) * kept),
    powers: plain.powers,
  };
}

/** What is still guided where LP01 keeps `kept` of its light: other modes take in part what it loses, many take all. */
function guidedShare(kept: number, modes: number | null): number {
  if (modes === null) return 1;
  return modes === 1 ? kept : (1 + kept) / 2;
}

function isRound(beam: FacetBeam): boolean {
  const { waistRadiusX, waistRadiusY, m2X, m2Y, waistZX, waistZY } = beam;
  return (
    waistRadiusX === waistRadiusY && m2X === m2Y && waistZX === 0 && waistZY === 0 && isSquarelyAimed(beam)
  );
}

const isSquarelyAimed = ({ offsetX, offsetY, tiltX, tiltY }: FacetBeam): boolean =>
  offsetX === 0 && offsetY === 0 && tiltX === 0 && tiltY === 0;

function isNearlyRound({ coreRadius, numericalAperture, wavelength }: Meeting, beam: FacetBeam): boolean {
  const depth = Math.min(beam.waistRadiusX, beam.waistRadiusY) / arrivalHalfAngle(beam, wavelength);
  return (
    Math.abs(Math.log(beam.waistRadiusX / beam.waistRadiusY)) < small &&
    Math.abs(Math.log(beam.m2X / beam.m2Y)) < small &&
    Math.abs(beam.waistZX) + Math.abs(beam.waistZY) < small * depth &&
    Math.hypot(beam.offsetX, beam.offsetY) < small * coreRadius &&
    Math.hypot(beam.tiltX, beam.tiltY) < small * numericalAperture
  );
}

/** V above which many modes take aberrated light as well as clean light, as long as it comes through. */
const blindToAberration = 30;

/** Waves of aberration at the beam's edge that cost less than a thousandth, and need not be computed. */
const unseen = 0.01;

/**
 * What stop and aberration of the lens leave of the guided light and of LP01, of what arrives at the stop. What LP01 loses
 * to aberration stands for the others, too: with half a wave at the beam's edge that was off by 0.07 at most between
 * V = 4 and V = 13, with a quarter by 0.06.
 */
export function throughPupil(
  { beam, wavelength, coreRadius, numericalAperture }: Meeting,
  pupil: Pupil,
  { taker, fundamentalTaker }: FastFibre,
): { readonly guided: number; readonly fundamental: number } {
  const beamAngle = Math.min(arrivalHalfAngle(beam, wavelength), 4 * numericalAperture);
  const wavesAtEdge = Math.abs(pupil.sphericalAberration) * (beamAngle / pupil.aberrationAt) ** 4;
  const fundamental = aberratedGaussianEstimate({
    beamAngle,
    modeAngle: wavelength / (Math.PI * (fundamentalTaker.bestRadius ?? 1) * coreRadius),
    stop: pupil.stop,
    sphericalAberration: wavesAtEdge < unseen ? 0 : pupil.sphericalAberration,
    aberrationAt: pupil.aberrationAt,
  });
  const guided = taker.vNumber < blindToAberration ? fundamental : stopTransmission(beam, pupil, wavelength);
  return { guided, fundamental };
}

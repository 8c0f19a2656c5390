import type { FacetBeam } from '@coreward/optics';
import { writeValue } from '../units/write.ts';
import { stopTransmission } from './at-the-stop.ts';
import { betterFocalLength } from './better-focal-length.ts';
import { convergence, paraxialUpTo } from './convergence.ts';
import { asStated } from './draw.ts';
import type { Remark } from './expected.ts';
import { fewModedBelow } from './fibre-taker.ts';
import { coarseAbove, handLoss } from './hand-loss.ts';
import { suitedRadius } from './overlap-causes.ts';
import { lossText, percentText, wavelengthText } from './remark-text.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/** What the spot at the facet says: size, focus, shape, cone, aim. */
export function spotRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [
    ...strongFocus(told),
    ...focus(told, bench),
    ...size(told, bench),
    ...quality(told),
    ...cone(told, bench),
    ...shape(told),
    ...aim(told),
  ];
}

const factorOf = ({ ledger }: Told, id: string): number =>
  ledger.find((entry) => entry.id === id)?.transmission ?? 1;

function focus(told: Told, { budget }: StatedBench): readonly Remark[] {
  const { collimator } = told.launch;
  const move = budget.bestDistance - budget.distance;
  const gain = factorOf(told, 'focus');
  if (collimator === null || gain > 0.99 || Math.abs(move) < 1e-7) return [];
  const way = move < 0 ? 'towards the lens' : 'away from the lens';
  const thread = collimator.focusThread;
  const turns =
    thread === null ? '' : `, ${Math.abs(move / thread.value).toPrecision(2)} turn of the focus thread`;
  const setFor =
    collimator.focus.kind === 'wavelength'
      ? `The collimator is focused for ${wavelengthText(collimator.focus.wavelength.value)}, this light is ${wavelengthText(told.launch.laser.wavelength.value)}. `
      : 'The facet is out of focus. ';
  return [
    {
      id: 'refocus',
      kind: 'change',
      text: `${setFor}Refocus: move the fibre tip ${writeValue(Math.abs(move), 'length', 2)} ${way}${turns}; that gains ${lossText(gain)}.`,
    },
  ];
}

function size(told: Told, bench: StatedBench): readonly Remark[] {
  const { meeting, taker } = bench;
  const { collimator, laser } = told.launch;
  const { waistDiameterX, waistDiameterY } = told.facet;
  const spot = Math.sqrt(waistDiameterX * waistDiameterY);
  const mixed = Math.sqrt(meeting.beam.m2X * meeting.beam.m2Y);
  const suited = 2 * suitedRadius(meeting, taker) * Math.sqrt(mixed);
  const ratio = suited / spot;
  if (factorOf(told, 'spot-size') > 0.97) return [];
  const against = taker.vNumber < fewModedBelow ? 'the mode' : 'core and aperture together';
  const said = `The spot is too ${ratio > 1 ? 'small' : 'large'} for ${against}: ${writeValue(spot, 'length', 2)} across, ${writeValue(suited, 'length', 2)} would suit.`;
  if (collimator === null) {
    // a lens makes of a beam of radius w a waist of radius M²λf/(πw)
    const arriving = Math.sqrt(told.facet.spotDiameterX * told.facet.spotDiameterY);
    const focalLength = (Math.PI * arriving * suited) / (4 * mixed * laser.wavelength.value);
    const lens = writeValue(focalLength, 'length', 2);
    return [
      {
        id: 'spot-size',
        kind: 'change',
        text: `${said} Put a lens of about ${lens} focal length before the fibre.`,
      },
    ];
  }
  const better = betterFocalLength(bench, ratio);
  // less is not worth another lens
  if (better.gain < 1.02) return [];
  const focalLength = focalLengthFor(collimator, meeting.wavelength, asStated);
  const lens = `A focal length of about ${writeValue(focalLength * better.ratio, 'length', 2)} instead of ${focalLengthText(focalLength, collimator.focalLength.value)} gains up to ${lossText(1 / better.gain)}`;
  // a wider beam would be clipped more, a narrower one less: only where neither matters is it the same
  const unclipped = stopTransmission(widened(meeting.beam, better.ratio), meeting.pupil, meeting.wavelength);
  const beam =
    unclipped > 0.99 && factorOf(told, 'lens-clip') > 0.99
      ? `; so does a beam ${(1 / better.ratio).toPrecision(2)} times as wide`
      : '';
  return [{ id: 'spot-size', kind: 'change', text: `${said} ${lens}${beam}.` }];
}

/** With what is written of the lens, where that is another length: glass bends each colour by its own. */
function focalLengthText(inThisLight: number, written: number): string {
  const text = writeValue(inThisLight, 'length', 2);
  const label = writeValue(written, 'length', 2);
  return label === text ? text : `${text} (what the ${label} of the lens are in this light)`;
}

/** The beam with its waist at the facet so much larger, as a narrower beam at the lens would have it. */
const widened = (beam: FacetBeam, ratio: number): FacetBeam => ({
  ...beam,
  waistRadiusX: beam.waistRadiusX * ratio,
  waistRadiusY: beam.waistRadiusY * ratio,
});

function quality(told: Told): readonly Remark[] {
  const loss = factorOf(told, 'beam-quality');
  if (loss > 0.94) return [];
  return [
    {
      id: 'beam-quality',
      kind: 'know',
      text: `The beam’s M² alone costs ${lossText(loss)}: no lens brings that back, a fibre with more modes or a cleaner laser does. Another beam of the same M² may couple better or worse.`,
    },
  ];
}

function cone({ launch, facet }: Told, { meeting }: StatedBench): readonly Remark[] {
  const { numericalAperture, vNumber } = meeting;
  const arrives = convergence(launch, facet.halfAngle);
  if (vNumber < fewModedBelow || arrives < numericalAperture) return [];
  const change =
    launch.collimator === null
      ? 'put a lens before the fibre that widens the spot'
      : 'use a longer focal length';
  return [
    {
      id: 'aperture-overfilled',
      kind: 'change',
      text: `The light arrives in a cone of ${coneText(arrives)} half angle; the fibre takes ${coneText(numericalAperture)}. What comes steeper is lost: ${change}.`,
    },
  ];
}

const coneText = (sine: number): string => writeValue(Math.asin(Math.min(1, sine)), 'angle', 2, '°');

function strongFocus({ launch, facet }: Told): readonly Remark[] {
  const arrives = convergence(launch, facet.halfAngle);
  if (arrives <= paraxialUpTo) return [];
  const strength = arrives < 1 ? `of ${arrives.toPrecision(2)}` : 'of 1 and more, which no lens has';
  return [
    {
      id: 'beyond-paraxial',
      kind: 'limits',
      text: `Out of range: the light is focused with a numerical aperture ${strength}. The model behind all this is paraxial and scalar, good up to about ${paraxialUpTo}: take the figures for a guess, and the real spot for a larger one.`,
    },
  ];
}

function shape(told: Told): readonly Remark[] {
  const loss = factorOf(told, 'ellipticity');
  if (loss > 0.97) return [];
  return [
    {
      id: 'ellipticity',
      kind: 'change',
      text: `The beam is elliptic or astigmatic, which costs ${lossText(loss)}. A pair of prisms or of cylindrical lenses rounds it.`,
    },
  ];
}

function aim(told: Told): readonly Remark[] {
  const remarks: Remark[] = [];
  const loss = factorOf(told, 'aim');
  if (told.coupling.aim === 'as written' && loss < 0.97) {
    remarks.push({
      id: 'aim',
      kind: 'change',
      text: `The misalignment as written costs ${lossText(loss)}; walking the beam brings it back.`,
    });
  }
  const hand = handLoss(told);
  if (hand !== null && hand.share > coarseAbove) {
    const lens = told.launch.collimator === null ? '' : ' or a lens of shorter focal length';
    remarks.push({
      id: 'hand-limit',
      kind: 'change',
      text: `These mounts are coarse for this launch: the finest turn of a hand on the near mirror costs up to ${percentText(hand.share)} of ${hand.of}. A longer lever, a finer thread, a long hex key in the screw${lens} helps, before anything is bolted down.`,
    });
  }
  return remarks;
}

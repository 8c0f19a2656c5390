import { writeValue } from '../units/write.ts';
import { asStated } from './draw.ts';
import type { Remark } from './expected.ts';
import { fewModedBelow } from './fibre-taker.ts';
import { suitedRadius } from './overlap-causes.ts';
import { lossText, percentText } from './remark-text.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/** What the spot at the facet says: size, focus, shape, cone, aim. */
export function spotRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [
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
      ? `The collimator is focused for ${writeValue(collimator.focus.wavelength.value, 'length')}, this light is ${writeValue(told.launch.laser.wavelength.value, 'length')}. `
      : 'The facet is out of focus. ';
  return [
    {
      id: 'refocus',
      kind: 'change',
      text: `${setFor}Refocus: move the fibre tip ${writeValue(Math.abs(move), 'length', 2)} ${way}${turns}; that gains ${lossText(gain)}.`,
    },
  ];
}

function size(told: Told, { meeting, taker }: StatedBench): readonly Remark[] {
  const { collimator } = told.launch;
  const { waistDiameterX, waistDiameterY } = told.facet;
  const spot = Math.sqrt(waistDiameterX * waistDiameterY);
  const mixed = Math.sqrt(meeting.beam.m2X * meeting.beam.m2Y);
  const suited = 2 * suitedRadius(meeting, taker) * Math.sqrt(mixed);
  const ratio = spot / suited;
  const loss = factorOf(told, 'spot-size');
  if (loss > 0.97) return [];
  const small = ratio < 1;
  const against = taker.vNumber < fewModedBelow ? 'the mode' : 'core and aperture together';
  const said = `The spot is ${small ? 'too small' : 'too large'} for ${against}: ${writeValue(spot, 'length', 2)} across, ${writeValue(suited, 'length', 2)} would suit.`;
  if (collimator === null) {
    return [{ id: 'spot-size', kind: 'change', text: `${said} Put a lens before the fibre.` }];
  }
  const focalLength = focalLengthFor(collimator, meeting.wavelength, asStated);
  return [
    {
      id: 'spot-size',
      kind: 'change',
      text: `${said} A focal length of about ${writeValue(focalLength / ratio, 'length', 2)} instead of ${writeValue(focalLength, 'length', 2)} gains up to ${lossText(loss)}; so does a beam ${(ratio).toPrecision(2)} times as wide.`,
    },
  ];
}

function quality(told: Told): readonly Remark[] {
  const loss = factorOf(told, 'beam-quality');
  if (loss > 0.94) return [];
  return [
    {
      id: 'beam-quality',
      kind: 'know',
      text: `The beam’s M² alone costs ${lossText(loss)}: no lens brings that back, a fibre with more modes or a cleaner laser does. M² does not fix what a beam is made of; another beam of the same M² may couple better or worse.`,
    },
  ];
}

function cone(told: Told, { meeting }: StatedBench): readonly Remark[] {
  const { halfAngle } = told.facet;
  const { numericalAperture, vNumber } = meeting;
  if (vNumber < fewModedBelow || Math.sin(Math.min(halfAngle, 1.5)) < numericalAperture) return [];
  return [
    {
      id: 'aperture-overfilled',
      kind: 'change',
      text: `The light arrives in a cone of ${writeValue(halfAngle, 'angle', 2)} half angle; the fibre takes ${writeValue(Math.asin(Math.min(1, numericalAperture)), 'angle', 2)}. What comes steeper is lost: use a longer focal length.`,
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
  const { handLimit } = told.tolerances;
  if (handLimit !== null && handLimit > 0.03) {
    remarks.push({
      id: 'hand-limit',
      kind: 'change',
      text: `These mounts are coarse for this launch: the finest motion of a finger on the near mirror costs up to ${percentText(handLimit)} of the fundamental. A longer lever, a finer thread, a hex key in the screw or a shorter focal length helps, before anything is bolted down.`,
    });
  }
  return remarks;
}

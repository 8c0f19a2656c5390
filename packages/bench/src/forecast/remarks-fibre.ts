import { writeValue } from '../units/write.ts';
import type { Remark } from './expected.ts';
import { fewModedBelow } from './fibre-taker.ts';
import { lossText } from './remark-text.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';

/** What the fibre says: its modes at this wavelength, bends, attenuation, cladding light. */
export function fibreRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [...modes(told, bench), ...bends(told, bench), ...attenuation(told), ...cladding(told)];
}

function modes(told: Told, { meeting }: StatedBench): readonly Remark[] {
  const { lpModes, modesWithOrientation, lpModesRange, cutoffWavelength } = told.fibre;
  if (lpModes === null || lpModesRange === null || lpModesRange[1] < 2 || meeting.vNumber >= fewModedBelow)
    return [];
  const { guided, fundamental } = told.coupling;
  const wavelength = writeValue(meeting.wavelength, 'length');
  const single = writeValue(cutoffWavelength, 'length', 3);
  if (lpModes === 1) {
    return [
      {
        id: 'perhaps-more-modes',
        kind: 'know',
        text: `As stated the fibre guides one mode at ${wavelength}, but within its doubt up to ${lpModesRange[1]} LP modes: it is single-moded above ${single}, near this light.`,
      },
    ];
  }
  const range =
    lpModesRange[0] === lpModesRange[1]
      ? ''
      : ` (between ${lpModesRange[0]} and ${lpModesRange[1]} within the doubt of its core and aperture)`;
  const share =
    fundamental === null || guided === 0
      ? ''
      : ` Of the guided light ${((100 * fundamental) / guided).toFixed(0)} % is in LP01.`;
  const radius = (2.405 * meeting.wavelength) / (2 * Math.PI * meeting.numericalAperture);
  return [
    {
      id: 'several-modes',
      kind: 'know',
      text: `At ${wavelength} this fibre guides ${lpModes} LP modes${range}, ${modesWithOrientation} with their orientations; it is single-moded only above ${single}. Total power then hides misalignment: the meter stands near its peak while the beam is still off, and the light goes into higher modes.${share} Watch the shape of the output spot as well.`,
    },
    {
      id: 'fewer-modes',
      kind: 'change',
      text: `For one mode at ${wavelength} take a fibre with a core below ${writeValue(2 * radius, 'length', 2)} at the same aperture of ${meeting.numericalAperture.toPrecision(2)}.`,
    },
  ];
}

function bends(told: Told, { budget }: StatedBench): readonly Remark[] {
  const remarks = told.ledger
    .filter(({ id, low }) => id.startsWith('bend-') && low < 0.977)
    .map(
      ({ id, label, transmission, low }): Remark => ({
        id: `${id}-costs`,
        kind: 'change',
        text:
          transmission < 0.99
            ? `The fibre’s ${label} costs ${lossText(transmission)}, perhaps ${lossText(low)}: make it wider.`
            : `The fibre’s ${label} may cost up to ${lossText(low)}; a wider one would not.`,
      }),
    );
  if (budget.lostModes > 0) {
    remarks.push({
      id: 'modes-lost-in-bends',
      kind: 'know',
      text:
        budget.lostModes === 1
          ? 'One of the guided LP modes holds so loosely that the bends strip it; its light is counted as lost.'
          : `${budget.lostModes} of the guided LP modes hold so loosely that the bends strip them; their light is counted as lost.`,
    });
  }
  return remarks;
}

function attenuation(told: Told): readonly Remark[] {
  if (told.launch.fibre.attenuation !== null) return [];
  const entry = told.ledger.find(({ id }) => id === 'attenuation');
  if (entry === undefined || entry.low > 0.977) return [];
  return [
    {
      id: 'attenuation-guessed',
      kind: 'know',
      text: `The attenuation at ${writeValue(told.launch.laser.wavelength.value, 'length')} is a guess: between ${lossText(entry.high)} and ${lossText(entry.low)} over this length. Comparing two lengths of the fibre settles it.`,
    },
  ];
}

function cladding(told: Told): readonly Remark[] {
  const { claddingReaches, reading } = told.meter;
  if (!claddingReaches) return [];
  return [
    {
      id: 'cladding-light',
      kind: 'know',
      text: `Light in the cladding can reach the far end here and would be taken for guided light: expect the meter to show ${writeValue(reading.value, 'power', 2)}, up to ${writeValue(reading.high, 'power', 2)}. A few tight turns or a drop of index-matching liquid on the bare cladding takes it out.`,
    },
  ];
}

import { attenuationEstimate, OutOfRange } from '@coreward/optics';
import { writeValue } from '../units/write.ts';
import { looseModes } from './budget.ts';
import type { Remark } from './expected.ts';
import { fewModedBelow } from './fibre-taker.ts';
import { lossText, percentText, wavelengthText } from './remark-text.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';

/** What the fibre says: its modes at this wavelength, bends, attenuation, cladding light. */
export function fibreRemarks(told: Told, bench: StatedBench): readonly Remark[] {
  return [
    ...modes(told, bench),
    ...straightOnly(told),
    ...bends(told, bench),
    ...attenuation(told),
    ...perhapsPlastic(told),
    ...cladding(told),
  ];
}

function modes(told: Told, { meeting }: StatedBench): readonly Remark[] {
  const { lpModes, lpModesRange, cutoffWavelength } = told.fibre;
  if (lpModes === null || lpModesRange === null || lpModesRange[1] < 2 || meeting.vNumber >= fewModedBelow)
    return [];
  const wavelength = wavelengthText(meeting.wavelength);
  if (lpModes === 1) {
    return [
      {
        id: 'perhaps-more-modes',
        kind: 'know',
        text: `Within the doubt of core and aperture the fibre may guide up to ${lpModesRange[1]} LP modes at ${wavelength}, not one alone.`,
      },
    ];
  }
  const share = shareInFundamental(told);
  if (share === null || share >= nearlyAll || !hidesMisalignment(told)) return [];
  // V goes with the core over the wavelength, whatever the profile
  const core = 2 * meeting.coreRadius * (meeting.wavelength / cutoffWavelength);
  return [
    {
      id: 'several-modes',
      kind: 'know',
      text: `Total power hides misalignment here: the meter stands near its peak while the beam is still off, and the light goes into higher modes. Of the guided light ${percentText(share)} is in LP01. Watch the shape of the output spot as well.`,
    },
    {
      id: 'fewer-modes',
      kind: 'change',
      text: `For one mode at ${wavelength} take a fibre with a core below ${writeValue(core, 'length', 2)} at the same aperture of ${meeting.numericalAperture.toPrecision(2)}.`,
    },
  ];
}

/** From this share on LP01 has about all the light, and nothing is hidden in other modes. */
const nearlyAll = 0.98;

function shareInFundamental({ coupling: { guided, fundamental } }: Told): number | null {
  return fundamental === null || guided === 0 ? null : fundamental / guided;
}

/** Whether all guided light bears more misalignment than LP01 does, so that a meter does not show it. */
function hidesMisalignment({ tolerances: { guided, fundamental } }: Told): boolean {
  if (fundamental === null) return true;
  const wider = (all: number | null, one: number | null) =>
    one !== null && (all === null || all > 1.15 * one);
  return (
    wider(guided.offsetFor1dB, fundamental.offsetFor1dB) || wider(guided.tiltFor1dB, fundamental.tiltFor1dB)
  );
}

function straightOnly({ ledger }: Told): readonly Remark[] {
  const entry = ledger.find(({ id }) => id === looseModes);
  if (entry === undefined || entry.transmission > 0.98) return [];
  return [
    {
      id: 'straight-only',
      kind: 'know',
      text: `Of the guided light ${percentText(1 - entry.transmission)} is in modes so near their cut-off that only a dead straight fibre keeps it; it is counted as lost on the way. A slightly wider core would hold it, a narrower one never take it.`,
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
      text: `The attenuation at ${wavelengthText(told.launch.laser.wavelength.value)} is a guess: between ${lossText(entry.high)} and ${lossText(entry.low)} over this length. Comparing two lengths of the fibre settles it.`,
    },
  ];
}

/**
 * From this core (m) and this aperture on a fibre of which nothing else is said is rather a plastic one. Plastic fibre is
 * sold with 0.25 mm to 3 mm and NA 0.5; silica in hard plastic cladding as thick seldom accepts more than 0.39.
 * Common practice, no source.
 */
const usualInPlastic = { core: 0.25e-3, aperture: 0.4 } as const;

function perhapsPlastic({ launch: { laser, fibre } }: Told): readonly Remark[] {
  const { core, aperture } = usualInPlastic;
  const thick = fibre.coreDiameter.value >= core && fibre.numericalAperture.value >= aperture;
  if (fibre.materialSaid || fibre.attenuation !== null || !thick) return [];
  const passed = passedByPlastic(laser.wavelength.value, fibre.length.value);
  const loses =
    passed === null
      ? 'loses more than anybody can estimate in this light'
      : `would lose about ${lossText(passed)} over this length`;
  return [
    {
      id: 'perhaps-plastic',
      kind: 'know',
      text: `Nothing is said of the fibre’s material, and it is taken for silica. A core and an aperture as large are usual in plastic, which ${loses}. Write which it is, \`acrylic\` or \`silica\`.`,
    },
  ];
}

/** Share of the light that a plastic fibre usually lets through, null where nothing is known of it. */
function passedByPlastic(wavelength: number, length: number): number | null {
  try {
    return Math.exp(-attenuationEstimate(wavelength, 'acrylic').expected * length);
  } catch (error) {
    if (error instanceof OutOfRange) return null;
    throw error;
  }
}

function cladding(told: Told): readonly Remark[] {
  if (!told.meter.claddingReaches) return [];
  return [
    {
      id: 'cladding-light',
      kind: 'know',
      text: 'Light in the cladding can reach the far end here, and a meter takes it for guided light. A few tight turns or a drop of index-matching liquid on the bare cladding takes it out.',
    },
  ];
}

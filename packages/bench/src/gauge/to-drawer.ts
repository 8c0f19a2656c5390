import type { Quantity } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import { writeQuantity, writeValue } from '../units/write.ts';
import type { GaugeAnswer } from './answer.ts';
import { loadDoubt, usualLoadDoubt } from './detector/photodiode.ts';
import type { Gauge, GaugeResult, Readings } from './gauge.ts';
import { usualPitch } from './mount/screw-turns.ts';

/** An answer as it goes into a drawer or a launch. */
export interface DrawerEntry {
  /** The key of a launch, as `nextMeasurement` names it: `laser.beam.diameter`. */
  readonly key: string;
  readonly dimension: Dimension;
  readonly quantity: Quantity;
  /** What must be so for the answer to be this; null where it is so by itself. */
  readonly condition: string | null;
  /** The wavelength it holds at, for a focal length or a responsivity found with light of another colour. */
  readonly at: string | null;
  /** What must stand beside it for it to hold, as a document has it; null where nothing must. */
  readonly beside: { readonly key: string; readonly text: string } | null;
  /** `0.70 mm ± 0.01 mm` */
  readonly text: string;
  /** As a document has it: `{ value: 0.70 mm ± 0.01 mm, origin: measured, note: knife edge }`. */
  readonly written: string;
}

type Place = readonly [
  gauge: string,
  quantity: string,
  key: string,
  dimension: Dimension,
  condition?: string,
];

const atWaist = 'if it was taken at the waist';
const thatLength = 'if this is the length that was measured';
const thatPart = 'if this is the part that was measured';
const atExit = 'if nothing but air lay between its exit and the detector';

const places: readonly Place[] = [
  ['knife-edge', 'd4sigma_m', 'laser.beam.diameter', 'length'],
  ['knife-edge', 'd4sigma_m', 'laser.beam.waist diameter', 'length', atWaist],
  ['knife-edge', 'waistDiameter_m', 'laser.beam.waist diameter', 'length'],
  ['knife-edge', 'waistPosition_m', 'laser.beam.waist position', 'length'],
  ['knife-edge', 'm2', 'laser.beam.quality', 'number'],
  ['spot-picture', 'd4sigma_m', 'laser.beam.diameter', 'length'],
  ['spot-picture', 'd4sigma_m', 'laser.beam.waist diameter', 'length', atWaist],
  ['two-distances', 'fullDivergence_rad', 'laser.beam.divergence', 'angle'],
  ['caustic', 'waistDiameter_m', 'laser.beam.waist diameter', 'length'],
  ['caustic', 'waistPosition_m', 'laser.beam.waist position', 'length'],
  ['caustic', 'm2', 'laser.beam.quality', 'number'],
  ['ruler', 'length_m', 'path.space', 'length', thatLength],
  ['ruler', 'length_m', 'path.clear aperture', 'length', thatLength],
  ['ruler', 'length_m', 'path.mount.lever', 'length', thatLength],
  ['ruler', 'length_m', 'collimator.clear aperture', 'length', thatLength],
  ['ruler', 'length_m', 'fibre.length', 'length', thatLength],
  ['ruler', 'length_m', 'fibre.bends.radius', 'length', thatLength],
  ['screw-turns', 'lever_m', 'path.mount.lever', 'length', 'if it is a screw of this mirror'],
  ['before-and-after', 'transmission', 'path.reflectance', 'fraction', thatPart],
  ['before-and-after', 'transmission', 'path.lens.transmission', 'fraction', thatPart],
  ['before-and-after', 'transmission', 'path.filter.transmission', 'fraction', thatPart],
  ...['far-wall-spot', 'reverse-radius', 'imaging', 'two-colour-focus'].flatMap((gauge): readonly Place[] => [
    [gauge, 'focalLength_m', 'collimator.focal length', 'length'],
    [gauge, 'focalLength_m', 'output.collimator.focal length', 'length', 'if it is the lens at the far end'],
  ]),
  ['imaging', 'focalLength_m', 'path.lens.focal length', 'length', 'if it is the lens on the way'],
  ['thread-pitch', 'pitch_m_per_turn', 'collimator.focus.thread', 'screwPitch', 'if it is the focus thread'],
  ['thread-pitch', 'pitch_m_per_turn', 'path.mount.pitch', 'screwPitch', 'if it is a screw of this mirror'],
  ['far-field-cone', 'na5percent', 'fibre.numerical aperture', 'number'],
  ['far-field-profile', 'sin5percent', 'fibre.numerical aperture', 'number'],
  ['core-picture', 'coreDiameter_m', 'fibre.core diameter', 'length'],
  ['mode-count', 'coreDiameter_m', 'fibre.core diameter', 'length'],
  ['cut-back', 'attenuation_per_m', 'fibre.attenuation', 'attenuation'],
  ['substitution', 'loss_nepers', 'fibre.connectors.between.loss', 'loss'],
  ...['photodiode', 'solar-cell', 'calorimeter'].flatMap((gauge): readonly Place[] => [
    [gauge, 'power_W', 'laser.power', 'power', atExit],
    [gauge, 'power_W', 'reference.power', 'power', 'if the reference was measured, at its exit'],
  ]),
  ['photodiode', 'responsivity_A_per_W', 'detector.responsivity', 'responsivity'],
  ['solar-cell', 'responsivity_A_per_W', 'detector.responsivity', 'responsivity'],
];

/** Keys beside which a document says at which wavelength they hold. */
const holdsAt: ReadonlySet<string> = new Set([
  'collimator.focal length',
  'output.collimator.focal length',
  'detector.responsivity',
]);

/** The keys of a launch that a gauge's answers may fill. */
export const keysFilledBy = (gauge: string): readonly string[] =>
  places.filter(([name]) => name === gauge).map(([, , key]) => key);

/**
 * The answers that have a place in a drawer or a launch, with their uncertainty and the origin `measured`. An answer of
 * few readings is entered with the uncertainty its interval stands for, a 1.645th of half of it, for a document knows no
 * degrees of freedom. What is undetermined, or has no place, is left out.
 *
 * @param settings with which it was measured: a focal length holds at their wavelength
 */
export function drawerEntries(
  gauge: Gauge,
  { answers }: GaugeResult,
  settings: Readings['settings'] = {},
): readonly DrawerEntry[] {
  const wavelength = settings.wavelength ?? settings['wavelength 1'];
  return answers.flatMap((answer) => {
    const found = measured(answer, gauge.title);
    if (found === null) return [];
    return places
      .filter(([name, told]) => name === gauge.name && told === answer.quantity)
      .map(([, , key, dimension, condition = null]) => {
        const quantity = key === 'detector.responsivity' ? withoutLoad(found, answer) : found;
        const text = writeQuantity(quantity, dimension);
        const at =
          holdsAt.has(key) && wavelength !== undefined ? writeValue(wavelength.value, 'length', 5) : null;
        const written = `{ value: ${text},${at === null ? '' : ` at: ${at},`} origin: measured, note: ${gauge.title} }`;
        const beside = besideIt(gauge, key, settings);
        return { key, dimension, quantity, condition, at, beside, text, written };
      });
  });
}

/**
 * Of a screw only the tilt for a turn was measured: a lever holds with the pitch it was worked out for. A responsivity found
 * over a load stands beside that load.
 */
function besideIt(gauge: Gauge, key: string, { pitch, load }: Readings['settings']): DrawerEntry['beside'] {
  if (gauge.name === 'screw-turns' && key === 'path.mount.lever')
    return { key: 'pitch', text: writeValue(pitch?.value ?? usualPitch, 'screwPitch', 6) };
  if (key !== 'detector.responsivity' || load === undefined) return null;
  const known: Quantity = {
    value: load.value,
    uncertainty: load.uncertainty ?? usualLoadDoubt * load.value,
    shape: 'normal',
    origin: 'measured',
  };
  return { key: 'load', text: writeQuantity(known, 'resistance') };
}

/**
 * A responsivity without the doubt of its load, which stands beside it with its own: whoever reads volts over that load takes
 * both, and would count it twice.
 */
function withoutLoad(quantity: Quantity, { contributions }: GaugeAnswer): Quantity {
  const load = contributions.find(({ from }) => from === loadDoubt)?.share ?? 0;
  return { ...quantity, uncertainty: quantity.uncertainty * Math.sqrt(1 - load) };
}

function measured({ value, low, high, contributions }: GaugeAnswer, note: string): Quantity | null {
  if (value === null || low === null || high === null || contributions.length === 0) return null;
  return { value, uncertainty: (high - low) / (2 * 1.6449), shape: 'normal', origin: 'measured', note };
}

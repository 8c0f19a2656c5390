/** Which light is counted on a bench, and at which power: the highest there may be, and every line of it. */
import { hiddenInfrared, type InfraredKnown, powerToAssume } from '@coreward/optics';
import type { Laser, Launch } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Answers, Emission } from './answers.ts';
import { type LineOfLight, lineOfLight } from './line-of-light.ts';

/** The lines of a bench. */
export interface LightToCount {
  readonly laser: LineOfLight;
  /** What runs along with the laser's light: hidden infrared, a pilot. */
  readonly companions: readonly LineOfLight[];
  readonly reference: LineOfLight | null;
  /** Hidden infrared that runs along with the reference light. */
  readonly referenceInfrared: LineOfLight | null;
}

/** All lines of a bench, the laser's first, the reference light last. */
export function linesOf({ laser, companions, ...light }: LightToCount): readonly LineOfLight[] {
  return [laser, ...companions, ...backwardLines(light)];
}

/** What is sent in from the far end. */
export function backwardLines({
  reference,
  referenceInfrared,
}: Pick<LightToCount, 'reference' | 'referenceInfrared'>): readonly LineOfLight[] {
  return [reference, referenceInfrared].filter((line) => line !== null);
}

/** Everything that may shine on this bench. */
export function lightToCount(launch: Launch, answers: Answers): LightToCount {
  const emission: Emission = answers.emission ?? { kind: 'continuous' };
  return {
    laser: laserLine(launch.laser, answers, emission),
    companions: [...infraredLine(launch.laser, answers), ...otherLine(answers)],
    reference: referenceLine(launch, answers),
    referenceInfrared: referenceInfraredLine(launch, answers),
  };
}

/** The worse of what is rated, what its doubt allows, and the highest that was answered. */
const powerToCount = (power: Quantity, highest: Parameters<typeof powerToAssume>[0]['highest']) =>
  powerToAssume({ highest, rated: power.value, reading: intervalOf(power, 0.9).high });

function laserLine({ wavelength, power }: Laser, answers: Answers, emission: Emission): LineOfLight {
  const counted = powerToCount(power, answers.highestPower);
  return lineOfLight({
    name: 'laser',
    title: 'the laser',
    wavelength,
    stated: power.value,
    power: counted.power,
    assumed: [
      counted.assumed,
      ...(answers.emission === null
        ? ['continuous light is taken for granted; if it is pulsed, all of this is too mild']
        : []),
    ],
    emission,
    basis: [counted.basis],
  });
}

/**
 * Light of doubled and tripled lasers, m: the green ones from end to end, of the others what is sold.
 *
 * @source common practice, no source
 */
const doubled = {
  green: [500e-9, 565e-9],
  others: [349e-9, 351e-9, 355e-9, 457e-9, 473e-9, 488e-9, 577e-9, 589e-9, 593.5e-9, 671e-9],
  slack: 1.5e-9,
} as const;

/** Whether light of this wavelength, its doubt included, may come out of a frequency-doubled or tripled laser, with infrared. */
export function mayBeDoubled(wavelength: Quantity): boolean {
  const { low, high } = intervalOf(wavelength, 0.9);
  const [from, to] = doubled.green;
  return (
    (high >= from && low <= to) ||
    doubled.others.some((one) => high >= one - doubled.slack && low <= one + doubled.slack)
  );
}

/** Of the pump, m; the fundamental at 1064 nm has the higher limit. */
const pumpWavelength = 808e-9;

function infraredLine({ wavelength, power }: Laser, answers: Answers): readonly LineOfLight[] {
  if (!mayBeDoubled(wavelength)) return [];
  const rating = Math.max(power.value, answers.highestPower ?? 0);
  const line = hiddenLine('infrared', 'the laser', rating, answers.infrared, answers.emission);
  return line === null ? [] : [line];
}

function referenceInfraredLine({ reference }: Launch, answers: Answers): LineOfLight | null {
  if (reference === null || !mayBeDoubled(reference.wavelength)) return null;
  const rating = Math.max(reference.power.value, answers.referencePower ?? 0);
  return hiddenLine('reference-infrared', 'the reference source', rating, answers.referenceInfrared, null);
}

/** @param rating of the source, W */
function hiddenLine(
  name: 'infrared' | 'reference-infrared',
  source: string,
  rating: number,
  known: InfraredKnown,
  emission: Emission | null,
): LineOfLight | null {
  const hidden = hiddenInfrared(rating, pumpWavelength, known);
  if (hidden.power === 0) return null;
  return lineOfLight({
    name,
    title: `hidden infrared of ${source}`,
    wavelength: { value: pumpWavelength, uncertainty: 0, shape: 'normal', origin: 'assumed' },
    stated: known.kind === 'measured' ? known.power : null,
    power: hidden.power,
    assumed:
      known.kind === 'not known'
        ? [
            `${source} may be frequency-doubled or tripled, and nobody said that its infrared was blocked or measured: twice its ` +
              'rated power is assumed, at 808 nm; the result may be too mild',
          ]
        : [],
    emission: emission ?? { kind: 'continuous' },
    basis: hidden.basis,
  });
}

function otherLine({ otherLight }: Answers): readonly LineOfLight[] {
  if (otherLight === null || otherLight === 'none') return [];
  return [
    lineOfLight({
      name: 'other',
      title: 'the other light',
      wavelength: { value: otherLight.wavelength, uncertainty: 0, shape: 'normal', origin: 'assumed' },
      stated: otherLight.power,
      power: otherLight.power,
      assumed: [],
      emission: { kind: 'continuous' },
      basis: [],
    }),
  ];
}

function referenceLine({ reference }: Launch, answers: Answers): LineOfLight | null {
  if (reference === null) return null;
  const { wavelength, power } = reference;
  const counted = powerToCount(power, answers.referencePower);
  return lineOfLight({
    name: 'reference',
    title: 'the reference light',
    wavelength,
    stated: power.value,
    power: counted.power,
    assumed: [counted.assumed],
    emission: { kind: 'continuous' },
    basis: [counted.basis],
  });
}

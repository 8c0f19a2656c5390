import type { Launch, OutputCollimator } from '../launch/launch.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import { laserExits } from './at-the-laser.ts';
import { type CautionOptions, type Cautions, cautionsFor } from './cautions.ts';
import { atMostText, upToText } from './figures-of-caution.ts';
import type { Hazard } from './hazard.ts';
import { laserKey } from './laser-key.ts';
import { linesOf } from './light-to-count.ts';
import { wavelengthText } from './limit-texts.ts';
import { type StepName, stepNames } from './step-names.ts';
import { steps } from './steps.ts';
import { lineSummaries } from './summary.ts';
import { alignmentText, classText, eyewearText } from './summary-texts.ts';

/** What must be read before a step, with this bench's numbers. */
export interface StepCautions {
  readonly step: StepName;
  /** Its place in the order of work. */
  readonly number: number;
  readonly title: string;
  /** What to do, in order. */
  readonly orders: readonly string[];
  /** What the numbers of this bench say about it. */
  readonly numbers: readonly string[];
  /** The hazards that belong to it, worst first. */
  readonly hazards: readonly Hazard[];
  /** The whole walk they were taken from. */
  readonly cautions: Cautions;
  /** Changes when power, wavelength, ends or path change: then the step is to be read again. */
  readonly readAgainKey: string;
}

/**
 * The cautions of one step of the work.
 *
 * @throws {OutOfRange} as `cautionsFor`
 */
export function stepCautions(launch: Launch, step: StepName, options: CautionOptions = {}): StepCautions {
  return stepOf(launch, step, cautionsFor(bearer(launch, step), options));
}

/**
 * The cautions of every step, in the order of work, from as few walks as it takes.
 *
 * @throws {OutOfRange} as `cautionsFor`
 */
export function everyStep(launch: Launch, options: CautionOptions = {}): readonly StepCautions[] {
  const cautions = cautionsFor(launch, options);
  return stepNames.map((step) => {
    const asked = bearer(launch, step);
    return stepOf(launch, step, asked === launch ? cautions : cautionsFor(asked, options));
  });
}

/** The launch that a step is told of: a bare far end gets a lens as an example before one is screwed on. */
const bearer = (launch: Launch, step: StepName): Launch =>
  step === 'far-lens' && launch.output === null ? withExampleLens(launch) : launch;

function stepOf(launch: Launch, step: StepName, cautions: Cautions): StepCautions {
  const { title, orders, hazards } = steps[step];
  return {
    step,
    number: stepNames.indexOf(step),
    title,
    orders,
    numbers: numbersOf(step, cautions, launch),
    hazards: cautions.hazards.filter(({ id }) => hazards.some((begin) => id.startsWith(begin))),
    cautions,
    readAgainKey: readAgainKey(launch, step, cautions),
  };
}

/** Whose focal length nobody knows yet, m. @source our proposal: an ordinary short collimator */
const exampleFocalLength = 8e-3;

const exampleEntry: Entry = {
  key: 'output.collimator.focal length',
  value: exampleFocalLength,
  uncertainty: 0,
  shape: 'normal',
  origin: 'assumed',
  defaulted: 'value',
};
const exampleLens: OutputCollimator = {
  focalLength: exampleEntry,
  designWavelength: null,
  focalShift: { kind: 'fixed' },
  surfaces: { count: 2, reflectance: null },
  clearAperture: null,
  focus: { kind: 'best' },
};
const withExampleLens = (launch: Launch): Launch => ({ ...launch, output: { collimator: exampleLens } });

function numbersOf(step: StepName, cautions: Cautions, launch: Launch): readonly string[] {
  const summaries = lineSummaries(cautions.walk);
  const [laser] = summaries;
  const alignment = [alignmentText(laser?.alignment ?? null)];
  const eyewear = summaries.flatMap(({ line, eyewear: all }) =>
    all.filter(({ exposureTime }) => exposureTime >= 10).map((one) => eyewearText(line, one)),
  );
  switch (step) {
    case 'before-power':
      return [...lightOnTheBench(cautions), ...summaries.map(classText), ...eyewear];
    case 'first-light':
    case 'two-mirrors':
    case 'lens-in':
    case 'find-light':
    case 'climb':
      return [...alignment, ...reducedText(cautions)];
    case 'full-power':
      return eyewear;
    case 'far-lens':
      return farLensText(cautions, launch);
    case 'end-in':
    case 'in-use':
    case 'pack-up':
      return [];
  }
}

function lightOnTheBench({ walk: { light } }: Cautions): readonly string[] {
  const lines = linesOf(light);
  return [
    `Light on this bench: ${lines
      .map(
        ({ title, wavelength, seen, power }) =>
          `${title}, ${wavelengthText(wavelength)}${seen ? '' : ', invisible'}, ${atMostText(power, 'power')}`,
      )
      .join('; ')}.`,
  ];
}

/** How far the beam still reaches at the power one aligns with. */
function reducedText({ walk }: Cautions): readonly string[] {
  const { laser } = walk.light;
  const [summary] = lineSummaries(walk);
  const target = summary?.alignment?.power.power;
  if (target === undefined || laser.power <= target) return [];
  const reduced = { ...walk, light: { ...walk.light, laser: { ...laser, power: target }, companions: [] } };
  const [exit] = laserExits(reduced);
  if (exit === undefined || exit.hazardDistance === null) return [];
  const power = writeValue(target, 'power', 2);
  const hidden = walk.light.companions.length === 0 ? '' : ' Hidden infrared comes on top of it.';
  return [
    exit.hazardDistance === 0
      ? `At ${power} the beam of ${wavelengthText(laser.wavelength)} is under the limit assumed; the hazard is reduced, not gone.${hidden} ${exit.fine}`
      : `At ${power} the beam is above the eye limit ${upToText(exit.hazardDistance, walk.facts.roomLength, 'the exit')}: the hazard is reduced, not gone.${hidden} ${exit.fine}`,
  ];
}

function farLensText({ hazards, walk }: Cautions, launch: Launch): readonly string[] {
  const distanceOf = (id: string) => hazards.find((one) => one.id === id)?.hazardDistance ?? null;
  const [bare, behind] = [distanceOf('far-end'), distanceOf('far-end-collimated')];
  if (bare === null || behind === null) return [];
  const lens =
    launch.output === null
      ? `a lens of ${writeValue(exampleFocalLength, 'length')}, as an example`
      : 'its lens';
  const longer = launch.output === null ? ' A longer focal length reaches farther.' : '';
  const [from, to] = [bare, behind].map((one) => upToText(one, walk.facts.roomLength, null));
  return [`Bare, the end is above the eye limit ${from}; behind ${lens}, ${to} (estimates).${longer}`];
}

function readAgainKey(launch: Launch, step: StepName, { walk }: Cautions): string {
  const lines = linesOf(walk.light);
  return [
    laserKey(launch),
    step,
    ...lines.map(
      ({ name, wavelength, power }) => `${name}:${wavelength.toExponential(4)}:${power.toExponential(3)}`,
    ),
    launch.path
      .map((part) => (part.kind === 'space' ? '' : part.name))
      .filter((name) => name !== '')
      .join('+'),
    launch.collimator === null ? 'no-lens' : launch.collimator.focalLength.value.toExponential(3),
    `${launch.fibre.ends.in}>${launch.fibre.ends.out}`,
    launch.output === null ? 'bare' : `lens:${launch.output.collimator.focalLength.value.toExponential(3)}`,
  ].join('|');
}

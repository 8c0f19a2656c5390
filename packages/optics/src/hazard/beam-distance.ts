/** How far free beams are above a limit: collimated ones, bare diodes, and what spreads behind a lens' focus. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { type Basis, gaussianMathematics } from './evidence.ts';
import { distanceIn, type Geometry, type HazardDistance, type Judged } from './hazard-distance.ts';

/** A beam by its 1/e widths. */
export interface CollimatedBeam1e extends Judged {
  /** 1/e diameter at the exit, m; `null`: not known, so taken as 0, which gives the longest distance. */
  readonly exitDiameter1e: number | null;
  /** Full 1/e divergence, rad. */
  readonly fullDivergence1e: number;
  /** Left out: `peak irradiance`, the longer one. */
  readonly form?: Geometry['form'];
}

const linearForm: Basis = {
  evidence: 'read',
  source: 'a university’s page on nominal hazard zones: NHZ = (1/φ)[(4P/(π MPE))^0.5 − a]',
};
const standardForms: Basis = {
  evidence: 'from memory',
  source: 'ANSI Z136.1, appendix B, and Z136.2: hazard-distance equations',
};

/**
 * The linear form, r = [√(4P/(π·limit)) − a]/φ. Shorter than the quadratic form; here for comparison with tables that
 * use it.
 *
 * @throws {OutOfRange} if the power is negative, the diameter negative or the divergence not above zero
 * @source a university's page on nominal hazard zones: read
 */
export function collimatedDistanceLinearFrom1e(beam: CollimatedBeam1e): HazardDistance {
  const exit = exitOf(beam);
  return distanceIn(beam, {
    ...aboutExit(beam),
    basis: [linearForm],
    distanceAt: (diameter) => (diameter - exit) / beam.fullDivergence1e,
  });
}

/**
 * The quadratic form, r = √(4P/(π·limit) − a²)/φ: the beam's width grows as √(a² + φ²r²). Use this one.
 *
 * With `form: 'averaged over the stop'` the beam is averaged over the limit's stop: never longer.
 *
 * @throws {OutOfRange} if the power is negative, the diameter negative or the divergence not above zero
 * @source ANSI Z136.1, appendix B: from memory; identity of Gaussian beams
 */
export function collimatedDistanceFrom1e(beam: CollimatedBeam1e): HazardDistance {
  const exit = exitOf(beam);
  return distanceIn(beam, {
    ...aboutExit(beam),
    basis: [standardForms, gaussianMathematics],
    distanceAt: (diameter) => Math.sqrt(Math.max(0, diameter ** 2 - exit ** 2)) / beam.fullDivergence1e,
  });
}

const aboutExit = ({ form = 'peak irradiance' }: CollimatedBeam1e) =>
  ({ from: 'the exit', beamDefinition: '1/e', isPoint: true, form }) as const;

function exitOf({ exitDiameter1e, fullDivergence1e }: CollimatedBeam1e): number {
  mustBePositive(fullDivergence1e, 'fullDivergence1e', 'a full divergence');
  const exit = exitDiameter1e ?? 0;
  if (exit >= 0 && Number.isFinite(exit)) return exit;
  throw new OutOfRange({
    where: 'exitDiameter1e',
    what: `${exit} m is no diameter`,
    mend: 'Give the 1/e diameter in metres, or null if it is not known.',
  });
}

/**
 * A bare diode, elliptic and small at its exit: r = √(4P/(π·limit·φx·φy)).
 *
 * @throws {OutOfRange} if the power is negative or a divergence not above zero
 * @source identity of Gaussian beams
 */
export function ellipticDiodeDistanceFrom1e({
  power,
  limit,
  fullDivergenceX1e,
  fullDivergenceY1e,
}: Judged & {
  /** Full 1/e divergences, rad, along and across. */
  readonly fullDivergenceX1e: number;
  readonly fullDivergenceY1e: number;
}): HazardDistance {
  mustBePositive(fullDivergenceX1e, 'fullDivergenceX1e', 'a full divergence');
  mustBePositive(fullDivergenceY1e, 'fullDivergenceY1e', 'a full divergence');
  return distanceIn(
    { power, limit },
    {
      from: 'the exit',
      beamDefinition: '1/e',
      isPoint: true,
      form: 'peak irradiance',
      basis: [gaussianMathematics],
      distanceAt: (diameter) => diameter / Math.sqrt(fullDivergenceX1e * fullDivergenceY1e),
    },
  );
}

/**
 * Beyond the focus of a lens, with no fibre there: r = (f/b)·√(4P/(π·limit)), from the focus.
 *
 * @throws {OutOfRange} if the power is negative, or a length not above zero
 * @source ANSI Z136.1, appendix B: from memory; reproduces the OSHA Technical Manual's table as remembered
 */
export function beyondFocusDistanceFrom1e({
  power,
  limit,
  focalLength,
  diameterOnLens1e,
}: Judged & {
  /** m. */
  readonly focalLength: number;
  /** 1/e diameter on the lens, m. */
  readonly diameterOnLens1e: number;
}): HazardDistance {
  mustBePositive(focalLength, 'focalLength', 'a focal length');
  mustBePositive(diameterOnLens1e, 'diameterOnLens1e', 'a 1/e diameter');
  return distanceIn(
    { power, limit },
    {
      from: 'the focus',
      beamDefinition: '1/e',
      isPoint: true,
      form: 'peak irradiance',
      basis: [standardForms],
      distanceAt: (diameter) => (focalLength / diameterOnLens1e) * diameter,
    },
  );
}

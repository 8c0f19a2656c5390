import { capital } from '../../units/capital.ts';
import { type Doubt, determined, type GaugeAnswer, undetermined } from '../answer.ts';
import { between } from '../curve-drawing.ts';
import type { GaugeCurve } from '../gauge.ts';
import { type EdgeFit, powerPastEdge } from './fit-edge.ts';

const names = ['radius1e2_m', 'd4sigma_m', 'centre_m'] as const;

const scatterWords = {
  even: 'the same everywhere',
  growing: 'growing with the reading',
  rare: 'most where the edge cuts the beam',
} as const;

/** What one scan says of the beam where it was taken. */
export function edgeAnswers(fit: EdgeFit | null, positions: readonly number[]): readonly GaugeAnswer[] {
  const missing = fit === null ? noStep : whatIsMissing(fit, positions);
  if (fit === null || missing !== null) {
    const { because, add } = missing ?? noStep;
    return names.map((name) => undetermined(name, because, add));
  }
  const { freedom } = fit;
  const from = `scatter of the readings (${scatterWords[fit.scatter.rule]})`;
  const { radius: radiusDoubt, centre: centreDoubt } = fit.doubts;
  const drift = (slopes: readonly number[]): Doubt => ({
    from: 'drift of the light during the scan',
    uncertainty: fit.drift?.doubtOf(slopes) ?? 0,
  });
  const weak = driftSeen(fit);
  const radius = (quantity: string, times: number): GaugeAnswer =>
    determined({
      quantity,
      value: times * fit.radius,
      doubts: [{ from, uncertainty: times * radiusDoubt, freedom }, drift([times, 0, 0, 0])],
      shape: 'positive',
      weak,
    });
  return [
    radius('radius1e2_m', 1),
    radius('d4sigma_m', 2),
    determined({
      quantity: 'centre_m',
      value: fit.centre,
      doubts: [{ from, uncertainty: centreDoubt, freedom }, drift([0, 1, 0, 0])],
      weak,
    }),
  ];
}

/** A drift of the light that the scan shows clearly; it was counted as even from the first reading to the last. */
function driftSeen({ drift }: EdgeFit): Missing | undefined {
  if (drift === null || !(drift.likelihood > 0.95 && Math.abs(drift.share) > 0.005)) return undefined;
  const size = (100 * Math.abs(drift.share)).toPrecision(1);
  return {
    because: `the light seems to have ${drift.share > 0 ? 'grown' : 'faded'} by ${size} % during the scan`,
    add: 'Let the laser warm up, and read the scan there and back.',
  };
}

interface Missing {
  readonly because: string;
  readonly add: string;
}

const noStep: Missing = {
  because: 'the readings do not go from one level to another as an edge makes them',
  add: 'Move the edge from where it covers nothing to where it covers all, and read on the way.',
};

/** What keeps these readings from fixing the radius; null where nothing does. */
function whatIsMissing(fit: EdgeFit, positions: readonly number[]): Missing | null {
  const turned = positions.map((x) => (x - fit.centre) / fit.radius);
  const relative = Math.sqrt(fit.covariance[0]![0]!) / fit.radius;
  if (Math.min(...turned) > -0.8 || Math.max(...turned) < 0.8) {
    return {
      because: 'the scan stops before the reading levels off at both ends',
      add: 'Go on in both directions until the reading no longer changes.',
    };
  }
  const within = new Set(positions.filter((x) => Math.abs(x - fit.centre) < fit.radius)).size;
  if (within < 2) {
    return {
      because: `only ${within} of the positions lies where the edge cuts the beam`,
      add: `Take four readings or more within ${(2 * fit.radius * 1e3).toPrecision(2)} mm about the middle.`,
    };
  }
  if (!(relative < 0.3)) {
    return {
      because: 'the readings scatter too much for a radius',
      add: 'Take more readings, average each, and shade the detector from the room.',
    };
  }
  return null;
}

/** What was noticed in one scan. */
export function edgeRemarks(fit: EdgeFit, readings: readonly number[]): readonly string[] {
  const remarks: string[] = [];
  const drifted = driftSeen(fit);
  if (drifted !== undefined)
    remarks.push(`${capital(drifted.because)}: let the laser warm up, and read the scan there and back.`);
  if (
    isOrdered(
      readings.map((y, i) => y - fit.curve[i]!),
      Math.abs(fit.power),
    )
  )
    remarks.push(
      'What the fit leaves over is not random: the beam is not quite a Gaussian, or the light drifted.',
    );
  return remarks;
}

/**
 * Whether the signs of the residuals come in far fewer runs than chance would make them, and matter.
 *
 * @source A. Wald and J. Wolfowitz, Ann. Math. Stat. 11, 147 (1940) (from memory); 3.3 deviations: once in two thousand
 */
function isOrdered(residuals: readonly number[], size: number): boolean {
  const above = residuals.filter((r) => r > 0).length;
  const below = residuals.length - above;
  const worst = Math.max(...residuals.map(Math.abs));
  if (above < 5 || below < 5 || worst < 1e-3 * size) return false;
  const runs = residuals.reduce((n, r, i) => n + (i > 0 && r > 0 !== residuals[i - 1]! > 0 ? 1 : 0), 1);
  const n = above + below;
  const expected = (2 * above * below) / n + 1;
  const variance = ((expected - 1) * (expected - 2)) / (n - 1);
  return (expected - runs) / Math.sqrt(variance) > 3.3;
}

/** The scan and its fit, to be drawn. */
export function edgeCurve(
  fit: EdgeFit,
  positions: readonly number[],
  readings: readonly number[],
): GaugeCurve {
  return {
    title: 'power past the edge',
    across: 'position of the edge (m)',
    up: 'reading',
    ofDetector: true,
    x: positions,
    readings,
    fit: fit.curve,
    between: between(positions, (x) => powerPastEdge(x, fit)),
  };
}

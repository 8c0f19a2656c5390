import { Refusal } from '../../refusal.ts';
import type { GaugeAnswer } from '../answer.ts';
import { causticAnswers } from '../caustic/caustic-answers.ts';
import { fitCaustic } from '../caustic/fit-caustic.ts';
import type { Gauge, GaugeResult, Readings, Setting } from '../gauge.ts';
import { edgeAnswers, edgeCurve, edgeRemarks } from './edge-answers.ts';
import { fitEdge } from './fit-edge.ts';

/** Fewest readings of a scan: four unknowns, and one to judge by. */
const fewest = 5;

/** The gauge that covers a beam with an edge, step by step. */
export const knifeEdge: Gauge = {
  name: 'knife-edge',
  otherNames: [],
  title: 'knife edge',
  answers: 'beam radius and centre along the scan; of scans at several places also waist, divergence and M²',
  needs: 'a razor blade on a stage with a scale, and any detector that catches the whole beam',
  takes: 'table',
  columns: [
    {
      name: 'position',
      dimension: 'length',
      needed: true,
      otherNames: [
        'positions',
        'x',
        'y',
        'blade',
        'edge',
        'micrometer',
        'stage',
        'edge position',
        'blade position',
      ],
      what: 'where the edge stands across the beam',
    },
    {
      name: 'power',
      dimension: 'reading',
      needed: true,
      otherNames: ['reading', 'signal', 'voltage', 'current', 'p', 'intensity', 'v', 'powers'],
      what: 'what the detector reads; only ratios count',
    },
    {
      name: 'distance',
      dimension: 'length',
      needed: false,
      otherNames: ['z', 'along', 'place', 'plane'],
      what: 'where along the beam the scan was taken, where there are several',
    },
  ],
  settings: [
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      otherNames: ['lambda', 'λ'],
      what: 'of the light, for M² of scans at three places or more',
    },
  ],
  measure: measureKnifeEdge,
};

function measureKnifeEdge({ columns, settings }: Readings): GaugeResult {
  const scans = scansOf(columns.position ?? [], columns.power ?? [], columns.distance);
  for (const { at, positions } of scans) {
    if (positions.length >= fewest) continue;
    throw new Refusal({
      where: at === null ? 'knife-edge readings' : `knife-edge readings at ${at} m`,
      what: `there are ${positions.length} readings`,
      mend: `Take at least ${fewest}, better 15, from all light to none.`,
    });
  }
  const seen = scans.map(({ at, positions, readings }) => {
    const fit = fitEdge(positions, readings);
    const place = at === null ? {} : { at };
    return {
      at,
      answers: edgeAnswers(fit, positions).map((answer) => ({ ...answer, ...place })),
      remarks: fit === null ? [] : edgeRemarks(fit, readings),
      curves: fit === null ? [] : [edgeCurve(fit, positions, readings)],
    };
  });
  return {
    answers: [...seen.flatMap(({ answers }) => answers), ...alongTheBeam(seen, settings.wavelength)],
    remarks: [...new Set(seen.flatMap(({ remarks }) => remarks))],
    curves: seen.flatMap(({ curves }) => curves),
  };
}

interface Scan {
  /** m along the beam; null for a single scan. */
  readonly at: number | null;
  readonly positions: readonly number[];
  readonly readings: readonly number[];
}

/** The readings by where along the beam they were taken. */
function scansOf(
  positions: readonly number[],
  readings: readonly number[],
  distances: readonly number[] | undefined,
): readonly Scan[] {
  if (distances === undefined) return [{ at: null, positions, readings }];
  return [...new Set(distances)].map((at) => ({
    at,
    positions: positions.filter((_, i) => distances[i] === at),
    readings: readings.filter((_, i) => distances[i] === at),
  }));
}

/** The caustic through three scans or more; each diameter is as good as the worst of its scans says. */
function alongTheBeam(
  seen: readonly { readonly at: number | null; readonly answers: readonly GaugeAnswer[] }[],
  wavelength: Setting | undefined,
): readonly GaugeAnswer[] {
  const known = seen.flatMap(({ at, answers }) => {
    const width = answers.find(({ quantity }) => quantity === 'd4sigma_m');
    return at === null || width?.value == null || width.uncertainty == null
      ? []
      : [{ at, value: width.value, relative: width.uncertainty / width.value }];
  });
  if (known.length < 3) return [];
  const z = known.map(({ at }) => at);
  const fit = fitCaustic(
    z,
    known.map(({ value }) => value),
    Math.max(...known.map(({ relative }) => relative)),
  );
  return causticAnswers(
    {
      z,
      wavelength:
        wavelength === undefined
          ? null
          : { value: wavelength.value, uncertainty: wavelength.uncertainty ?? 0 },
      scale: 0,
    },
    fit,
  );
}

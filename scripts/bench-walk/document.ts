import { ridgeSettings } from '@coreward/bench';
import { between } from '../between-marks.ts';
import { benchesOf } from './bench-file.ts';
import { drawnBenches } from './drawn-benches.ts';
import { usualPolicies } from './request.ts';
import { onFoot, type Suite, shippedFile } from './suites.ts';
import { tableOf, walkTable } from './walk-table.ts';
import { type ToldRow, walked } from './walked.ts';

/** The document's figures, counted anew, which takes minutes. */
export interface DocumentCount {
  /** One stream of noise: every suite in the usual ways, and V in every way. */
  readonly rows: readonly ToldRow[];
  /** Other streams of the suites on which much depends. */
  readonly streams: readonly {
    readonly suite: string;
    readonly policy: string;
    readonly rows: readonly ToldRow[];
  }[];
}

const files = ['V', 'T', 'V-cam', 'V-f30', 'V-d20', 'V-m2', 'V-astig'] as const;
const onlyCompared = ['walk', 'parab_ruler', 'parab', 'coord'] as const;
const inStreams = ['V', 'T', 'V-cam'] as const;
const streamsOf = { ridge: 3, walk_hold1: 8 } as const;
/** As many as the other program walked, which is enough where none fails. */
const manyModed = [0, 39] as const;

export function documentCount(): DocumentCount {
  const suites: readonly Suite[] = [
    ...files.map((name) => ({ name, benches: benchesOf(shippedFile(name), [0, 199]) })),
    { name: 'V-foot', benches: onFoot(benchesOf(shippedFile('V'), [0, 199])) },
    { name: 'M', benches: drawnBenches('M', manyModed) },
  ];
  return {
    rows: suites.flatMap(({ name, benches }) =>
      [...usualPolicies, ...(name === 'V' ? onlyCompared : [])].map((policy) =>
        walked(policy, name, benches),
      ),
    ),
    streams: (['ridge', 'walk_hold1'] as const).flatMap((policy) =>
      suites
        .filter(({ name }) => inStreams.some((chosen) => chosen === name))
        .map(({ name, benches }) => ({
          suite: name,
          policy,
          rows: Array.from({ length: streamsOf[policy] }, (_, i) => walked(policy, name, benches, i + 1)),
        })),
    ),
  };
}

const writer = 'npm run bench:walk -- --write-docs';

/** docs/walk.md with this count in it, and with the settings it was made with. */
export function withWalkTable(page: string, { rows, streams }: DocumentCount): string {
  const counted = between(page, 'walk table', walkTable(rows), writer);
  return between(
    between(counted, 'walk streams', streamsTable(streams), writer),
    'walk settings',
    settingsText(),
    writer,
  );
}

/** The settings that decide how the ridge is walked, for a page that tells what they brought. */
export const settingsText = (): string =>
  Object.entries(ridgeSettings)
    .map(([name, value]) => `\`${name}\` ${value}`)
    .join(', ');

const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
const percents = (values: readonly number[]) => values.map((share) => 100 * share);

function streamsTable(streams: DocumentCount['streams']): string {
  const range = (values: readonly number[], digits: number) =>
    `${mean(values).toFixed(digits)} (${Math.min(...values).toFixed(digits)}–${Math.max(...values).toFixed(digits)})`;
  return tableOf([
    ['suite', 'policy', 'streams', 'fail95 %', 'fail90 %', 'ops stay', 'of claims right %'],
    ...streams.map(({ suite, policy, rows }) => [
      suite,
      policy,
      `${rows.length}`,
      range(percents(rows.map(({ fail95 }) => fail95)), 1),
      range(percents(rows.map(({ fail90 }) => fail90)), 1),
      range(
        rows.map(({ opsToStay }) => opsToStay ?? Number.POSITIVE_INFINITY),
        0,
      ),
      rows.every(({ doneCalibration }) => doneCalibration === null)
        ? '—'
        : range(percents(rows.map(({ doneCalibration }) => doneCalibration ?? 1)), 1),
    ]),
  ]);
}

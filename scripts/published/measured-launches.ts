// Efficiencies measured elsewhere, beside the forecast of the same launch: a table of docs/published-launches.md.
import { readFileSync } from 'node:fs';
import { type Forecast, forecast, readLaunch } from '../../packages/bench/src/index.ts';

const folder = new URL('../../examples/published/', import.meta.url);

/** The forecast of a launch in `examples/published`; `change` rewrites a line of it. */
export function publishedForecast(name: string, change: (text: string) => string = (text) => text): Forecast {
  const file = `${name}.launch.yaml`;
  return forecast(readLaunch(change(readFileSync(new URL(file, folder), 'utf8')), file));
}

/** A measured efficiency: a share of the light at the first surface that was read at the second. */
export interface MeasuredLaunch {
  readonly launch: string;
  readonly session: string;
  readonly between: string;
  readonly measured: number;
  /** Half width of what the readings leave open; null where nothing is said. */
  readonly give: number | null;
  /** Where the measured value lies against the 90 % range of the forecast. */
  readonly lies: 'inside' | 'below' | 'above';
}

const objective = 'green-through-objective';
const shutter = 'green-from-shutter';
const largeMode = 'infrared-large-mode';
const behindObjective = 'behind the objective to behind the fibre';
const fromShutter = 'laser shutter to behind the fibre';
const beforeLens = 'before the lens to behind the fibre';

/** Readings as in the sources; the quotients are ours. */
export const measuredLaunches: readonly MeasuredLaunch[] = [
  {
    launch: objective,
    session: '2022-08-14, 10.5 mW and 6.1 mW',
    between: behindObjective,
    measured: 6.1 / 10.5,
    give: 0.019,
    lies: 'inside',
  },
  {
    launch: shutter,
    session: '2022-08-08, before it was aligned anew',
    between: fromShutter,
    measured: 5.3 / 13.45,
    give: 0.023,
    lies: 'below',
  },
  {
    launch: shutter,
    session: '2024-01-31, lowest power',
    between: fromShutter,
    measured: 9.05 / 14.8,
    give: 0.021,
    lies: 'inside',
  },
  {
    launch: shutter,
    session: '2024-01-31, middle',
    between: fromShutter,
    measured: 14.89 / 24.85,
    give: 0.038,
    lies: 'inside',
  },
  {
    launch: shutter,
    session: '2024-01-31, highest',
    between: fromShutter,
    measured: 20.9 / 35.05,
    give: 0.033,
    lies: 'inside',
  },
  {
    launch: shutter,
    session: '2024-11-05',
    between: fromShutter,
    measured: 8.1 / 14.42,
    give: 0.016,
    lies: 'inside',
  },
  {
    launch: largeMode,
    session: 'what the instructions ask for at least',
    between: beforeLens,
    measured: 0.9,
    give: null,
    lies: 'inside',
  },
  {
    launch: largeMode,
    session: 'the best that is told',
    between: beforeLens,
    measured: 0.98,
    give: null,
    lies: 'above',
  },
];

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;

/** The table, computed now. */
export function measuredTable(): string {
  const rows = measuredLaunches.map(({ launch, session, between, measured, give, lies }) => {
    const { value, low, high } = publishedForecast(launch).output.fractionOfLaser;
    const reading =
      give === null ? percent(measured) : `${(100 * measured).toFixed(0)} ± ${(100 * give).toFixed(0)} %`;
    const range = `${(100 * low).toFixed(0)} to ${percent(high)}`;
    return `| \`${launch}\` | ${session} | ${between} | ${reading} | ${percent(value)} | ${range} | ${lies} |`;
  });
  return [
    '| launch | session | read from … to | measured | forecast | its 90 % range | measured lies |',
    '|---|---|---|---|---|---|---|',
    ...rows,
  ].join('\n');
}

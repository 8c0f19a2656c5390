import type { HiddenBench, RefusalParts } from '@coreward/bench';

/** One bench of a file of simulated benches, as it is written (packages/bench/reference/walk/README.md). */
export interface BenchRow {
  readonly seed: number;
  readonly wavelength: number;
  readonly typed: {
    readonly focal: number;
    readonly modeRadius: number;
    readonly d2: number;
    readonly L: number;
    readonly mirrorRadPerTurn: number;
    readonly verticalGainRatio: number;
  };
  readonly H: HiddenBench['curvature'];
  readonly start: HiddenBench['start'];
  readonly sigma: number;
  readonly floor: number;
  readonly driftPerAction: number;
  readonly lash: HiddenBench['lash'];
  readonly addTurn: number;
  readonly multTurn: number;
  readonly fingerTurn: number;
}

/** What a number of a bench may be, and an example of it. */
interface Place {
  readonly path: string;
  readonly isPossible: (x: number) => boolean;
  readonly such: string;
}

const positive = (path: string, such: string): Place => ({ path, isPossible: (x) => x > 0, such });
const notNegative = (path: string, such: string): Place => ({ path, isPossible: (x) => x >= 0, such });

const places: readonly Place[] = [
  { path: 'seed', isPossible: (x) => Number.isInteger(x) && x >= 0, such: '0' },
  positive('wavelength', '5.32e-7'),
  positive('typed.focal', '0.008'),
  positive('typed.modeRadius', '2e-6'),
  positive('typed.d2', '0.15'),
  positive('typed.L', '0.3'),
  positive('typed.mirrorRadPerTurn', '0.008'),
  positive('typed.verticalGainRatio', '0.707'),
  ...Array.from({ length: 4 }, (_, i) => ({ path: `start.${i}`, isPossible: () => true, such: '0.05' })),
  ...Array.from({ length: 4 }, (_, i) => notNegative(`lash.${i}`, '0.03')),
  ...Array.from({ length: 16 }, (_, i) => ({
    path: `H.${Math.floor(i / 4)}.${i % 4}`,
    isPossible: (x: number) => i % 5 !== 0 || x > 0,
    such: i % 5 === 0 ? '1500' : '0',
  })),
  notNegative('sigma', '0.02'),
  positive('floor', '1e-4'),
  notNegative('driftPerAction', '0.001'),
  notNegative('addTurn', '0.015'),
  notNegative('multTurn', '0.1'),
  notNegative('fingerTurn', '0.002'),
];

/** What no bench can be, place by place; none: it can be walked. */
export function faultsOf(row: unknown, where: string): readonly RefusalParts[] {
  const faults = places.flatMap(({ path, isPossible, such }): readonly RefusalParts[] => {
    const value = path
      .split('.')
      .reduce<unknown>(
        (at, key) =>
          typeof at === 'object' && at !== null ? (at as Readonly<Record<string, unknown>>)[key] : undefined,
        row,
      );
    if (typeof value === 'number' && Number.isFinite(value) && isPossible(value)) return [];
    const what = value === undefined ? 'there is none' : `\`${JSON.stringify(value)}\` cannot be`;
    return [{ where: `${where}, ${path}`, what, mend: `Write a number such as \`${such}\`.` }];
  });
  return faults.length > 0 ? faults : peakFaults((row as BenchRow).H, where);
}

/** Light that fell nowhere, or rose, has no peak that could be walked to. */
function peakFaults(h: BenchRow['H'], where: string): readonly RefusalParts[] {
  const isEven = h.every((row, i) => row.every((x, j) => Math.abs(x - h[j]![i]!) <= 1e-6 * Math.abs(x)));
  const falls = [0, 2].every((i) => h[i]![i]! * h[i + 1]![i + 1]! > h[i]![i + 1]! * h[i + 1]![i]!);
  if (isEven && falls) return [];
  return [
    {
      where: `${where}, H`,
      what: isEven ? 'its light does not fall off in every direction' : 'its rows and columns differ',
      mend: 'Write the curvature of a peak: symmetric, and h11·h22 above h12² for either axis.',
    },
  ];
}

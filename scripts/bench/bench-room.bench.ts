import {
  forecast,
  type Launch,
  launchWith,
  matching,
  observingLoftLaunch,
  readDrawer,
  readLaunch,
} from '../../packages/bench/src/index.ts';
import type { Timing } from './modes.bench.ts';

/** A drawer of 8 lasers, 60 lenses and 40 fibres, made by rule. */
function bigDrawer(): string {
  const colours = [488, 520, 532, 635, 650, 780, 850, 1550];
  const lasers = colours.map(
    (nm, i) =>
      `  - { name: L${i}, wavelength: ${nm} nm, power: 5 mW, beam: { waist diameter: ${(0.6 + 0.2 * i).toFixed(1)} mm, quality: 1.${i} } }`,
  );
  const lenses = Array.from(
    { length: 60 },
    (_, i) =>
      `  - { name: C${i}, focal length: { value: ${(2 + i / 2).toFixed(1)} mm, at: 635 nm }, clear aperture: ${(3 + i / 10).toFixed(1)} mm, spherical aberration: ${i % 3 === 0 ? 0.3 : 0} }`,
  );
  const fibres = Array.from({ length: 40 }, (_, i) => {
    const core = [3 + i / 10, 8 + i / 20, 50, 105][i % 4]!;
    const aperture = [0.12, 0.13, 0.2, 0.22][i % 4]!;
    return `  - { name: F${i}, profile: ${i % 4 === 2 ? 'graded' : 'step'}, core diameter: ${core.toFixed(2)} µm, numerical aperture: ${aperture}, cladding diameter: 125 µm, length: 5 m }`;
  });
  return ['coreward: 1', 'lasers:', ...lasers, 'collimators:', ...lenses, 'fibres:', ...fibres, ''].join(
    '\n',
  );
}

/** A forecast with its interval, and a whole match. */
export function benchBench(): readonly Timing[] {
  const launch = readLaunch(observingLoftLaunch, 'example');
  const forecasts = (change: (run: number) => Launch) =>
    Array.from({ length: 15 }, (_, run) => {
      const changed = change(run);
      const start = performance.now();
      forecast(changed);
      return (performance.now() - start) * 1000;
    });
  // so little that nothing else changes, and that no fibre is remembered
  const fresh = forecasts((run) => launchWith(launch, 'fibre.core diameter', 8.2e-6 + run * 1e-11));
  const turned = forecasts((run) => launchWith(launch, 'collimator.focal length', 6.2e-3 + run * 1e-6));
  const drawer = readDrawer([{ text: bigDrawer(), file: 'made by rule' }]);
  let first = Number.POSITIVE_INFINITY;
  let whole = Number.POSITIVE_INFINITY;
  for (let run = 0; run < 3; run += 1) {
    const start = performance.now();
    const steps = matching(drawer, { purpose: 'total', laser: null });
    steps.next();
    first = Math.min(first, performance.now() - start);
    while (!steps.next().done);
    whole = Math.min(whole, performance.now() - start);
  }
  return [
    {
      name: 'forecast with intervals, few modes (best of 15)',
      microseconds: Math.min(...fresh),
      goal: 50_000,
    },
    {
      name: 'the same while a hand turns the lens, fibre known',
      microseconds: Math.min(...turned),
      goal: 50_000,
    },
    { name: 'match of 8 × 60 × 40, first results', microseconds: first * 1000, goal: 200_000 },
    { name: 'match of 8 × 60 × 40, all 19 200 ranked', microseconds: whole * 1000, goal: 2_000_000 },
  ];
}

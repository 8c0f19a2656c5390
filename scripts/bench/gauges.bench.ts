import { type Gauge, gaugeNamed, type Readings } from '../../packages/bench/src/index.ts';
import { normalFrom, seededUniform } from '../../packages/optics/src/index.ts';
import { simulators } from '../calibrate/simulators.ts';
import type { Timing } from './modes.bench.ts';

/** Rows of the long tables. */
const many = 10_000;

/** How long each gauge measures: as many readings as people take, and a log of ten thousand where it takes a table. */
export function benchGauges(): readonly Timing[] {
  const seen = new Set<string>();
  return simulators.flatMap(({ gauge: name, draw }): readonly Timing[] => {
    if (seen.has(name)) return [];
    seen.add(name);
    const gauge = gaugeNamed(name)!;
    const random = seededUniform(7);
    const normal = (): number => normalFrom(random);
    const usual = Array.from({ length: 5 }, () => draw(random, normal).readings);
    const short = { name, microseconds: best(gauge, usual), goal: 50_000 };
    const rows = usual.filter(({ columns }) => Object.values(columns).some(({ length }) => length > 1));
    if (rows.length === 0) return [short];
    const long = rows.map((readings) => stretched(readings, normal));
    return [short, { name: `${name}, ${many} rows`, microseconds: best(gauge, long), goal: 50_000 }];
  });
}

/** The slowest set, each at its best of nine. */
function best(gauge: Gauge, sets: readonly Readings[]): number {
  const times = sets.map((readings) => {
    const runs = Array.from({ length: 9 }, () => {
      const start = performance.now();
      gauge.measure(readings);
      return (performance.now() - start) * 1000;
    });
    return Math.min(...runs);
  });
  return Math.max(...times);
}

/** The same readings with more of them in between, each off by a thousandth. */
function stretched(readings: Readings, normal: () => number): Readings {
  const columns = Object.fromEntries(
    Object.entries(readings.columns).map(([name, values]) => {
      const isStep = values.every((value) => value === 0 || value === 1);
      const isPlace = name === 'position' || name === 'time' || name === 'distance';
      const row = (i: number): number => {
        const at = (i * (values.length - 1)) / (many - 1);
        const [before, after] = [values[Math.floor(at)]!, values[Math.ceil(at)]!];
        if (isStep) return before;
        const value = before + (at - Math.floor(at)) * (after - before);
        return isPlace ? value : value * (1 + 1e-3 * normal());
      };
      return [name, Array.from({ length: many }, (_, i) => row(i))];
    }),
  );
  return { ...readings, columns };
}

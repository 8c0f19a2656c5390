import { gauges } from '@coreward/bench';
import { expect, test } from 'vitest';
import { coverageOf, heldShare } from '../scripts/calibrate/coverage.ts';
import { simulators } from '../scripts/calibrate/simulators.ts';

/*
 * A short form of `npm run calibrate:gauges`: simulated readings with known truth, the same on every run. Of n intervals
 * that hold the truth with 90 %, the share that does scatters by √(0.09/n); three such deviations are allowed here.
 */
const slow = /spot-picture|card-offset/u;

test('every gauge is calibrated', () => {
  const covered = new Set(simulators.map(({ gauge }) => gauge));
  expect(gauges.map(({ name }) => name).filter((name) => !covered.has(name))).toEqual([]);
});

test.each(simulators.map((simulator) => [`${simulator.gauge}: ${simulator.what}`, simulator] as const))(
  '%s: nine intervals of ten hold the truth',
  (_, simulator) => {
    const sets = slow.test(simulator.gauge) ? 25 : 120;
    for (const coverage of coverageOf(simulator, sets, 7)) {
      const allowed = 3 * Math.sqrt(0.09 / sets) + 0.03;
      const share = heldShare(coverage);
      expect(share, coverage.quantity).toBeGreaterThan(0.9 - allowed);
      // an interval that always holds the truth is too wide: one in forty must miss over all sets of the script
      if (sets > 100) expect(share, coverage.quantity).toBeLessThan(1);
      // a round spot has no azimuth, which is no failure
      if (!coverage.quantity.startsWith('azimuth')) expect(coverage.refused / sets).toBeLessThanOrEqual(0.05);
    }
  },
);

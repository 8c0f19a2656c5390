// Prints how often the 90 % intervals of the gauges hold the truth: npm run calibrate:gauges [-- SETS [GAUGE]]
import { coverageOf, heldShare } from './coverage.ts';
import { simulators } from './simulators.ts';

const [sets = '500', only] = process.argv.slice(2);

for (const simulator of simulators) {
  if (only !== undefined && simulator.gauge !== only) continue;
  console.log(`${simulator.gauge}: ${simulator.what}`);
  for (const coverage of coverageOf(simulator, Number(sets), 20261125)) {
    const held = (100 * heldShare(coverage)).toFixed(1).padStart(5);
    const refused = ((100 * coverage.refused) / coverage.sets).toFixed(1).padStart(5);
    console.log(`  ${coverage.quantity.padEnd(30)} holds the truth in ${held} %, no figure in ${refused} %`);
  }
}

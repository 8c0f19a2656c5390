// Prints how often the 90 % intervals of the gauges hold the truth, as rows of docs/gauges.md, and writes them there where
// all gauges were asked: npm run calibrate:gauges [-- SETS [GAUGE]]
import { readFileSync, writeFileSync } from 'node:fs';
import { between } from '../between-marks.ts';
import { coverageOf } from './coverage.ts';
import { calibrationRow, calibrationTable } from './page-rows.ts';
import { simulators } from './simulators.ts';

const [sets = '500', only] = process.argv.slice(2);
const isKnown = only === undefined || simulators.some(({ gauge }) => gauge === only);
if (!/^[1-9]\d*$/u.test(sets) || !isKnown) {
  console.error('npm run calibrate:gauges [-- SETS [GAUGE]]: how many sets, and one gauge instead of all');
  process.exit(2);
}
const page = 'docs/gauges.md';
const rows: string[] = [];

for (const simulator of simulators) {
  if (only !== undefined && simulator.gauge !== only) continue;
  const row = calibrationRow(simulator, coverageOf(simulator, Number(sets), 20261129));
  console.log(row);
  rows.push(row);
}

if (only === undefined)
  writeFileSync(
    page,
    between(
      readFileSync(page, 'utf8'),
      'calibration',
      calibrationTable(Number(sets), rows),
      'scripts/calibrate/main.ts',
    ),
  );

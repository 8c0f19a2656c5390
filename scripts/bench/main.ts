// Prints how long things take, and the ratios that matter; asserts nothing. Run it with `npm run bench`.
import { benchBench } from './bench-room.bench.ts';
import { benchCards } from './card.bench.ts';
import { benchGauges } from './gauges.bench.ts';
import { benchModes, type Timing } from './modes.bench.ts';
import { benchOverlap } from './overlap.bench.ts';

const time = (microseconds: number): string =>
  microseconds < 1000
    ? `${microseconds.toPrecision(3)} µs`
    : microseconds < 1e6
      ? `${(microseconds / 1000).toPrecision(3)} ms`
      : `${(microseconds / 1e6).toPrecision(3)} s`;

function show(title: string, timings: readonly Timing[]): void {
  console.log(`\n${title}`);
  for (const { name, microseconds, goal } of timings) {
    const against = goal === null ? '' : `goal ${time(goal)}, ratio ${(microseconds / goal).toFixed(2)}`;
    console.log(`  ${name.padEnd(56)} ${time(microseconds).padStart(9)}  ${against}`);
  }
}

show('Modes', benchModes());
const { timings, disagreement } = benchOverlap();
show('Overlap', timings);
const [fast, plain] = timings;
console.log(
  `  the ladder is ${(plain!.microseconds / fast!.microseconds).toFixed(1)} times as fast as the plain loops`,
);
console.log(`  largest disagreement of the two over 300 beams: ${disagreement.toExponential(1)}`);
show('Bench', benchBench());
show('Cards', benchCards());
show('Gauges: the slowest of five sets, each at its best', benchGauges());

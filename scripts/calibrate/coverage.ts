import { type Gauge, type GaugeAnswer, gaugeNamed, type Readings, Refusal } from '@coreward/bench';
import { normalFrom, seededUniform } from '@coreward/optics';
import type { Simulator } from './simulated.ts';

/** How often one answer's 90 % interval held the truth. */
export interface Coverage {
  readonly quantity: string;
  readonly sets: number;
  /** Of the sets that got a figure. */
  readonly held: number;
  /** Sets without a figure. */
  readonly refused: number;
}

/** Runs a gauge over simulated sets; the same seed gives the same sets. */
export function coverageOf(simulator: Simulator, sets: number, seed: number): readonly Coverage[] {
  const gauge = gaugeNamed(simulator.gauge)!;
  const random = seededUniform(seed);
  const normal = (): number => normalFrom(random);
  const counts = simulator.counted.map((quantity) => ({ quantity, sets, held: 0, refused: 0 }));
  for (let i = 0; i < sets; i++) {
    const { readings, truth } = simulator.draw(random, normal);
    const answers = answersOf(gauge, readings);
    for (const count of counts) {
      const answer = answers.find(({ quantity }) => quantity === count.quantity);
      const real = truth[count.quantity]!;
      if (answer?.low == null || answer.high == null) count.refused += 1;
      else if (answer.low <= real && real <= answer.high) count.held += 1;
    }
  }
  return counts;
}

/** None where the readings are refused. */
function answersOf(gauge: Gauge, readings: Readings): readonly GaugeAnswer[] {
  try {
    return gauge.measure(readings).answers;
  } catch (error) {
    if (error instanceof Refusal) return [];
    throw error;
  }
}

/** Of those that got a figure, the share whose interval held the truth. */
export const heldShare = ({ sets, held, refused }: Coverage): number => held / (sets - refused);

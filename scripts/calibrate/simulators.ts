import { beamSimulators, farFieldSimulators } from './beam-simulators.ts';
import { benchSimulators, fibreSimulators } from './bench-simulators.ts';
import { cardSimulators } from './card-simulators.ts';
import type { Simulator } from './simulated.ts';

/** Every simulator there is; each gauge has one or more. */
export const simulators: readonly Simulator[] = [
  ...beamSimulators,
  ...farFieldSimulators,
  ...cardSimulators,
  ...benchSimulators,
  ...fibreSimulators,
];

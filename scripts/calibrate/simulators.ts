import { beamSimulators, farFieldSimulators } from './beam-simulators.ts';
import type { Simulator } from './simulated.ts';

/** Every simulator there is. */
export const simulators: readonly Simulator[] = [...beamSimulators, ...farFieldSimulators];

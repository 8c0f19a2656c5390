import { cardSimulators } from './card-simulators.ts';
import { causticSimulators } from './caustic-simulators.ts';
import { detectorSimulators } from './detector-simulators.ts';
import { edgeSimulators } from './edge-simulators.ts';
import { farFieldSimulators } from './far-field-simulators.ts';
import { fibreSimulators } from './fibre-simulators.ts';
import { lensSimulators } from './lens-simulators.ts';
import { mountSimulators } from './mount-simulators.ts';
import type { Simulator } from './simulated.ts';
import { spotSimulators } from './spot-simulators.ts';

/** Every simulator there is; each gauge has one or more. */
export const simulators: readonly Simulator[] = [
  ...edgeSimulators,
  ...causticSimulators,
  ...spotSimulators,
  ...farFieldSimulators,
  ...mountSimulators,
  ...cardSimulators,
  ...lensSimulators,
  ...fibreSimulators,
  ...detectorSimulators,
];

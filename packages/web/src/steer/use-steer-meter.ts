import {
  type Launch,
  type MeterFacts,
  meterFacts,
  ordinaryMeter,
  type SteerMeter,
  steerMeter,
  withinRange,
} from '@coreward/bench';
import { useMemo } from 'react';
import { useInstruments } from '../instrument/use-instruments.ts';

/** The meter a search would be counted for now: an instrument that reads a real bench, or an ordinary one as it is assumed. */
export function useSteerMeter(launch: Launch): SteerMeter {
  const { instruments } = useInstruments();
  // with every reading the list is another one; what is known of it is the same
  const known = JSON.stringify(meterFacts(instruments));
  const found = useMemo(
    () => withinRange(() => steerMeter(launch, JSON.parse(known) as readonly MeterFacts[])),
    [launch, known],
  );
  return found.ok ? found.value : ordinaryMeter;
}

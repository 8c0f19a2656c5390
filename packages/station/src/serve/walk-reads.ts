import { meterCounting, type WalkMeter, type WalkReads } from '@coreward/bench';
import type { ChosenReads } from '@coreward/contract';
import { Declined } from '../declined.ts';
import type { Instruments } from '../instruments/instruments.ts';

/** What reads the light, as the session keeps it, and the instrument's name; null: none. */
interface Chosen {
  readonly reads: WalkReads;
  readonly name: string | null;
}

/**
 * What was chosen to read the light.
 *
 * @param before what told it until now; a hand that types for an instrument goes on in its unit. Null: nothing did
 * @throws {Declined} if there is no such instrument, or it tells no measure
 */
export function readsChosen(
  instruments: Instruments,
  chosen: ChosenReads,
  goesOn: boolean,
  before: WalkMeter | null,
): Chosen {
  switch (chosen.by) {
    case 'typed': {
      const meter = before === null || before === 'eye' ? 'typed' : before;
      return { reads: { instrument: null, meter, floor: null, goesOn: false }, name: null };
    }
    case 'eye':
      return { reads: { instrument: null, meter: 'eye', floor: null, goesOn: false }, name: null };
    case 'instrument': {
      const { id, name, unit, floor } = instruments.one(chosen.id).describe();
      const meter = meterCounting(unit);
      if (meter === null) throw noMeasure(name);
      return { reads: { instrument: id, meter, floor, goesOn }, name };
    }
  }
}

/** The live meter of a launch's practice bench, switched on for the bench that is hidden by this seed. */
export function practiceMeter(
  instruments: Instruments,
  launch: { readonly id: string; readonly name: string },
  seed: number,
): ChosenReads {
  const found = instruments.practiceOf(launch.id);
  const { id, name, saturation } = found?.kept ?? {
    id: instruments.newId(),
    name: `Practice meter of ${launch.name}`.slice(0, 100),
    saturation: null,
  };
  // a floor that was noted is that of another bench, hidden by another seed
  const setup = { kind: 'practice', launch: launch.id, seed } as const;
  instruments.write(id, { name, setup, floor: null, saturation });
  instruments.switch(id, true);
  return { by: 'instrument', id };
}

const noMeasure = (name: string): Declined =>
  new Declined('refused', {
    where: `instrument ${name}`,
    what: 'it tells steps brighter and dimmer, which are no measure',
    mend: 'Walk by eye, or choose a meter.',
  });

/** A computer's clock is set back: by its owner, or by the network after a start with a wrong time. */
import type { InstrumentSetup } from '@coreward/contract';
import { expect, test } from 'vitest';
import type { KeptInstrument } from '../bench-book/readings.ts';
import { fakeWorld } from '../fake-world.ts';
import type { Ear } from './instrument.ts';
import { Recording } from './recording.ts';
import { replay } from './replay.ts';

const hour = 3_600_000;
const nothing = { watchPractice: () => () => null };

const kept = (setup: InstrumentSetup): KeptInstrument => ({
  id: '11111111-1111-4111-8111-111111111111',
  kind: setup.kind,
  unit: 'relative',
  name: 'meter',
  setup: JSON.stringify(setup),
  floor: null,
  saturation: null,
  on: true,
  putAway: false,
});

test('what falls silent after that has a gap at once, not an hour later', () => {
  const world = fakeWorld();
  const surroundings = { ...nothing, now: world.now };
  const recording = new Recording(kept({ kind: 'camera' }), null, surroundings);
  recording.start(surroundings);
  recording.hear({ kind: 'value', value: 0.4 });
  recording.look();
  expect(recording.describe().state).toBe('reading');
  world.wait(-hour);
  recording.look();
  expect(recording.describe().state).toBe('gap');
  // and what goes on reading is reading again
  recording.hear({ kind: 'value', value: 0.5 });
  recording.look();
  expect(recording.describe().state).toBe('reading');
  expect(recording.toKeep.map(({ value }) => value)).toEqual([0.4, null, 0.5]);
});

test('a log that is being played goes on', async () => {
  let shift = 0;
  const now = () => new Date(Date.now() + shift);
  const heard: number[] = [];
  await new Promise<void>((ended) => {
    const ear: Ear = {
      heard: (said) => {
        if (said.kind === 'value') heard.push(said.value);
        shift = -hour;
      },
      silent: () => ended(),
    };
    replay(
      { kind: 'replay', log: 't,power_mW\n0,1.0\n0.1,2.0\n0.2,3.0\n', unit: 'W', speed: 1 },
      ear,
      now,
    ).start();
  });
  expect(heard).toEqual([1e-3, 2e-3, 3e-3]);
});

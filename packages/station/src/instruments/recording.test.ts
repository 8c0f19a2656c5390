import type { Reading } from '@coreward/bench';
import type { InstrumentSetup } from '@coreward/contract';
import { expect, test } from 'vitest';
import type { KeptInstrument } from '../bench-book/readings.ts';
import { fakeWorld } from '../fake-world.ts';
import { Recording } from './recording.ts';

const setup: InstrumentSetup = { kind: 'camera' };
const kept: KeptInstrument = {
  id: '11111111-1111-4111-8111-111111111111',
  kind: setup.kind,
  unit: 'relative',
  name: 'meter',
  setup: JSON.stringify(setup),
  floor: null,
  saturation: null,
  on: true,
  putAway: false,
};

/** An instrument that is on, on a clock that the test moves. */
function begun(changes: Partial<KeptInstrument> = {}, last: Reading | null = null) {
  const world = fakeWorld();
  const surroundings = { now: world.now, watchPractice: () => () => null };
  const recording = new Recording({ ...kept, ...changes }, last, surroundings);
  recording.start(surroundings);
  return { world, recording };
}

const values = ({ toKeep }: Recording) => toKeep.map(({ value }) => value);

test('a slow instrument is not silent between its readings, only after ten of them are missing', () => {
  const { world, recording } = begun();
  for (let reading = 0; reading < 4; reading += 1) {
    if (reading > 0) world.wait(5_000);
    recording.hear({ kind: 'value', value: 0.4 });
  }
  world.wait(49_999);
  recording.look();
  expect(recording.describe().state).toBe('reading');
  world.wait(1);
  recording.look();
  expect(recording.describe().state).toBe('gap');
});

test('what falls silent behind a clock that was set back has a gap at once, not an hour later', () => {
  const { world, recording } = begun();
  recording.hear({ kind: 'value', value: 0.4 });
  recording.look();
  expect(recording.describe().state).toBe('reading');
  world.wait(-3_600_000);
  recording.look();
  expect(recording.describe().state).toBe('gap');
  // and what goes on reading is reading again
  recording.hear({ kind: 'value', value: 0.5 });
  recording.look();
  expect(recording.describe().state).toBe('reading');
  expect(values(recording)).toEqual([0.4, null, 0.5]);
  // a gap never stands before the reading that it follows
  expect(recording.toKeep[1]!.t).toBe(recording.toKeep[0]!.t);
});

test('too much light stands at the end of the range, or at the most that was seen where that is not known', () => {
  const known = begun({ saturation: 2 }).recording;
  known.hear({ kind: 'value', value: 1.5 });
  known.hear({ kind: 'over' });
  expect(known.toKeep.at(-1)).toMatchObject({ value: 2, saturated: true });
  const unknown = begun().recording;
  unknown.hear({ kind: 'over' });
  expect(values(unknown)).toEqual([]);
  unknown.hear({ kind: 'value', value: 1.5 });
  unknown.hear({ kind: 'value', value: 0.5 });
  unknown.hear({ kind: 'over' });
  expect(unknown.toKeep.at(-1)).toMatchObject({ value: 1.5, saturated: true });
});

test('behind the last reading of a station that was killed stands a gap', () => {
  const { recording } = begun({}, { t: 1_000, value: 0.4, saturated: false });
  expect(recording.toKeep).toEqual([{ t: 1_000, value: null, saturated: false }]);
  // one is enough, and before the first reading there is nothing to interrupt
  expect(begun({}, { t: 1_000, value: null, saturated: false }).recording.toKeep).toEqual([]);
  expect(begun().recording.toKeep).toEqual([]);
});

test('of more readings than can wait for the disk the oldest go, and a gap stands where they were', () => {
  const { world, recording } = begun();
  const first = world.now().getTime();
  const early = { t: first, value: 0.25, saturated: false };
  recording.waitWith(Array.from({ length: 1_000_000 }, () => early));
  world.wait(10);
  recording.hear({ kind: 'value', value: 0.5 });
  expect(recording.toKeep.length).toBeLessThanOrEqual(1_000_000);
  expect(recording.toKeep[0]).toEqual({ t: first, value: null, saturated: false });
  expect(recording.toKeep.at(-1)).toMatchObject({ value: 0.5 });
});

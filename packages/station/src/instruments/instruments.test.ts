import type { InstrumentDescription, InstrumentSetup, LiveMessage } from '@coreward/contract';
import { describe, expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { PracticeBenches } from '../practice-benches.ts';
import { newId, type World } from '../world.ts';
import { fakeMeter, fakeSerial } from './fake-device.ts';
import { Instruments } from './instruments.ts';
import { tryDevice } from './try-device.ts';

// devices take their own time
const world: World = { ...fakeWorld('instruments'), now: () => new Date() };

interface Bench {
  book: BenchBook;
  instruments: Instruments;
  readonly told: LiveMessage[];
  readonly faults: unknown[];
  /** As after a stop and a new start of the station. */
  readonly restart: () => void;
  readonly add: (setup: InstrumentSetup) => string;
  readonly values: (id: string) => readonly (number | null)[];
}

const onBench = (work: (bench: Bench) => Promise<void>) =>
  inFolder(async (folder) => {
    const told: LiveMessage[] = [];
    const faults: unknown[] = [];
    const begin = () => {
      const book = new BenchBook(folder, world);
      const tell = (message: LiveMessage) => told.push(message);
      const benches = new PracticeBenches(book, () => undefined);
      const watch = (launch: string, seed: number) => benches.watch(launch, seed);
      return { book, instruments: new Instruments(book, watch, tell, (error) => faults.push(error)) };
    };
    const end = () => {
      bench.instruments.close();
      bench.book.close();
    };
    const bench: Bench = {
      ...begin(),
      told,
      faults,
      restart: () => {
        end();
        Object.assign(bench, begin());
      },
      add(setup) {
        const id = newId(world);
        bench.instruments.write(id, { name: setup.kind, setup, floor: null, saturation: null });
        bench.instruments.switch(id, true);
        return id;
      },
      values: (id) => bench.book.readings.all(id).map(({ value }) => value),
    };
    try {
      await work(bench);
    } finally {
      end();
    }
    expect(faults).toEqual([]);
  });

/** Waits for what comes by itself. */
async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 400 && !holds(); tries += 1) await new Promise((done) => setTimeout(done, 25));
  expect(holds()).toBe(true);
}

const stateOf = ({ instruments }: Bench, id: string): InstrumentDescription => instruments.one(id).describe();

const scpiAt = (port: number): InstrumentSetup => ({
  kind: 'scpi',
  link: { by: 'tcp', host: '127.0.0.1', port },
  query: 'READ?',
  unit: 'mW',
  every: 20,
});

describe('a device that is asked', () => {
  test('is read, unplugged, plugged in again and read on, with a gap between', () =>
    onBench(async (bench) => {
      const meter = await fakeMeter((query) => (query === 'READ?' ? '+1.5E+00\r\n' : null));
      const id = bench.add(scpiAt(meter.port));
      await until(() => stateOf(bench, id).state === 'reading' && meter.asked.length > 3);
      expect(stateOf(bench, id)).toMatchObject({
        unit: 'W',
        lastReading: { value: 1.5e-3, saturated: false },
      });
      await meter.unplug();
      await until(() => stateOf(bench, id).state === 'gap');
      expect(stateOf(bench, id).trouble?.mend).toBe('Plug it in again; it is opened by itself.');
      const again = await fakeMeter(() => '2\n', meter.port);
      await until(() => stateOf(bench, id).lastReading?.value === 2e-3);
      expect(stateOf(bench, id).state).toBe('reading');
      await until(() => bench.values(id).at(-1) === 2e-3);
      const values = bench.values(id);
      expect(values.filter((value) => value === null)).toHaveLength(1);
      expect(values.indexOf(null)).toBe(values.lastIndexOf(1.5e-3) + 1);
      await again.unplug();
    }));

  test('is asked one thing at a time, and what it says unasked is no reading', () =>
    onBench(async (bench) => {
      const meter = await fakeMeter(() => '1\n7\n7\n');
      const id = bench.add(scpiAt(meter.port));
      await until(() => meter.asked.length > 4);
      bench.instruments.switch(id, false);
      expect(new Set(bench.values(id))).toEqual(new Set([1e-3, null]));
      await meter.unplug();
    }));

  test('shows the top of its range when it has too much, and nothing when it has no number', () =>
    onBench(async (bench) => {
      const answers = ['3.0', '9.91E37', '9.9E37'];
      const meter = await fakeMeter(() => `${answers.shift() ?? '1.0'}\n`);
      const id = bench.add(scpiAt(meter.port));
      await until(() => stateOf(bench, id).lastReading?.value === 1e-3);
      bench.instruments.switch(id, false);
      const kept = bench.book.readings.all(id).slice(0, 3);
      expect(kept.map(({ value, saturated }) => [value, saturated])).toEqual([
        [3e-3, false],
        [3e-3, true],
        [1e-3, false],
      ]);
      await meter.unplug();
    }));

  test('tells who it is and which query it answers before it is made an instrument', async () => {
    const meter = await fakeMeter((query) =>
      query === '*IDN?' ? 'INVENTED,METER,0,1\n' : query === 'FETC?' ? '0.25\n' : null,
    );
    const link = { by: 'tcp', host: '127.0.0.1', port: meter.port } as const;
    expect(await tryDevice({ speaks: 'scpi', link })).toEqual({
      speaks: 'scpi',
      identity: 'INVENTED,METER,0,1',
      query: 'FETC?',
      value: 0.25,
    });
    expect(meter.asked).toEqual(['*IDN?', 'READ?', 'MEAS?', 'FETC?']);
    await meter.unplug();
    await expect(tryDevice({ speaks: 'scpi', link })).rejects.toThrow('nobody answers at this address');
  });
});

describe('a device that speaks by itself', () => {
  let ports = 0;
  // the link of a pseudo-terminal may stand anywhere; the contract asks for one below /dev
  const newPath = () => {
    ports += 1;
    return `/dev/shm/coreward-test-${process.pid}-${ports}`;
  };
  const lineAt = (path: string): InstrumentSetup => ({
    kind: 'serial-line',
    link: { by: 'serial', path, baudRate: 115_200 },
    format: { separator: 'semicolon', decimal: 'point', column: 1, unit: 'µW' },
  });

  test('is read through unplugging, rubbish, half lines and lines without an end', () =>
    onBench(async (bench) => {
      const path = newPath();
      const id = bench.add(lineAt(path));
      const reads = (microwatts: number) =>
        ((stateOf(bench, id).lastReading?.value ?? 0) * 1e6).toFixed(3) === microwatts.toFixed(3);
      await until(() => stateOf(bench, id).trouble?.what === 'there is no such port');
      const device = await fakeSerial(path);
      const chatter = setInterval(() => device.say('0;1.5\r\n'), 20);
      await until(() => reads(1.5));
      clearInterval(chatter);
      device.say(Buffer.from([0xff, 0x00, 0xc3, 0x28, 0x0a]));
      device.say('\n;;;\n1;NaN\n1;');
      device.say('2.5\n');
      await until(() => reads(2.5));
      device.say('9'.repeat(100_000));
      device.say('\n1;3.5\n');
      await until(() => reads(3.5));
      await device.unplug();
      await until(() => stateOf(bench, id).state === 'gap');
      const again = await fakeSerial(path);
      const more = setInterval(() => again.say('0;4.5\n'), 20);
      await until(() => reads(4.5));
      clearInterval(more);
      expect(stateOf(bench, id).state).toBe('reading');
      bench.instruments.switch(id, false);
      await again.unplug();
      const values = bench.values(id).map((value) => (value === null ? null : value * 1e6));
      expect(new Set(values.map((value) => value?.toFixed(3) ?? 'gap'))).toEqual(
        new Set(['1.500', '2.500', '3.500', 'gap', '4.500']),
      );
    }));

  test('shows its lines and how they would be read before it is made an instrument', async () => {
    const path = newPath();
    const device = await fakeSerial(path);
    let count = 0;
    const chatter = setInterval(() => {
      count += 1;
      device.say(`${count}\t${(0.5 + (count % 3) / 10).toFixed(1)} mW\n`);
    }, 10);
    const tried = await tryDevice({ speaks: 'lines', link: { by: 'serial', path, baudRate: 9600 } });
    clearInterval(chatter);
    await device.unplug();
    expect(tried).toMatchObject({
      speaks: 'lines',
      // a tab is what stands between columns, and comes through
      lines: expect.arrayContaining([expect.stringMatching(/^\d+\t0\.\d mW$/u)]),
      format: { separator: 'tab', decimal: 'point', column: 1, unit: 'mW' },
    });
  });
});

describe('readings that a page posts', () => {
  test('are on the disk with the answer, once for each write', () =>
    onBench(async (bench) => {
      const id = bench.add({ kind: 'typed', unit: 'W' });
      const post = { write: newId(world), readings: [{ ago: 500, value: 2e-3, saturated: false }] };
      const kept = bench.instruments.post(id, post);
      expect(bench.instruments.post(id, post)).toEqual(kept);
      expect(bench.book.readings.all(id)).toEqual(kept);
      expect(stateOf(bench, id).lastReading?.value).toBe(2e-3);
      expect(() => bench.instruments.post(newId(world), post)).toThrow('no such instrument');
      bench.instruments.switch(id, false);
      expect(() => bench.instruments.post(id, { ...post, write: newId(world) })).toThrow('Switch it on.');
    }));

  test('by eye are steps from the one before, and claim no size', () =>
    onBench(async (bench) => {
      const id = bench.add({ kind: 'by-eye' });
      const step = (value: number) => ({ ago: 0, value, saturated: false });
      bench.instruments.post(id, { write: newId(world), readings: [1, 1, 0, -1].map(step) });
      bench.instruments.post(id, { write: newId(world), readings: [step(40)] });
      expect(bench.values(id)).toEqual([1, 2, 2, 1, 2]);
      expect(stateOf(bench, id)).toMatchObject({ unit: 'step', noise: null });
    }));
});

test('a log is played with its own timing, and ends', () =>
  onBench(async (bench) => {
    const log = 't,power_mW\n0,1.0\n1,1.2\n2,0.8\n';
    const id = bench.add({ kind: 'replay', log, unit: 'W', speed: 50 });
    await until(() => stateOf(bench, id).state === 'trouble');
    bench.instruments.switch(id, false);
    const kept = bench.book.readings.all(id);
    expect(kept.map(({ value }) => value)).toEqual([1e-3, 1.2e-3, 0.8e-3, null]);
    // a second at fifty times the speed is 20 ms; times of day of some 2·10¹² ms have steps of 2·10⁻⁴
    expect(kept[1]!.t - kept[0]!.t).toBeCloseTo(20, 2);
  }));

test('what was on is on after a restart of the station, and the time between is a gap', () =>
  onBench(async (bench) => {
    const meter = await fakeMeter(() => '1\n');
    const id = bench.add(scpiAt(meter.port));
    const off = bench.add({ kind: 'typed', unit: 'V' });
    bench.instruments.switch(off, false);
    await until(() => stateOf(bench, id).state === 'reading');
    bench.restart();
    const asked = meter.asked.length;
    await until(() => stateOf(bench, id).state === 'reading' && meter.asked.length > asked);
    expect(stateOf(bench, off).state).toBe('off');
    bench.instruments.putAway(id);
    expect(bench.instruments.all().map((one) => one.id)).toEqual([off]);
    // put away, and its readings still there: on, off, on, off
    const values = bench.values(id);
    expect(values.filter((value) => value === null)).toHaveLength(2);
    await meter.unplug();
  }));

test('an instrument keeps what it counts in', () =>
  onBench(async (bench) => {
    const id = bench.add({ kind: 'typed', unit: 'W' });
    const changed = {
      name: 'meter',
      setup: { kind: 'typed', unit: 'V' },
      floor: null,
      saturation: null,
    } as const;
    expect(() => bench.instruments.write(id, changed)).toThrow('Add a new instrument.');
  }));

import type { InstrumentSetup } from '@coreward/contract';
import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { newId, type World } from '../world.ts';
import { fakeMeter, fakeSerial } from './fake-device.ts';
import { Instruments } from './instruments.ts';
import { tryDevice } from './try-device.ts';

// devices take their own time
const world: World = { ...fakeWorld('amiss'), now: () => new Date() };

const opened = (folder: string) => {
  const book = new BenchBook(folder, world);
  const faults: unknown[] = [];
  const instruments = new Instruments(
    book,
    () => () => null,
    () => {},
    (error) => faults.push(error),
  );
  return { book, instruments, faults };
};

function added(instruments: Instruments, setup: InstrumentSetup): string {
  const id = newId(world);
  instruments.write(id, { name: setup.kind, setup, floor: null, saturation: null });
  instruments.switch(id, true);
  return id;
}

async function until(holds: () => boolean): Promise<void> {
  for (let tries = 0; tries < 400 && !holds(); tries += 1) await new Promise((done) => setTimeout(done, 25));
  expect(holds()).toBe(true);
}

test('a disk that fills up while readings stream is told, and once there is room not one of them is missing', () =>
  inFolder(async (folder) => {
    let count = 0;
    const meter = await fakeMeter(() => {
      count += 1;
      return `${count}\n`;
    });
    const { book, instruments, faults } = opened(folder);
    const id = added(instruments, {
      kind: 'scpi',
      link: { by: 'tcp', host: '127.0.0.1', port: meter.port },
      query: 'READ?',
      unit: 'counts',
      every: 5,
    });
    await until(() => book.readings.extent(id).count > 10);
    // a real SQLITE_FULL, without a real full disk: the file may not grow any further
    book.limitPages(1);
    const state = () => instruments.one(id).describe();
    await until(() => state().state === 'trouble');
    expect(state().trouble?.what).toBe('the disk is full, and nothing was changed');
    // it is not taken back by the readings that still come, and they are shown
    const shown = state().lastReading?.value ?? 0;
    const kept = book.readings.extent(id).count;
    await until(() => (state().lastReading?.value ?? 0) > shown + 50);
    expect(state().state).toBe('trouble');
    expect(book.readings.extent(id).count).toBe(kept);
    book.limitPages(1_000_000);
    await until(() => state().state === 'reading');
    instruments.switch(id, false);
    const values = book.readings.all(id).map(({ value }) => value);
    expect(values.slice(0, -1)).toEqual(Array.from({ length: values.length - 1 }, (_, index) => index + 1));
    expect(values.at(-1)).toBeNull();
    expect(instruments.close()).toBe(0);
    book.close();
    await meter.unplug();
    expect(faults).toEqual([]);
  }));

test('a station that stops on a full disk says how many readings are lost', () =>
  inFolder(async (folder) => {
    const { book, instruments, faults } = opened(folder);
    // more than fits into the file as it is
    const log = Array.from({ length: 5_000 }, (_, index) => `${index / 1000};${(index * 7) % 11}`).join('\n');
    const id = added(instruments, { kind: 'replay', log, unit: 'counts', speed: 1_000 });
    book.limitPages(1);
    await until(() => instruments.one(id).toKeep.length >= 5_000);
    // and the gap behind the end of the log
    expect(instruments.close()).toBe(5_001);
    book.close();
    expect(faults).toEqual([]);
  }));

test('an instrument that cannot be begun says why, and the station starts with it all the same', () =>
  inFolder(async (folder) => {
    const first = opened(folder);
    const id = added(first.instruments, { kind: 'replay', log: 'no readings at all', unit: 'W', speed: 1 });
    expect(first.instruments.one(id).describe()).toMatchObject({
      state: 'trouble',
      trouble: { what: 'no column of it holds readings' },
    });
    first.instruments.close();
    first.book.close();
    const again = opened(folder);
    expect(again.instruments.one(id).describe().state).toBe('trouble');
    again.instruments.close();
    again.book.close();
  }));

test('a device that is asked may hang on a serial port', () =>
  inFolder(async (folder) => {
    const path = `/dev/shm/coreward-asked-${process.pid}`;
    const answerTo = (query: string) =>
      query === '*IDN?' ? 'INVENTED,SERIAL METER,0,1\r\n' : query === 'MEAS?' ? '+1.25E-1\r\n' : null;
    const device = await fakeSerial(path, answerTo);
    const link = { by: 'serial', path, baudRate: 9600 } as const;
    expect(await tryDevice({ speaks: 'scpi', link })).toEqual({
      speaks: 'scpi',
      identity: 'INVENTED,SERIAL METER,0,1',
      query: 'MEAS?',
      value: 0.125,
    });
    const { book, instruments, faults } = opened(folder);
    const id = added(instruments, { kind: 'scpi', link, query: 'MEAS?', unit: 'V', every: 20 });
    const state = () => instruments.one(id).describe();
    await until(() => state().lastReading?.value === 0.125);
    await device.unplug();
    await until(() => state().state === 'gap');
    const again = await fakeSerial(path, () => '0.5\n');
    await until(() => state().lastReading?.value === 0.5);
    instruments.close();
    const values = book.readings.all(id).map(({ value }) => value);
    expect(values.filter((value, index) => value !== values[index - 1])).toEqual([0.125, null, 0.5, null]);
    book.close();
    await again.unplug();
    expect(faults).toEqual([]);
  }));

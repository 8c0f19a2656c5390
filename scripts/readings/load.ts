import { join } from 'node:path';
import { BenchBook } from '../../packages/station/src/bench-book/bench-book.ts';
import { fakeSerial } from '../../packages/station/src/instruments/fake-device.ts';
import { Instruments } from '../../packages/station/src/instruments/instruments.ts';
import type { World } from '../../packages/station/src/world.ts';

/** What became of a load. */
export interface LoadReport {
  readonly sent: number;
  readonly kept: number;
  /** The first counter that is not where it should be; null if each is. */
  readonly firstWrong: number | null;
  /** How long the book took to show all of it in a thousand buckets, ms. */
  readonly view_ms: number;
  readonly faults: readonly unknown[];
}

export interface Load {
  readonly world: World;
  readonly folder: string;
  readonly seconds: number;
  readonly perSecond: number;
  readonly progress?: (sent: number) => void;
}

const id = '10ad10ad-0000-4000-8000-000000000000';
const wait = (milliseconds: number) => new Promise((done) => setTimeout(done, milliseconds));

/** Counts up on a serial line, so and so many lines a second, and looks whether each has come into the book. */
export async function loadReadings(load: Load): Promise<LoadReport> {
  const { world, folder, seconds, perSecond } = load;
  const faults: unknown[] = [];
  const port = join('/dev/shm', `coreward-load-${process.pid}`);
  const device = await fakeSerial(port);
  const book = new BenchBook(folder, world);
  const instruments = new Instruments(
    book,
    () => () => null,
    () => {},
    (error) => faults.push(error),
  );
  const format = { separator: 'none', decimal: 'point', column: 0, unit: 'counts' } as const;
  const link = { by: 'serial', path: port, baudRate: 921_600 } as const;
  const setup = { kind: 'serial-line', link, format } as const;
  instruments.write(id, { name: 'counter', setup, floor: null, saturation: null });
  instruments.switch(id, true);
  // the port is opened in a moment; until then lines would be for nobody
  await wait(500);
  device.say('\n');
  const sent = await counted(load, device.say);
  for (let tries = 0; tries < 300 && book.readings.extent(id).count < sent; tries += 1) await wait(100);
  instruments.close();
  await device.unplug();
  const values = book.readings
    .all(id)
    .map(({ value }) => value)
    .filter((value) => value !== null);
  const wrong = values.findIndex((value, index) => value !== index);
  const { first, last } = book.readings.extent(id);
  const begun = performance.now();
  book.readings.buckets(id, { from: first ?? 0, to: (last ?? 0) + 1, buckets: 1000 });
  const view_ms = Math.round(performance.now() - begun);
  faults.push(...book.faults());
  book.close();
  const firstWrong = wrong >= 0 ? wrong : values.length < sent ? values.length : null;
  return { sent, kept: values.length, firstWrong, view_ms, faults };

  /** Says the numbers from 0 on, at the pace that was asked for. */
  async function counted({ progress }: Load, say: (text: string) => void): Promise<number> {
    const start = performance.now();
    const all = seconds * perSecond;
    let next = 0;
    let told = 0;
    while (next < all) {
      const due = Math.min(all, Math.floor(((performance.now() - start) / 1000) * perSecond));
      let lines = '';
      for (; next < due; next += 1) lines += `${next}\r\n`;
      if (lines !== '') say(lines);
      if (progress !== undefined && next - told >= 10 * perSecond) {
        told = next;
        progress(next);
      }
      await wait(5);
    }
    return all;
  }
}

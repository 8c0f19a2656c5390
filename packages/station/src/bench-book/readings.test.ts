import type { Reading } from '@coreward/bench';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { BenchBook } from './bench-book.ts';
import { packed, unpacked } from './packed-block.ts';

const id = '11111111-1111-4111-8111-111111111111';
const kept = {
  id,
  kind: 'typed',
  unit: 'W',
  name: 'meter',
  setup: '{"kind":"typed","unit":"W"}',
  floor: null,
  saturation: null,
  on: true,
  putAway: false,
} as const;

const reading: fc.Arbitrary<Reading> = fc.record({
  t: fc.double({ min: 0, max: 1e4, noNaN: true }),
  value: fc.oneof(
    { arbitrary: fc.double({ min: -1e6, max: 1e6, noNaN: true }), weight: 5 },
    { arbitrary: fc.constant(null), weight: 1 },
  ),
  saturated: fc.boolean(),
});

test('a block gives back what was packed, digit by digit', () => {
  fc.assert(
    fc.property(fc.array(reading), (all) => {
      expect(unpacked(packed(all))).toEqual(all);
    }),
  );
});

test('a view from afar is that of every single reading, however they lie in blocks', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, fakeWorld());
    let series = 0;
    const query = fc.record({
      blocks: fc.array(fc.array(reading, { minLength: 1, maxLength: 30 }), { maxLength: 8 }),
      from: fc.double({ min: 0, max: 9_000, noNaN: true }),
      length: fc.double({ min: 1, max: 1e4, noNaN: true }),
      buckets: fc.integer({ min: 1, max: 12 }),
    });
    fc.assert(
      fc.property(query, ({ blocks, from, length, buckets }) => {
        series += 1;
        const own = `${series.toString(16).padStart(8, '0')}${id.slice(8)}`;
        book.readings.write({ ...kept, id: own });
        for (const block of blocks) book.readings.keep(new Map([[own, block]]));
        const to = from + length;
        const found = book.readings.buckets(own, { from, to, buckets });
        expect(found.length).toBeLessThanOrEqual(buckets);
        // another route: over the plain list
        const inside = blocks.flat().filter(({ t }) => t >= from && t < to);
        const values = inside.flatMap(({ value }) => (value === null ? [] : [value]));
        expect(found.reduce((sum, { count }) => sum + count, 0)).toBe(values.length);
        const shown = found.filter(({ count }) => count > 0);
        expect(Math.min(...shown.map(({ min }) => min ?? 0))).toBe(Math.min(...values));
        expect(Math.max(...shown.map(({ max }) => max ?? 0))).toBe(Math.max(...values));
        // and each in its own bucket: the n-th begins at from + n · length / buckets
        const borders = Array.from({ length: buckets }, (_, n) => from + (n * (to - from)) / buckets);
        // a reading within a rounding of a border may fall to either side
        const isClear = inside.every(({ t }) =>
          borders.every((one) => one === from || Math.abs(one - t) > 1e-6),
        );
        if (isClear) {
          const own = borders
            .map((start, n) => inside.filter(({ t }) => t >= start && t < (borders[n + 1] ?? to)))
            .filter((all) => all.length > 0);
          const counts = own.map((all) => all.filter(({ value }) => value !== null).length);
          expect(found.map(({ count }) => count)).toEqual(counts);
          expect(found.map(({ t }) => t)).toEqual(own.map((all) => Math.min(...all.map(({ t }) => t))));
        }
        expect(found.some(({ gap }) => gap)).toBe(inside.some(({ value }) => value === null));
        expect(found.some(({ saturated }) => saturated)).toBe(inside.some(({ saturated }) => saturated));
        const sum = shown.reduce((all, { mean, count }) => all + (mean ?? 0) * count, 0);
        // 240 roundings of sums of at most 240 · 10⁶: 240 · 2.4·10⁸ · 1.1·10⁻¹⁶ ≈ 6·10⁻⁶
        expect(Math.abs(sum - values.reduce((a, b) => a + b, 0))).toBeLessThan(1e-5);
      }),
      { numRuns: 60 },
    );
    book.close();
  }));

test('a block that lies across a border is shared out', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, fakeWorld());
    book.readings.write(kept);
    const ten = Array.from({ length: 10 }, (_, i) => ({ t: i, value: i * i, saturated: i === 8 }));
    book.readings.keep(new Map([[id, ten]]));
    // counted by hand: 0 1 4 9 16, then 25 36 49 64 81
    expect(book.readings.buckets(id, { from: 0, to: 10, buckets: 2 })).toEqual([
      { t: 0, count: 5, min: 0, max: 16, mean: 6, gap: false, saturated: false },
      { t: 5, count: 5, min: 25, max: 81, mean: 51, gap: false, saturated: true },
    ]);
    // and only what lies inside is told
    expect(book.readings.buckets(id, { from: 2.5, to: 4.5, buckets: 1 })).toEqual([
      { t: 3, count: 2, min: 9, max: 16, mean: 12.5, gap: false, saturated: false },
    ]);
    book.close();
  }));

test('readings are added to and never changed or taken out', () =>
  inFolder((folder) => {
    const book = new BenchBook(folder, fakeWorld());
    book.readings.write(kept);
    book.readings.keep(new Map([[id, [{ t: 1, value: 2, saturated: false }]]]));
    // what it counts in is no part of what may change
    book.readings.write({ ...kept, unit: 'V' });
    expect(book.readings.instrument(id)?.unit).toBe('W');
    expect(book.readings.all(id)).toHaveLength(1);
    book.close();
  }));

import { type Reading, readingUnits } from '@coreward/bench';
import { idText } from './written.ts';
import { z } from './zod.ts';

/** What readings are counted in. */
export const readingUnit = z.enum(readingUnits);

/** A moment, ms since 1970-01-01T00:00Z, by the station's clock; fractions count. */
export const moment = z.number().check(z.gte(0), z.lte(1e14));

/** A reading in its instrument's unit; a `value` of null marks a gap from `t` on. */
export const reading: z.ZodMiniType<Reading> = z.strictObject({
  t: moment,
  value: z.nullable(z.number()),
  saturated: z.boolean(),
});

/** Readings that may be posted in one go. */
export const mostReadingsAtOnce = 512;

/**
 * Readings that a page took: typed, told by eye, or from its camera. They are on the disk when the answer comes. Sent again
 * under the same `write` they are kept once.
 */
export const postReadings = z.strictObject({
  write: idText,
  /** Oldest first. */
  readings: z
    .array(
      z.strictObject({
        /** How long before this was sent it was taken, ms: a phone's clock need not be right. */
        ago: z.number().check(z.gte(0), z.lte(864e5)),
        /**
         * In the instrument's unit. By eye: how many steps brighter (+1), the same (0) or dimmer (−1) than the one before.
         * Null: the page lost sight of it.
         */
        value: z.nullable(z.number()),
        saturated: z.boolean(),
      }),
    )
    .check(z.minLength(1), z.maxLength(mostReadingsAtOnce)),
});
export type PostReadings = z.infer<typeof postReadings>;

/** What was kept of them, as it stands in the bench book. */
export const postedReadings = z.strictObject({ readings: z.array(reading) });
export type PostedReadings = z.infer<typeof postedReadings>;

/** Buckets that may be asked for at once. */
export const mostBuckets = 4_000;
const digits = z.string().check(z.regex(/^\d{1,14}$/u));

/** Which readings, and how finely; nothing asks for all there are, in a thousand buckets. */
export const readingsQuery = z.strictObject({
  /** From this moment on, ms. */
  from: z.optional(digits),
  /** Before this one, ms. */
  to: z.optional(digits),
  /** Into no more than so many buckets of equal length. */
  buckets: z.optional(digits),
});
export type ReadingsQuery = z.infer<typeof readingsQuery>;

/** All readings of a stretch of time, in short. */
export const readingsBucket = z.strictObject({
  /** Of the first reading in it. */
  t: moment,
  count: z.int(),
  /** Null where there is nothing but gaps in it. */
  min: z.nullable(z.number()),
  max: z.nullable(z.number()),
  mean: z.nullable(z.number()),
  /** Somewhere in it something is missing. */
  gap: z.boolean(),
  /** Somewhere in it the instrument was at its upper end. */
  saturated: z.boolean(),
});
export type ReadingsBucket = z.infer<typeof readingsBucket>;

/** Buckets with nothing in them are left out. */
export const readingsAnswer = z.strictObject({
  instrument: idText,
  unit: readingUnit,
  from: moment,
  to: moment,
  buckets: z.array(readingsBucket),
});
export type ReadingsAnswer = z.infer<typeof readingsAnswer>;

import type { ReadingsBucket } from '@coreward/contract';
import { type BlockFacts, eachPacked } from './packed-block.ts';

/** A bucket as it fills. */
interface Filling {
  t: number;
  count: number;
  values: number;
  sum: number;
  min: number;
  max: number;
  gap: boolean;
  saturated: boolean;
}

/** From when to when, and into how many buckets of equal length. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly buckets: number;
}

/** A block on disk, by its rank, without its readings. */
export interface Block extends BlockFacts {
  readonly rank: number;
}

/**
 * The readings of a stretch in buckets. A block that lies in one bucket is counted by its facts; only what lies across a
 * border is opened, so that a view of a million readings opens as many blocks as it has buckets, and is exact.
 *
 * @param open the bytes of the block of this rank
 */
export function bucketsOf(
  blocks: readonly Block[],
  { from, to, buckets }: Stretch,
  open: (rank: number) => Buffer,
): ReadingsBucket[] {
  const width = (to - from) / buckets;
  const filling = new Map<number, Filling>();
  const bucketAt = (t: number) => Math.min(buckets - 1, Math.floor((t - from) / width));
  for (const block of blocks) {
    const { first, last } = block;
    if (first >= from && last < to && bucketAt(first) === bucketAt(last)) {
      fill(filling, bucketAt(first), block);
    } else {
      eachPacked(open(block.rank), (t, value, saturated) => {
        if (t < from || t >= to) return;
        fill(filling, bucketAt(t), {
          first: t,
          count: 1,
          gaps: value === null ? 1 : 0,
          saturated: saturated ? 1 : 0,
          min: value,
          max: value,
          mean: value,
        });
      });
    }
  }
  return [...filling].sort(([a], [b]) => a - b).map(([, one]) => filled(one));
}

function fill(
  filling: Map<number, Filling>,
  at: number,
  { first, count, gaps, saturated, min, max, mean }: Omit<BlockFacts, 'last'>,
): void {
  let bucket = filling.get(at);
  if (bucket === undefined) {
    bucket = {
      t: first,
      count: 0,
      values: 0,
      sum: 0,
      min: Number.POSITIVE_INFINITY,
      max: Number.NEGATIVE_INFINITY,
      gap: false,
      saturated: false,
    };
    filling.set(at, bucket);
  }
  bucket.t = Math.min(bucket.t, first);
  bucket.count += count - gaps;
  bucket.gap ||= gaps > 0;
  bucket.saturated ||= saturated > 0;
  if (min === null || max === null || mean === null) return;
  bucket.values += count - gaps;
  bucket.sum += mean * (count - gaps);
  bucket.min = Math.min(bucket.min, min);
  bucket.max = Math.max(bucket.max, max);
}

function filled({ t, count, values, sum, min, max, gap, saturated }: Filling): ReadingsBucket {
  const none = values === 0;
  return {
    t,
    count,
    min: none ? null : min,
    max: none ? null : max,
    // a sum that rounds must not lead out of its own limits
    mean: none ? null : Math.min(max, Math.max(min, sum / values)),
    gap,
    saturated,
  };
}

/** The meter that a search in the dark is watched on: how little light it shows, and how often it is read. */
import type { ReadingUnit } from '../instrument/reading.ts';
import type { Launch } from '../launch/launch.ts';
import { writeDecibel, writeValue } from '../units/write.ts';
import { walkPlan } from '../walk/session.ts';

/** What a search counts with. */
export interface SteerMeter {
  /** Null: an ordinary meter, as it is assumed. */
  readonly name: string | null;
  /** The least share of the peak that stands out of the floor. */
  readonly seen: number;
  /** Time from one reading to the next, s. */
  readonly updateTime: number;
}

/** What is known of an instrument. */
export interface MeterFacts {
  readonly name: string;
  /** The reading with the beam blocked, W; null: nobody has said, or it counts in another unit. */
  readonly floor: number | null;
  /** Readings a second; null: none came yet. */
  readonly rate: number | null;
}

/** An instrument as the bench book has it. */
interface BenchInstrument {
  readonly name: string;
  readonly kind: string;
  readonly unit: ReadingUnit;
  readonly state: string;
  readonly floor: number | null;
  readonly rate_Hz: number | null;
}

/** What is known of those that read a real bench now. A rate is told to one digit, so that it does not waver. */
export const meterFacts = (instruments: readonly BenchInstrument[]): readonly MeterFacts[] =>
  instruments
    .filter(({ kind, unit, state }) => state === 'reading' && kind !== 'practice' && unit !== 'step')
    .map(({ name, unit, floor, rate_Hz }) => ({
      name,
      floor: unit === 'W' ? floor : null,
      rate: rate_Hz === null ? null : Number(rate_Hz.toPrecision(1)),
    }));

/** An ordinary meter (our assumption): light of 40 dB below the peak stands out, and four new readings a second. */
export const ordinaryMeter: SteerMeter = { name: null, seen: 1e-4, updateTime: 0.25 };

/** Light stands out by so many floors. */
const standsOut = 3;
/** A dark place is not told from a bright one where more than this share is asked for (our choice). */
const mostSeen = 0.3;
/** However fast a meter is, nobody stops a screw sooner after a flash of light, s (our assumption, no source). */
const quickestHand = 0.2;

/**
 * The meter of a search among the instruments that read; the first whose floor is known is taken before the others.
 *
 * @throws {Refusal} if the launch has no lens, or fewer than two mirrors with screws
 */
export function steerMeter(launch: Launch, instruments: readonly MeterFacts[]): SteerMeter {
  const found = instruments.find(({ floor }) => floor !== null && floor > 0) ?? instruments[0];
  if (found === undefined) return ordinaryMeter;
  const { name, floor, rate } = found;
  const peak = walkPlan(launch).known.forecastPeak;
  const isFloorKnown = floor !== null && floor > 0 && peak !== null && peak > 0;
  return {
    name,
    seen: isFloorKnown ? Math.min(mostSeen, (standsOut * floor) / peak) : ordinaryMeter.seen,
    updateTime: rate !== null && rate > 0 ? Math.max(quickestHand, 1 / rate) : ordinaryMeter.updateTime,
  };
}

/** What the search is counted for. */
export function steerMeterWords({ name, seen, updateTime }: SteerMeter): string {
  const shows = `light from ${writeDecibel(seen)} of the peak on`;
  const every = `a new reading every ${writeValue(updateTime, 'time')}`;
  if (name === null)
    return `The search is counted for an ordinary meter, as we assume it: ${shows}, ${every}. An instrument that is on, its dark reading entered, is counted with instead.`;
  const isAssumed = seen === ordinaryMeter.seen;
  return `The search is counted for ${name}: ${shows}${isAssumed ? ' (assumed: its dark reading in watts is not known)' : ''}, ${every}.`;
}

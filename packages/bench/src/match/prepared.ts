import { leastV } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import type { Launch } from '../launch/launch.ts';
import { type FastFibre, fastFibre } from './fast-fibre.ts';
import { type FibreDoubt, fibreDoubt } from './fibre-doubt.ts';
import { type LensDoubt, lensDoubt } from './lens-doubt.ts';
import { type Light, lightOf } from './light-doubt.ts';

/** What a match works out once for each laser, and for each lens and fibre in its light. */
export interface Prepared {
  readonly light: Light;
  readonly fibreOf: (launch: Launch, meeting: Meeting) => PreparedFibre;
  /** Null without a lens. */
  readonly lensOf: (launch: Launch, meeting: Meeting) => LensDoubt | null;
}

/** A fibre at one wavelength, with everything that is the same for each lens. */
export interface PreparedFibre {
  readonly fibre: FastFibre;
  readonly doubt: FibreDoubt;
  /** The same fibre at the lower and at the upper end of its V. */
  readonly atEnds: readonly [FastFibre, FastFibre];
}

/** V at the ends of its doubt is rounded to this, in ln, so that fibres of nearly one V share what is computed. */
const vStep = 0.04;

/**
 * @param launch any launch with this laser and path
 * @param fibres by profile and V: they serve all lasers
 */
export function prepare(launch: Launch, fibres: Map<string, FastFibre>): Prepared {
  const light = lightOf(launch);
  const fibreAt = (profile: 'step' | 'graded', vNumber: number): FastFibre =>
    kept(fibres, `${profile} ${vNumber}`, () => fastFibre(profile, vNumber));
  const prepared = new Map<Launch['fibre'], PreparedFibre>();
  const lenses = new Map<Launch['collimator'], LensDoubt | null>();
  return {
    light,
    fibreOf: (one, meeting) =>
      kept(prepared, one.fibre, () => {
        const { profile } = one.fibre;
        const fibre = fibreAt(profile, meeting.vNumber);
        const doubt = fibreDoubt(one, meeting, fibre);
        const end = (change: number): FastFibre => {
          const logV = Math.log(meeting.vNumber) + change;
          return fibreAt(profile, Math.max(leastV, Math.exp(Math.round(logV / vStep) * vStep)));
        };
        const known = doubt.vNumber < vStep / 2;
        return { fibre, doubt, atEnds: known ? [fibre, fibre] : [end(-doubt.vNumber), end(doubt.vNumber)] };
      }),
    lensOf: ({ collimator }, { wavelength }) =>
      kept(lenses, collimator, () => (collimator === null ? null : lensDoubt(collimator, wavelength))),
  };
}

function kept<Key, Value>(values: Map<Key, Value>, key: Key, make: () => Value): Value {
  let value = values.get(key);
  if (value === undefined) {
    value = make();
    values.set(key, value);
  }
  return value;
}

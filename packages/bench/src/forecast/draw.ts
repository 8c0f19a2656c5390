import { normalQuantile } from '@coreward/optics';
import { quantileOf } from '../quantity/distribution.ts';
import type { Entry } from '../quantity/quantity.ts';

/**
 * One way the bench could really be: a value for every entry, and for what no entry names (the hand, the bend's
 * coating, the cladding). The stated bench is a draw, too.
 */
export interface Draw {
  at(entry: Entry): number;
  readonly chance: Chance;
}

/** Standard normal unless said otherwise; 0 (or ½) is the middle. */
export interface Chance {
  /** How far each screw of the near mirror is left from its best place, in units of the finest finger motion. */
  readonly screwHorizontal: number;
  readonly screwVertical: number;
  /** 0 … 1 between the steadiest hand and the least steady. */
  readonly hand: number;
  /** 0 … 1 between the two published views of a bent fibre. */
  readonly bend: number;
  /** How long cladding light survives, and how the attenuation differs from its estimate. */
  readonly cladding: number;
  readonly attenuation: number;
}

/** The names of a draw's chances that no entry of the document tells, in the order of the numbers drawn for them. */
export const chanceNames = [
  'screwHorizontal',
  'screwVertical',
  'hand',
  'bend',
  'cladding',
  'attenuation',
] as const;

/** The finest finger motion on a screw, turns: from the steadiest hand to the least steady (our own assumption, no source). */
export const finestFingerMotion = { steadiest: 0.001, leastSteady: 0.0025 } as const;

/** Finest finger motion of a hand on the scale 0 … 1, turns. */
export const fingerMotion = (hand: number): number =>
  finestFingerMotion.steadiest + hand * (finestFingerMotion.leastSteady - finestFingerMotion.steadiest);

/** The hand whose finger motion is the root mean square over all hands. */
function typicalHand(): number {
  const { steadiest: a, leastSteady: b } = finestFingerMotion;
  return (Math.sqrt((a * a + a * b + b * b) / 3) - a) / (b - a);
}

/**
 * The bench as stated. A hand that has walked the launch leaves each screw one typical error from its best place: the
 * root mean square, for the mean of what is left is not what is left.
 */
export const asStated: Draw = {
  at: (entry) => entry.value,
  chance: {
    screwHorizontal: 1,
    screwVertical: 1,
    hand: typicalHand(),
    bend: 0.5,
    cladding: 0,
    attenuation: 0,
  },
};

/**
 * Draws from points of the unit cube: first the chances, then the entries in the order given. Where an entry stands is
 * kept once for all draws.
 */
export function drawing(entries: readonly Entry[]): (point: ArrayLike<number>) => Draw {
  const places = new Map(entries.map((entry, i) => [entry, i]));
  return (point) => {
    const values = new Float64Array(entries.length);
    for (let i = 0; i < values.length; i += 1) {
      values[i] = quantileOf(entries[i]!, point[chanceNames.length + i]!);
    }
    return {
      at: (entry) => {
        const place = places.get(entry);
        return place === undefined ? entry.value : values[place]!;
      },
      chance: chanceAt(point),
    };
  };
}

const chanceAt = (point: ArrayLike<number>): Chance => ({
  screwHorizontal: normalQuantile(point[0]!),
  screwVertical: normalQuantile(point[1]!),
  hand: point[2]!,
  bend: point[3]!,
  cladding: normalQuantile(point[4]!),
  attenuation: normalQuantile(point[5]!),
});

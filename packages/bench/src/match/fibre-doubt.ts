import { fibreTransmission, transmissionFromNepers } from '@coreward/optics';
import { asStated, type Draw } from '../forecast/draw.ts';
import { doubtfulIn } from '../forecast/entries-of.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { attenuationOf, bendLoss, type InTheBends } from '../forecast/through-the-fibre.ts';
import type { Launch } from '../launch/launch.ts';
import type { FastFibre } from './fast-fibre.ts';
import { butFor, halfLogWidth } from './light-doubt.ts';
import { type LogSpread, spreadOfRatios, together } from './log-spread.ts';

/** How doubtful one fibre is in one light. */
export interface FibreDoubt {
  /** Attenuation, bends, joints. */
  readonly losses: LogSpread;
  /** Half of what lies between the 5 and the 95 % point of V, in ln. */
  readonly vNumber: number;
  /** By what ln(core radius) goes along with it, and what of it goes its own way. */
  readonly coreAlong: number;
  readonly coreApart: number;
}

/** @param launch any launch with this light and this fibre */
export function fibreDoubt(launch: Launch, meeting: Meeting, fibre: FastFibre): FibreDoubt {
  const core = halfLogWidth(launch.fibre.coreDiameter);
  const other = Math.hypot(
    halfLogWidth(launch.fibre.numericalAperture),
    halfLogWidth(launch.laser.wavelength),
  );
  const vNumber = Math.hypot(core, other);
  return {
    losses: lossSpread(launch, meeting, fibre),
    vNumber,
    // the line of regression of the core on V, and the rest about it
    coreAlong: vNumber === 0 ? 0 : core ** 2 / vNumber,
    coreApart: vNumber === 0 ? 0 : (core * other) / vNumber,
  };
}

function lossSpread(launch: Launch, meeting: Meeting, { taker, round }: FastFibre): LogSpread {
  const { fibre } = launch;
  const { wavelength } = meeting;
  const { powers } = round(1)(Math.log(taker.bestRadius ?? 1));
  const through = (draw: Draw): number => {
    let all = fibreTransmission(attenuationOf(launch, wavelength, draw), Math.max(0, draw.at(fibre.length)));
    let inBends: InTheBends = { powers, modesLeft: 1 };
    for (const bend of fibre.bends) {
      const { transmission, behind } = bendLoss(launch, bend, meeting, taker, inBends, draw);
      all *= transmission;
      inBends = behind;
    }
    for (const { loss } of fibre.connectors.between) {
      all *= transmissionFromNepers(Math.max(0, draw.at(loss)));
    }
    return all;
  };
  const stated = through(asStated);
  const ends = (low: Draw, high: Draw) => spreadOfRatios(through(low) / stated, through(high) / stated);
  const chance = (name: 'bend' | 'attenuation', at: number): Draw => ({
    ...asStated,
    chance: { ...asStated.chance, [name]: at },
  });
  const { length, attenuation, connectors, bends } = fibre;
  const entries = doubtfulIn({ length, attenuation, connectors, bends });
  return together([
    ...entries.map((entry) => ends(butFor(entry, 0.05), butFor(entry, 0.95))),
    // the estimate's own doubt, and the two views of a bent fibre
    ...(attenuation === null ? [ends(chance('attenuation', -1.645), chance('attenuation', 1.645))] : []),
    ...(bends.length === 0 ? [] : [ends(chance('bend', 0.05), chance('bend', 0.95))]),
  ]);
}

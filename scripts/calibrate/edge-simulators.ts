import { erfc } from '@coreward/optics';
import { between, betweenLog, evenly, readings, rounded, type Simulator } from './simulated.ts';

export const edgeSimulators: readonly Simulator[] = [
  edges('11 to 41 positions over ±1.5 to ±2.5 radii; noise 0.2 to 3 % of full', (random, normal) => {
    const reach = between(random, 1.5, 2.5);
    const shift = between(random, -0.2, 0.2);
    const noise = betweenLog(random, 0.002, 0.03);
    const places = evenly(shift - reach, shift + reach, Math.floor(between(random, 11, 42)));
    return places.map((at) => [at, 0.05 + light(at) + noise * normal()]);
  }),
  edges('the same, with noise of 1 to 4 % of each reading and 0.2 % of full beside', (random, normal) => {
    const share = between(random, 0.01, 0.04);
    const places = evenly(-2, 2, Math.floor(between(random, 15, 36)));
    return places.map((at) => [at, 0.02 + light(at) * (1 + share * normal()) + 0.002 * normal()]);
  }),
  edges('15 to 35 positions, each 1 to 4 % of a radius off; noise 0.2 % of full', (random, normal) => {
    const off = between(random, 0.01, 0.04);
    const places = evenly(-2, 2, Math.floor(between(random, 15, 36)));
    return places.map((at) => [at + off * normal(), 0.02 + light(at) + 0.002 * normal()]);
  }),
  edges(
    '11 to 35 positions read to 1/100 to 1/10 of a radius; noise 0.1 to 1 % of full',
    (random, normal) => {
      const step = betweenLog(random, 0.01, 0.1);
      const noise = betweenLog(random, 0.001, 0.01);
      const places = evenly(-2 + between(random, -0.2, 0.2), 2, Math.floor(between(random, 11, 36)));
      return places.map((at) => [rounded(at, step), 0.02 + light(at) + noise * normal()]);
    },
  ),
  edges('steps of 0.4 to 0.7 radius; noise 0.2 to 3 % of full', (random, normal) => {
    const step = between(random, 0.4, 0.7);
    const noise = betweenLog(random, 0.002, 0.03);
    const places = evenly(-4 * step, 4 * step, 9).map((at) => at + step * between(random, -0.02, 0.02));
    const shift = step * between(random, -0.5, 0.5);
    return places.map((at) => [at + shift, 0.02 + light(at + shift) + noise * normal()]);
  }),
  edges(
    '15 to 35 positions while the light drifts by 0.5 to 2 %; noise 0.3 to 1 % of full',
    (random, normal) => {
      const drift = betweenLog(random, 0.005, 0.02) * (random() < 0.5 ? 1 : -1);
      const noise = betweenLog(random, 0.003, 0.01);
      const places = evenly(-2, 2, Math.floor(between(random, 15, 36)));
      return places.map((at) => [at, 0.02 + light(at) * (1 + (drift * at) / 4) + noise * normal()]);
    },
  ),
  edges(
    'a log of 2500 to 4000 readings on the way across, in any order; noise 0.5 to 5 % of full',
    (random, normal) => {
      const noise = betweenLog(random, 0.005, 0.05);
      return Array.from({ length: Math.floor(between(random, 2500, 4001)) }, () => {
        const at = between(random, -4, 4);
        return [at, 0.05 + light(at) + noise * normal()];
      });
    },
  ),
];

/** Power past an edge, of 1, by its place in 1/e² radii. @source elementary: the integral of a Gaussian */
const light = (at: number): number => 0.5 * erfc(-Math.SQRT2 * at);

/** @param draw places of the edge, in radii from the centre, each with what is read there */
function edges(
  what: string,
  draw: (random: () => number, normal: () => number) => readonly (readonly [number, number])[],
): Simulator {
  return {
    gauge: 'knife-edge',
    what,
    counted: ['radius1e2_m', 'centre_m'],
    draw: (random, normal) => {
      const radius = betweenLog(random, 30e-6, 2e-3);
      const centre = between(random, 1e-3, 9e-3);
      // an edge may uncover the beam as it moves, or cover it
      const sense = random() < 0.5 ? 1 : -1;
      const scan = draw(random, normal);
      return {
        readings: readings({
          columns: {
            position: scan.map(([at]) => centre + sense * radius * at),
            power: scan.map(([, power]) => power),
          },
        }),
        truth: { radius1e2_m: radius, centre_m: centre },
      };
    },
  };
}

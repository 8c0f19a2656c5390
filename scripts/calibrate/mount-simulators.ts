import { between, betweenLog, evenly, readings, type Simulator, stated } from './simulated.ts';

/** Rulers and screws: read as the gauges assume. */
export const mountSimulators: readonly Simulator[] = [
  {
    gauge: 'ruler',
    what: '1 to 6 readings, both ends anywhere within a millimetre, scale off by 0.1 %',
    counted: ['length_m'],
    draw: (random, normal) => {
      const length = betweenLog(random, 0.02, 1);
      const scale = 1 + 1e-3 * normal();
      const count = Math.floor(between(random, 1, 7));
      const grain = (): number => 1e-3 * (random() - random());
      const readAs = Array.from({ length: count }, () => length * scale + grain());
      return { readings: readings({ columns: { length: readAs } }), truth: { length_m: length } };
    },
  },
  {
    gauge: 'screw-turns',
    what: 'up and down again by 2 to 4 turns, slack 0 to 0.1 turn, spot read to 0.5 mm, distance to 1 %',
    counted: ['mirror_rad_per_turn', 'slack_turns'],
    draw: (random, normal) => {
      const perTurn = between(random, 4e-3, 12e-3);
      const distance = between(random, 2, 5);
      const slack = between(random, 0.01, 0.1);
      const top = Math.floor(between(random, 2, 5));
      const up = evenly(0, top, 2 * top + 1);
      const turns = [-0.5, ...up, ...up.toReversed().map((t) => t - 0.25)];
      const spot = turns.map((t, i) => {
        const way = i === 0 || t > turns[i - 1]! ? 1 : -1;
        return 0.2 + 2 * perTurn * distance * (t - (way * slack) / 2) + 0.5e-3 * normal();
      });
      return {
        readings: readings({
          columns: { turns, spot },
          settings: { distance: stated(distance * (1 + 0.01 * normal()), 0.01 * distance) },
        }),
        truth: { mirror_rad_per_turn: perTurn, slack_turns: slack },
      };
    },
  },
  {
    gauge: 'thread-pitch',
    what: '2 to 8 readings over 5 to 10 turns, each to 0.1 mm',
    counted: ['pitch_m_per_turn'],
    draw: (random, normal) => {
      const pitch = between(random, 0.25e-3, 1e-3);
      const turns = evenly(0, Math.floor(between(random, 5, 11)), Math.floor(between(random, 2, 9)));
      const advance = turns.map((t) => 3e-3 + pitch * t + 0.1e-3 * normal());
      return { readings: readings({ columns: { turns, advance } }), truth: { pitch_m_per_turn: pitch } };
    },
  },
];

import { leastSquares } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { writeValue } from '../../units/write.ts';
import { type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { column, derived, type Known, settingAs } from '../known.ts';

/** The gauge that counts turns while a spot moves on a far wall. */
export const screwTurns: Gauge = {
  name: 'screw-turns',
  otherNames: ['mount'],
  title: 'turns of a screw',
  answers: 'milliradians of mirror and beam for one turn, the lever, the sense, and the slack',
  needs: 'a far wall with a ruler, and turns counted up and down again',
  takes: 'table',
  columns: [
    {
      name: 'turns',
      dimension: 'turns',
      needed: true,
      otherNames: ['turn', 'n'],
      what: 'of the screw, in the order in which it was turned; clockwise positive',
    },
    {
      name: 'spot',
      dimension: 'length',
      needed: true,
      otherNames: ['position', 'x', 'y', 'reading'],
      what: 'where the spot stands on the wall',
    },
  ],
  settings: [
    {
      name: 'distance',
      dimension: 'length',
      example: '3.2 m',
      needed: true,
      otherNames: ['wall', 'd'],
      what: 'from the mirror to the wall',
    },
    {
      name: 'pitch',
      dimension: 'screwPitch',
      needed: false,
      otherNames: ['thread', 'screw pitch'],
      what: 'advance of the screw a turn, for its lever; left out: 0.25 mm, and a launch is told both',
    },
    {
      name: 'spot uncertainty',
      dimension: 'length',
      example: '0.5 mm',
      needed: false,
      what: 'standard uncertainty of one position; left out: 0.5 mm',
    },
  ],
  measure: measureScrew,
};

/** Of a fine screw, m a turn: what a launch is told where nobody measured it (common practice, no source). */
export const usualPitch = 0.25e-3;

function measureScrew(readings: Readings): GaugeResult {
  const [turns, spot] = [column(readings, 'turns'), column(readings, 'spot')];
  if (turns.length < 2) {
    throw new Refusal({
      where: 'screw-turns readings',
      what: 'there is only one reading',
      mend: 'Read the spot before and after some turns.',
    });
  }
  const distance = settingAs(
    'distance to the wall',
    readings.settings.distance!,
    0.01 * readings.settings.distance!.value,
  );
  const stated = readings.settings['spot uncertainty']?.value ?? 0.5e-3;
  const ways = directions(turns);
  const bothWays = ways.includes(1) && ways.includes(-1) && turns.length >= 6;
  const used = bothWays ? turns.map((_, i) => i).filter((i) => ways[i] !== 0) : turns.map((_, i) => i);
  const columns = [
    used.map(() => 1),
    used.map((i) => turns[i]!),
    ...(bothWays ? [used.map((i) => ways[i]! / 2)] : []),
  ];
  const fit =
    used.length < columns.length
      ? null
      : leastSquares(
          columns,
          used.map((i) => spot[i]!),
        );
  const names = ['mirror_rad_per_turn', 'beam_rad_per_turn', 'slack_turns', 'lever_m'];
  const pitch = readings.settings.pitch?.value ?? usualPitch;
  if (fit === null) return none(names, 'the screw was not turned', 'Turn it by a whole turn or more.');
  const freedom = used.length - columns.length;
  const bySpread = freedom >= 3;
  const variance = bySpread ? fit.squares / freedom : stated ** 2;
  const known = (i: number): Known => ({
    from: bySpread ? 'scatter of the spot' : 'reading of the spot, as stated or assumed',
    value: fit.coefficients[i]!,
    uncertainty: Math.sqrt(variance * fit.inverse[i]![i]!),
    ...(bySpread ? { freedom } : {}),
  });
  const slope = known(1);
  if (!(slope.uncertainty < 0.3 * Math.abs(slope.value)))
    return none(
      names,
      'the spot moves by no more than the ruler can tell',
      'Turn farther, or use a wall farther away.',
    );
  const size = { ...slope, value: Math.abs(slope.value) };
  const slack: GaugeAnswer = bothWays
    ? derived(
        { quantity: names[2]!, floor: 0 },
        [known(2), size],
        (gap, s) => (-Math.sign(slope.value) * gap!) / s!,
      )
    : undetermined(names[2]!, 'the screw was turned one way only', 'Turn it back through the same places.');
  return {
    answers: [
      // a mirror that turns by an angle turns the beam by twice as much
      derived({ quantity: names[0]!, shape: 'positive' }, [size, distance], (s, d) => s! / d! / 2),
      derived({ quantity: names[1]!, shape: 'positive' }, [size, distance], (s, d) => s! / d!),
      slack,
      // its doubt is that of the tilt: lever and pitch go into a launch together, and only their ratio was measured
      derived({ quantity: names[3]!, shape: 'positive' }, [size, distance], (s, d) => (2 * pitch * d!) / s!),
    ],
    remarks: [
      `A positive turn moves the spot towards ${slope.value > 0 ? 'larger' : 'smaller'} readings.`,
      ...(used.length < turns.length
        ? [
            'The first reading is left out: from which side the screw came to it, and its slack, is not known.',
          ]
        : []),
      `The lever goes with a pitch of ${writeValue(pitch, 'screwPitch')} and with no other.`,
    ],
    curves: [
      {
        title: 'spot on the wall',
        across: 'turns',
        up: 'position (m)',
        x: used.map((i) => turns[i]!),
        readings: used.map((i) => spot[i]!),
        fit: fit.residuals.map((r, k) => spot[used[k]!]! - r),
      },
    ],
  };
}

/** Which way the screw came to each reading: 1 up, −1 down, 0 not known. */
const directions = (turns: readonly number[]): readonly number[] =>
  turns.map((turn, i) => (i === 0 ? 0 : Math.sign(turn - turns[i - 1]!)));

const none = (names: readonly string[], because: string, add: string): GaugeResult => ({
  answers: names.map((name) => undetermined(name, because, add)),
  remarks: [],
  curves: [],
});

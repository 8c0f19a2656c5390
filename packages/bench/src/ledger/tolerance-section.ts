import type { Forecast, ScrewTolerance, Tolerances } from '../forecast/expected.ts';
import { coarseAbove, type HandLoss, handLoss } from '../forecast/hand-loss.ts';
import { writeValue } from '../units/write.ts';
import { shareText } from './figures.ts';
import type { Block, Row, Section } from './section.ts';

/** What costs 1 dB, and whether the hand can do better than that. */
export function toleranceSection(forecast: Forecast): Section {
  const { guided, fundamental } = forecast.tolerances;
  // with one mode the two are the same
  const alone = forecast.fibre.lpModes === 1 ? null : fundamental;
  const blocks: Block[] = [
    { kind: 'text', text: 'To lose 1 dB, a fifth of the light, each alone and from its best place:' },
    toleranceTable(guided, alone),
  ];
  const hand = handText(handLoss(forecast), nearMirror(forecast));
  if (hand !== null) blocks.push({ kind: 'text', text: hand });
  return { heading: 'How exactly it must be aimed', blocks };
}

function toleranceTable(guided: Tolerances, alone: Tolerances | null): Block {
  const row = (label: string, of: (tolerances: Tolerances) => string): Row => ({
    kind: 'cells',
    cells: [label, of(guided), ...(alone === null ? [] : [of(alone)])],
  });
  return {
    kind: 'table',
    columns: [
      { heading: '', align: 'left' },
      { heading: alone === null ? '' : 'all guided\nlight', align: 'right' },
      ...(alone === null ? [] : [{ heading: 'LP01\nalone', align: 'right' } as const]),
    ],
    rows: [
      row('spot moved sideways', ({ offsetFor1dB }) => lengthText(offsetFor1dB)),
      row('light tilted', ({ tiltFor1dB }) =>
        tiltFor1dB === null ? never : writeValue(tiltFor1dB, 'angle', 2),
      ),
      row('fibre moved along the light', ({ defocusFor1dB }) => lengthText(defocusFor1dB)),
      ...guided.screws.map(({ mirror, axis }) =>
        row(`${axis} screw of ${mirror}`, ({ screws }) => turnsText(screwOf(screws, mirror, axis))),
      ),
    ],
  };
}

const never = 'never';

const lengthText = (length: number | null): string =>
  length === null ? never : writeValue(length, 'length', 2);

function screwOf(
  screws: readonly ScrewTolerance[],
  mirror: string,
  axis: ScrewTolerance['axis'],
): number | null {
  return screws.find((screw) => screw.mirror === mirror && screw.axis === axis)?.turnsFor1dB ?? null;
}

/** `0.031 turns (11°)`: an angle of the screw's head can be seen. */
export function turnsText(turns: number | null): string {
  if (turns === null) return never;
  if (turns >= 1) return writeValue(turns, 'turns', 2);
  return `${writeValue(turns, 'turns', 2)} (${writeValue(turns * 2 * Math.PI, 'angle', 2, '°')})`;
}

function nearMirror({ launch }: Forecast): string | null {
  const mirrors = launch.path.filter((element) => element.kind === 'mirror');
  return mirrors.findLast(({ mount }) => mount !== null)?.name ?? null;
}

/** Whether these mounts are fine enough for a hand; what to do about it stands under what to change. */
export function handText(loss: HandLoss | null, mirror: string | null): string | null {
  if (loss === null) return null;
  const screw = mirror === null ? 'a screw of a usual mount' : `a screw of ${mirror}`;
  const lost = `The finest turn of a hand, 1/400 of a turn at ${screw}, costs ${loss.share < 1e-3 ? 'under 0.1 %' : shareText(loss.share)} of ${loss.of}`;
  return loss.share > coarseAbove
    ? `${lost}: too coarse to stay on the peak.`
    : `${lost}: these mounts are fine enough.`;
}

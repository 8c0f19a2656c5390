import type { Budget } from '../forecast/budget.ts';
import type { Taker } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { suitedRadius } from '../forecast/overlap-causes.ts';
import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import type { MatchReason } from './matched.ts';

/** The largest loss of a pair, as the one reason why it is not better. */
export function reasonOf(launch: Launch, meeting: Meeting, taker: Taker, budget: Budget): MatchReason {
  const costs = new Map<MatchReason['id'], number>();
  const add = (id: MatchReason['id'], transmission: number) =>
    costs.set(id, (costs.get(id) ?? 1) * transmission);
  const spot = Math.sqrt(meeting.beam.waistRadiusX * meeting.beam.waistRadiusY);
  const suited = suitedRadius(meeting, taker) * Math.sqrt(Math.sqrt(meeting.beam.m2X * meeting.beam.m2Y));
  for (const { id, group, transmission } of budget.losses) {
    if (id.startsWith('clip-') || id.startsWith('stop-') || id === 'lens-clip') add('clipped', transmission);
    else if (group === 'path') add('path', transmission);
    else if (id === 'lens-surfaces' || id === 'output-lens') add('surfaces', transmission);
    else if (id === 'entry-facet' || id === 'exit-facet') add('end-facets', transmission);
    else if (id === 'spot-size') add(spot < suited ? 'spot-too-small' : 'spot-too-large', transmission);
    else if (id === 'beam-quality') add('beam-quality', transmission);
    else if (id === 'ellipticity') add('ellipticity', transmission);
    else if (id === 'aberration') add('aberration', transmission);
    else if (id === 'mode-shape') add('mode-shape', transmission);
    else if (id === 'attenuation') add('attenuation', transmission);
    else if (id.startsWith('bend-')) add('bends', transmission);
    else if (id.startsWith('joint-')) add('joints', transmission);
  }
  const [id, transmission] = [...costs].reduce((worst, cost) => (cost[1] < worst[1] ? cost : worst));
  return { id, transmission, text: textOf(id, launch, 2 * spot, 2 * suited) };
}

function textOf(id: MatchReason['id'], launch: Launch, spot: number, suited: number): string {
  const sizes = `${writeValue(spot, 'length', 2)} for ${writeValue(suited, 'length', 2)}`;
  switch (id) {
    case 'spot-too-small':
      return `spot too small, ${sizes}`;
    case 'spot-too-large':
      return `spot too large, ${sizes}`;
    case 'beam-quality':
      return 'beam quality (M²)';
    case 'ellipticity':
      return 'elliptic or astigmatic beam';
    case 'aberration':
      return 'aberration of the lens';
    case 'clipped':
      return 'beam clipped';
    case 'surfaces':
      return 'lens surfaces';
    case 'path':
      return 'mirrors and filters';
    case 'attenuation':
      return `attenuation over ${writeValue(launch.fibre.length.value, 'length', 2)}`;
    case 'bends':
      return 'bends of the fibre';
    case 'joints':
      return 'joints on the way';
    case 'mode-shape':
      return 'mode shape: a mode is no Gaussian';
    case 'end-facets':
      return 'reflection at the fibre’s ends';
  }
}

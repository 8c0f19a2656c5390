import type { Budget, Loss } from '../forecast/budget.ts';
import type { Taker } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { type OverlapCause, suitedRadius } from '../forecast/overlap-causes.ts';
import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import type { MatchReason } from './matched.ts';

type ReasonId = MatchReason['id'];

/** The largest loss of a pair, as the one reason why it is not better. Losses of one kind count together. */
export function reasonOf(launch: Launch, meeting: Meeting, taker: Taker, budget: Budget): MatchReason {
  const { beam } = meeting;
  const spot = Math.sqrt(beam.waistRadiusX * beam.waistRadiusY);
  const suited = suitedRadius(meeting, taker) * Math.sqrt(Math.sqrt(beam.m2X * beam.m2Y));
  const costs = new Map<ReasonId, number>();
  for (const loss of budget.losses) {
    const id = reasonId(loss, spot < suited);
    costs.set(id, (costs.get(id) ?? 1) * loss.transmission);
  }
  const [id, transmission] = [...costs].reduce((worst, cost) => (cost[1] < worst[1] ? cost : worst));
  return {
    id,
    transmission,
    spotDiameter: 2 * spot,
    suitedDiameter: 2 * suited,
    fibreLength: launch.fibre.length.value,
  };
}

function reasonId({ id, group }: Loss, spotIsSmall: boolean): ReasonId {
  switch (group) {
    case 'path':
      return id.startsWith('clip-') || id.startsWith('stop-') ? 'clipped' : 'path';
    case 'lens':
      return id === 'lens-clip' ? 'clipped' : 'surfaces';
    case 'facet':
      return 'end-facets';
    case 'output':
      return id === 'exit-facet' ? 'end-facets' : 'surfaces';
    case 'fibre':
      return id === 'attenuation' ? 'attenuation' : id.startsWith('bend-') ? 'bends' : 'joints';
    case 'overlap':
      return id === 'spot-size'
        ? spotIsSmall
          ? 'spot-too-small'
          : 'spot-too-large'
        : (id as Exclude<OverlapCause, 'spot-size'>);
  }
}

/** A reason in a few words, without its cost. */
export function reasonText({ id, spotDiameter, suitedDiameter, fibreLength }: MatchReason): string {
  const sizes = () =>
    `${writeValue(spotDiameter, 'length', 2)} for ${writeValue(suitedDiameter, 'length', 2)}`;
  switch (id) {
    case 'spot-too-small':
      return `spot too small, ${sizes()}`;
    case 'spot-too-large':
      return `spot too large, ${sizes()}`;
    case 'beam-quality':
      return 'beam quality (M²)';
    case 'ellipticity':
      return 'elliptic or astigmatic beam';
    case 'aberration':
      return 'aberration of the lens';
    case 'focus':
      return 'no lens to focus with';
    case 'aim':
      return 'aim: too fine for a hand on these screws';
    case 'clipped':
      return 'beam clipped';
    case 'surfaces':
      return 'lens surfaces';
    case 'path':
      return 'mirrors and filters';
    case 'attenuation':
      return `attenuation over ${writeValue(fibreLength, 'length', 2)}`;
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

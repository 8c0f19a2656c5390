import type { Budget, Loss } from '../forecast/budget.ts';
import type { Taker } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { netLosses } from '../forecast/net-losses.ts';
import { type OverlapCause, suitedRadius } from '../forecast/overlap-causes.ts';
import { lossText } from '../forecast/remark-text.ts';
import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import type { MatchReason } from './matched.ts';

type ReasonId = MatchReason['id'];

/** What a pair loses, losses of one kind together, and the sizes that its reason may have to tell. */
export interface Costs {
  readonly kinds: ReadonlyMap<ReasonId, number>;
  readonly sizes: Pick<MatchReason, 'spotDiameter' | 'suitedDiameter' | 'fibreLength'>;
}

/** What each kind of loss costs this pair; what one entry gives back of another is counted with it. */
export function costsOf(launch: Launch, meeting: Meeting, taker: Taker, budget: Budget): Costs {
  const { beam } = meeting;
  const spot = Math.sqrt(beam.waistRadiusX * beam.waistRadiusY);
  const suited = suitedRadius(meeting, taker) * Math.sqrt(Math.sqrt(beam.m2X * beam.m2Y));
  const kinds = new Map<ReasonId, number>();
  netLosses(budget.losses).forEach(({ transmission }, i) => {
    const id = reasonId(budget.losses[i]!, spot < suited);
    kinds.set(id, (kinds.get(id) ?? 1) * transmission);
  });
  return {
    kinds,
    sizes: { spotDiameter: 2 * spot, suitedDiameter: 2 * suited, fibreLength: launch.fibre.length.value },
  };
}

/** The largest loss of a pair, as the one reason why it is not better. */
export function largestReason({ kinds, sizes }: Costs): MatchReason {
  const [id, transmission] = [...kinds].reduce((worst, cost) => (cost[1] < worst[1] ? cost : worst));
  return { id, transmission, againstBest: null, ...sizes };
}

/** Of a pair behind the best: in which kind of loss it is most behind. */
export function reasonBehind(costs: Costs, best: Costs): MatchReason {
  const behind = [...costs.kinds].map(([id, transmission]) => ({
    id,
    transmission,
    againstBest: transmission / bestOf(best, id),
  }));
  const worst = behind.reduce((a, b) => (b.againstBest < a.againstBest ? b : a));
  const [all, bestAll] = [costs, best].map(({ kinds }) =>
    [...kinds.values()].reduce((total, t) => total * t, 1),
  );
  const together = all! / bestAll!;
  return worst.againstBest > noReason && together <= noReason
    ? { id: 'small-losses', transmission: all!, againstBest: together, ...costs.sizes }
    : { ...worst, ...costs.sizes };
}

/** A twentieth of a decibel is no reason. */
const noReason = 10 ** -0.005;

/** A spot is a spot, too small here or too large there. */
function bestOf({ kinds }: Costs, id: ReasonId): number {
  if (id !== 'spot-too-small' && id !== 'spot-too-large') return kinds.get(id) ?? 1;
  return (kinds.get('spot-too-small') ?? 1) * (kinds.get('spot-too-large') ?? 1);
}

/** The reason with its cost: of the best pair all of it, of another what it costs more; as good as the best, if it is. */
export function reasonLine(reason: MatchReason): string {
  const { transmission, againstBest } = reason;
  if (againstBest === null) return `${reasonText(reason)}, ${lossText(transmission)}`;
  if (againstBest > noReason) return 'as good as the best, within 0.05 dB';
  return `${reasonText(reason)}, ${lossText(againstBest)} more`;
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
    case 'small-losses':
      return 'several small losses';
    case 'end-facets':
      return 'reflection at the fibre’s ends';
  }
}

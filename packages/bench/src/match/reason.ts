import { type Budget, type Loss, looseModes } from '../forecast/budget.ts';
import type { Taker } from '../forecast/fibre-taker.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { netTransmissions } from '../forecast/net-losses.ts';
import { type OverlapCause, suitedRadius } from '../forecast/overlap-causes.ts';
import { lossText } from '../forecast/remark-text.ts';
import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import type { MatchReason } from './matched.ts';

type ReasonId = MatchReason['id'];

/**
 * What a pair loses, losses of one kind together, and the sizes that its reason may have to tell. Two short lists instead of
 * a map: a match keeps twenty thousand of them until it ends.
 */
export interface Costs {
  /** In the order in which light meets them. */
  readonly kinds: readonly ReasonId[];
  /** What each of these lets through. */
  readonly shares: readonly number[];
  readonly sizes: Pick<MatchReason, 'spotDiameter' | 'suitedDiameter' | 'fibreLength'>;
}

/** What each kind of loss costs this pair; what one entry gives back of another is counted with it. */
export function costsOf(launch: Launch, meeting: Meeting, taker: Taker, budget: Budget): Costs {
  const { beam } = meeting;
  const spot = Math.sqrt(beam.waistRadiusX * beam.waistRadiusY);
  const suited = suitedRadius(meeting, taker) * Math.sqrt(Math.sqrt(beam.m2X * beam.m2Y));
  const kinds: ReasonId[] = [];
  const shares: number[] = [];
  netTransmissions(budget.losses).forEach((transmission, i) => {
    const id = reasonId(budget.losses[i]!, spot < suited);
    const known = kinds.indexOf(id);
    if (known < 0) {
      kinds.push(id);
      shares.push(transmission);
    } else shares[known] = shares[known]! * transmission;
  });
  return {
    kinds,
    shares,
    sizes: { spotDiameter: 2 * spot, suitedDiameter: 2 * suited, fibreLength: launch.fibre.length.value },
  };
}

/** The largest loss of a pair, as the one reason why it is not better. */
export function largestReason({ kinds, shares, sizes }: Costs): MatchReason {
  const worst = lowest(shares);
  return reasonOf(kinds[worst]!, shares[worst]!, null, sizes);
}

/** The place of the least of some values, the first of equals. */
function lowest(values: readonly number[]): number {
  let least = 0;
  for (let i = 1; i < values.length; i += 1) if (values[i]! < values[least]!) least = i;
  return least;
}

const reasonOf = (
  id: ReasonId,
  transmission: number,
  againstBest: number | null,
  { spotDiameter, suitedDiameter, fibreLength }: Costs['sizes'],
): MatchReason => ({ id, transmission, againstBest, spotDiameter, suitedDiameter, fibreLength });

/** Of a pair behind the best: in which kind of loss it is most behind. */
export function reasonBehind(costs: Costs, best: Costs): MatchReason {
  const { kinds, shares, sizes } = costs;
  const behind = shares.map((share, i) => share / bestOf(best, kinds[i]!));
  const worst = lowest(behind);
  const all = product(shares);
  const together = all / product(best.shares);
  return behind[worst]! > noReason && together <= noReason
    ? reasonOf('small-losses', all, together, sizes)
    : reasonOf(kinds[worst]!, shares[worst]!, behind[worst]!, sizes);
}

const product = (shares: readonly number[]): number => shares.reduce((total, share) => total * share, 1);

/** A twentieth of a decibel is no reason. */
const noReason = 10 ** -0.005;

/** A spot is a spot, too small here or too large there. */
function bestOf({ kinds, shares }: Costs, id: ReasonId): number {
  const of = (kind: ReasonId): number => shares[kinds.indexOf(kind)] ?? 1;
  if (id !== 'spot-too-small' && id !== 'spot-too-large') return of(id);
  return of('spot-too-small') * of('spot-too-large');
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
      return id === 'attenuation'
        ? 'attenuation'
        : id.startsWith('bend-') || id === looseModes
          ? 'bends'
          : 'joints';
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

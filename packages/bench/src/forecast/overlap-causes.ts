import type { FacetBeam, Pupil } from '@coreward/optics';
import { shareOfPassed, stopTransmission } from './at-the-stop.ts';
import { isRound } from './best-focus.ts';
import { isFollowed, roundBeam, type Taken, type Taker } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';
import type { Aimed } from './near-screws.ts';

/** The overlap's causes, in the order of the ledger; `mode-shape` is the named rest. */
export const overlapCauses = [
  { id: 'beam-quality', label: 'beam quality (M²)' },
  { id: 'spot-size', label: 'spot size against the mode' },
  { id: 'ellipticity', label: 'ellipticity and astigmatism' },
  { id: 'aberration', label: 'stop and aberration of the lens' },
  { id: 'focus', label: 'focus' },
  { id: 'aim', label: 'aim' },
  { id: 'mode-shape', label: 'mode shape (a mode is no Gaussian)' },
] as const;

export type OverlapCause = (typeof overlapCauses)[number]['id'];

/** One overlap by cause: the product is the guided fraction of what arrives at the facet. */
export interface ChainOfCauses {
  /** In the order of {@link overlapCauses}. */
  readonly factors: readonly number[];
  /** The best that any Gaussian spot does, then with one cause after the other, at last the whole. */
  readonly couplings: readonly number[];
  readonly guided: number;
  readonly fundamental: number | null;
  /** Share of the guided light in each mode of the taker's set, or null. */
  readonly powers: Float64Array | null;
  /** Share of the guided light in modes that are followed where V is uncertain. */
  readonly followed: number;
  readonly stop: number;
}

/** What the fibre takes of a beam, of the light that arrives at the lens's stop. */
export type Offering = (beam: FacetBeam, pupil: Pupil | null) => Taken;

/** Distances of the facet from the lens (or from the end of the path), m. */
export interface FacetPlaces {
  /** For the most light, were the lens perfect. */
  readonly bestUnaberrated: number;
  /** Behind its waist, for the most light, of a round spot of the same size: 0 unless it is too small for the mode. */
  readonly roundBeside: number;
  /** For the most light. */
  readonly best: number;
  /** Where it stands. */
  readonly actual: number;
}

/**
 * Draws are computed in a quicker way than the bench as stated: with looser tolerances, with rays in place of many modes,
 * with stop and aberration as one factor. So that both speak of the same thing, the bench as stated is computed in the
 * quick way as well, and every draw is shifted by what the two differ there.
 */
export interface SetRight {
  /** The coupling with causes 0 … `place`, or, behind the last cause, with everything. */
  readonly coupling: (place: number, drawn: number) => number;
  readonly fundamental: (drawn: number) => number;
  /** Share of the guided light in the modes that the quick way follows. */
  readonly followed: (drawn: number) => number;
  /** What a bend lets through. */
  readonly bend: (place: number, drawn: number) => number;
}

/** How a chain asks the fibre. */
export interface Asking {
  /** For every cause in turn. */
  readonly taken: Offering;
  /**
   * For the whole of it, where the causes are only counted by rays: the exact share. What it differs by joins the last
   * entry, for it is what modes do and rays do not. Null: `taken` is as good as it gets.
   */
  readonly whole: Offering | null;
  /** Where `taken` is quick, what brings its answers in line with the exact ones. */
  readonly setRight: SetRight | null;
}

/**
 * Splits the overlap by cause. Each cause is put in turn onto an ideal launch: round, of the size that suits the fibre,
 * at its best focus, straight in; entry n is the coupling with causes 1 … n over that with 1 … n − 1. The couplings are
 * counted against the best that any Gaussian spot can do in this fibre, which is the last entry. An entry may exceed 1:
 * a smaller spot, for one, may reach more modes.
 *
 * @param places of the facet behind the lens
 */
export function chainOfCauses(
  meeting: Meeting,
  taker: Taker,
  places: FacetPlaces,
  aim: Aimed,
  { taken, whole, setRight }: Asking,
): ChainOfCauses {
  const { beam, pupil } = meeting;
  const mixed = Math.sqrt(beam.m2X * beam.m2Y);
  const asked: number[] = [taker.bestShare];
  const follow = (changed: boolean, of: () => number) => asked.push(changed ? of() : asked.at(-1)!);

  const suited = suitedRadius(meeting, taker) * Math.sqrt(mixed);
  const size = Math.sqrt(beam.waistRadiusX * beam.waistRadiusY);
  follow(mixed > 1, () => taken(roundBeam(suited, mixed), null).guided);
  const sized = { ...roundBeam(size, mixed), waistZX: -places.roundBeside, waistZY: -places.roundBeside };
  follow(true, () => taken(sized, null).guided);
  follow(!isRound(beam), () => taken(beamAt(meeting, places.bestUnaberrated, null), null).guided);
  const centred = beamAt(meeting, places.best, null);
  follow(pupil !== null, () => perArrived(taken(centred, pupil), centred, meeting).guided);
  const focused = beamAt(meeting, places.actual, null);
  const moved = Math.abs(places.actual - places.best) > 1e-12;
  follow(moved, () => perArrived(taken(focused, pupil), focused, meeting).guided);
  const aimed = beamAt(meeting, places.actual, aim);
  const counted = taken(aimed, pupil);
  const byCauses = perArrived(counted, aimed, meeting);
  const last = whole === null ? byCauses : perArrived(whole(aimed, pupil), aimed, meeting);
  asked.push(byCauses.guided, last.guided);

  const couplings = setRight === null ? asked : asked.map((share, i) => setRight.coupling(i, share));
  const best = couplings[0]!;
  const [caused, guided] = couplings.slice(-2) as [number, number];
  const factors = couplings.slice(1, -1).map((coupling, i) => ratio(coupling, couplings[i]!));
  // where rays see nothing the rest takes it all, so that the product stays exact
  factors.push(caused === 0 ? (guided === 0 ? best : 1) : best * (guided / caused));
  return {
    factors,
    couplings,
    guided,
    fundamental:
      last.fundamental === null ? null : (setRight?.fundamental(last.fundamental) ?? last.fundamental),
    powers: last.powers,
    followed: setRight === null ? shareFollowed(taker, last.powers) : setRight.followed(last.guided),
    stop: stopTransmission(aimed, pupil, meeting.wavelength),
  };
}

function shareFollowed({ set }: Taker, powers: Float64Array | null): number {
  if (set === null || powers === null) return 1;
  let all = 0;
  let loose = 0;
  set.modes.forEach((mode, i) => {
    all += powers[i]!;
    if (!isFollowed(mode)) loose += powers[i]!;
  });
  return all === 0 ? 1 : 1 - loose / all;
}

/** Nothing over nothing lets everything through: the loss stands in an earlier entry. */
const ratio = (now: number, before: number): number => (before === 0 ? 1 : now / before);

/** Counted against what passes the stop instead of what arrives at it. */
function perArrived(taken: Taken, beam: FacetBeam, meeting: Meeting): Taken {
  if (meeting.pupil === null) return taken;
  const passed = stopTransmission(beam, meeting.pupil, meeting.wavelength);
  const share = (part: number) => shareOfPassed(part, passed);
  return {
    guided: share(taken.guided),
    fundamental: taken.fundamental === null ? null : share(taken.fundamental),
    powers: taken.powers?.map(share) ?? null,
  };
}

/** 1/e² radius at the facet that suits the fibre, for M² = 1, m. */
export function suitedRadius(meeting: Meeting, taker: Taker): number {
  if (taker.bestRadius !== null && taker.suits === 'fundamental')
    return taker.bestRadius * meeting.coreRadius;
  // many modes: the spot that fills core and aperture alike
  return Math.sqrt((meeting.wavelength * meeting.coreRadius) / (Math.PI * meeting.numericalAperture));
}

import type { FacetBeam, Pupil } from '@coreward/optics';
import { stopTransmission } from './at-the-stop.ts';
import { depthFor, focusDepth, isRound, quickBestDistance, roundMeeting } from './best-focus.ts';
import { fewModedBelow, manyRays, type Taker, takenByModes, takenBySampledRays } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';
import { mostLightAt, type ShareOf } from './most-light.ts';

/** Where the facet stands for the most light. m. */
export interface BestDistances {
  /** Behind the lens (or behind the end of the path). */
  readonly distance: number;
  /** The same, were the lens perfect. */
  readonly unaberrated: number;
  /** Behind its waist, of a round spot of the same size. */
  readonly roundBeside: number;
}

/** The best focus of the bench as stated, and what the draws take from it. */
export interface StatedFocus extends BestDistances {
  readonly suits: Taker['suits'];
  /** From {@link quickBestDistance} to `unaberrated`, and `roundBeside`, in depths (see `focusDepth`). */
  readonly beside: number;
  readonly roundBesideInDepths: number;
  /** From {@link quickBestDistance} to `distance`, m, where stop or aberration of the lens move the focus; else null. */
  readonly moved: number | null;
}

/** V up to which modes are summed again and again: for every cause, tolerance and focus, not for the whole alone. */
export const summedUpTo = ({ m2X, m2Y }: FacetBeam): number => (m2X === 1 && m2Y === 1 ? 30 : fewModedBelow);

/** Rays misjudge how shares change with the focus by less than this. */
const raysError = 2e-3;

/**
 * The focus that the fibre's own light wants, by the true modes and with the lens's aberration: the most in LP01 where
 * the fibre is few-moded, else the most guided light. Where modes are too many to be summed again and again, rays say it
 * for an astigmatic beam, and of a round one the waist is as good as any place.
 */
export function statedFocus(meeting: Meeting, taker: Taker): StatedFocus {
  const { beam, pupil, wavelength } = meeting;
  const quick = quickBestDistance(meeting, taker);
  const { suits } = taker;
  const set = suits === 'fundamental' ? taker.fundamentalSet : taker.set;
  if (set === null || (suits === 'all modes' && taker.vNumber > summedUpTo(beam))) {
    const distance = byRays(meeting, taker, quick);
    return {
      suits,
      distance,
      unaberrated: distance,
      roundBeside: 0,
      roundBesideInDepths: 0,
      moved: null,
      beside: (distance - quick) / focusDepth(meeting, taker),
    };
  }
  const through =
    (by: Pupil | null): ShareOf =>
    (offered: FacetBeam, tolerance) =>
      takenByModes(set, { ...meeting, beam: offered, pupil: by }, tolerance).guided;
  const perfect = { ...meeting, pupil: null };
  const unaberrated = mostLightAt(perfect, depthFor(meeting, taker), through(null));
  // a stop that lets nearly all through leaves the focus where it is
  const felt =
    pupil !== null && (pupil.sphericalAberration !== 0 || stopTransmission(beam, pupil, wavelength) < 0.99);
  const distance = felt ? mostLightAt(meeting, depthFor(meeting, taker), through(pupil)) : unaberrated;
  const round = roundMeeting(meeting);
  const roundBeside = isRound(beam)
    ? unaberrated - beam.waistZX
    : suits === 'all modes'
      ? 0
      : mostLightAt(round, depthFor(round, taker), through(null));
  return {
    suits,
    distance,
    unaberrated,
    roundBeside,
    beside: (unaberrated - quick) / focusDepth(meeting, taker),
    roundBesideInDepths: roundBeside / focusDepth(round, taker),
    moved: felt ? distance - quick : null,
  };
}

function byRays(meeting: Meeting, taker: Taker, quick: number): number {
  if (meeting.beam.waistZX === meeting.beam.waistZY) return quick;
  const share = (beam: FacetBeam) =>
    takenBySampledRays(taker.profile, { ...meeting, beam, pupil: null }, manyRays()).guided;
  const at = (distance: number) => share(beamAt(meeting, distance, null));
  if (at(quick) > 1 - raysError) return quick;
  const found = mostLightAt({ ...meeting, pupil: null }, depthFor(meeting, taker), share);
  return at(found) > at(quick) + raysError ? found : quick;
}

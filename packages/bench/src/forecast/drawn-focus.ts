import { type Focused, focusDepth, isRound, quickBestDistance, roundMeeting } from './best-focus.ts';
import { type Taker, takenByModes } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';
import type { BestDistances, StatedFocus } from './stated-focus.ts';

/** A spot wider than this share of the one that suits LP01 is met best at its waist (measured for V from 0.8 to 15: 0.5). */
const undersized = 0.55;

/** Waists farther apart than this many depths may have a valley each, which a Gaussian in place of LP01 misjudges. */
const apart = 0.3;

/** Error of a share that a place of focus is chosen by; what it makes of the share itself is far less. */
const roughly = 1e-3;

/** Where a step's LP01 takes most of a spot that is far too small, in depths from its waist: between 0.1 and 0.55. */
const usualPlace = 0.4;

/** The best focus in one of a forecast's draws: found anew, by way of where the bench as stated has it. */
export function drawnFocus(meeting: Meeting, taker: Taker, stated: StatedFocus): BestDistances {
  // across V = 15 the focus is set for other light
  const alike = taker.suits === stated.suits;
  const unaberrated = drawnBestDistance(meeting, taker, alike ? stated.beside : 0);
  const { beam } = meeting;
  const round = roundMeeting(meeting);
  return {
    unaberrated,
    distance: stated.moved === null ? unaberrated : quickBestDistance(meeting, taker) + stated.moved,
    roundBeside: isRound(beam)
      ? unaberrated - beam.waistZX
      : drawnBestDistance(round, taker, alike ? stated.roundBesideInDepths : 0),
  };
}

/**
 * Distance of the facet for the most light in one of a forecast's draws, m, were the lens perfect.
 *
 * The Gaussian's answer where that is as good as any; else a few looks with the true LP01 about the place where the bench
 * as stated has its best focus, and a parabola through the best of them.
 *
 * @param error of the shares that are compared
 * @param beside how far the best focus of the bench as stated lies from {@link quickBestDistance}, in depths
 */
export function drawnBestDistance(meeting: Focused, taker: Taker, beside: number, error = roughly): number {
  const quick = quickBestDistance(meeting, taker);
  const { fundamentalSet, bestRadius, suits, profile } = taker;
  const { beam, wavelength, coreRadius, numericalAperture } = meeting;
  const depth = focusDepth(meeting, taker);
  if (suits === 'all modes') return quick + beside * depth;
  if (fundamentalSet === null || bestRadius === null) return quick;
  // LP01 of a parabola is as good as a Gaussian
  if (profile === 'graded') return quick;
  const { waistZX, waistZY, waistRadiusX, waistRadiusY, m2X, m2Y } = beam;
  const size =
    Math.min(waistRadiusX / Math.sqrt(m2X), waistRadiusY / Math.sqrt(m2Y)) / (bestRadius * coreRadius);
  const gap = Math.abs(waistZX - waistZY);
  if (size > undersized && gap < apart * depth) return quick;
  const share = (distance: number): number =>
    takenByModes(
      fundamentalSet,
      { beam: beamAt(meeting, distance, null), pupil: null, wavelength, coreRadius, numericalAperture },
      error,
    ).guided;
  const place = Math.abs(beside) > 0.05 ? beside : usualPlace;
  if (gap === 0) {
    // the same before the waist and behind: a parabola in the square of the distance
    const squares = [0, 0.5, 1, 1.6].map((by) => by * place ** 2);
    return (
      waistZX + depth * Math.sqrt(topAmong(squares, (square) => share(waistZX + depth * Math.sqrt(square))))
    );
  }
  const centre = quick + beside * depth;
  const places = [...new Set([quick, centre, centre - 0.2 * depth, centre + 0.2 * depth])];
  return topAmong(
    places.sort((a, b) => a - b),
    share,
  );
}

/** The top by two parabolas, each through the best of some ascending places and its neighbours; an end stays where it is. */
function topAmong(places: readonly number[], share: (place: number) => number): number {
  const seen = places.map((place) => ({ place, share: share(place) }));
  const first = topOfParabola(seen);
  if (seen.some(({ place }) => place === first)) return first;
  return topOfParabola([...seen, { place: first, share: share(first) }].sort((a, b) => a.place - b.place));
}

function topOfParabola(seen: readonly { readonly place: number; readonly share: number }[]): number {
  let best = seen.length - 1;
  for (let i = best - 1; i >= 0; i -= 1) if (seen[i]!.share > seen[best]!.share) best = i;
  const [low, top, high] = [seen[best - 1], seen[best]!, seen[best + 1]];
  if (low === undefined || high === undefined) return top.place;
  const before = (top.share - low.share) / (top.place - low.place);
  const after = (high.share - top.share) / (high.place - top.place);
  if (!(before > after)) return top.place;
  // where the slope of Newton's polynomial vanishes
  return (low.place + top.place) / 2 + (before * (high.place - low.place)) / (2 * (before - after));
}

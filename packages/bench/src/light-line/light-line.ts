import { beamBehindTheFarEnd } from '../forecast/far-end.ts';
import type { Glance } from '../forecast/glance.ts';
import { type FocusPicture, focusPicture } from './focus-picture.ts';
import { type LinePart, lineParts } from './line-parts.ts';
import { type Stretch, stretchesToTheFacet } from './stretches.ts';

/** A launch as light runs through it: what is drawn, in metres and shares, before anyone draws it. */
export interface LightLine {
  /** In vacuum, m. */
  readonly wavelength: number;
  /** From the laser's exit to the facet. */
  readonly stretches: readonly Stretch[];
  /** What leaves the far end; it begins at the bare end or at the output lens, and its `to` is its `from`. */
  readonly beyond: Stretch;
  /** Of the fibre, m. */
  readonly fibreLength: number;
  readonly parts: readonly LinePart[];
  readonly focus: FocusPicture;
}

/** The light line of a launch at its stated values. */
export function lightLine(seen: Glance): LightLine {
  const { launch, meeting, budget, ledger } = seen;
  const stretches = stretchesToTheFacet(launch, meeting, budget.distance);
  const end = stretches.at(-1)?.to ?? 0;
  const out = beamBehindTheFarEnd(launch, seen);
  return {
    wavelength: meeting.wavelength,
    stretches,
    beyond: { from: end, to: end, beam: { x: out, y: out, azimuth: 0 } },
    fibreLength: launch.fibre.length.value,
    parts: lineParts(launch, ledger, budget.distance),
    focus: focusPicture(seen, stretches),
  };
}

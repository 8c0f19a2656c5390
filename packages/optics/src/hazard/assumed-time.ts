/** For how long an exposure is assumed to last. The only place where times are chosen; the tables answer any time. */
import { OutOfRange } from '../out-of-range.ts';
import { holds, nanometres } from './closed-range.ts';
import type { Basis } from './evidence.ts';
import { mustBeCoveredWavelength } from './exposure.ts';

/**
 * - `beam`: what every caution is computed for
 * - `worst accident`: shown beside it
 * - `deliberate reaction`: a trained person who turns away on purpose
 * - `glance`: relies on an immediate reaction; an extra line at most, and never the caution itself. In a study a blink
 *   was seen in at most 20 % of the people hit (BAuA Fb 1069, read)
 */
export type Situation = 'beam' | 'worst accident' | 'deliberate reaction' | 'glance';

/** For how long somebody is taken to look, and why so long. */
export interface AssumedTime {
  readonly situation: Situation;
  /** s. */
  readonly exposureTime: number;
  /** What must stand beside a number that was computed for this time. */
  readonly wording: string;
  readonly basis: Basis;
}

/** Light that is seen, nm; the ends count as seen. */
const visible = { from: 400, to: 700 } as const;

/** Whether light of this wavelength (m) is seen, 400 to 700 nm. 785 nm shows a faint glow and triggers nothing. */
export function isVisible(wavelength: number): boolean {
  return holds(visible, nanometres(wavelength));
}

const defaultTime: Basis = { evidence: 'proposal', source: 'our proposal: 10 s for every beam that is seen' };
const accident: Basis = {
  evidence: 'read',
  source: 'TROS Laserstrahlung, part 2, 4.1; AS/NZS 60825.14: 100 s, the usual worst accident above 400 nm',
};
const day: Basis = { evidence: 'read', source: 'TROS Laserstrahlung, part 2, 4.1: 30 000 s below 400 nm' };
const reaction: Basis = {
  evidence: 'read',
  source: 'DGUV Information 203-042: 2 s for a conscious reaction',
};
const blink: Basis = {
  evidence: 'read',
  source: 'a maker’s guide to JIS C6802 / IEC 60825-1, class 2: 0.25 s',
};

/**
 * The time to assume in a situation: 10 s for a visible beam, 100 s for infrared, 30 000 s below 400 nm.
 *
 * @param wavelength m, 315 nm to 1 mm
 * @throws {OutOfRange} for a reaction, immediate or deliberate, to light that is not seen, and outside 315 nm to 1 mm
 * @source TROS Laserstrahlung, part 2, 4.1; DGUV Information 203-042; AS/NZS 60825.14: read. 10 s: our proposal
 */
export function assumedTime(situation: Situation, wavelength: number): AssumedTime {
  mustBeCoveredWavelength(wavelength);
  const nm = nanometres(wavelength);
  const ultraviolet = nm < visible.from;
  switch (situation) {
    case 'beam':
      if (isVisible(wavelength)) return told(situation, 10, 'for 10 s', defaultTime);
      return ultraviolet
        ? told(situation, 3e4, 'for a day of 30 000 s', day)
        : told(situation, 100, 'for 100 s; nothing warns of light that is not seen', accident);
    case 'worst accident':
      return ultraviolet
        ? told(situation, 3e4, 'for a day of 30 000 s', day)
        : told(situation, 100, 'for 100 s, the usual worst accident', accident);
    case 'deliberate reaction':
      mustNotRelyOnReaction(2, wavelength);
      return told(situation, 2, 'for 2 s; relies on a trained person who reacts on purpose', reaction);
    case 'glance':
      mustNotRelyOnReaction(0.25, wavelength);
      return told(situation, 0.25, 'for 0.25 s; relies on an immediate reaction', blink);
  }
}

const told = (situation: Situation, exposureTime: number, wording: string, basis: Basis): AssumedTime => ({
  situation,
  exposureTime,
  wording,
  basis,
});

/** Every time that is shown for a beam: that of the caution first, the ones that rely on a reaction last. */
export function assumedTimes(wavelength: number): readonly AssumedTime[] {
  const situations: readonly Situation[] = isVisible(wavelength)
    ? ['beam', 'worst accident', 'deliberate reaction', 'glance']
    : ['beam'];
  return situations.map((situation) => assumedTime(situation, wavelength));
}

/**
 * Guards a time that somebody chose for a beam. Shorter than 10 s means that someone reacts, and to light outside
 * 400 to 700 nm nobody does. Not for pulses: their length is theirs.
 *
 * @throws {OutOfRange} if the time relies on a reaction to light that is not seen
 * @source TROS Laserstrahlung, part 2, 4.1, and AS/NZS 60825.14: 0.25 s for visible light only; read. That 2 s are
 *   refused as well is our proposal
 */
export function mustNotRelyOnReaction(exposureTime: number, wavelength: number): void {
  if (isVisible(wavelength) || exposureTime >= 10) return;
  throw new OutOfRange({
    where: 'exposureTime',
    what: `${exposureTime} s relies on a reaction, and ${nanometres(wavelength)} nm triggers none: only 400 to 700 nm is seen`,
    mend: nanometres(wavelength) < visible.from ? 'Assume 30 000 s.' : 'Assume 100 s.',
  });
}

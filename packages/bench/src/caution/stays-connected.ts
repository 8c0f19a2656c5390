import { intervalOf } from '../quantity/distribution.ts';
import { limitText } from './limit-texts.ts';
import type { LineOfLight } from './line-of-light.ts';
import type { Walk } from './walk.ts';

/** Up to which power of the laser the reference source may stay connected. */
export interface StaysConnected {
  /** W of the laser with all of its light coupled, which walking may come to; `null`: not known, so unplug first. */
  readonly whateverIsCoupled: number | null;
  /** W with the coupling reached so far; `null`: that or the tolerance is not known. */
  readonly asCoupledNow: number | null;
}

/**
 * The lower end of what the source bears counts. Infrared of the laser grows with it and other light does not; both get
 * there as well as the laser's own.
 */
export function staysConnected(walk: Walk, couplingReached: number | null): StaysConnected {
  const { light } = walk;
  const bears = borneBy(walk);
  if (bears === null) return { whateverIsCoupled: null, asCoupledNow: null };
  const ofLine = (name: LineOfLight['name']) =>
    light.companions.reduce((sum, line) => (line.name === name ? sum + line.power : sum), 0);
  const grown = 1 + ofLine('infrared') / light.laser.power;
  const laserPower = (share: number) => Math.max(0, bears / share - ofLine('other')) / grown;
  return {
    whateverIsCoupled: laserPower(1),
    asCoupledNow: couplingReached === null || couplingReached === 0 ? null : laserPower(couplingReached),
  };
}

/** What the reference source bears, W; the lower end counts. Null: not known, as nobody's tolerance for continuous light says what it bears of pulses. */
export function borneBy({ launch: { reference }, answers }: Walk): number | null {
  if (reference?.tolerates == null || answers.emission?.kind === 'pulsed') return null;
  return Math.max(0, intervalOf(reference.tolerates, 0.9).low);
}

/** What to do about it, in words. */
export function connectedText({ whateverIsCoupled, asCoupledNow }: StaysConnected): string {
  if (whateverIsCoupled === null || whateverIsCoupled === 0) {
    return 'Unplug it before the laser is switched on.';
  }
  const all = limitText(whateverIsCoupled, 'power');
  const now =
    asCoupledNow === null
      ? ''
      : ` With the coupling you have now that is ${limitText(asCoupledNow, 'power')}, less as you climb.`;
  return `Unplug it, or keep the laser below ${all} while it stays connected.${now}`;
}

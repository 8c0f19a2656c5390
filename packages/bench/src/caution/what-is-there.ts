/** What a bench has that a caution is about: nobody is told to mind what is not there. */
import { classEstimate, OutOfRange, withLabel } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import type { Answers } from './answers.ts';
import { type LightToCount, linesOf } from './light-to-count.ts';
import { dirtBurnsFrom, forwardPower } from './on-the-facet.ts';

/** Whether a mirror can be bumped. */
export const hasMirrors = ({ path }: Launch): boolean => path.some(({ kind }) => kind === 'mirror');

/** Whether the end may get hot enough for dirt, and so for a solvent, to burn. */
export const isHotEnd = (light: LightToCount): boolean => forwardPower({ light }) >= dirtBurnsFrom;

/**
 * Whether any light here would be treated like class 3B or 4; pulses and light without a table are.
 *
 * @source a laser laboratory's page after IEC 60825, which has key, interlock and beam stop for these classes: read
 */
export function asksForInterlock(light: LightToCount, { emission, label }: Answers): boolean {
  if (emission?.kind === 'pulsed') return true;
  return linesOf(light).some(({ name, wavelength, power }) => {
    try {
      const { treatedLike } = withLabel(
        classEstimate({ wavelength, power }),
        name === 'laser' ? label : null,
      );
      return treatedLike === '3B' || treatedLike === '4';
    } catch (error) {
      if (!(error instanceof OutOfRange)) throw error;
      return true;
    }
  });
}

import { OutOfRange } from '../out-of-range.ts';
import type { LpMode } from './lp-mode.ts';

/** Throws unless the mode is LP01. */
export function mustBeLp01({ l, m }: LpMode, where: string): void {
  if (l !== 0 || m !== 1) {
    throw new OutOfRange({
      where,
      what: `LP${l}${m} has no such width; only LP01 has`,
      mend: 'Give the first mode of stepModes or gradedModes.',
    });
  }
}

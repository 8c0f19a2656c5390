import type { Entry } from '../quantity/quantity.ts';
import { positiveFrom } from '../units/settle.ts';
import type { QuantityForm } from './form.ts';

/** The uncertainty and shape of a bare value. */
export function defaultUncertainty(
  { doubt, lowest, highest }: QuantityForm,
  value: number,
): Pick<Entry, 'uncertainty' | 'shape'> {
  if (doubt.kind === 'exact') return { uncertainty: 0, shape: 'normal' };
  const size = doubt.kind === 'share' ? doubt.share * Math.abs(value) : doubt.amount;
  if (doubt.hard) {
    const half = Math.max(0, Math.min(size, value - lowest.value, highest.value - value));
    return half === 0
      ? { uncertainty: 0, shape: 'normal' }
      : { uncertainty: half / Math.sqrt(3), shape: 'rectangular' };
  }
  const canBeNegative = lowest.value < 0;
  // half of the doubt about a zero would lie below it, where nothing can be: who writes 0 means none
  if (!canBeNegative && value === 0) return { uncertainty: 0, shape: 'normal' };
  return { uncertainty: size, shape: !canBeNegative && size > positiveFrom * value ? 'positive' : 'normal' };
}

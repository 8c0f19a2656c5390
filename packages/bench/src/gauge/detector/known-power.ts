import type { GaugeAnswer } from '../answer.ts';
import type { Setting, SettingSpec } from '../gauge.ts';
import { derived, type Known, settingAs } from '../known.ts';

/** A power that is known from elsewhere, to judge a detector by. */
export const knownPower: SettingSpec = {
  name: 'known power',
  dimension: 'power',
  needed: false,
  otherNames: ['power'],
  what: 'on the detector, known from elsewhere: then the responsivity is what is asked. Left out: the power is asked',
};

/** The power on the detector as an input: what labels and simple power meters are good for is 10 %. */
export const usualPower = (given: Setting): Known => settingAs('known power', given, 0.1 * given.value);

/** Current over power. @param current of its inputs, A */
export function responsivityAnswer(
  inputs: readonly Known[],
  current: (...values: number[]) => number,
  power: Known,
): GaugeAnswer {
  return derived(
    { quantity: 'responsivity_A_per_W', shape: 'positive' },
    [power, ...inputs],
    (p, ...values) => current(...values) / p!,
  );
}

import { readLaunch } from '../launch/read-launch.ts';
import { Refusal } from '../refusal.ts';
import { writeValue } from '../units/write.ts';
import type { Gauge } from './gauge.ts';
import { reverseLight } from './lens/reverse-light.ts';

/**
 * Settings of a gauge that its launch has told already, as they are typed: the light's wavelength, or that of the reference
 * source where the gauge looks at light sent backwards. Only what nobody measures again: a setting that is taken over from
 * an assumption would come back as a measurement. Empty where the gauge asks for none, or the launch cannot be read.
 */
export function settingsOfLaunch(gauge: Gauge, text: string): Readonly<Record<string, string>> {
  const asked = gauge.settings.find(({ name }) => name === 'wavelength');
  if (asked === undefined) return {};
  try {
    const { laser, reference } = readLaunch(text, 'launch');
    const light = reverseLight.includes(asked) ? reference?.wavelength : laser.wavelength;
    return light === undefined ? {} : { wavelength: writeValue(light.value, 'length', 7) };
  } catch (error) {
    // the launch says itself what is wrong with it
    if (error instanceof Refusal) return {};
    throw error;
  }
}

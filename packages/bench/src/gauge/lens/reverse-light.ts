import type { SettingSpec } from '../gauge.ts';

/** What is known of light that is sent backwards through the fibre and leaves the collimator as the fibre's mode sends it. */
export const reverseLight: readonly SettingSpec[] = [
  {
    name: 'wavelength',
    dimension: 'length',
    needed: true,
    otherNames: ['lambda', 'λ'],
    what: 'of the light sent backwards',
  },
  {
    name: 'mode field diameter',
    dimension: 'length',
    example: '5.1 µm',
    needed: true,
    otherNames: ['mfd'],
    what: 'of the fibre for that light',
  },
];

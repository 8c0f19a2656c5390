import { expect, test } from 'vitest';
import { newBelief, offsetErrorsIn, ridgeFigures } from './belief.ts';
import type { Known } from './known.ts';
import { ridgeLayout } from './ridge-layout.ts';

/** A bench of telecom lengths (invented), the wavelength apart. */
const known: Omit<Known, 'wavelength'> = {
  modeRadius: 5e-6,
  focalLength: 11e-3,
  farMirror: 0.45,
  nearMirror: 0.15,
  tiltPerTurn: [8e-3, 8e-3, 8e-3, 8e-3],
  verticalGain: [Math.SQRT2, Math.SQRT2],
  manyModes: false,
  floor: 0,
  forecastPeak: null,
  focusThread: null,
};

/** How far off an axis is believed to be (1σ, as metres of offset) once two sweeps have gained next to nothing. */
function believedOffset(wavelength: number): number {
  const layout = ridgeLayout({ ...known, wavelength }, 'horizontal');
  const belief = newBelief([layout, layout], [0.01, 0.01], offsetErrorsIn(wavelength));
  return ridgeFigures(belief, 0).uncertainty / layout.ridgePerOffset;
}

// silicon ends near 1.1 µm (its band gap is 1.12 eV): 1064 nm is the last laser line that its cameras see, weakly
for (const wavelength of [633e-9, 1064e-9])
  test(`sweeps that gain nothing at ${wavelength} m are the sign of a camera's start`, () =>
    expect(believedOffset(wavelength)).toBeLessThan(0.1e-3));

for (const wavelength of [1310e-9, 1550e-9])
  test(`sweeps that gain nothing at ${wavelength} m are luck: no camera has laid those spots`, () => {
    // from an unseen start's best, 0.1 mm, to a careful eye's 0.3 mm
    expect(believedOffset(wavelength)).toBeGreaterThan(0.1e-3);
    expect(believedOffset(wavelength)).toBeLessThan(0.3e-3);
  });

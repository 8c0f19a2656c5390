import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { shifted } from './set-right.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a share set right', () => {
  test('is the exact one at the stated values, never above 1, and keeps its order', () => {
    fc.assert(
      fc.property(between(0, 1), between(0, 1), between(0, 1), between(0, 1), (stated, quick, one, other) => {
        const set = shifted(stated, quick);
        const [less, more] = [Math.min(one, other), Math.max(one, other)];
        // the power that small shares are raised to ends at 0.999
        expect(Math.abs(set(quick) - stated)).toBeLessThan(1.1e-3);
        expect(set(less)).toBeLessThanOrEqual(set(more) + 1e-15);
        expect(set(more)).toBeLessThanOrEqual(1);
        expect(set(less)).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 300 },
    );
  });
});

/*
 * Nearly everything is known: then all draws are nearly the bench as stated, and what an interval lies off its value is
 * the difference of the two ways alone. The doubts written move a share by less than 2e-3 together.
 */
describe('an interval and its value speak of the same thing', () => {
  const exact = (fibre: string, rest: string, quality = '1') => `coreward: 1
laser: { wavelength: 520 nm ± 0 nm, power: 4 mW ± 0 mW, beam: { waist diameter: 1.3 mm ± 0.02 %, waist position: 0 mm ± 0 mm, quality: ${quality} ± 0 } }
path: [ { space: 200 mm ± 0 mm } ]
collimator: { focal length: 8 mm ± 0 mm, focal shift: 0, focus: { set for: best }, surfaces: { count: 0 } ${rest} }
fibre: { ${fibre}, length: 1 m ± 0 m, attenuation: 1 dB/km ± 0 dB/km, bends: [ { radius: 25 mm ± 0 mm, turns: 1 } ] }
misalignment: { x: 1 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 8 mrad, defocus: 6 µm }
`;
  const fibres = {
    'few modes': 'core diameter: 8.2 µm ± 0 µm, numerical aperture: 0.12 ± 0, cladding diameter: 125 µm',
    'V = 22, by modes and rays':
      'core diameter: 31 µm ± 0 µm, numerical aperture: 0.12 ± 0, cladding diameter: 125 µm',
    'a 200/230 µm fibre, by rays':
      'core diameter: 200 µm ± 0 µm, numerical aperture: 0.22 ± 0, cladding diameter: 230 µm',
  };
  const lenses = {
    'a clean lens': '',
    'a stop': ', clear aperture: 1.5 mm ± 0 mm, spherical aberration: 0 ± 0',
    'an aberration': ', clear aperture: 2 mm ± 0 mm, spherical aberration: 0.4 ± 0',
  };
  const cases = Object.entries(fibres).flatMap(([name, fibre]) =>
    Object.entries(lenses).map(([lens, rest]) => [`${name}, ${lens}`, exact(fibre, rest)] as const),
  );
  test.each(cases)('%s', (_, text) => {
    const { ledger, coupling } = forecast(readLaunch(text, 'test.yaml'), { draws: 16, seed: 2 });
    for (const { id, transmission, low, high } of ledger) {
      // a bend lies anywhere between its two published views
      if (id.startsWith('bend')) continue;
      expect(Math.abs(low - transmission), id).toBeLessThan(2e-3);
      expect(Math.abs(high - transmission), id).toBeLessThan(2e-3);
    }
    expect(Math.abs(coupling.guidedInterval.low - coupling.guided)).toBeLessThan(2e-3);
    expect(Math.abs(coupling.guidedInterval.high - coupling.guided)).toBeLessThan(2e-3);
  });

  test('with the usual doubts every entry of a launch that is no optimum holds its value', () => {
    const text = exact('core diameter: 31 µm, numerical aperture: 0.12, cladding diameter: 125 µm', '', '1.2')
      .replaceAll('± 0.02 %', '± 5 %')
      .replace('8 mm ± 0 mm', '8 mm');
    for (const { id, transmission, low, high } of forecast(readLaunch(text, 'test.yaml')).ledger) {
      // 1e-9: rounding, where nothing is in doubt
      expect(low, id).toBeLessThanOrEqual(transmission + 1e-9);
      expect(high, id).toBeGreaterThanOrEqual(transmission - 1e-9);
    }
  });
});

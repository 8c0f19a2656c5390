import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { glassNamed } from '../glass/glass-named.ts';
import { refractiveIndex } from '../glass/refractive-index.ts';
import { OutOfRange } from '../out-of-range.ts';
import { tipMovement } from './focus-by-wavelength.ts';
import { backFocalShift, type Singlet, singletFocus } from './singlet.ts';

interface SingletCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: {
    readonly glass: string;
    readonly radius1_m: number | null;
    readonly radius2_m: number | null;
    readonly thickness_m: number;
    readonly wavelengthSetup_m: number;
    readonly wavelengthUse_m: number;
  };
  readonly expected: {
    readonly indexSetup: number;
    readonly indexUse: number;
    readonly efl_setup_m: number;
    readonly efl_use_m: number;
    readonly bfd_setup_m: number;
    readonly bfd_use_m: number;
    readonly bfdChange_m: number;
    readonly thinLensEstimate_m: number;
  };
}

const file = new URL('../../reference/beampath.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: SingletCase[] }).cases.filter(
  (each) => each.kind === 'singlet-chromatic',
);

describe('thick singlets of reference/beampath.json (lensmaker against surface matrices)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(6));
  test.each(cases)('$id', ({ inputs, expected }) => {
    const glass = glassNamed(inputs.glass.replace('-Malitson-1965', ''));
    const singlet: Singlet = {
      glass,
      radius1: inputs.radius1_m,
      radius2: inputs.radius2_m,
      thickness: inputs.thickness_m,
    };
    const { wavelengthSetup_m: setup, wavelengthUse_m: use } = inputs;
    const before = singletFocus(singlet, setup);
    const now = singletFocus(singlet, use);
    const rows = [
      [refractiveIndex(glass, setup), expected.indexSetup],
      [refractiveIndex(glass, use), expected.indexUse],
      [before.focalLength, expected.efl_setup_m],
      [now.focalLength, expected.efl_use_m],
      [before.backFocalDistance, expected.bfd_setup_m],
      [now.backFocalDistance, expected.bfd_use_m],
      [backFocalShift(singlet, setup, use), expected.bfdChange_m],
      // the file's estimate: the back focal distance scaled as if it were a thin lens's focal length
      [tipMovement(glass, before.backFocalDistance, setup, use), expected.thinLensEstimate_m],
    ] as const;
    for (const [actual, wanted] of rows) {
      // a shift of 1 % of the focal length loses two digits of the sixteen
      expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-12 * Math.abs(wanted));
    }
  });
});

const crown = glassNamed('N-BK7');

describe('singlets', () => {
  test('the lensmaker’s equation with thickness (Born & Wolf, from memory), whatever the shape', () => {
    const anyRadius = fc
      .double({ min: 4e-3, max: 0.2, noNaN: true })
      .chain((size) => fc.constantFrom(size, -size));
    fc.assert(
      fc.property(
        anyRadius,
        anyRadius,
        fc.double({ min: 0, max: 3e-3, noNaN: true }),
        (radius1, radius2, thickness) => {
          const n = refractiveIndex(crown, 633e-9);
          const terms = [1 / radius1, -1 / radius2, ((n - 1) * thickness) / (n * radius1 * radius2)] as const;
          const power = (n - 1) * (terms[0] + terms[1] + terms[2]);
          const largest = Math.max(...terms.map(Math.abs));
          fc.pre(Math.abs(power) > 1e-3 * largest); // near-plates cancel: nothing to compare
          const { focalLength } = singletFocus({ glass: crown, radius1, radius2, thickness }, 633e-9);
          expect(focalLength * power).toBeCloseTo(1, 10);
        },
      ),
    );
  });

  test('turned round, its focal length stays and its two focal distances change places', () => {
    const lens: Singlet = { glass: crown, radius1: 0.0258, radius2: -0.05, thickness: 3.5e-3 };
    const turned: Singlet = { ...lens, radius1: 0.05, radius2: -0.0258 };
    const one = singletFocus(lens, 633e-9);
    const other = singletFocus(turned, 633e-9);
    expect(other.focalLength).toBeCloseTo(one.focalLength, 14);
    expect(other.backFocalDistance).toBeCloseTo(-one.frontFocalDistance, 14);
    expect(other.frontFocalDistance).toBeCloseTo(-one.backFocalDistance, 14);
  });

  test('a thin one focuses behind itself by its focal length', () => {
    const { focalLength, backFocalDistance, frontFocalDistance } = singletFocus(
      { glass: crown, radius1: 0.1, radius2: -0.1, thickness: 0 },
      633e-9,
    );
    expect(backFocalDistance).toBeCloseTo(focalLength, 14);
    expect(frontFocalDistance).toBeCloseTo(-focalLength, 14);
  });

  test('a plate, a lens of negative thickness and light the glass does not know are refused', () => {
    expect(() =>
      singletFocus({ glass: crown, radius1: null, radius2: null, thickness: 1e-3 }, 633e-9),
    ).toThrow(OutOfRange);
    expect(() =>
      singletFocus({ glass: crown, radius1: 0.1, radius2: null, thickness: -1e-9 }, 633e-9),
    ).toThrow(OutOfRange);
    expect(() =>
      singletFocus({ glass: crown, radius1: 0.1, radius2: null, thickness: 0 }, 633e-9),
    ).not.toThrow();
    expect(() =>
      singletFocus({ glass: crown, radius1: 0.1, radius2: null, thickness: 1e-3 }, 0.2e-6),
    ).toThrow(OutOfRange);
  });
});

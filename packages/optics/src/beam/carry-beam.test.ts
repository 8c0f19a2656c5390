import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { carryBeam, transformBeam } from './carry-beam.ts';
import {
  beamRadiusAt,
  type GaussianBeam,
  halfDivergence,
  rayleighRange,
  wavefrontRadiusAt,
} from './gaussian-beam.ts';
import { carryRay, chainMatrix, determinant, type OpticalElement, product, rayMatrix } from './ray-matrix.ts';

type ElementRow =
  | { readonly type: 'space'; readonly length_m: number }
  | { readonly type: 'thinLens'; readonly focalLength_m: number }
  | { readonly type: 'surface'; readonly radius_m: number | null; readonly n1: number; readonly n2: number };

interface ChainCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: {
    readonly wavelength_m: number;
    readonly waistRadius_m: number;
    readonly m2: number;
    readonly elements: readonly ElementRow[];
  };
  readonly expected: {
    readonly abcd: readonly [readonly [number, number], readonly [number, number]];
    readonly finalIndex: number;
    readonly radiusAtEnd_m: number;
    readonly curvatureRadiusAtEnd_m: number;
    readonly waistRadius_m: number;
    readonly waistDistanceFromEnd_m: number;
    readonly rayleighRange_m: number;
    readonly halfDivergence_rad: number;
  };
}

const file = new URL('../../reference/beampath.json', import.meta.url);
const cases = (JSON.parse(readFileSync(file, 'utf8')) as { cases: ChainCase[] }).cases.filter(
  (each) => each.kind === 'abcd-chain',
);

function element(row: ElementRow): OpticalElement {
  switch (row.type) {
    case 'space':
      return { kind: 'space', length: row.length_m };
    case 'thinLens':
      return { kind: 'thin lens', focalLength: row.focalLength_m };
    case 'surface':
      return { kind: 'surface', radius: row.radius_m, indexBefore: row.n1, indexBehind: row.n2 };
  }
}

describe('a beam through a chain, as reference/beampath.json has it (q-law at 40 digits)', () => {
  test('the file has such cases', () => expect(cases.length).toBe(8));

  test.each(cases)('$id', ({ inputs, expected }) => {
    const elements = inputs.elements.map(element);
    const { a, b, c, d } = chainMatrix(elements);
    // Elements that vanish (afocal, imaging) are what rounding leaves of terms of the size of these:
    const lengths = elements.reduce((sum, each) => sum + (each.kind === 'space' ? each.length : 0), 0);
    const powers = elements.reduce((sum, each) => sum + Math.abs(rayMatrix(each).c), 0);
    const size = 1 + lengths * powers;
    expect(Math.abs(a - expected.abcd[0][0])).toBeLessThan(1e-12 * size);
    expect(Math.abs(b - expected.abcd[0][1])).toBeLessThan(1e-12 * size * lengths);
    expect(Math.abs(c - expected.abcd[1][0])).toBeLessThan(1e-12 * size * powers);
    expect(Math.abs(d - expected.abcd[1][1])).toBeLessThan(1e-12 * size);

    const beam: GaussianBeam = {
      wavelength: inputs.wavelength_m,
      waistRadius: inputs.waistRadius_m,
      waistPosition: 0,
      quality: inputs.m2,
    };
    const end = carryBeam(beam, elements);
    // 1e-9 relative is what the file asks for
    const rows = [
      [end.mediumIndex ?? 1, expected.finalIndex],
      [beamRadiusAt(end, 0), expected.radiusAtEnd_m],
      [wavefrontRadiusAt(end, 0), expected.curvatureRadiusAtEnd_m],
      [end.waistRadius, expected.waistRadius_m],
      [end.waistPosition, expected.waistDistanceFromEnd_m],
      [rayleighRange(end), expected.rayleighRange_m],
      [halfDivergence(end), expected.halfDivergence_rad],
    ] as const;
    for (const [actual, wanted] of rows) {
      expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(1e-9 * Math.abs(wanted));
    }
  });
});

const anyElement: fc.Arbitrary<OpticalElement> = fc.oneof(
  fc.record({ kind: fc.constant('space' as const), length: fc.double({ min: 1e-3, max: 0.5, noNaN: true }) }),
  fc.record({
    kind: fc.constant('thin lens' as const),
    focalLength: fc
      .double({ min: 0.02, max: 0.5, noNaN: true })
      .chain((size) => fc.constantFrom(size, -size)),
  }),
);
const anyBeam: fc.Arbitrary<GaussianBeam> = fc.record({
  wavelength: fc.double({ min: 0.4e-6, max: 1.6e-6, noNaN: true }),
  waistRadius: fc.double({ min: 50e-6, max: 2e-3, noNaN: true }),
  waistPosition: fc.double({ min: -1, max: 1, noNaN: true }),
  quality: fc.double({ min: 1, max: 3, noNaN: true }),
});

describe('rays', () => {
  test('into glass and out again: the determinant is the index before over the index behind', () => {
    const surfaces: OpticalElement[] = [
      { kind: 'surface', radius: 0.005, indexBefore: 1, indexBehind: 1.52 },
      { kind: 'space', length: 0.003 },
    ];
    expect(determinant(chainMatrix(surfaces))).toBeCloseTo(1 / 1.52, 14);
    const out: OpticalElement = { kind: 'surface', radius: null, indexBefore: 1.52, indexBehind: 1 };
    expect(determinant(chainMatrix([...surfaces, out]))).toBeCloseTo(1, 14);
  });

  test('chains of lenses and spaces keep area', () => {
    fc.assert(
      fc.property(fc.array(anyElement, { maxLength: 8 }), (elements) => {
        const matrix = chainMatrix(elements);
        const terms = Math.abs(matrix.a * matrix.d) + Math.abs(matrix.b * matrix.c);
        // rounding of eight products, in the size of what is subtracted
        expect(Math.abs(determinant(matrix) - 1)).toBeLessThan(1e-12 * (1 + terms));
      }),
    );
  });

  test('the order is the order of the light: a chief ray meets them one by one', () => {
    fc.assert(
      fc.property(fc.array(anyElement, { maxLength: 6 }), (elements) => {
        const ray = { offset: 0.3e-3, slope: -1e-3 };
        const together = carryRay(ray, chainMatrix(elements));
        let step = ray;
        for (const each of elements) {
          step =
            each.kind === 'space'
              ? { offset: step.offset + each.length * step.slope, slope: step.slope }
              : each.kind === 'thin lens'
                ? { offset: step.offset, slope: step.slope - step.offset / each.focalLength }
                : step;
        }
        const { a, b, c, d } = chainMatrix(elements);
        expect(Math.abs(together.offset - step.offset)).toBeLessThan(1e-12 * (1 + Math.abs(a) + Math.abs(b)));
        expect(Math.abs(together.slope - step.slope)).toBeLessThan(1e-12 * (1 + Math.abs(c) + Math.abs(d)));
      }),
    );
  });

  test('a ray parallel to the axis goes through the far focus of a converging lens', () => {
    const behind = carryRay(
      { offset: 1e-3, slope: 0 },
      chainMatrix([
        { kind: 'thin lens', focalLength: 0.05 },
        { kind: 'space', length: 0.05 },
      ]),
    );
    expect(Math.abs(behind.offset)).toBeLessThan(1e-18);
    expect(behind.slope).toBeCloseTo(-0.02, 15);
  });

  test('a ball lens of index 2 focuses on its own back (geometrical optics, from memory)', () => {
    const { a } = chainMatrix([
      { kind: 'surface', radius: 1e-3, indexBefore: 1, indexBehind: 2 },
      { kind: 'space', length: 2e-3 },
      { kind: 'surface', radius: -1e-3, indexBefore: 2, indexBehind: 1 },
    ]);
    expect(Math.abs(a)).toBeLessThan(1e-15);
  });

  test('what bends no light, or all of it, is refused', () => {
    expect(() => rayMatrix({ kind: 'thin lens', focalLength: 0 })).toThrow(OutOfRange);
    expect(() => rayMatrix({ kind: 'thin lens', focalLength: Infinity })).toThrow(OutOfRange);
    expect(() => rayMatrix({ kind: 'space', length: Number.NaN })).toThrow(OutOfRange);
    expect(() => rayMatrix({ kind: 'surface', radius: 0, indexBefore: 1, indexBehind: 1.5 })).toThrow(
      OutOfRange,
    );
    expect(() => rayMatrix({ kind: 'surface', radius: null, indexBefore: 1, indexBehind: 0 })).toThrow(
      OutOfRange,
    );
  });
});

describe('beams', () => {
  /** q worked the long way, in complex numbers, element by element. */
  function byComplexQ(beam: GaussianBeam, elements: readonly OpticalElement[]): { re: number; im: number } {
    let re = -beam.waistPosition;
    let im = rayleighRange(beam);
    for (const each of elements) {
      if (each.kind === 'space') re += each.length;
      else if (each.kind === 'thin lens') {
        // 1/q − 1/f, and back
        const size = re ** 2 + im ** 2;
        const inverseRe = re / size - 1 / each.focalLength;
        const inverseIm = -im / size;
        const inverseSize = inverseRe ** 2 + inverseIm ** 2;
        re = inverseRe / inverseSize;
        im = -inverseIm / inverseSize;
      }
    }
    return { re, im };
  }

  test('complex q, element by element, agrees', () => {
    fc.assert(
      fc.property(anyBeam, fc.array(anyElement, { maxLength: 6 }), (beam, elements) => {
        const end = carryBeam(beam, elements);
        const q = byComplexQ(beam, elements);
        // both routes round in every step; 1e-6 of |q| leaves room for chains that magnify rounding a thousandfold
        const size = Math.hypot(q.re, q.im);
        expect(Math.abs(-end.waistPosition - q.re)).toBeLessThan(1e-6 * size);
        expect(Math.abs(rayleighRange(end) - q.im)).toBeLessThan(1e-6 * size);
      }),
    );
  });

  test('there and back restores the beam', () => {
    fc.assert(
      fc.property(anyBeam, fc.array(anyElement, { maxLength: 4 }), (beam, elements) => {
        const { a, b, c, d } = chainMatrix(elements);
        const back = transformBeam(transformBeam(beam, { a, b, c, d }), { a: d, b: -b, c: -c, d: a });
        const magnified = (Math.abs(a * d) + Math.abs(b * c)) ** 2;
        const slack = 1e-9 * (1 + magnified) * (rayleighRange(beam) + Math.abs(beam.waistPosition));
        expect(Math.abs(back.waistPosition - beam.waistPosition)).toBeLessThan(slack);
        expect(Math.abs(rayleighRange(back) - rayleighRange(beam))).toBeLessThan(slack);
      }),
    );
  });

  test('M² transport is that of the embedded Gaussian, √M² wider', () => {
    fc.assert(
      fc.property(anyBeam, fc.array(anyElement, { maxLength: 4 }), (beam, elements) => {
        const inner = { ...beam, waistRadius: beam.waistRadius / Math.sqrt(beam.quality), quality: 1 };
        const real = carryBeam(beam, elements);
        const embedded = carryBeam(inner, elements);
        expect((embedded.waistRadius * Math.sqrt(beam.quality)) / real.waistRadius).toBeCloseTo(1, 9);
      }),
    );
  });

  test('a plate of glass pulls the waist towards itself by L(1 − 1/n) (any textbook, from memory)', () => {
    const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 3e-6, waistPosition: 0.02, quality: 1 };
    const plate: OpticalElement[] = [
      { kind: 'surface', radius: null, indexBefore: 1, indexBehind: 1.5 },
      { kind: 'space', length: 6e-3 },
      { kind: 'surface', radius: null, indexBefore: 1.5, indexBehind: 1 },
    ];
    const behind = carryBeam(beam, plate);
    expect(behind.waistPosition).toBeCloseTo(0.02 - 6e-3 + 6e-3 * (1 - 1 / 1.5), 15);
    expect(behind.waistRadius).toBeCloseTo(3e-6, 15);
    expect(behind.mediumIndex ?? 1).toBe(1);
  });

  test('a surface in another medium than the beam is refused, and the mend works', () => {
    const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 1e-3, waistPosition: 0, quality: 1 };
    const surface = { kind: 'surface', radius: null, indexBefore: 1.5, indexBehind: 1 } as const;
    expect(() => carryBeam(beam, [surface])).toThrow(OutOfRange);
    expect(() => carryBeam(beam, [{ ...surface, indexBefore: 1 }])).not.toThrow();
  });

  test('a matrix that does not fit its indices is refused', () => {
    const beam: GaussianBeam = { wavelength: 633e-9, waistRadius: 1e-3, waistPosition: 0, quality: 1 };
    const intoGlass = rayMatrix({ kind: 'surface', radius: null, indexBefore: 1, indexBehind: 1.457 });
    expect(() => transformBeam(beam, intoGlass)).toThrow(OutOfRange);
    expect(transformBeam(beam, intoGlass, 1.457).mediumIndex).toBe(1.457);
    expect(() => transformBeam(beam, product(intoGlass, intoGlass), 1.457)).toThrow(OutOfRange);
    expect(() => transformBeam(beam, { a: Number.NaN, b: 0, c: 0, d: 1 })).toThrow(OutOfRange);
  });
});

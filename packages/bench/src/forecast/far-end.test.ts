import { expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';

const outputOf = (wavelength: string, waist: string, fibre: string, misalignment: string) =>
  forecast(
    readLaunch(
      `coreward: 1
laser: { wavelength: ${wavelength}, power: 1 mW, beam: { waist diameter: ${waist}, waist position: 0 µm, quality: 1 } }
collimator: none
fibre: ${fibre}
misalignment: { ${misalignment} }
`,
      'far-end.yaml',
    ),
    { draws: 16, seed: 1 },
  ).output;

/**
 * Computed with scipy 1.17: V = 4.9604, LP01, LP11, LP21 and LP02 of D. Gloge, Appl. Opt. 10, 2252 (1971); their powers by
 * quadrature of the overlap (0.68215, 0.22675, 0.01872, 0.02063), ⟨r²⟩ and ⟨|∇ψ|²⟩ of each by Gauss-Legendre; 1/e² sizes from
 * second moments by ISO 11146-1 (from memory): √(2⟨r²⟩), and the sine √(2⟨|∇ψ|²⟩)·λ/2π.
 */
test('few modes that share the light leave as wide and as steep as their second moments together', () => {
  const output = outputOf('532 nm', '5 µm', '{ core diameter: 6 µm, numerical aperture: 0.14 }', 'x: 1.5 µm');
  // slopes by differences were good to 3e-9
  expect(output.diameter).toBeCloseTo(5.31726998e-6, 13);
  expect(output.fullDivergence).toBeCloseTo(0.174635382, 8);
});

/**
 * Computed with scipy 1.17: V = 114.646; the eigenvalues of LP01 … LP0,37 (Gloge 1971) and what each takes of a centred Gaussian by
 * Gauss-Legendre; the angle by √(2⟨|∇ψ|²⟩)·λ/2πa. The diameter is our picture of it: LP01 keeps its own ⟨r²⟩, 0.221878 a², and the
 * rest fills the core evenly, whose 4σ is its diameter.
 *
 * A spot of 20 µm keeps its own angle, λ/(πw₀) = 10.07 mrad either way (Kogelnik and Li 1966), but for 0.4 %; of one of 0.5 mm, whose
 * own is 0.4 mrad, the core's edge makes 67 mrad.
 */
test.each([
  ['40 µm', 0.0200652189, 8.2019033e-5],
  ['1 mm', 0.1346637487, 8.3237787e-5],
])(
  'of many modes in a step core light leaves as steep as its modes together: a spot of %s',
  (waist, full, wide) => {
    const output = outputOf('633 nm', waist, '{ type: step 105/125 NA 0.22 }', 'x: 0 µm');
    // powers of modes are good to 1e-7 of the light, a hundred-thousandth of what the wide spot couples
    expect(output.fullDivergence / full).toBeCloseTo(1, 3);
    expect(output.diameter / wide).toBeCloseTo(1, 4);
  },
);

/**
 * Computed with scipy 1.17: the nine LP0m of a parabola that ends at the core's edge, V = 36.96, as eigenvectors of a symmetric
 * tridiagonal matrix over 2.2 core radii at 8000 and 16000 places, extrapolated; what each takes of a centred Gaussian, and
 * its ⟨r²⟩ and ⟨|∇ψ|²⟩, by the same places. The two grids differ by less than 1e-6, which the extrapolation mends.
 */
test.each([
  ['20 µm', 7.46444183e-6, 0.119501475],
  ['50 µm', 1.476507148e-5, 0.235499251],
  ['1 mm', 1.789205291e-5, 0.284177633],
])(
  'of a graded core light leaves as wide and as steep as its modes together: a spot of %s',
  (waist, radius, full) => {
    const output = outputOf(
      '850 nm',
      waist,
      '{ core diameter: 50 µm, numerical aperture: 0.2, profile: graded }',
      'x: 0 µm',
    );
    expect(output.diameter / (2 * radius)).toBeCloseTo(1, 6);
    expect(output.fullDivergence / full).toBeCloseTo(1, 6);
  },
);

/**
 * In a parabola half of (r/a)² + (θ/NA)² is place and half is angle, on the mean over a period (the virial theorem of the harmonic
 * oscillator); of a Gaussian ⟨r²⟩ is w₀²/2 and ⟨θ²⟩ is θ₀²/2, θ₀ = λ/πw₀.
 */
test('of a graded core of very many modes place and angle leave half and half', () => {
  const [waist, core, aperture, wavelength] = [60e-6, 300e-6, 0.3, 532e-9];
  const output = outputOf(
    '532 nm',
    '120 µm',
    '{ core diameter: 600 µm, cladding diameter: 660 µm, numerical aperture: 0.3, profile: graded }',
    'x: 0 µm',
  );
  const radius = Math.sqrt((waist ** 2 + ((core / aperture) * (wavelength / (Math.PI * waist))) ** 2) / 2);
  // 4096 rays drawn evenly tell a mean square to a per cent
  expect(output.diameter / (2 * radius)).toBeCloseTo(1, 2);
  expect(Math.sin(output.fullDivergence / 2) / ((radius / core) * aperture)).toBeCloseTo(1, 2);
});

/** u of LP01 for V without end is the first zero of J₀, 2.4048 (Abramowitz and Stegun, table 9.5, from memory). */
test('of rays alone light leaves no narrower than LP01', () => {
  const output = outputOf(
    '650 nm',
    '20 mm',
    '{ material: silica, core diameter: 0.98 mm, cladding diameter: 1 mm, numerical aperture: 0.5 }',
    'x: 0 µm',
  );
  expect(output.fullDivergence).toBeCloseTo((2 * Math.SQRT2 * 2.4048 * 650e-9) / (Math.PI * 0.98e-3), 9);
});

/**
 * D. Gloge, Bell Syst. Tech. J. 51, 1767 (1972) (from memory): ⟨θ²⟩ in the core grows by 4D a metre, and n² as fast outside; the 4σ
 * half angle has sin² = 2⟨θ²⟩. n of PMMA at 650 nm is 1.488 (from memory), D is the 2.5e-4 rad²/m that is taken for it.
 */
test('in plastic the angle grows along the fibre, in silica it stays', () => {
  const behind = (material: string, length: string) =>
    outputOf(
      '650 nm',
      '0.5 mm',
      `{ material: ${material}, core diameter: 0.98 mm, cladding diameter: 1 mm, numerical aperture: 0.5, length: ${length} }`,
      'x: 0 µm',
    ).fullDivergence;
  const sineSquared = (full: number) => Math.sin(full / 2) ** 2;
  const grown = sineSquared(behind('acrylic', '3 m')) - sineSquared(behind('acrylic', '1 m'));
  expect(grown / (2 * 4 * 2.5e-4 * 1.488 ** 2 * 2)).toBeCloseTo(1, 2); // n to three digits, squared
  expect(behind('silica', '3 m')).toBe(behind('silica', '1 m'));
});

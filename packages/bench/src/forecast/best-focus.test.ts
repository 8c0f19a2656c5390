import { modeSet, onlyFundamental, overlapOf } from '@coreward/optics';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { asStated } from './draw.ts';
import { drawnFocus } from './drawn-focus.ts';
import { modesTaker } from './fibre-taker.ts';
import { forecast } from './forecast.ts';
import { meetingOf } from './meeting.ts';
import { statedBench } from './stated-bench.ts';

/*
 * Every optimum is held to a search that needs no wit: the plain overlap, with the facet at every place of a fine grid.
 * Grid and plain overlap know nothing of how the optimum is found.
 */

const few = { draws: 8, seed: 3 } as const;

interface Axis {
  /** µm, 1/e² diameter and waist minus facet. */
  readonly diameter: number;
  readonly waist: number;
}

interface Written {
  readonly x: Axis;
  readonly y: Axis;
  readonly core: number;
  readonly aperture?: number;
  readonly wavelength?: number;
  readonly quality?: number;
  readonly profile?: 'step' | 'graded';
  readonly rest?: string;
}

const micrometres = (length: number) => `${(length * 1e3).toFixed(2)} nm`;

/** A beam focused near a facet by a perfect lens, as 1:1 relay, so that the best focus is free to be found. */
const focusedLaunch = ({
  x,
  y,
  core,
  aperture = 0.12,
  wavelength = 520,
  quality = 1,
  profile = 'step',
  rest,
}: Written) => {
  const f = 0.01;
  const axis = ({ diameter, waist }: Axis) =>
    `{ waist diameter: ${micrometres(diameter)}, waist position: ${micrometres(-waist)}, quality: ${quality} }`;
  return readLaunch(
    `coreward: 1
laser: { wavelength: ${wavelength} nm, power: 1 mW, beam: { x: ${axis(x)}, y: ${axis(y)} } }
path: [ { space: ${2 * f * 1e3} mm } ]
collimator: { focal length: ${f * 1e3} mm, focal shift: 0, surfaces: { count: 0 }, focus: { set for: best } }
fibre: { profile: ${profile}, core diameter: ${micrometres(core)}, numerical aperture: ${aperture}, cladding diameter: 125 µm, length: 1 m }
${rest ?? 'misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 0 µm }'}
`,
    'test.yaml',
  );
};

/** The most in LP01, and in all modes, with the facet at every step of a grid through both waists and far beyond. */
function bruteForce(launch: ReturnType<typeof readLaunch>, steps = 400) {
  const meeting = meetingOf(launch, asStated);
  const { beam, coreRadius, wavelength, vNumber } = meeting;
  const set = modeSet(launch.fibre.profile, vNumber);
  const one = onlyFundamental(set);
  const widest = Math.max(beam.waistRadiusX, beam.waistRadiusY, coreRadius);
  const reach = (4 * widest ** 2) / wavelength;
  const low = Math.min(beam.waistZX, beam.waistZY) - reach;
  const high = Math.max(beam.waistZX, beam.waistZY) + reach;
  let fundamental = 0;
  let guided = 0;
  for (let i = 0; i <= steps; i += 1) {
    const z = low + ((high - low) * i) / steps;
    const at = { ...beam, waistZX: beam.waistZX - z, waistZY: beam.waistZY - z };
    fundamental = Math.max(
      fundamental,
      overlapOf(one, coreRadius, wavelength, at, null, { tolerance: 1e-5 }).guided,
    );
    guided = Math.max(guided, overlapOf(set, coreRadius, wavelength, at, null, { tolerance: 1e-5 }).guided);
  }
  return { fundamental, guided };
}

describe('the best focus of a spot that is too small', () => {
  const lens = (wavelength: string, focal: string, fibre: string) =>
    readLaunch(
      `coreward: 1
laser: { wavelength: ${wavelength}, power: 4 mW, beam: { waist diameter: 2 mm, waist position: 0 mm, quality: 1 } }
path: []
collimator: { focal length: ${focal}, focal shift: 0, focus: { set for: best } }
fibre: ${fibre}
misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 0 µm }
`,
      'test.yaml',
    );

  test.each([
    ['520 nm', '4 mm', '{ type: G.652.D, length: 1 m }'],
    ['633 nm', '3 mm', '{ core diameter: 9 µm, numerical aperture: 0.12, length: 1 m }'],
  ])('%s through %s is beside the waist, behind it', (wavelength, focal, fibre) => {
    const launch = lens(wavelength, focal, fibre);
    const { coupling, facet } = forecast(launch, few);
    const brute = bruteForce(launch);
    // 1e-5: asked of the plain overlap
    expect(coupling.fundamental!).toBeGreaterThan(brute.fundamental - 1e-5);
    expect(coupling.bestFundamental!).toBeGreaterThan(brute.fundamental - 1e-5);
    expect(coupling.bestGuided).toBeGreaterThan(brute.guided - 1e-4);
    // behind the waist the beam spreads again
    expect(facet.waistOffsetX).toBeLessThan(-5e-6);
    expect(forecast(launch, few).facet).toEqual(facet);
  });

  test('its gain is told with the size of the spot, and no other entry of the overlap speaks of it', () => {
    const { ledger } = forecast(lens('520 nm', '4 mm', '{ type: G.652.D, length: 1 m }'), few);
    for (const id of ['ellipticity', 'aberration', 'focus', 'aim'])
      expect(ledger.find((entry) => entry.id === id)!.transmission).toBeCloseTo(1, 9);
  });
});

describe('the best focus, wherever the waists lie', () => {
  const cases: readonly [string, Written][] = [
    ['round', { x: { diameter: 2, waist: 0 }, y: { diameter: 2, waist: 0 }, core: 9 }],
    ['one axis too small', { x: { diameter: 2, waist: 0 }, y: { diameter: 6, waist: 0 }, core: 9 }],
    ['waists near each other', { x: { diameter: 2.5, waist: 6 }, y: { diameter: 3, waist: -6 }, core: 9 }],
    ['waists far apart', { x: { diameter: 4, waist: 120 }, y: { diameter: 3, waist: -120 }, core: 9 }],
    [
      'not quite coherent',
      { x: { diameter: 3, waist: 20 }, y: { diameter: 2, waist: 0 }, core: 9, quality: 1.4 },
    ],
    [
      'a parabola',
      { x: { diameter: 2, waist: 30 }, y: { diameter: 3, waist: -30 }, core: 12, profile: 'graded' },
    ],
  ];
  test.each(cases)('%s: no place of the facet takes more into LP01', (_, written) => {
    const launch = focusedLaunch(written);
    const { coupling } = forecast(launch, few);
    const brute = bruteForce(launch);
    expect(coupling.fundamental!).toBeGreaterThan(brute.fundamental - 3e-5);
    expect(coupling.bestGuided).toBeGreaterThan(brute.guided - 1e-4);
  });

  test('of a fibre with V = 18.5 no place takes more of all light', () => {
    const launch = focusedLaunch({
      x: { diameter: 2.4, waist: 40 },
      y: { diameter: 5, waist: -20 },
      core: 31,
      wavelength: 633,
    });
    expect(forecast(launch, few).coupling.guided).toBeGreaterThan(bruteForce(launch, 200).guided - 1e-4);
  });

  test('a draw finds it as well, to a thousandth', () => {
    for (const [, written] of cases) {
      const launch = focusedLaunch(written);
      const bench = statedBench(launch);
      const { meeting } = bench;
      // a doubt of 8 % moves size and place of the spot: the draw must not stand where the stated bench does
      const drawn = { ...meeting, beam: { ...meeting.beam, waistRadiusX: meeting.beam.waistRadiusX * 0.92 } };
      const taker = modesTaker(launch.fibre.profile, meeting.vNumber, 24);
      const { distance } = drawnFocus(drawn, taker, bench.focus);
      const share = (z: number) => {
        const { beam } = drawn;
        const at = { ...beam, waistZX: beam.waistZX - z, waistZY: beam.waistZY - z };
        return overlapOf(taker.fundamentalSet!, meeting.coreRadius, meeting.wavelength, at).fundamental;
      };
      let best = 0;
      for (let z = -300e-6; z <= 300e-6; z += 1.5e-6) best = Math.max(best, share(0.02 + z));
      // what the draws themselves are computed to
      expect(share(distance)).toBeGreaterThan(best - 1e-3);
    }
  });
});

describe('the best of all guided light', () => {
  const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
  const axis = fc.record({ diameter: between(2, 12), waist: between(-30, 30) });

  test('is the same when x and y are exchanged, and no less than what is there', () => {
    fc.assert(
      fc.property(axis, axis, between(4, 14), (x, y, core) => {
        const rest = 'misalignment: { x: 1 µm, y: 0.5 µm, tilt x: 5 mrad, tilt y: 0 mrad, defocus: 10 µm }';
        const one = forecast(focusedLaunch({ x, y, core, rest }), few).coupling;
        const other = forecast(focusedLaunch({ x: y, y: x, core, rest }), few).coupling;
        // the search ends where a step gains less than 1e-6
        expect(Math.abs(one.bestGuided - other.bestGuided)).toBeLessThan(1e-4);
        expect(Math.abs(one.bestFundamental! - other.bestFundamental!)).toBeLessThan(1e-5);
        for (const { guided, fundamental, bestGuided, bestFundamental } of [one, other]) {
          expect(bestGuided).toBeGreaterThanOrEqual(guided);
          expect(bestFundamental).toBeGreaterThanOrEqual(fundamental!);
          expect(bestGuided).toBeGreaterThanOrEqual(bestFundamental! - 1e-6);
        }
      }),
      { numRuns: 8 },
    );
  });

  test('is found beside the axis where a small spot meets more modes there', () => {
    const launch = focusedLaunch({
      x: { diameter: 4.6, waist: 0 },
      y: { diameter: 3.2, waist: 0 },
      core: 9.2,
    });
    const { beam, coreRadius, wavelength, numericalAperture, vNumber } = meetingOf(launch, asStated);
    const set = modeSet('step', vNumber);
    const depth = coreRadius / numericalAperture;
    let best = 0;
    const { bestGuided } = forecast(launch, few).coupling;
    for (let z = -1; z <= 1; z += 0.2) {
      for (let x = 0; x <= 1; x += 0.1) {
        for (let y = 0; y <= 1; y += 0.1) {
          const at = {
            ...beam,
            waistZX: beam.waistZX - 0.02 - z * depth,
            waistZY: beam.waistZY - 0.02 - z * depth,
            offsetX: x * coreRadius,
            offsetY: y * coreRadius,
          };
          best = Math.max(best, overlapOf(set, coreRadius, wavelength, at, null, { tolerance: 1e-4 }).guided);
        }
      }
    }
    expect(bestGuided).toBeGreaterThan(best - 1e-4);
  });
});

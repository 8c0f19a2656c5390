import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { inventedLaunch as launch } from './invented-launch.ts';

const few = { draws: 32, seed: 5 } as const;
const read = (text: string) => readLaunch(text, 'test.yaml');

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('the ledger', () => {
  test('multiplies to what leaves the fibre, and no light is made', () => {
    fc.assert(
      fc.property(
        between(0.3, 3),
        between(1, 2),
        between(2, 60),
        between(2, 20),
        between(-40, 40),
        (waist, m2, core, focal, defocus) => {
          const { ledger, output, coupling, notGuided, meter } = forecast(
            read(
              launch({
                waist: `${waist.toFixed(3)} mm`,
                quality: `${m2.toFixed(3)}`,
                core: `${core.toFixed(2)} µm`,
                focal: `${focal.toFixed(2)} mm`,
                extra: `misalignment: { x: 1 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 2 mrad, defocus: ${defocus.toFixed(2)} µm }`,
              }),
            ),
            { draws: 8, seed: 2 },
          );
          const product = ledger.reduce((all, { transmission }) => all * transmission, 1);
          expect(Math.abs(product - output.fractionOfLaser.value)).toBeLessThan(1e-12); // rounding
          expect(coupling.guided).toBeLessThanOrEqual(1 + 1e-9);
          expect(coupling.bestGuided).toBeGreaterThanOrEqual(coupling.guided - 1e-6);
          const { beforeFacet, reflected, cladding, beyondCladding } = notGuided;
          const entered = ledger.filter(
            ({ group }) => group === 'path' || group === 'lens' || group === 'facet',
          );
          const inFibre = entered.reduce((all, { transmission }) => all * transmission, 1) * coupling.guided;
          // every photon of the laser is somewhere
          expect(beforeFacet + reflected + cladding + beyondCladding + inFibre).toBeCloseTo(1, 10);
          expect(meter.reading.value).toBeGreaterThanOrEqual(meter.guided.value);
          for (const { transmission, low, high, group } of ledger) {
            expect(low).toBeLessThanOrEqual(high);
            if (group !== 'overlap') expect(transmission).toBeLessThanOrEqual(1);
          }
        },
      ),
      { numRuns: 12 },
    );
  });

  test('more doubt of a part widens the interval, less narrows it', () => {
    const widths = ['0.5 %', '5 %', '15 %'].map((doubt) => {
      const { low, high } = forecast(read(launch({ waist: `0.8 mm ± ${doubt}`, focal: '7 mm' }))).output
        .fractionOfLaser;
      return high - low;
    });
    expect(widths[0]!).toBeLessThan(widths[1]!);
    expect(widths[1]!).toBeLessThan(widths[2]!);
  });
});

describe('the way to the facet', () => {
  test('the spot of a collimated beam is 4λf/(πD) across (Self, Appl. Opt. 22, 658 (1983), from memory)', () => {
    const { facet } = forecast(read(launch({ waist: '2 mm', space: '10 mm' })), few);
    const wanted = (4 * 532e-9 * 5e-3) / (Math.PI * 2e-3);
    // z_R is 5.9 m and the lens 0.11 m away: the formula is good to (0.11/5.9)²
    expect(facet.spotDiameterX / wanted).toBeCloseTo(1, 3);
    expect(facet.waistOffsetX).toBeCloseTo(0, 12);
  });

  test('defocus as written is facet minus focus, and makes the beam converge less', () => {
    const { facet } = forecast(
      read(
        launch({
          extra: 'misalignment: { x: 0 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 0 mrad, defocus: 20 µm }',
        }),
      ),
      few,
    );
    expect(facet.waistOffsetX).toBeCloseTo(-20e-6, 12);
  });

  test('a facet set by distance stands there, and one set for other light stands at that light’s focus', () => {
    const byDistance = forecast(read(launch({ focus: '5.02 mm', space: '10 mm', waist: '2 mm' })), few);
    expect(byDistance.facet.waistOffsetX).toBeCloseTo(-20e-6, 6); // the waist lies f³/z_R² = 3 nm from the focus
    const text = launch({ focus: '635 nm', space: '10 mm', waist: '2 mm' }).replace(
      'focal length: 5 mm, focal shift: 0',
      'focal length: { value: 5 mm, at: 635 nm }, glass: N-BK7',
    );
    // green focuses (n−1)/(n'−1) nearer: 0.87 % of 5 mm for 635 to 532 nm in N-BK7 (n = 1.51501, 1.51947)
    const { facet } = forecast(read(text), few);
    expect(facet.waistOffsetX).toBeCloseTo(-(5e-3 * (1.51947 - 1.51501)) / 0.51947, 6);
  });
});

describe('single losses, against the reference file of losses (loss-and-glass.json, beampath.json)', () => {
  const passes = (text: string, id: string) =>
    forecast(read(text), few).ledger.find((entry) => entry.id === id)!.transmission;

  test('fr-silica-515: a flat end of silica throws back 3.5155 % on the way in and on the way out', () => {
    const text = launch({ wavelength: '515 nm' });
    expect(passes(text, 'entry-facet')).toBeCloseTo(0.9648446783725859, 9);
    expect(passes(text, 'exit-facet')).toBeCloseTo(0.9648446783725859, 9);
  });

  test('fresnel-N-BK7-532: two bare surfaces of N-BK7 pass 0.916784', () => {
    const text = launch({ collimator: ', surfaces: { count: 2, coating: none }' }).replace(
      'focal shift: 0',
      'glass: N-BK7',
    );
    expect(passes(text, 'lens-surfaces')).toBeCloseTo(0.916784, 5); // printed to six digits
  });

  test('att-budget-length: 18 m at 15 dB/km pass 0.939723', () => {
    const text = launch({}).replace(
      'length: 3 m, attenuation: 30 dB/km',
      'length: 18 m, attenuation: 15 dB/km',
    );
    expect(passes(text, 'attenuation')).toBeCloseTo(0.939723, 6);
  });

  test('a joint of 0.3 dB passes 10^−0.03, a mirror its reflectance', () => {
    const text = launch({ fibre: ', connectors: { between: [ { loss: 0.3 dB } ] }' });
    expect(passes(text, 'joint-1')).toBeCloseTo(10 ** -0.03, 12);
    expect(passes(text, 'mirror-far')).toBeCloseTo(0.97, 12);
  });

  test('bend-lp01-1550-10mm and its uncorrected twin: the stated bend lies between the two published views', () => {
    // one turn of 10 mm: 0.599 dB with the elasto-optic correction; 7 times as many decibels without it
    const text = launch({
      wavelength: '1550 nm',
      core: '8.2 µm',
      aperture: '0.12265',
      fibre: ', bends: [ { radius: 10 mm, turns: 1 } ]',
    });
    const decibels = -10 * Math.log10(passes(text, 'bend-1'));
    expect(decibels).toBeGreaterThan(0.599);
    expect(decibels).toBeLessThan(0.599 * 7.5);
  });
});

describe('an angled end', () => {
  const ended = (end: string) =>
    forecast(read(launch({ waist: '0.92 mm', fibre: `, ends: { in: ${end}, out: flat }` })), few);

  test('asks for the same focus and takes nearly the same light: it widens the beam by 1 % in one plane', () => {
    const flat = ended('flat');
    const angled = ended('angled 8°');
    expect(angled.facet.waistOffsetX).toBeCloseTo(flat.facet.waistOffsetX, 12);
    // two widths that differ by 1.1 % overlap to 1 − (0.011)²/2 at the best, and shift a mismatch by as much as 0.5 %
    expect(Math.abs(angled.coupling.bestGuided - flat.coupling.bestGuided)).toBeLessThan(0.006);
    expect(angled.coupling.bestGuided).not.toBe(flat.coupling.bestGuided);
  });

  test('throws back what Fresnel says at 8° inside: 3.7 % across and 3.3 % along its plane, between the two unpolarised', () => {
    const entry = ended('angled 8°').ledger.find(({ id }) => id === 'entry-facet')!;
    // reference/beampath.json, apc8-515: reflectanceS 0.0372, reflectanceP 0.0331
    expect(1 - entry.transmission).toBeGreaterThan(0.033);
    expect(1 - entry.transmission).toBeLessThan(0.0373);
  });
});

describe('where the method changes, the answer hardly does', () => {
  test('from summed modes to counted rays at V = 150 a centred beam changes by less than 1e-4', () => {
    const at = (core: number) =>
      forecast(
        read(
          launch({
            core: `${core.toFixed(2)} µm`,
            aperture: '0.22',
            waist: '0.4 mm',
            focal: '20 mm',
            wavelength: '532 nm',
          }),
        ),
        few,
      ).coupling;
    const edge = (150 * 0.532) / (Math.PI * 0.22);
    const below = at(edge * 0.9999);
    const above = at(edge * 1.0001);
    expect([below.method, above.method]).toEqual(['modes', 'rays']);
    expect(above.fundamental).toBeNull();
    // measured against the modal sum at V = 109 for centred beams: 5e-5
    expect(Math.abs(above.guided - below.guided)).toBeLessThan(1e-4);
  });
});

describe('a very incoherent beam into a few-moded fibre', () => {
  const at = (quality: string, core = '3.2 µm') =>
    forecast(read(launch({ quality: `${quality} within 0.01`, waist: '2 mm', core })), few);

  test('is summed like any other, in time, with an interval that holds it', () => {
    const [less, more] = [at('5.4').coupling, at('5.6').coupling];
    expect([less.method, more.method]).toEqual(['modes', 'modes']);
    // a spot that stays as large over √M² takes (2/(1+M²))² of a Gaussian mode (Starikov and Wolf, from memory)
    const expected = (1 + 5.4) ** 2 / (1 + 5.6) ** 2;
    expect(Math.abs(more.fundamental! / less.fundamental! / expected - 1)).toBeLessThan(0.02);
    expect(more.guided).toBeCloseTo(more.fundamental!, 12);
    const { value, low, high } = at('100').output.power;
    expect(low).toBeLessThanOrEqual(value);
    expect(high).toBeGreaterThanOrEqual(value);
  });
});

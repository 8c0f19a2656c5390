import { expect, test } from 'vitest';
import { type Forecast, forecast, readLaunch } from '../packages/bench/src/index.ts';

// What people at such benches know without computing it. All of it is common practice, no source; the bounds are what
// "almost nothing" or "about" mean to them.

const forecastOf = (text: string): Forecast => forecast(readLaunch(`coreward: 1\n${text}`, 'fact.yaml'));

/** Green light behind a lens of 5 mm focal length, into a telecom fibre; `more` stands at the end. */
const green = (more: string, length = '18 m') =>
  forecastOf(`laser: { wavelength: 520 nm, power: 5 mW, beam: { waist diameter: 0.55 mm, quality: 1.05 within 0.05 } }
path:
  - mirror: { name: M1, reflectance: 97 %, mount: { lever: 38 mm, pitch: 0.25 mm } }
  - space: 10 mm
collimator: { focal length: 5 mm, focal shift: 0 }
fibre: { core diameter: 8.2 µm, numerical aperture: 0.13, cladding diameter: 125 µm, length: ${length}, coating: strips }
${more}`);

const aside = (offset: string) => `misalignment: { x: ${offset} }`;

for (const diameter of ['4 mm', '5 mm']) {
  test(`a beam of ${diameter} straight onto a core of 9 µm delivers almost nothing`, () => {
    const { output, coupling } =
      forecastOf(`laser: { wavelength: 635 nm, power: 5 mW, beam: { waist diameter: ${diameter} } }
collimator: none
fibre: { core diameter: 9 µm, numerical aperture: 0.12 }`);
    // the core covers a five-millionth of the beam, and only its own mode is taken: below a ten-thousandth
    expect(output.fractionOfLaser.high).toBeLessThan(1e-4);
    expect(output.power.value).toBeGreaterThan(0);
    expect(coupling.bestGuided).toBeLessThan(1e-4); // and no aiming helps
  });
}

test('a tenth of a degree of misaim before a short lens moves the focus by about a core, and most of the light is gone', () => {
  const { tolerances } = green(aside('0 µm'));
  const { offsetFor1dB, screws } = tolerances.fundamental!;
  const turnsFor1dB = screws.find(({ axis }) => axis === 'horizontal')!.turnsFor1dB!;
  const aimPerTurn = 2 * (0.25 / 38); // a mirror turns the beam by twice its own tilt
  const movedPerRadian = offsetFor1dB! / (turnsFor1dB * aimPerTurn);
  const moved = movedPerRadian * ((0.1 * Math.PI) / 180);
  expect(moved / 8.2e-6).toBeGreaterThan(0.8);
  expect(moved / 8.2e-6).toBeLessThan(1.3);
  const there = green(aside(`${(moved * 1e6).toFixed(2)} µm`)).coupling;
  expect(there.fundamental).toBeLessThan(0.1);
  expect(there.guided).toBeLessThan(0.1);
});

test('light that was not captured glows out of the first decimetres: a meter behind 18 m sees guided light alone', () => {
  const { meter, notGuided } = green(aside('4 µm'));
  expect(notGuided.cladding).toBeGreaterThan(0.1);
  expect(meter.claddingReaches).toBe(false);
  expect(meter.reading.high / meter.guided.high).toBeCloseTo(1, 6);
});

test('behind a decimetre it sees the other light, too', () => {
  const { meter } = green(aside('4 µm'), '10 cm');
  expect(meter.claddingReaches).toBe(true);
  expect(meter.reading.value / meter.guided.value).toBeGreaterThan(1.05);
});

test('a telecom fibre in the green hides misalignment in its total power', () => {
  const [aligned, misaligned] = [green(aside('0 µm')).coupling, green(aside('2 µm')).coupling];
  const loss = (after: number, before: number) => -10 * Math.log10(after / before);
  // a quarter of a decibel drowns in the drift of a laser module; a whole one does not
  expect(loss(misaligned.guided, aligned.guided)).toBeLessThan(0.25);
  expect(loss(misaligned.fundamental!, aligned.fundamental!)).toBeGreaterThan(1);
});

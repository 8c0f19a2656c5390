import fc from 'fast-check';
import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { beamFromSpread, beamWithWaistAt } from './beam-from-spread.ts';
import { beamRadiusAt, fullDivergence, rayleighRange } from './gaussian-beam.ts';

const laser = { wavelength: 520e-9, quality: 1.15 };

test('the beam found has the radius and the divergence it was found from, and spreads', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1e-4, max: 3e-3, noNaN: true }),
      fc.double({ min: 1, max: 100, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (radius, timesDiffraction, position) => {
        const least = (2 * laser.quality * laser.wavelength) / (Math.PI * radius);
        const seen = { ...laser, radius, position, fullDivergence: least * timesDiffraction * (1 + 1e-12) };
        const beam = beamFromSpread(seen);
        // 1e-9: near the waist its place is known only to the square root of rounding, its radius to rounding
        expect(Math.abs(beamRadiusAt(beam, position) / radius - 1)).toBeLessThan(1e-9);
        expect(Math.abs(fullDivergence(beam) / seen.fullDivergence - 1)).toBeLessThan(1e-12);
        expect(beam.waistPosition).toBeLessThanOrEqual(position);
      },
    ),
  );
});

test('a beam that spreads by diffraction alone is at its waist; one that spreads less is refused', () => {
  const radius = 0.4e-3;
  const least = (2 * laser.quality * laser.wavelength) / (Math.PI * radius);
  const atWaist = beamFromSpread({ ...laser, radius, position: 0.1, fullDivergence: least * (1 + 1e-15) });
  expect(Math.abs(atWaist.waistPosition - 0.1)).toBeLessThan(1e-6 * rayleighRange(atWaist));
  expect(() =>
    beamFromSpread({ ...laser, radius, position: 0.1, fullDivergence: least * (1 - 1e-9) }),
  ).toThrow(OutOfRange);
});

test('the mend of that refusal works', () => {
  const given = { ...laser, radius: 0.4e-3, position: 0, fullDivergence: 0.5e-3 };
  try {
    beamFromSpread(given);
    expect.unreachable();
  } catch (refusal) {
    const mend = (refusal as OutOfRange).mend;
    const least = Number(/at least (\S+) rad/.exec(mend)?.[1]);
    // one rounding up: the edge itself may fall on either side
    expect(() => beamFromSpread({ ...given, fullDivergence: least * (1 + 1e-15) })).not.toThrow();
  }
});

test('a beam with its waist at the exit has the diameter read further on', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.3e-3, max: 3e-3, noNaN: true }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 0.999, noNaN: true }),
      (radius, waistPosition, share) => {
        // share of the distance at which the beam of least spread, √2 wider than its waist, would be this wide
        const distance = (share * Math.PI * radius ** 2) / (2 * laser.quality * laser.wavelength);
        const position = waistPosition + distance;
        const beam = beamWithWaistAt({ ...laser, radius, position, waistPosition });
        // 1e-9: as the two roots meet, the radius is known to the square root of rounding
        expect(Math.abs(beamRadiusAt(beam, position) / radius - 1)).toBeLessThan(1e-9);
        expect(Math.abs(distance)).toBeLessThanOrEqual(rayleighRange(beam) * (1 + 1e-6));
      },
    ),
  );
});

test('a radius that no beam keeps over the distance is refused, a little more is not', () => {
  const least = Math.sqrt((2 * laser.quality * laser.wavelength * 1.5) / Math.PI);
  const place = { ...laser, position: 1.5, waistPosition: 0 };
  expect(() => beamWithWaistAt({ ...place, radius: least * (1 - 1e-9) })).toThrow(OutOfRange);
  expect(() => beamWithWaistAt({ ...place, radius: least * (1 + 1e-9) })).not.toThrow();
});

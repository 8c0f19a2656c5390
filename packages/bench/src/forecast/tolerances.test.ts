import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { inventedLaunch as launch } from './invented-launch.ts';

const few = { draws: 32, seed: 5 } as const;
const read = (text: string) => readLaunch(text, 'test.yaml');

describe('tolerances of a well matched Gaussian', () => {
  // V = 2.27: one mode, nearly a Gaussian. A Gaussian loses 1 dB at w√(0.1 ln 10), θ_w√(0.1 ln 10) and 2 z_R√(10^0.1 − 1).
  const told = forecast(read(launch({ waist: '0.92 mm', space: '10 mm' })), few);
  const radius = told.fibre.bestSpotDiameter! / 2;
  const spread = Math.sqrt(0.1 * Math.log(10));

  test('offset, tilt and defocus are those of the closed forms, to the few per cent a mode differs from a Gaussian', () => {
    const { offsetFor1dB, tiltFor1dB, defocusFor1dB } = told.tolerances.guided;
    expect(told.fibre.lpModes).toBe(1);
    expect(offsetFor1dB! / (radius * spread)).toBeCloseTo(1, 1);
    // the far field of a mode has longer tails than its best Gaussian: 6 % here
    expect(Math.abs(tiltFor1dB! / ((532e-9 / (Math.PI * radius)) * spread) - 1)).toBeLessThan(0.08);
    const rayleigh = (Math.PI * radius ** 2) / 532e-9;
    expect(defocusFor1dB! / (2 * rayleigh * Math.sqrt(10 ** 0.1 - 1))).toBeCloseTo(1, 1);
  });

  test('a screw’s turn is twice its tilt times the focal length, across the plane by the cosine less', () => {
    const { screws } = told.tolerances.guided;
    const tiltPerTurn = 0.25 / 40;
    const turns = (radius * spread) / (2 * tiltPerTurn * 5e-3);
    const horizontal = screws.find(({ mirror, axis }) => mirror === 'near' && axis === 'horizontal')!;
    const vertical = screws.find(({ mirror, axis }) => mirror === 'near' && axis === 'vertical')!;
    expect(horizontal.turnsFor1dB! / turns).toBeCloseTo(1, 1);
    expect(vertical.turnsFor1dB! / horizontal.turnsFor1dB!).toBeCloseTo(Math.SQRT2, 3);
  });

  test('the hand limit is the sum of the squares of what 0.0025 turn does on both axes', () => {
    // exp(−(x/w)²) on each axis, with x = f·g·k·0.0025
    const byHorizontal = (5e-3 * 2 * (0.25 / 40) * 0.0025) / radius;
    const byVertical = byHorizontal / Math.SQRT2;
    const loss = 1 - Math.exp(-(byHorizontal ** 2) - byVertical ** 2);
    expect(told.tolerances.handLimit! / loss).toBeCloseTo(1, 1);
  });
});

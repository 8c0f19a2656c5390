import { describe, expect, test } from 'vitest';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { inventedLaunch as launch } from './invented-launch.ts';

const few = { draws: 32, seed: 5 } as const;
const read = (text: string) => readLaunch(text, 'test.yaml');

describe('next measurement', () => {
  test('what is promised to narrow narrows by about as much when it is measured', () => {
    const vague = launch({ waist: '0.8 mm ± 12 %', focal: '7 mm within 4 %' });
    const before = forecast(read(vague), { draws: 1024, seed: 4 });
    const promise = before.nextMeasurement.find(({ quantity }) => quantity === 'laser.beam.waist diameter')!;
    const after = forecast(read(launch({ waist: '0.8 mm ± 3 %', focal: '7 mm within 4 %' })), {
      draws: 1024,
      seed: 4,
    });
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    const kept = width(after.output.power) / width(before.output.power);
    expect(promise.narrows).toBeLessThan(0.97);
    // both widths stand to a few per cent, and the draws that keep their weight are a quarter
    expect(Math.abs(promise.narrows - kept)).toBeLessThan(0.1);
  });

  test('what is exact is never asked for', () => {
    const { nextMeasurement } = forecast(read(launch({ waist: '0.8 mm ± 15 %' })), few);
    expect(nextMeasurement.map(({ quantity }) => quantity)).not.toContain('laser.beam.quality');
    expect(nextMeasurement.every(({ narrows }) => narrows > 0 && narrows < 1)).toBe(true);
  });
});

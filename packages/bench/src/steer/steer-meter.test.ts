import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { walkPlan } from '../walk/session.ts';
import { planRaster } from './raster.ts';
import { steerLayout, usualCards } from './steer-layout.ts';
import { meterFacts, ordinaryMeter, steerMeter, steerMeterWords } from './steer-meter.ts';
import { isSamePlan, steerPlan } from './steer-plan.ts';

const launch = readLaunch(observingLoftLaunch, 'example');
const layout = steerLayout(launch);
const cards = usualCards(layout);
const peak = walkPlan(launch).known.forecastPeak!;

test('an instrument whose floor and rate are known is counted with: three floors stand out, and it is waited for', () => {
  const meter = steerMeter(launch, [
    { name: 'a counter', floor: null, rate: 2 },
    { name: 'a photodiode', floor: peak * 1e-5, rate: 1 },
  ]);
  expect(meter.name).toBe('a photodiode');
  expect(meter.seen).toBeCloseTo(3e-5, 12);
  expect(meter.updateTime).toBe(1);
  // more margin, fewer lines; a slower meter, a slower sweep
  const counted = planRaster(steerPlan(launch, cards, layout, meter).raster);
  const assumed = planRaster(steerPlan(launch, cards, layout).raster);
  expect(counted.lines).toBeLessThanOrEqual(assumed.lines);
  // ρ = θc √(ln 1/seen) and a speed of ρ over the update time: both by hand
  const wider = Math.sqrt(Math.log(1 / 3e-5) / Math.log(1e4));
  expect(counted.visibleRadius / assumed.visibleRadius).toBeCloseTo(wider, 9);
  expect(counted.fastest / assumed.fastest).toBeCloseTo(wider / 4, 9);
  expect(steerMeterWords(meter)).toBe(
    'The search is counted for a photodiode: light from −45.2 dB of the peak on, a new reading every 1 s.',
  );
});

test('only what reads a real bench now is counted with, its floor only in watts', () => {
  const one = { kind: 'serial-line', unit: 'W', state: 'reading', floor: 1e-9, rate_Hz: 4.13 } as const;
  const facts = meterFacts([
    { ...one, name: 'on' },
    { ...one, name: 'off', state: 'off' },
    { ...one, name: 'simulated', kind: 'practice' },
    { ...one, name: 'an eye', unit: 'step' },
    { ...one, name: 'volts', unit: 'V', rate_Hz: null },
  ]);
  expect(facts).toEqual([
    { name: 'on', floor: 1e-9, rate: 4 },
    { name: 'volts', floor: null, rate: null },
  ]);
});

test('what is not known of an instrument is assumed, and said', () => {
  expect(steerMeter(launch, [])).toEqual(ordinaryMeter);
  expect(steerMeterWords(ordinaryMeter)).toContain('as we assume it');
  const rated = steerMeter(launch, [{ name: 'a counter', floor: null, rate: 2 }]);
  expect(rated).toEqual({ name: 'a counter', seen: ordinaryMeter.seen, updateTime: 0.5 });
  expect(steerMeterWords(rated)).toContain('(assumed: its dark reading in watts is not known)');
  // a floor of nothing is none, and a hand is no faster for a fast meter
  expect(steerMeter(launch, [{ name: 'a', floor: 0, rate: 1000 }])).toEqual({
    name: 'a',
    seen: ordinaryMeter.seen,
    updateTime: 0.2,
  });
  // a floor above the peak leaves a search that ends
  const dim = steerMeter(launch, [{ name: 'a', floor: 10 * peak, rate: null }]);
  expect(planRaster(steerPlan(launch, cards, layout, dim).raster, 2).lines).toBeLessThan(200);
});

test('a launch whose name was changed is steered alike, one whose lengths were changed is not', () => {
  const named = readLaunch(observingLoftLaunch.replace(/^name: .*$/mu, 'name: another'), 'example');
  const plan = steerPlan(launch, cards, layout);
  expect(isSamePlan(plan, steerPlan(named, cards))).toBe(true);
  const [length] = /\d+ mm/u.exec(observingLoftLaunch.slice(observingLoftLaunch.indexOf('path:'))) ?? [];
  const at = observingLoftLaunch.indexOf('path:');
  const longer =
    observingLoftLaunch.slice(0, at) + observingLoftLaunch.slice(at).replaceAll(length!, '333 mm');
  expect(isSamePlan(plan, steerPlan(readLaunch(longer, 'example'), cards))).toBe(false);
});

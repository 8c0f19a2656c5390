import { observingLoftLaunch } from '../example/example-texts.ts';
import type { Forecast } from '../forecast/expected.ts';
import { readLaunch } from '../launch/read-launch.ts';

/**
 * A forecast whose numbers are invented, round ones, to test how forecasts are told: nothing computed it, and its parts
 * do not fit together. The laser has 11.5 mW.
 */
export const inventedForecast: Forecast = {
  launch: readLaunch(observingLoftLaunch, 'observing-loft.launch.yaml'),
  fibre: {
    vNumber: { value: 6.4, low: 5.5, high: 7.4 },
    lpModes: 7,
    modesWithOrientation: 12,
    lpModesRange: [5, 9],
    cutoffWavelength: 1.39e-6,
    modeFieldDiameter: 6.0e-6,
    bestSpotDiameter: 6.3e-6,
  },
  facet: {
    spotDiameterX: 8.5e-6,
    spotDiameterY: 8.5e-6,
    waistOffsetX: -45e-6,
    waistOffsetY: -45e-6,
    waistDiameterX: 5e-6,
    waistDiameterY: 5e-6,
    halfAngle: 0.076,
  },
  coupling: {
    guided: 0.9,
    fundamental: 0.66,
    bestGuided: 0.996,
    bestGuidedAt: null,
    bestFundamental: 0.77,
    guidedInterval: { low: 0.83, high: 0.95 },
    fundamentalInterval: { low: 0.59, high: 0.73 },
    method: 'modes',
    methodNote: 'invented',
    aim: 'walked by hand',
  },
  ledger: [
    {
      id: 'mirror-M1',
      group: 'path',
      label: 'mirror M1',
      transmission: 0.8,
      low: 0.75,
      high: 0.85,
      left: null,
    },
    { id: 'clip-M1', group: 'path', label: 'clipped at M1', transmission: 1, low: 1, high: 1, left: null },
    {
      id: 'lens-clip',
      group: 'lens',
      label: 'clipped at the lens',
      transmission: 1,
      low: 1,
      high: 1,
      left: null,
    },
    {
      id: 'spot-size',
      group: 'overlap',
      label: 'spot size',
      transmission: 0.26,
      low: 0.2,
      high: 0.3,
      left: null,
    },
    { id: 'focus', group: 'overlap', label: 'focus', transmission: 1.25, low: 1.25, high: 1.25, left: null },
    { id: 'bend-1', group: 'fibre', label: 'bend 1', transmission: 1, low: 0.9, high: 1, left: null },
  ],
  notGuided: { beforeFacet: 0.2, reflected: 0.03, cladding: 0.5, beyondCladding: 1e-5 },
  meter: {
    reading: { value: 3e-3, low: 2.5e-3, high: 3.5e-3 },
    guided: { value: 2.9e-3, low: 2.4e-3, high: 3.4e-3 },
    claddingReaches: true,
  },
  tolerances: {
    guided: {
      offsetFor1dB: 3.7e-6,
      tiltFor1dB: 0.092,
      defocusFor1dB: null,
      screws: [{ mirror: 'M1', axis: 'horizontal', turnsFor1dB: 0.05 }],
    },
    fundamental: {
      offsetFor1dB: 1.4e-6,
      tiltFor1dB: 0.031,
      defocusFor1dB: 54e-6,
      screws: [{ mirror: 'M1', axis: 'horizontal', turnsFor1dB: 0.02 }],
    },
    handLimit: 0.0066,
    handLimitGuided: 0.0012,
  },
  output: {
    power: { value: 2.1e-3, low: 1.6e-3, high: 2.6e-3 },
    fractionOfLaser: { value: 0.18, low: 0.14, high: 0.22 },
    diameter: 1.2e-3,
    fullDivergence: 0.86e-3,
    collimated: true,
    shape: 'second moments',
  },
  nextMeasurement: [
    { quantity: 'laser.power', gauge: 'photodiode', how: 'read it with a photodiode', narrows: 0.55 },
  ],
  remarks: [
    { id: 'focus', kind: 'change', text: 'Refocus.' },
    { id: 'most', kind: 'limits', text: 'The spot costs most.' },
  ],
  cautions: [{ id: 'invented', level: 'note', text: 'An invented caution.' }],
  assumptions: ['Walked by hand.'],
};

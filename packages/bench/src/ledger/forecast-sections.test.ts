import { expect, test } from 'vitest';
import { standingLine } from '../caution/standing-line.ts';
import { fiveLinesLaunch, observingLoftLaunch } from '../example/example-texts.ts';
import type { Forecast } from '../forecast/expected.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { cautionSection } from './caution-section.ts';
import { farEndSection } from './far-end-section.ts';
import { forecastSections } from './forecast-sections.ts';
import { inventedForecast } from './invented-forecast.ts';
import { beamText, launchTerms } from './launch-terms.ts';
import type { Section } from './section.ts';
import { atBestText, modesText, spotText } from './spot-section.ts';
import { verdict } from './verdict.ts';

const said = (sections: readonly Section[]) => JSON.stringify(sections);

test('the verdict is one sentence with power, range and share', () => {
  expect(verdict(inventedForecast)).toBe(
    '2.1 mW leaves the far end (1.6 to 2.6 mW, 90 %): 18 % of the laser.',
  );
});

test('the page runs from the laser to the far end, advice behind it, cautions last', () => {
  expect(forecastSections(inventedForecast).map(({ heading }) => heading)).toEqual([
    'green guide light to the observing loft',
    'On the bench',
    'At the facet: the spot against the core',
    'Ledger: what each part lets through',
    'Out of the far end',
    'What to change',
    'How exactly it must be aimed',
    'What to measure next',
    'Taken for granted',
    'Cautions',
  ]);
});

test('nothing on the page says that anything is safe', () => {
  expect(said(forecastSections(inventedForecast))).not.toMatch(/\bsafe(ly)?\b/iu);
});

test('who decides about hazards is said, with cautions or without', () => {
  expect(said([cautionSection(inventedForecast)])).toContain(standingLine);
  const none = said([cautionSection({ ...inventedForecast, cautions: [] })]);
  expect(none).toContain(standingLine);
  expect(none).toContain('says nothing about its light');
});

test('a waist before the facet and one behind it are told apart', () => {
  const { facet } = inventedForecast;
  expect(spotText(facet)).toBe(
    '8.5 µm across (1/e² of intensity); its waist, 5 µm, lies 45 µm before the facet',
  );
  expect(spotText({ ...facet, waistOffsetX: 45e-6, waistOffsetY: 45e-6 })).toContain(
    'would lie 45 µm further on, inside the fibre',
  );
});

test('an elliptic spot is told axis by axis', () => {
  const { facet } = inventedForecast;
  expect(spotText({ ...facet, spotDiameterY: 17e-6, waistOffsetY: 0 })).toBe(
    '8.5 µm by 17 µm (1/e² of intensity, x by y); in x its waist, 5 µm, lies 45 µm before the facet; ' +
      'in y its waist, 5 µm, lies on the facet',
  );
});

test('a count of modes that the doubt about V leaves open is a range', () => {
  expect(modesText(inventedForecast.fibre)).toBe(
    'V number 6.4 (5.5 to 7.4): 7 LP modes (5 to 9), 12 with their orientations; ' +
      'one mode alone only in light above 1390 nm',
  );
});

test('a fibre of one mode, of perhaps one, and of countless ones are told apart', () => {
  const { fibre } = inventedForecast;
  const one = { ...fibre, vNumber: { value: 2.1, low: 2, high: 2.2 }, lpModes: 1, modesWithOrientation: 1 };
  expect(modesText({ ...one, lpModesRange: [1, 1] })).toContain('one mode, LP01; in light below 1390 nm');
  expect(modesText({ ...one, lpModesRange: [1, 2] })).toContain('one LP mode (1 to 2)');
  expect(modesText({ ...fibre, lpModes: null, lpModesRange: null })).toContain('rays');
});

test('a meter that sees cladding light, too, is not taken for guided light', () => {
  expect(said([farEndSection(inventedForecast)])).toContain('only 2.9 mW (2.4 to 3.4 mW) of it is guided');
});

test('a meter that sees guided light alone says so', () => {
  const meter: Forecast['meter'] = { ...inventedForecast.meter, claddingReaches: false };
  expect(said([farEndSection({ ...inventedForecast, meter })])).toContain('shows the guided light');
});

test('what limits the launch stands right under the verdict', () => {
  expect(forecastSections(inventedForecast)[0]?.blocks).toEqual([
    { kind: 'text', text: verdict(inventedForecast) },
    { kind: 'text', text: 'The spot costs most.' },
  ]);
});

test('a best aim beside the axis is told with its place', () => {
  const { coupling } = inventedForecast;
  expect(atBestText(coupling, false)).toBe(
    'with the best focus and perfect aim this lens and fibre would take 99.6 %, or 77 % in LP01',
  );
  // 3, 4, 5
  const beside = { ...coupling, bestGuidedAt: { offsetX: 3e-6, offsetY: -4e-6, tiltX: 0, tiltY: 0.012 } };
  expect(atBestText(beside, false)).toBe(
    'with the best focus this lens and fibre would take 99.6 %, aimed 5 µm beside the axis and tilted by 12 mrad, ' +
      'where this spot finds more modes; on the axis 77 % in LP01',
  );
  // for less than a hundredth nobody is sent beside the axis
  expect(atBestText({ ...beside, guided: 0.99 }, false)).toBe(
    'with the best focus and perfect aim this lens and fibre would take 99.6 %, or 77 % in LP01: you are there',
  );
  expect(atBestText({ ...coupling, guided: 0.99 }, true)).toBe(
    'at the best place and perfect aim this beam and fibre would take 99.6 %, or 77 % in LP01: you are there',
  );
});

test('what the best focus is best for is told where that is LP01 alone', () => {
  const best = { ...inventedForecast, launch: readLaunch(fiveLinesLaunch, 'five') };
  expect(said(forecastSections(best))).toContain('focused for the most light in LP01');
  const many = { ...best, fibre: { ...best.fibre, vNumber: { value: 15, low: 14, high: 16 } } };
  expect(said(forecastSections(many))).toMatch(/focused for the most light"/u);
});

test('an aim that is written is told, and one that is not is the hand’s', () => {
  const aim = (launch: Forecast['launch']) => launchTerms(launch).find(({ term }) => term === 'aim')?.text;
  const off = `${observingLoftLaunch}\nmisalignment: { x: 2 µm, y: 0 µm, tilt x: 0 mrad, tilt y: 3 mrad, defocus: 0 µm }\n`;
  expect(aim(inventedForecast.launch)).toBe('walked by hand');
  expect(aim(readLaunch(off, 'off'))).toBe('as written: 2 µm aside in x, 3 mrad tilted in y');
  expect(aim(readLaunch(off.replace('x: 2 µm', 'x: 0 µm').replace('3 mrad', '0 mrad'), 'off'))).toBe(
    'perfect, as written',
  );
});

test('a beam is told as its document describes it', () => {
  expect(beamText(inventedForecast.launch.laser.beam)).toBe(
    // 0.84 mm ± 0.05 mm: 1.645 · 0.05 = 0.08 either side
    '0.84 mm (0.76 to 0.92 mm) across at its waist, at the laser’s exit; M² 1.15 (1.05 to 1.25)',
  );
});

test('a waist up the beam from the exit is not told as one behind it', () => {
  const beam = (at: string) =>
    launchTerms(
      readLaunch(observingLoftLaunch.replace('waist position: 0 mm', `waist position: ${at}`), 'up'),
    ).find(({ term }) => term === 'beam')?.text;
  expect(beam('-300 mm')).toContain('across at its waist, 300 mm before the laser’s exit, within it');
  expect(beam('300 mm')).toContain('across at its waist, 300 mm from the laser’s exit');
});

import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { forecast } from '../forecast/forecast.ts';
import { glance } from '../forecast/glance.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { lightLine } from './light-line.ts';
import { drawLine } from './line-drawing.ts';
import { withRanges } from './line-ledger.ts';
import { powerRangeAt } from './line-words.ts';
import { edgeAlong } from './stretches.ts';

const loft = readLaunch(observingLoftLaunch, 'launch');
const loftLine = lightLine(glance(loft));

/** A laser with its waist at a place, a way with one lens on it, and a collimator. */
const withLens = (waistDiameter: number, waistPosition: number, before: number, focalLength: number) =>
  readLaunch(
    `coreward: 1
laser: { wavelength: 633 nm, power: 1 mW, beam: { waist diameter: ${waistDiameter} mm, waist position: ${waistPosition} mm, quality: 1.3 } }
path: [ { space: ${before} mm }, { lens: { focal length: ${focalLength} mm } }, { space: 100 mm } ]
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }
`,
    'launch',
  );

describe('the edge of the light on its way', () => {
  test('from the laser to the lens it is w₀√(1 + (z/z_R)²), z_R = πw₀²/(M²λ)', () => {
    // Kogelnik and Li, Appl. Opt. 5, 1550 (1966), with λ → M²λ; from memory. Written out here, not asked of optics.
    const [first] = loftLine.stretches;
    const waist = 0.42e-3;
    const range = (Math.PI * waist ** 2) / (1.15 * 520e-9);
    for (const { position, radiusX, radiusY } of edgeAlong(first!, 20)) {
      const radius = waist * Math.sqrt(1 + (position / range) ** 2);
      // rounding of a few operations on doubles
      expect(radiusX / radius).toBeCloseTo(1, 12);
      expect(radiusY / radius).toBeCloseTo(1, 12);
    }
  });
  test('behind a thin lens its waist obeys 1/(s + z_R²/(s − f)) + 1/s′ = 1/f', () => {
    // S. A. Self, Appl. Opt. 22, 658 (1983), equation (9a); from memory
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: 20, max: 400, noNaN: true }),
        fc.double({ min: 50, max: 600, noNaN: true }),
        (waistDiameter, before, focalLength) => {
          const line = lightLine(glance(withLens(waistDiameter, 0, before, focalLength)));
          const range = (Math.PI * (waistDiameter / 2e3) ** 2) / (1.3 * 633e-9);
          const [s, f] = [before / 1e3, focalLength / 1e3];
          const behind = line.stretches[1]!.beam.x.waistPosition;
          // where s nearly equals f both sides grow without bound: compared as a difference over the larger
          const expected = f + (f * f * (s - f)) / ((s - f) ** 2 + range ** 2);
          expect(Math.abs(behind - expected)).toBeLessThan(1e-9 * Math.max(Math.abs(expected), f));
        },
      ),
      { numRuns: 12 }, // each one solves a fibre
    );
  });
  test('at a lens its width does not jump, and each stretch begins where the one before ends', () => {
    const { stretches } = lightLine(glance(withLens(1.2, -150, 180, 250)));
    expect(stretches).toHaveLength(3);
    for (const [i, stretch] of stretches.slice(1).entries()) {
      const before = edgeAlong(stretches[i]!, 1).at(-1)!;
      const behind = edgeAlong(stretch, 1)[0]!;
      expect(behind.position).toBe(before.position);
      expect(behind.radiusX / before.radiusX).toBeCloseTo(1, 9);
    }
  });
  test("it ends at the facet with the forecast's own spot", () => {
    for (const launch of [loft, withLens(1.2, -150, 180, 250)]) {
      const { facet } = forecast(launch, { draws: 16, seed: 1 });
      const last = edgeAlong(lightLine(glance(launch)).stretches.at(-1)!, 8).at(-1)!;
      // the quick focus stands within a fraction of a Rayleigh range of the exact one; here both are at the same place
      expect((2 * last.radiusX) / facet.spotDiameterX).toBeCloseTo(1, 6);
      expect((2 * last.radiusY) / facet.spotDiameterY).toBeCloseTo(1, 6);
    }
  });
  test('x and y each go their own way', () => {
    const text = observingLoftLaunch.replace(
      /waist diameter:[^\n]*\n\s+waist position: 0 mm\n\s+quality: 1.15/u,
      'x: { waist diameter: 2 mm, quality: 1 }\n    y: { waist diameter: 0.5 mm, quality: 1 }',
    );
    const edge = edgeAlong(lightLine(glance(readLaunch(text, 'launch'))).stretches[0]!, 4)[0]!;
    expect(edge.radiusX).toBeCloseTo(1e-3, 12);
    expect(edge.radiusY).toBeCloseTo(0.25e-3, 12);
  });
});

describe('the parts on the line', () => {
  test('stand at the sums of the spaces before them', () => {
    expect(loftLine.parts.map(({ id, position }) => [id, Number(position.toFixed(6))])).toEqual([
      ['laser', 0],
      ['path-2', 0.21],
      ['path-4', 0.36],
      ['collimator', 0.455],
      // 45 µm before it is in focus for this light: the collimator was set for red, whose focal length is 6.2 mm
      ['facet', 0.4612],
      ['fibre', 0.4612],
      ['far-end', 0.4612],
    ]);
  });
  test('a mirror at 45° folds the light by a right angle', () => {
    expect(loftLine.parts[1]!.fold).toBeCloseTo(Math.PI / 2, 12);
  });
  test('every loss of the ledger stands at one part, and nothing is lost between parts', () => {
    const seen = glance(loft);
    const { parts } = lightLine(seen);
    expect(parts.flatMap(({ losses }) => losses.map(({ id }) => id))).toEqual(
      seen.ledger.map(({ id }) => id),
    );
    for (const [i, part] of parts.slice(1).entries()) expect(part.arriving).toBe(parts[i]!.leaving);
    expect(parts.at(-1)!.leaving).toBeCloseTo(seen.budget.output, 12);
  });
});

describe('the line on paper', () => {
  const paper = { length: 1000, half: 80, label: 100 };
  const drawing = drawLine(loftLine, paper);
  test('is to scale along the path', () => {
    const [laser, m1, m2] = drawing.parts;
    expect((m2!.along - m1!.along) / (m1!.along - laser!.along)).toBeCloseTo(150 / 210, 9);
  });
  test('is as many times wider across as it says', () => {
    const toFacet = drawing.sections.slice(0, -1).flatMap(({ points }) => points);
    const [first] = toFacet;
    expect((first!.above * drawing.scale) / drawing.widened).toBeCloseTo(0.42e-3, 12);
    expect(Math.max(...toFacet.map(({ above }) => above))).toBeLessThanOrEqual(paper.half);
  });
  test('is cut at the parts: each section begins where its part stands, as bright as what that part lets on', () => {
    const free = drawing.parts.filter(({ part: { kind } }) => kind !== 'facet' && kind !== 'fibre');
    expect(drawing.sections.map(({ left }) => left)).toEqual(free.map(({ part }) => part.leaving));
    // lengths of paper are sums and quotients of a few doubles
    for (const [i, { along }] of free.entries())
      expect(drawing.sections[i]!.points[0]!.along).toBeCloseTo(along, 9);
    for (const [i, { points }] of drawing.sections.slice(1, -1).entries()) {
      const before = drawing.sections[i]!.points.at(-1)!;
      expect(points[0]!.along).toBeCloseTo(before.along, 9);
      expect(points[0]!.above).toBeCloseTo(before.above, 9);
    }
  });
  test('a part that stands on a stretch leaves the edge of the light where it was', () => {
    const text = observingLoftLaunch.replace(
      '  - space: 95 mm',
      '  - space: 40 mm\n  - stop: { name: S, diameter: 20 mm }\n  - space: 55 mm',
    );
    const cutLine = drawLine(lightLine(glance(readLaunch(text, 'launch'))), paper);
    const at = (of: typeof drawing) =>
      of.sections.flatMap(({ points }) => points).find(({ along }) => along > 640)!;
    expect(cutLine.sections).toHaveLength(drawing.sections.length + 1);
    expect(at(cutLine).above).toBeCloseTo(at(drawing).above, 9);
  });
  describe('after an earlier drawing', () => {
    const withFocalLength = (text: string) =>
      lightLine(
        glance(readLaunch(observingLoftLaunch.replace(/focal length: \{ value: [\d.]+ mm/u, text), 'launch')),
      );
    test('what a hand at the lens does not move stays where it is, to the last digit', () => {
      const turned = drawLine(withFocalLength('focal length: { value: 6.6 mm'), paper, drawing);
      expect(turned.scale).toBe(drawing.scale);
      expect(turned.sections.slice(0, 2)).toEqual(drawing.sections.slice(0, 2));
      expect(turned.parts.map(({ label }) => label)).toEqual(drawing.parts.map(({ label }) => label));
      // the facet moves to scale, and the light ends where it stands
      const facet = turned.parts.find(({ part: { kind } }) => kind === 'facet')!;
      expect(facet.along).toBeCloseTo(50 + facet.part.position / turned.scale, 9);
      expect(turned.sections.at(-2)!.points.at(-1)!.along).toBeCloseTo(facet.along, 9);
    });
    test('a path that grows is drawn to a new scale, as if there had been none', () => {
      const longer = withFocalLength('focal length: { value: 18 mm');
      expect(drawLine(longer, paper, drawing)).toEqual(drawLine(longer, paper));
    });
  });
  test('keeps labels apart, in order and on the paper', () => {
    const places = drawing.parts.map(({ label }) => label);
    for (const [i, place] of places.slice(1).entries())
      expect(place - places[i]!).toBeGreaterThanOrEqual(100 - 1e-9);
    expect(places[0]).toBeGreaterThanOrEqual(50);
    expect(places.at(-1)).toBeLessThanOrEqual(950);
  });
});

describe('the picture of the focus', () => {
  const pictureAt = (focalLength: number) =>
    lightLine(
      glance(readLaunch(observingLoftLaunch.replace('value: 6.2 mm', `value: ${focalLength} mm`), 'launch')),
    ).focus;
  test('has room for all of it, and is not half empty', () => {
    for (const focalLength of [3, 6.2, 9, 20, 60]) {
      const { half, coreRadius, suitedRadius, spotRadiusX, spotRadiusY } = pictureAt(focalLength);
      const widest = Math.max(coreRadius, suitedRadius, spotRadiusX, spotRadiusY);
      expect(half).toBeGreaterThan(1.3 * widest);
      expect(half).toBeLessThan(2 * widest); // a step of √2 on top of the margin of 1.35
    }
  });
  test('keeps its scale while a hand turns the lens a little', () => {
    expect(pictureAt(6.3).half).toBe(pictureAt(6.2).half);
  });
});

describe('a glance', () => {
  test('agrees with the forecast at the stated values', () => {
    const { output, ledger } = forecast(loft, { draws: 16, seed: 1 });
    const seen = glance(loft);
    // 1e-4: what its documentation promises where modes are summed
    expect(Math.abs(seen.outputPower / output.power.value - 1)).toBeLessThan(1e-4);
    expect(seen.ledger.map(({ id }) => id)).toEqual(ledger.map(({ id }) => id));
  });
  test('after another glance it sees the same', () => {
    expect(glance(loft, glance(loft)).outputPower).toBe(glance(loft).outputPower);
  });
});

describe('the power at each part', () => {
  const seen = glance(loft);
  const expected = forecast(loft);
  const { parts } = lightLine({ ...seen, ledger: withRanges(seen.ledger, expected.ledger) });

  test('has a range that holds it, from the laser to the far end, where it ends as the forecast does', () => {
    const sent = loft.laser.power.value;
    for (const part of parts) {
      const { low, high } = part.powerRange!;
      const power = (part.kind === 'laser' ? part.leaving : part.arriving) * sent;
      expect(low).toBeLessThan(power);
      expect(high).toBeGreaterThan(power);
      expect(powerRangeAt(part)).toMatch(/^\d.* to \d.* mW$/u);
    }
    const { low, high } = expected.output.power;
    // the same draws, multiplied in another order
    expect(expected.ledger.at(-1)!.left!.low / low).toBeCloseTo(1, 12);
    expect(expected.ledger.at(-1)!.left!.high / high).toBeCloseTo(1, 12);
  });
  test("of the laser it is the document's own: 11.5 mW ± 8 % is 9.99 to 13.01 mW nine times in ten", () => {
    // 1.6449 standard uncertainties either way: the normal law, standard tables
    const { low, high } = parts[0]!.powerRange!;
    expect(low).toBeCloseTo(11.5e-3 * (1 - 1.6449 * 0.08), 6);
    expect(high).toBeCloseTo(11.5e-3 * (1 + 1.6449 * 0.08), 6);
  });
  test('is not known behind the laser while only the stated values were looked at', () => {
    const [laser, ...others] = lightLine(seen).parts;
    expect(laser!.powerRange).not.toBeNull();
    const behindALoss = others.filter(({ arriving }) => arriving < 1);
    for (const part of behindALoss) expect(part.powerRange).toBeNull();
    for (const part of behindALoss) expect(powerRangeAt(part)).toBeNull();
  });
});

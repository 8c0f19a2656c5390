/** Beams that no laser has, or that are described twice. */
import { expect, test } from 'vitest';
import { amissIn, type Slip } from './launch-slips.ts';

const slips: readonly Slip[] = [
  {
    name: 'a beam better than perfect',
    line: 5,
    is: '  beam: { waist diameter: 0.8 mm, quality: 0.9 }',
    where: 'launch.yaml:5:44 laser.beam.quality',
    what: /`0\.9`/,
    mend: /a bare number from 1 to 1000, such as `1\.2`/,
    mended: '  beam: { waist diameter: 0.8 mm, quality: 1.2 }',
  },
  {
    name: 'limits that make a beam better than perfect',
    line: 5,
    is: '  beam: { waist diameter: 0.8 mm, quality: 1.05 within 10 % }',
    where: 'launch.yaml:5:44 laser.beam.quality',
    what: /the lower limit of `1\.05` is below `1`$/,
    mend: /`1\.078 within 0\.0775`/,
    mended: '  beam: { waist diameter: 0.8 mm, quality: 1.078 within 0.0775 }',
  },
  {
    name: 'a waist and a divergence at once',
    line: 5,
    is: '  beam: { waist diameter: 0.8 mm, divergence: 1 mrad }',
    where: 'launch.yaml:5:35 laser.beam.divergence',
    what: /`divergence` does not go together with `waist diameter`/,
    mend: /Take out `divergence`/,
    mended: '  beam: { waist diameter: 0.8 mm }',
  },
  {
    name: 'x and y beside a common waist',
    line: 5,
    is: '  beam: { waist diameter: 0.8 mm, x: { waist diameter: 1 mm }, y: { waist diameter: 1 mm } }',
    where: 'launch.yaml:5:35 laser.beam.x',
    what: /`x` does not go together with `waist diameter`/,
    mend: /Take out `x`/,
    refusals: 2,
    mended: '  beam: { waist diameter: 0.8 mm }',
  },
  {
    name: 'x without y',
    line: 5,
    is: '  beam: { x: { waist diameter: 1 mm } }',
    where: 'launch.yaml:5:9 laser.beam.y',
    what: /`y` is missing/,
    mend: /Write `y: \{ waist diameter: /,
    mended: '  beam: { x: { waist diameter: 1 mm }, y: { waist diameter: 1 mm } }',
  },
  {
    name: 'no description of the beam',
    line: 5,
    is: '  beam: { quality: 1.2 }',
    where: 'launch.yaml:5:9 laser.beam',
    what: /`waist diameter`, `diameter` or `x` with `y` is missing/,
    mend: /Write `waist diameter: /,
    mended: '  beam: { quality: 1.2, waist diameter: 1 mm }',
  },
  {
    // 4 M² λ/π is 0.662 mm mrad; written are 0.3 mm mrad
    name: 'less divergence than diffraction allows',
    line: 5,
    is: '  beam: { diameter: 1 mm, divergence: 0.3 mrad }',
    where: 'launch.yaml:5:39 laser.beam.divergence',
    what: /spreads by at least 0\.662 mrad/,
    mend: /Write `divergence: 0\.669 mrad` or more/,
    mended: '  beam: { diameter: 1 mm, divergence: 0.669 mrad }',
  },
  {
    // √(8 λ·2 m/π) is 1.63 mm
    name: 'a beam too narrow for a waist so far away',
    line: 5,
    is: '  beam: { diameter: 0.5 mm, at: 2 m }',
    where: 'launch.yaml:5:21 laser.beam.diameter',
    what: /at least 1\.63 mm wide there/,
    mend: /`waist diameter` and `waist position`/,
    mended: '  beam: { waist diameter: 0.5 mm, waist position: 2 m }',
  },
  {
    // half angle λ/(π w₀) above 1 rad
    name: 'a waist narrower than its light',
    line: 5,
    is: '  beam: { waist diameter: 1 µm, quality: 6 }',
    where: 'launch.yaml:5:27 laser.beam.waist diameter',
    what: /no beam narrower than 1\.99 µm/,
    mend: /Write `waist diameter: 2\.01 µm` or more/,
    mended: '  beam: { waist diameter: 2.01 µm, quality: 6 }',
  },
];

test.each(slips)('$name is refused where it stands, once, with a mend that works', (slip) => {
  expect(amissIn(slip)).toEqual([]);
});

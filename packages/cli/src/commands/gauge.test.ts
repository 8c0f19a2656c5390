import { readFileSync } from 'node:fs';
import { encode as encodePng } from 'fast-png';
import { encode as encodeJpeg } from 'jpeg-js';
import { describe, expect, test } from 'vitest';
import { type FakeFile, fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';

const folder = `${import.meta.dirname}/../../../bench/reference/gauges`;

interface Answer {
  readonly quantity: string;
  readonly value: number | null;
  readonly uncertainty: number | null;
  readonly low: number | null;
  readonly high: number | null;
  readonly verdict: string;
  readonly add: string | null;
}
interface SpotCase {
  readonly id: string;
  readonly kind: string;
  readonly inputs: { readonly file: string; readonly pixelPitch_m: number };
  readonly expected: {
    readonly truth: Readonly<Record<string, number>>;
    readonly suggestedTolerance: {
      readonly d4sigmaRelative: number | null;
      readonly azimuth_rad: number | null;
      readonly centroid_px: number | null;
    };
  };
}
const spots: readonly SpotCase[] = JSON.parse(readFileSync(`${folder}/gauges.json`, 'utf8')).cases.filter(
  ({ kind }: SpotCase) => kind === 'spot-image',
);

async function gauge(words: readonly string[], files: Readonly<Record<string, FakeFile>>) {
  const shell = fakeShell(files);
  const code = await run(['gauge', ...words], shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

async function answers(
  words: readonly string[],
  files: Readonly<Record<string, FakeFile>>,
): Promise<Map<string, Answer>> {
  const { code, printed, talked } = await gauge([...words, '--json'], files);
  expect(code, talked).toBe(0);
  return new Map((JSON.parse(printed) as Answer[]).map((answer) => [answer.quantity, answer]));
}

describe('a picture of a spot (ISO 11146-1 second moments, from memory; pictures drawn with known truth)', () => {
  test.each(spots.map((one) => [one.id, one] as const))('%s', async (_, one) => {
    const { truth, suggestedTolerance } = one.expected;
    const found = await answers(['spot-image', 'case.json'], {
      'case.json': JSON.stringify(one),
      [one.inputs.file]: readFileSync(`${folder}/${one.inputs.file}`),
    });
    for (const name of ['d4sigmaMajor_m', 'd4sigmaMinor_m']) {
      const answer = found.get(name)!;
      if (suggestedTolerance.d4sigmaRelative === null) {
        expect(answer.value).toBeNull();
        expect(answer.add).toMatch(/shorter exposure/u);
      } else {
        expect(Math.abs(answer.value! / truth[name]! - 1)).toBeLessThan(suggestedTolerance.d4sigmaRelative);
        expect(Math.abs(answer.value! - truth[name]!)).toBeLessThan(3 * answer.uncertainty!);
      }
    }
    for (const name of ['centroidX_px', 'centroidY_px'])
      if (suggestedTolerance.centroid_px !== null)
        expect(Math.abs(found.get(name)!.value! - truth[name]!)).toBeLessThan(suggestedTolerance.centroid_px);
    const azimuth = found.get('azimuthMajor_imageDown_rad')!;
    if (suggestedTolerance.azimuth_rad === null) expect(azimuth.value).toBeNull();
    else
      expect(Math.abs(azimuth.value! - truth.azimuthMajor_imageDown_rad!)).toBeLessThan(
        suggestedTolerance.azimuth_rad,
      );
  });
});

/** A Gaussian spot of 4σ widths 40 and 28 pixels, 0.4 rad turned, in codes to 255. */
function spot(width: number, height: number, x0: number, y0: number, peak = 200): Uint8Array {
  const [c, s] = [Math.cos(0.4), Math.sin(0.4)];
  return Uint8Array.from({ length: width * height }, (_, i) => {
    const [dx, dy] = [(i % width) - x0, Math.floor(i / width) - y0];
    const r = ((dx * c + dy * s) / 10) ** 2 + ((dy * c - dx * s) / 7) ** 2;
    return Math.min(255, Math.round(peak * Math.exp(-r / 2) + 6));
  });
}

const jpeg = (
  grey: Uint8Array,
  width: number,
  height: number,
  colour: readonly [number, number, number],
): Uint8Array =>
  encodeJpeg(
    {
      width,
      height,
      data: Uint8Array.from({ length: grey.length * 4 }, (_, i) =>
        i % 4 === 3 ? 255 : grey[i >> 2]! * colour[i % 4]!,
      ),
    },
    95,
  ).data;

describe('pictures from elsewhere', () => {
  test('a PNG with --pixel, and the same as a JPEG, grey and red', async () => {
    const grey = spot(160, 140, 82, 66);
    const png = encodePng({ width: 160, height: 140, data: grey, channels: 1, depth: 8 });
    const files = {
      'a.png': png,
      'b.jpg': jpeg(grey, 160, 140, [1, 1, 1]),
      'c.jpg': jpeg(grey, 160, 140, [1, 0.2, 0]),
    };
    for (const words of [['a.png'], ['b.jpg'], ['c.jpg', '--set', 'encoding=linear']]) {
      const found = await answers(['spot-picture', ...words, '--pixel', '4 µm'], files);
      // a background of 6 without noise is known to a third of a step, 1/700 of the peak: a few per cent of a width
      expect(Math.abs(found.get('d4sigmaMajor_m')!.value! / 160e-6 - 1), words[0]).toBeLessThan(0.03);
      expect(Math.abs(found.get('d4sigmaMinor_m')!.value! / 112e-6 - 1), words[0]).toBeLessThan(0.03);
      expect(Math.abs(found.get('azimuthMajor_imageDown_rad')!.value! - 0.4)).toBeLessThan(0.02);
    }
  });
  test('a spot cut by the frame, a full one and a blank picture get no figure', async () => {
    const of = (grey: Uint8Array) =>
      encodePng({ width: 160, height: 140, data: grey, channels: 1, depth: 8 });
    const files = {
      'cut.png': of(spot(160, 140, 150, 66)),
      'full.png': of(spot(160, 140, 80, 66, 400)),
      'blank.png': of(new Uint8Array(160 * 140).fill(9)),
    };
    const because = async (name: string): Promise<string> => {
      const { printed } = await gauge(['spot-picture', name], files);
      return printed.replace(/\s+/gu, ' ');
    };
    expect(await because('cut.png')).toContain('The frame cuts the spot.');
    expect(await because('full.png')).toContain('shorter exposure');
    expect(await because('blank.png')).toContain('No single spot stands out');
  });
});

const edgeTable = (separator: string, comma: boolean, heading: string): string => {
  const rows = [0.01, 0.02, 0.07, 0.21, 0.5, 0.79, 0.93, 0.98, 1].map((power, i) =>
    [i * 0.25, power]
      .map((value) => (comma ? String(value).replace('.', ',') : String(value)))
      .join(separator),
  );
  return [heading, ...rows].join('\r\n');
};

describe('tables', () => {
  test('commas, semicolons with decimal commas, and tabs say the same', async () => {
    const files = {
      'a.csv': edgeTable(',', false, 'position (mm),power (mW)'),
      'b.csv': edgeTable(';', true, '"Position [mm]";"Power [mW]"'),
      'c.csv': `# blade moved upwards\n${edgeTable('\t', false, 'x_mm\tmeter_mV')}`,
    };
    const found = await Promise.all(Object.keys(files).map((name) => answers(['knife-edge', name], files)));
    const radii = found.map((one) => one.get('radius1e2_m')!.value!);
    expect(radii[1]).toBe(radii[0]);
    expect(radii[2]).toBe(radii[0]);
    // half the power between 0.79 and 0.21, ±0.806 deviations (tables of Φ), lies 0.5 mm wide: radius 2·0.25/0.806
    expect(radii[0]).toBeGreaterThan(0.55e-3);
    expect(radii[0]).toBeLessThan(0.69e-3);
  });
  test('a wavelength may stand above the table, in a column, or be typed', async () => {
    const z = [-30, -20, -12, -8, -4, 0, 4, 8, 12, 20, 30];
    const rows = z.map((at) => [at, 100 * Math.hypot(1, at / 10)] as const);
    const table = `z (mm),d (µm)\n${rows.map((row) => row.join(',')).join('\n')}\n`;
    const files = {
      'above.csv': `# wavelength: 633 nm\n${table}`,
      'column.csv': `z (mm),d (µm),wavelength (nm)\n${rows.map((row) => `${row.join(',')},633`).join('\n')}\n`,
      'none.csv': table,
    };
    const m2 = (Math.PI * 100e-6 * 10e-3) / (4 * 633e-9); // π d θ/4λ, θ = d/z_R
    for (const words of [['above.csv'], ['column.csv'], ['none.csv', '--wavelength', '633 nm']]) {
      const found = await answers(['caustic', ...words], files);
      expect(Math.abs(found.get('m2')!.value! / m2 - 1)).toBeLessThan(1e-6);
    }
  });
  test('a level may stand in a column of its own, and a pixel may be given in metres', async () => {
    const files = {
      'cone.csv': 'reading_z_mm,radius_mm,level\n10,2.2,5%\n20,4.5,5%\n30,6.7,5%\n40,9.0,5%\n50,11.3,5%\n',
      'spot.png': encodePng({ width: 160, height: 140, data: spot(160, 140, 82, 66), channels: 1, depth: 8 }),
    };
    expect((await answers(['far-field-cone', 'cone.csv'], files)).get('na5percent')!.verdict).toBe(
      'determined',
    );
    const [a, b, c] = await Promise.all(
      ['4e-6', '4um', '4 µm'].map((pixel) => answers(['spot-picture', 'spot.png', '--pixel', pixel], files)),
    );
    for (const other of [b!, c!])
      expect(other.get('d4sigma_m')!.value).toBeCloseTo(a!.get('d4sigma_m')!.value!, 12);
  });
  const refusedTables: readonly (readonly [string, string, RegExp])[] = [
    ['empty', '', /no readings/u],
    ['no heading', '0,1\n1,2\n', /nothing says what the columns are/u],
    ['decimal commas between commas', 'position (mm),power (mW)\n0,25,1,5\n', /Decimal commas/u],
    ['words among the numbers', 'position (mm),power (mW)\n0.25,bright\n', /`bright` is no number/u],
    ['wrong unit', 'position (mW),power (mm)\n0,1\n', /`mW`, which is not a length/u],
    ['missing column', 'power (mW)\n1\n', /there is no column `position`/u],
    ['too few readings', 'position (mm),power (mW)\n0,1\n1,2\n', /there are 2 readings/u],
  ];
  test.each(refusedTables)('%s is refused with a mend', async (_, text, said) => {
    const { code, talked, printed } = await gauge(['knife-edge', 'a.csv'], { 'a.csv': text });
    expect(code).toBe(2);
    expect(printed).toBe('');
    expect(talked.replace(/\s+/gu, ' ')).toMatch(said);
  });
  test('ten thousand readings are no trouble', async () => {
    const rows = Array.from(
      { length: 10_000 },
      (_, i) => `${i / 1000},${1 / (1 + Math.exp((5000 - i) / 300))}`,
    );
    const found = await answers(['knife-edge', 'a.csv'], {
      'a.csv': `position (mm),power\n${rows.join('\n')}`,
    });
    expect(found.get('centre_m')!.value).toBeCloseTo(5e-3, 5);
  });
});

test('the list names every gauge, and an unknown one is refused with the list', async () => {
  const { printed } = await gauge(['--list', '--json'], {});
  const names = (JSON.parse(printed) as { name: string }[]).map(({ name }) => name);
  for (const name of [
    'knife-edge',
    'caustic',
    'far-field-cone',
    'far-field-profile',
    'spot-picture',
    'two-distances',
  ])
    expect(names).toContain(name);
  const unknown = await gauge(['knife-egde', 'x.csv'], {});
  expect(unknown.code).toBe(2);
  expect(unknown.talked).toContain('knife-edge');
  const wrong = await gauge(['spot-picture', 'a.csv'], {
    'a.csv': edgeTable(',', false, 'position (mm),power (mW)'),
  });
  expect(wrong.talked).toContain('takes a picture');
});

describe('two pictures of a card', () => {
  const png = (x: number, y: number, peak = 200): Uint8Array =>
    encodePng({ width: 160, height: 140, data: spot(160, 140, x, y, peak), channels: 1, depth: 8 });
  const files = { 'f.png': png(92, 56), 'r.png': png(82, 66), 'full.png': png(82, 66, 900) };

  test('spots ten pixels apart each way, at ten pixels a millimetre, lie a millimetre apart, right and up', async () => {
    for (const scale of [
      ['--scale', '10px/mm'],
      ['--scale', '0.1mm'],
      ['--corners', '0,0 100,0 100,80 0,80', '--rectangle', '10 mm x 8 mm'],
    ]) {
      const found = await answers(
        ['card-offset', 'f.png', 'r.png', ...scale, '--set', 'encoding=linear'],
        files,
      );
      // a spot without speckle, drawn to a code: some hundredths of a pixel
      expect(found.get('horizontalOffset_right_m')!.value).toBeCloseTo(1e-3, 5);
      expect(found.get('verticalOffset_up_m')!.value).toBeCloseTo(1e-3, 5);
      expect(found.get('offset_m')!.value).toBeCloseTo(Math.SQRT2 * 1e-3, 5);
    }
  });

  test.each([
    [['card-offset', 'f.png', '--scale', '10 px/mm'], /takes two pictures/u],
    [['card-offset', 'f.png', 'r.png'], /scale is missing\. mend: Add --set "scale=12\.5 px\/mm"/u],
    [['card-offset', 'f.png', 'full.png', '--scale', '10 px/mm'], /reverse picture.*clipped/u],
    [['spot-picture', 'f.png', 'r.png'], /`r.png` is a second/u],
  ])('%j is refused', async (words, why) => {
    const { code, talked } = await gauge(words, files);
    expect(code).toBe(2);
    expect(talked.replace(/\s+/gu, ' ')).toMatch(why);
  });
});

import { describe, expect, test } from 'vitest';
import { shortCautions } from '../caution/short-cautions.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { forecast } from './forecast.ts';
import { inventedLaunch as launch } from './invented-launch.ts';

const few = { draws: 32, seed: 5 } as const;
const read = (text: string) => readLaunch(text, 'test.yaml');

/** A small spot in the middle of a wide core: its sum over the modes ended 4e-8 above all the light there is. */
test('no more is guided than arrives', () => {
  const { coupling } = forecast(
    read(`coreward: 1
laser: { wavelength: 1064 nm, power: 1 mW, beam: { diameter: 0.65 mm, at: 138 mm } }
path: [ { space: 441 mm } ]
collimator: { focal length: 13.8 mm, clear aperture: 8.3 mm }
fibre: { type: G.651.1, ends: { in: angled 8° } }
misalignment: { x: 0 µm }
`),
    few,
  );
  expect(coupling.guided).toBeLessThanOrEqual(1);
  expect(coupling.guided).toBeGreaterThan(0.999);
});

describe('truths that a launch is told', () => {
  const ids = (text: string) => forecast(read(text), few).remarks.map(({ id }) => id);

  test('a fibre with several modes, and the core that would have one', () => {
    const { remarks } = forecast(read(launch({ core: '8.2 µm', quality: '1.3' })), few);
    expect(remarks.find(({ id }) => id === 'several-modes')?.text).toContain(
      'Total power hides misalignment',
    );
    // 2.405 λ/(π NA) = 3.39 µm: V of the first cut-off of a step, table of zeros of J0 (MathWorld, from memory)
    expect(remarks.find(({ id }) => id === 'fewer-modes')?.text).toContain('a core below 3.4 µm');
    expect(ids(launch({}))).not.toContain('several-modes');
  });

  test('a collimator focused for other light: how far and which way', () => {
    const text = launch({ focus: '635 nm', space: '10 mm', collimator: '' }).replace(
      'focal length: 5 mm, focal shift: 0',
      'focal length: { value: 5 mm, at: 635 nm }, glass: N-BK7',
    );
    expect(forecast(read(text), few).remarks.find(({ id }) => id === 'refocus')?.text).toContain(
      'towards the lens',
    );
  });

  test('a spot too small, too large, an aperture overfilled, a clipped beam, a bend, an output lens set for other light', () => {
    expect(ids(launch({ waist: '3 mm' }))).toContain('spot-size');
    expect(ids(launch({ waist: '0.4 mm', space: '10 mm' }))).toContain('spot-size');
    expect(ids(launch({ core: '50 µm', aperture: '0.2', waist: '4 mm', focal: '6 mm' }))).toContain(
      'aperture-overfilled',
    );
    expect(ids(launch({ collimator: ', clear aperture: 0.9 mm' }))).toContain('lens-clip-cuts');
    expect(ids(launch({ fibre: ', bends: [ { radius: 2 mm, turns: 5 } ]' }))).toContain('bend-1-costs');
    const output = `${launch({})}output: { collimator: { focal length: { value: 8 mm, at: 635 nm }, focus: { set for: 635 nm } } }\n`;
    expect(ids(output)).toContain('output-refocus');
  });

  test('cladding light on the meter, an attenuation that is a guess, a default that dominates', () => {
    const short = launch({ core: '3.2 µm', waist: '3 mm' }).replace('length: 3 m', 'length: 0.1 m');
    expect(ids(short)).toContain('cladding-light');
    expect(ids(launch({ waist: '3 mm', fibre: ', coating: strips' }))).not.toContain('cladding-light');
    expect(ids(launch({}).replace('length: 3 m, attenuation: 30 dB/km', 'length: 60 m'))).toContain(
      'attenuation-guessed',
    );
    expect(ids(launch({}))).toContain('default-doubt-dominates');
  });

  test('cautions are those of the walk, and who decides stands last, once', () => {
    const told = forecast(read(launch({})), few).cautions;
    expect(told).toEqual(shortCautions(read(launch({}))));
    expect(told.filter(({ id }) => id === 'who-decides')).toHaveLength(1);
    expect(told.at(-1)?.id).toBe('who-decides');
  });

  // index by the glass's published Sellmeier formula (the catalogue's six constants, from memory), worked in Python: 1.51501 at
  // 635 nm and 1.51947 at 532 nm; a thin lens's focal length goes as 1/(n − 1), so 8 mm become 68.7 µm shorter; red light the
  // other way
  test.each([
    ['532 nm', '635 nm', '69 µm towards the lens'],
    ['635 nm', '532 nm', '69 µm away from the lens'],
  ])('the end before an output lens in light of %s, set for %s, is moved %s', (wavelength, setFor, move) => {
    const output = `output: { collimator: { focal length: { value: 8 mm, at: ${setFor} }, glass: N-BK7, focus: { set for: ${setFor} } } }\n`;
    const { remarks } = forecast(read(`${launch({ wavelength })}${output}`), few);
    expect(remarks.find(({ id }) => id === 'output-refocus')?.text).toContain(`move the fibre end ${move}.`);
  });

  test('what a focus thread must turn is the way over its advance', () => {
    const text = launch({ focus: '635 nm, thread: 0.5 mm', space: '10 mm' }).replace(
      'focal length: 5 mm, focal shift: 0',
      'focal length: { value: 5 mm, at: 635 nm }, glass: N-BK7',
    );
    const told = forecast(read(text), few).remarks.find(({ id }) => id === 'refocus')?.text ?? '';
    const [, way, turns] = /fibre tip (\d+) µm .*, (\S+) turn of/u.exec(told) ?? [];
    // both are told in two digits
    expect((Number(turns) * 500) / Number(way)).toBeCloseTo(1, 1);
  });

  test.each([['0.4 mm'], ['2.5 mm']])(
    'a beam of %s is told by how much wider it would do as another lens',
    (waist) => {
      const { remarks } = forecast(read(launch({ waist, space: '10 mm' })), few);
      const told = remarks.find(({ id }) => id === 'spot-size')?.text ?? '';
      const [, lens, wider] =
        /of about (\S+) mm instead of 5 mm .* beam (\S+) times as wide/u.exec(told) ?? [];
      // λf/(πw) behind a lens (S. A. Self, Appl. Opt. 22, 658 (1983), from memory): only f/w counts; both in two digits
      expect((Number(lens) / 5) * Number(wider)).toBeCloseTo(1, 1);
    },
  );

  test('what the lens clips is to be changed where it costs, not where what is left suits as well', () => {
    const clipped = (waist: string, aperture: string) =>
      forecast(
        read(launch({ waist, space: '10 mm', collimator: `, clear aperture: ${aperture}` })),
        few,
      ).remarks.find(({ id }) => id === 'lens-clip-cuts');
    const costly = clipped('3 mm', '1 mm');
    expect(costly?.text).toMatch(/better than the whole would.* Use a wider lens/u);
    expect(costly?.kind).toBe('change');
  });
});

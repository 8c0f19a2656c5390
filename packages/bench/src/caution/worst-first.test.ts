import { describe, expect, test } from 'vitest';
import { cautionSections } from './caution-sections.ts';
import type { Cautions } from './cautions.ts';
import { upToText } from './figures-of-caution.ts';
import type { Hazard } from './hazard.ts';
import { hazardOf, walked } from './invented-benches.ts';
import { readFirst } from './read-first.ts';
import { shortened } from './short-cautions.ts';
import { alignmentText } from './summary-texts.ts';

const wide =
  '{ profile: step, core diameter: 200 µm ± 0 µm, numerical aperture: 0.22 ± 0, cladding diameter: 220 µm, length: 2 m, attenuation: 10 dB/km }';
const yag = { wavelength: '1064 nm ± 0 nm', fibre: wide };
const mirror = '[ { mirror: { name: M1, angle: 45°, reflectance: 97 % } }, { space: 100 mm } ]';

/** Benches from a pointer to pulses, with what adds and what is not covered. */
const benches: Readonly<Record<string, () => Cautions>> = {
  pointer: () => walked({ power: '1 mW ± 0 mW' }, { 'highest-power': '1 mW' }),
  green: () => walked({ wavelength: '520 nm ± 1 nm', power: '50 mW', path: mirror }),
  blue: () => walked({ wavelength: '450 nm ± 0 nm', power: '5 mW' }),
  'two lights': () => walked({}, { 'other-light': '650 nm at 5 mW' }),
  infrared: () => walked({ wavelength: '808 nm ± 0 nm', power: '1 W', fibre: wide }),
  pulsed: () => walked({ ...yag, power: '100 mW ± 0 mW' }, { emission: '10 ns at 20 Hz' }),
  'weak pulses': () => walked({ ...yag, power: '1 µW ± 0 µW' }, { emission: '10 ns at 20 Hz' }),
  'with a reference': () =>
    walked({ power: '50 mW', rest: 'reference: { wavelength: 635 nm, power: 0.8 mW }' }),
  'outside the tables': () =>
    walked({
      wavelength: '266 nm',
      collimator: '{ focal length: 8 mm, focal shift: 0, surfaces: { count: 2, coating: 1 % } }',
      fibre:
        '{ profile: step, core diameter: 4 µm, numerical aperture: 0.12, length: 2 m, attenuation: 100 dB/km }',
    }),
};

const hurtsPeople = ({ atRisk }: Hazard): boolean =>
  atRisk.some((one) => one === 'eye' || one === 'other people' || one === 'skin');
const isAbove = ({ level }: Hazard): boolean => level !== 'mind' && level !== 'under the limit';
const reach = ({ hazardDistance, longer }: Hazard): number =>
  Math.max(hazardDistance ?? 0, longer?.hazardDistance ?? 0);
const times = ({ timesLimit, longer }: Hazard): number => Math.max(timesLimit ?? 0, longer?.timesLimit ?? 0);
const text = (cautions: Cautions): string => JSON.stringify(cautionSections(cautions));

// invariants of the order, wanted of every bench; no outside numbers
describe.each(Object.entries(benches))('the worst stands first: %s', (_, bench) => {
  const cautions = bench();
  const { hazards } = cautions;

  test('people stand before parts of their level, and before every part that is not evaluated', () => {
    hazards.forEach((part, i) => {
      if (hurtsPeople(part)) return;
      for (const behind of hazards.slice(i + 1).filter(hurtsPeople)) {
        expect(behind.level, `${part.id} before ${behind.id}`).not.toBe(part.level);
        if (part.level === 'not evaluated') expect(isAbove(behind), `${part.id}, ${behind.id}`).toBe(false);
      }
    });
  });

  test('the short form begins with what the long one begins with', () => {
    expect(shortened(cautions)[0]!.id).toBe(hazards[0]!.id);
  });

  test('an eye that is in for more, in distance and times, stands before one in for less', () => {
    const eyes = hazards.filter(
      ({ atRisk, hazardDistance }) => atRisk.includes('eye') && hazardDistance !== null,
    );
    eyes.forEach((first, i) => {
      for (const behind of eyes.slice(i + 1).filter(({ level }) => level === first.level)) {
        expect(reach(behind), `${first.id} before ${behind.id}`).toBeLessThanOrEqual(reach(first));
        if (reach(behind) === reach(first)) expect(times(behind)).toBeLessThanOrEqual(times(first));
      }
    });
  });

  test('no eye reaches farther, or is severer, than the headline', () => {
    const [worst] = hazards;
    const evaluated = hazards.filter((one) => one.level !== 'not evaluated' && hurtsPeople(one));
    if (worst?.level === 'not evaluated' || worst === undefined || !isAbove(worst)) return;
    for (const one of evaluated) expect(reach(one), one.id).toBeLessThanOrEqual(reach(worst));
  });

  test('the table and what to do keep that order', () => {
    const sections = cautionSections(cautions);
    const table = sections[1]?.blocks[0];
    const rows = table?.kind === 'table' ? table.rows : [];
    const places = rows.flatMap((row) => (row.kind === 'cells' ? [row.cells[0]] : []));
    const numbered = hazards.filter(({ level, quantity }) => level !== 'mind' && quantity !== 'none');
    expect(places).toEqual(numbered.map(({ point }) => `  ${point}`));
    const list = sections[2]?.blocks[0];
    const items = list?.kind === 'list' ? list.items : [];
    const advice = [...new Set(hazards.filter(isAbove).map(({ doNow }) => doNow))];
    items.forEach((item, i) => {
      expect(item.startsWith(advice[i]!)).toBe(true);
    });
  });

  test('every distance is said in words that fit', () => {
    expect(text(cautions)).not.toMatch(/up to the wall|up to from|up to to|\bwall\b"/u);
  });
});

describe('pulses', () => {
  const pulsed = () => benches.pulsed!();

  test('the headline is the eye, not the facet that nobody evaluated', () => {
    const [worst] = pulsed().hazards;
    expect(worst?.atRisk).toContain('eye');
    expect(worst?.level).toBe('severe');
    expect(text(pulsed())).not.toContain('Worst, not evaluated');
  });

  test('no number stands where the facet is not evaluated, and the ferrule’s is of its average heat', () => {
    const facet = hazardOf(pulsed(), 'facet-load');
    expect([facet.value, facet.limit, facet.timesLimit, facet.unit]).toEqual([null, null, null, null]);
    expect(text(pulsed())).not.toContain('MW/cm²');
    const ferrule = hazardOf(pulsed(), 'ferrule-load');
    expect(ferrule.what).toMatch(/on average.*what single pulses do there is not evaluated/u);
    expect(ferrule.quantity).toContain('heat');
  });
});

describe('a fuse under pulses', () => {
  const silica = '{ profile: step, core diameter: 8 µm, numerical aperture: 0.12, length: 2 m }';
  const fuse = (power: string, emission: string) =>
    walked({ wavelength: '1064 nm ± 0 nm', power, fibre: silica }, { emission }).hazards.find(
      ({ id }) => id === 'fibre-fuse',
    );

  // S. Todoroki (NIMS): some watts of steady light. 100 mW, twice for the highest power nobody told, in 10 ns at 20 kHz: 1 kW
  test('an average below a watt does not hide peaks of a kilowatt: not evaluated, with no number', () => {
    const found = fuse('100 mW ± 0 mW', '10 ns at 20 kHz');
    expect(found?.level).toBe('not evaluated');
    expect([found?.value, found?.limit, found?.timesLimit]).toEqual([null, null, null]);
    expect(found?.what).toContain('1 kW');
    expect(fuse('100 mW ± 0 mW', 'continuous')).toBeUndefined();
  });
  test('a lamp-like train, whose peaks stay below a watt, has none', () => {
    // 2 mW in half of the time: 4 mW
    expect(fuse('1 mW ± 0 mW', '5 ms at 100 Hz')).toBeUndefined();
  });
  test('watts on average are serious either way, and are called an average', () => {
    const found = fuse('2 W ± 0 W', '10 ns at 20 kHz');
    expect(found?.level).toBe('serious');
    expect(found?.quantity).toBe('average power in the fibre');
    expect(found?.what).toContain('not evaluated');
  });
});

describe('the short list of a forecast', () => {
  test('names the sum of all light on either side, which reaches farther than each of them', () => {
    for (const [name, bench] of Object.entries(benches)) {
      const cautions = bench();
      const above = cautions.hazards.filter(isAbove);
      const told = new Set(shortened(cautions).map(({ id }) => id));
      for (const { id } of above.filter((hazard) => hazard.id.startsWith('together')))
        expect(told, `${name} ${id}`).toContain(id);
    }
  });
});

describe('a long list', () => {
  test('folds only what passes no limit, and loses nothing', () => {
    for (const [name, bench] of Object.entries(benches)) {
      const { hazards } = bench();
      const { first, folded } = readFirst(hazards);
      expect([...first, ...folded].map(({ id }) => id).toSorted(), name).toEqual(
        hazards.map(({ id }) => id).toSorted(),
      );
      for (const { level, timesLimit, atRisk } of folded) {
        expect(['mind', 'under the limit'], name).toContain(level);
        if (atRisk.includes('eye') && timesLimit !== null) expect(timesLimit, name).toBeLessThanOrEqual(1);
      }
    }
  });
});

// mathematics: r = √(4·P/(π·E) − a²)/φ with a = 2f·tan(asin NA)/1.7 and φ = core/f; 90 % of a normal doubt is 1.6449
// standard doubts on each side. 808 nm, 1 W, twice for its grains; E = 10·10^(0.002·108) W/m² as in ICNIRP 2013
test('behind a lens the narrow end of a core and the long end of the focal length reach farthest', () => {
  const reached = (core: string, focal: string) =>
    hazardOf(
      walked(
        {
          wavelength: '808 nm ± 0 nm',
          power: '1 W ± 0 W',
          beam: '{ waist diameter: 6 mm ± 0 mm, waist position: 0 mm ± 0 mm, quality: 1 within 0 }',
          fibre: `{ profile: step, core diameter: 105 µm ± ${core}, cladding diameter: 125 µm, numerical aperture: 0.22 ± 0, length: 2 m, attenuation: 10 dB/km }`,
          rest: `output: { collimator: { focal length: 10 mm ± ${focal} } }`,
        },
        { 'highest-power': '1 W', emission: 'continuous' },
      ),
      'far-end-collimated',
    ).hazardDistance!;
  const expected = (core: number, focal: number) => {
    const widest = Math.sqrt((4 * 2) / (Math.PI * 10 * 10 ** 0.216));
    const begins = (2 * focal * Math.tan(Math.asin(0.22))) / 1.7;
    return Math.sqrt(widest ** 2 - begins ** 2) / (core / focal);
  };
  const end = 1.6449;
  // the quantile has five digits
  expect(reached('0 µm', '0 mm') / expected(105e-6, 10e-3)).toBeCloseTo(1, 4);
  expect(reached('5 %', '0 mm') / expected(105e-6 * (1 - 0.05 * end), 10e-3)).toBeCloseTo(1, 4);
  expect(reached('5 %', '2 %') / expected(105e-6 * (1 - 0.05 * end), 10e-3 * (1 + 0.02 * end))).toBeCloseTo(
    1,
    4,
  );
});

test('of lines that add, the headline is their sum', () => {
  const { hazards } = benches.green!();
  expect(hazards[0]?.id).toBe('together-launch-side');
  expect(hazards[0]?.timesLimit).toBeGreaterThan(hazardOf(benches.green!(), 'laser-exit').timesLimit!);
});

describe('nobody is told to mind what is not there', () => {
  const names = ({ questions }: Cautions) => questions.map(({ name }) => name);
  const ids = ({ hazards }: Cautions) => hazards.map(({ id }) => id);

  test('mirrors only where there is one', () => {
    expect(ids(benches.pointer!())).not.toContain('bumped-mirror');
    expect(names(benches.pointer!())).not.toContain('beam-height');
    expect(ids(benches.green!())).toContain('bumped-mirror');
    expect(names(benches.green!())).toContain('beam-height');
  });

  // a laser laboratory's page after IEC 60825: key and interlock are for classes 3B and 4, read
  test('key and interlock only for light like class 3B and 4, solvents only near an end that may get hot', () => {
    const pointer = benches.pointer!();
    expect(ids(pointer)).not.toContain('no-interlock');
    expect(names(pointer)).not.toContain('interlock');
    expect(text(pointer)).not.toContain('olvent');
    for (const name of ['green', 'infrared', 'pulsed', 'outside the tables']) {
      expect(ids(benches[name]!()), name).toContain('no-interlock');
      expect(names(benches[name]!()), name).toContain('interlock');
    }
    expect(text(benches.infrared!())).toContain('solvent');
    // more light than the launch tells of asks again
    expect(names(walked({ power: '1 mW' }, { 'highest-power': '30 mW' }))).toContain('interlock');
    // and an answer that does not concern the bench any more is still taken
    expect(ids(walked({ power: '1 mW' }, { 'highest-power': '1 mW', interlock: 'yes' }))).not.toContain(
      'no-interlock',
    );
    expect(ids(walked({}, { 'beam-height': 'yes' }))).not.toContain('bumped-mirror');
  });
});

test('a distance without a room ends at whatever it meets', () => {
  expect(upToText(2000, null, 'the exit')).toBe('from the exit to whatever it meets, over 1 km in the open');
  expect(upToText(20, 6, 'the exit')).toBe('all the way from the exit to the wall it meets');
  expect(upToText(20, 6, null)).toBe('all the way to the wall it meets');
  expect(upToText(84, null, 'the lens')).toBe('at up to 84 m from the lens');
  expect(text(walked({ power: '10 W' }))).toContain('"over 1 km"');
  expect(text(walked({ power: '50 mW' }, { 'room-length': '6 m' }))).toContain('"to the wall"');
});

test('no question prints marks of code', () => {
  for (const { asks } of benches.green!().questions) expect(asks).not.toContain('`');
  expect(alignmentText(null)).not.toContain('`');
});

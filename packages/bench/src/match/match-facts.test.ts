import { describe, expect, test } from 'vitest';
import type { Drawer } from '../drawer/drawer.ts';
import { readDrawer } from '../drawer/read-drawer.ts';
import { Refusal } from '../refusal.ts';
import { match } from './match.ts';
import type { MatchedPair, MatchPurpose } from './matched.ts';

// What people at such benches expect of a ranking: common practice, no source, unless a test says otherwise.

const read = (text: string): Drawer => readDrawer([{ text: `coreward: 1\n${text}`, file: 'drawer.yaml' }]);

const green = '{ name: green, wavelength: 532 nm, power: 5 mW, beam: { waist diameter: 1 mm, quality: 1 } }';
const asphere = 'focal shift: 0, surfaces: { count: 2, coating: 0.5 % }, spherical aberration: 0';
const lens = '{ name: f5, focal length: 5 mm, focal shift: 0, surfaces: { count: 2, coating: 0.5 % } }';
const clean =
  'core diameter: 3.2 µm, numerical aperture: 0.12, length: 2 m, ends: { in: coated, out: coated }';

/** One laser, lenses and fibres, each a flow mapping; a path between. */
const drawerOf = (parts: {
  readonly laser?: string;
  readonly lenses?: readonly string[];
  readonly fibres?: readonly string[];
  readonly path?: string;
}): Drawer =>
  read(`lasers: [${parts.laser ?? green}]
collimators: [${(parts.lenses ?? [lens]).join(', ')}]
fibres: [${(parts.fibres ?? [`{ name: single, ${clean} }`]).join(', ')}]
path: ${parts.path ?? '[{ space: 200 mm }]'}
`);

const only = (drawer: Drawer, purpose: MatchPurpose = 'total'): MatchedPair =>
  match(drawer, { purpose, laser: null }).pairs[0]!;

describe('more light when the spot is right', () => {
  // f = πDw/(2λ) makes a collimated beam of diameter D a spot of radius w (Self, Appl. Opt. 22, 658 (1983), from memory)
  const focal = [2, 3, 4, 4.7, 6, 8, 12];
  const drawer = drawerOf({
    lenses: focal.map((f) => `{ name: f${f}, focal length: ${f} mm, ${asphere} }`),
    path: '[{ space: 20 mm }]',
  });
  const { pairs } = match(drawer, { purpose: 'total', laser: null });

  test('the lens whose focal length fits beam and mode wins, and the further off, the worse', () => {
    // w of the mode: 1.15 core radii at V = 2.27 by Marcuse's fit (Bell Syst. Tech. J. 56, 703 (1977), from memory)
    const fits = (Math.PI * 1e-3 * 1.15 * 1.6e-6) / (2 * 532e-9);
    const nearest = [...focal].sort(
      (a, b) => Math.abs(Math.log((a * 1e-3) / fits)) - Math.abs(Math.log((b * 1e-3) / fits)),
    );
    expect(pairs[0]!.collimator).toBe(`f${nearest[0]}`);
    const score = (f: number) => pairs.find(({ collimator }) => collimator === `f${f}`)!.score.value;
    for (const [shorter, longer] of [
      [2, 3],
      [3, 4],
      [4, 4.7],
    ] as const)
      expect(score(shorter)).toBeLessThan(score(longer));
    for (const [shorter, longer] of [
      [6, 8],
      [8, 12],
    ] as const)
      expect(score(shorter)).toBeGreaterThan(score(longer));
  });

  test('on either side of it the spot is told to be too small or too large', () => {
    const reason = (f: number) => pairs.find(({ collimator }) => collimator === `f${f}`)!.reason;
    expect(reason(2).id).toBe('spot-too-small');
    expect(reason(12).id).toBe('spot-too-large');
    // a spot is as much larger as the lens is longer; the beam is nearly collimated, z_R = 1.5 m
    expect(reason(12).spotDiameter / reason(2).spotDiameter).toBeCloseTo(6, 1);
  });

  test('what a wrong spot costs is the overlap of two Gaussians, to what a mode differs from one', () => {
    const { reason } = pairs.find(({ collimator }) => collimator === 'f8')!;
    const ratio = reason.spotDiameter / reason.suitedDiameter;
    expect(Math.abs(reason.transmission - (2 / (ratio + 1 / ratio)) ** 2)).toBeLessThan(0.03);
  });
});

describe('the one reason is the loss that was put there', () => {
  const fitting = `{ name: f5, focal length: 5 mm, ${asphere} }`;
  // [reason, the parts that make it]
  const cases: readonly (readonly [MatchedPair['reason']['id'], Parameters<typeof drawerOf>[0]])[] = [
    ['beam-quality', { laser: green.replace('quality: 1', 'quality: 2') }],
    [
      'ellipticity',
      {
        laser:
          '{ name: oval, wavelength: 532 nm, power: 5 mW, beam: { x: { waist diameter: 2 mm, quality: 1 }, y: { waist diameter: 0.5 mm, quality: 1 } } }',
      },
    ],
    [
      'aberration',
      {
        lenses: [
          `{ name: ball, focal length: 5 mm, focal shift: 0, clear aperture: 2 mm, spherical aberration: 20 }`,
        ],
      },
    ],
    ['clipped', { lenses: [`{ name: pinhole, focal length: 5 mm, clear aperture: 0.7 mm, ${asphere} }`] }],
    [
      'surfaces',
      {
        lenses: ['{ name: bare, focal length: 5 mm, focal shift: 0, surfaces: { count: 8, coating: none } }'],
      },
    ],
    ['path', { path: '[{ space: 100 mm }, { mirror: { reflectance: 60 % } }, { space: 100 mm }]' }],
    ['attenuation', { fibres: [`{ name: long, ${clean.replace('2 m', '100 m')}, attenuation: 60 dB/km }`] }],
    ['joints', { fibres: [`{ name: patched, ${clean}, connectors: { between: [{ loss: 3 dB }] } }`] }],
    [
      'bends',
      { fibres: [`{ name: kinked, ${clean.replace('3.2', '2.4')}, bends: [{ radius: 8 mm, turns: 20 }] }`] },
    ],
    [
      'end-facets',
      { fibres: [`{ name: plain, ${clean.replace('in: coated, out: coated', 'in: flat, out: flat')} }`] },
    ],
    [
      'aim',
      {
        laser: green.replace('1 mm', '12 mm'),
        lenses: [`{ name: long, focal length: 60 mm, ${asphere} }`],
        path: '[{ mirror: { reflectance: 99 %, mount: { lever: 10 mm, pitch: 0.7 mm } } }, { space: 100 mm }]',
      },
    ],
  ];

  test.each(cases)('%s', (id, parts) => {
    const { reason } = only(drawerOf({ lenses: [fitting], ...parts }));
    expect(reason.id).toBe(id);
    expect(reason.transmission).toBeLessThan(0.95);
  });

  test('without a lens the beam is far too large', () => {
    const pair = only(drawerOf({ lenses: [] }));
    expect(pair.collimator).toBe('none');
    expect(pair.reason.id).toBe('spot-too-large');
    expect(pair.score.value).toBeLessThan(1e-3);
  });
});

describe('what a drawer is for', () => {
  const drawer = drawerOf({
    lenses: [
      `{ name: f5, focal length: 5 mm, ${asphere} }`,
      `{ name: f11, focal length: 11 mm, ${asphere} }`,
    ],
    fibres: [
      `{ name: single, ${clean} }`,
      '{ name: multi, type: OM2, length: 2 m }',
      '{ name: thick, type: step 105/125 NA 0.22, length: 2 m }',
    ],
  });

  test('a multimode fibre takes nearly all light, whatever the lens', () => {
    const { pairs } = match(drawer, { purpose: 'total', laser: null });
    for (const pair of pairs.filter(({ fibre }) => fibre !== 'single'))
      expect(pair.guided).toBeGreaterThan(0.99);
    expect(pairs.at(-1)!.fibre).toBe('single');
  });

  test('for one clean mode the single-mode fibre with its own lens beats every multimode one', () => {
    const [first, ...others] = match(drawer, { purpose: 'lp01', laser: null }).pairs;
    expect(first!.fibre).toBe('single');
    expect(first!.collimator).toBe('f5');
    expect(others.find(({ fibre }) => fibre === 'thick')!.score.value).toBeLessThan(0.3);
  });

  test('the watts are the share of the laser’s', () => {
    for (const { score, power } of match(drawer, { purpose: 'lp01', laser: null }).pairs)
      expect(power.value / score.value).toBeCloseTo(5e-3, 12);
  });

  test('in a fibre of one mode both purposes say the same', () => {
    const single = drawerOf({});
    const [all, one] = [only(single), only(single, 'lp01')];
    expect(one.score.value).toBeCloseTo(all.score.value, 6);
    expect(one.score.low).toBeCloseTo(all.score.low, 2);
  });
});

describe('doubt', () => {
  test('a better known beam has a narrower interval', () => {
    const width = (doubt: string) => {
      const laser = green.replace('1 mm', `1.3 mm ± ${doubt}`);
      const { low, high } = only(drawerOf({ laser })).score;
      return high - low;
    };
    expect(width('2 %')).toBeLessThan(width('10 %'));
    expect(width('10 %')).toBeLessThan(width('20 %'));
  });

  test('what is exact leaves no doubt but the hand’s and the estimate of the attenuation', () => {
    const exact = only(
      drawerOf({
        laser: green
          .replace('532 nm', '532 nm ± 0 nm')
          .replace('1 mm', '1 mm ± 0 mm')
          .replace('quality: 1', 'waist position: 0 mm ± 0 mm, quality: 1 ± 0'),
        lenses: [
          '{ name: f5, focal length: 5 mm ± 0 mm, focal shift: 0, surfaces: { count: 0 }, spherical aberration: 0 ± 0 }',
        ],
        fibres: [
          '{ name: known, core diameter: 3.2 µm ± 0 µm, numerical aperture: 0.12 ± 0, length: 2 m ± 0 m, attenuation: 0 dB/km ± 0 dB/km }',
        ],
        path: '[{ space: 200 mm ± 0 mm }]',
      }),
    ).score;
    expect(exact.high - exact.low).toBeLessThan(0.03);
    expect(exact.high).toBeGreaterThanOrEqual(exact.value);
  });

  // in the visible a real fibre has 1.2 to 3 times its glass's own scattering (common practice, no source), 0.9 dB·µm⁴/km over λ⁴:
  // of 532 nm 2.7 to 6.7 dB in 200 m, a factor of 2.5
  test('an attenuation that nobody wrote widens the interval', () => {
    const width = (attenuation: string) => {
      const { low, high } = only(
        drawerOf({
          fibres: [`{ name: long, ${clean.replace('length: 2 m', 'length: 200 m')}${attenuation} }`],
        }),
      ).score;
      return Math.log(high / low);
    };
    expect(width('')).toBeGreaterThan(1.2 * width(', attenuation: 20 dB/km ± 0 dB/km'));
  });
});

test('however doubtful the parts, no interval reaches above the whole', () => {
  for (const focal of [2, 3, 5, 8, 14]) {
    const { score } = only(
      drawerOf({
        laser: green.replace('1 mm', '1 mm ± 40 %').replace('quality: 1', 'quality: 1.8 within 0.8'),
        lenses: [
          `{ name: vague, focal length: ${focal} mm within 40 %, focal shift: 0, surfaces: { count: 0 } }`,
        ],
        fibres: [`{ name: vague, ${clean.replace('3.2 µm', '3.2 µm ± 30 %')}, attenuation: 0 dB/km }`],
      }),
    );
    expect(score.high).toBeLessThanOrEqual(1);
    expect(score.low).toBeGreaterThan(0);
  }
});

describe('connectors', () => {
  const marks = [
    ['FC/PC', 'FC/PC', 'fits'],
    ['FC/PC', 'FC/APC', 'must not meet'],
    ['FC/APC', 'SC/APC', 'needs an adapter'],
    ['SMA', 'FC/PC', 'needs an adapter'],
    ['LC', 'SC', 'needs an adapter'],
    ['none', 'FC/PC', 'unknown'],
  ] as const;
  test.each(marks)('a barrel for %s and a plug of %s: %s', (barrel, plug, mark) => {
    const drawer = drawerOf({
      lenses: [lens.replace('name: f5', `name: f5, connector: ${barrel}`)],
      fibres: [`{ name: single, ${clean}, connectors: { in: ${plug} } }`],
    });
    const { connector, connectorNote } = only(drawer);
    expect(connector).toBe(mark);
    expect(connectorNote === null).toBe(mark === 'fits' || mark === 'unknown');
  });
});

describe('what cannot be matched', () => {
  test('light outside a glass’s range leaves the pair out, with the reason', () => {
    const drawer = drawerOf({
      laser: green.replace('532 nm', '3.4 µm'),
      lenses: ['{ name: plastic, focal length: { value: 5 mm, at: 635 nm }, glass: PMMA }'],
    });
    const { pairs, leftOut } = match(drawer, { purpose: 'total', laser: null });
    expect(pairs).toEqual([]);
    expect(leftOut).toHaveLength(1);
    expect(leftOut[0]!.why.length).toBeGreaterThan(10);
  });

  test('a fibre that hardly holds a mode is left out, the others are not', () => {
    const drawer = drawerOf({
      laser: green.replace('532 nm', '1550 nm'),
      fibres: [
        `{ name: single, ${clean} }`,
        '{ name: thread, core diameter: 0.6 µm, numerical aperture: 0.1, length: 1 m }',
      ],
    });
    const { pairs, leftOut } = match(drawer, { purpose: 'total', laser: null });
    expect(pairs.map(({ fibre }) => fibre)).toEqual(['single']);
    expect(leftOut.map(({ fibre }) => fibre)).toEqual(['thread']);
  });

  test.each([
    ['lasers', 'fibres: [{ type: OM2, name: a }]'],
    ['fibres', `lasers: [${green}]`],
  ])('a drawer without %s is refused, with a mend', (list, text) => {
    const refused = () => match(read(text), { purpose: 'total', laser: null });
    expect(refused).toThrow(Refusal);
    expect(refused).toThrow(new RegExp(list, 'u'));
  });

  test('a laser that is not there is refused with the one that was meant', () => {
    expect(() => match(drawerOf({}), { purpose: 'total', laser: 'gren' })).toThrow(/green/u);
  });
});

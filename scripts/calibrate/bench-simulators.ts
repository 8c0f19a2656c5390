import { glassNamed, quantumLimitResponsivity, refractiveIndex } from '@coreward/optics';
import { between, betweenLog, evenly, readings, rounded, type Simulator, stated } from './simulated.ts';

/** Lengths, mounts and lenses: rulers read to 0.5 mm, distances to 2 mm, as the gauges assume. */
export const benchSimulators: readonly Simulator[] = [
  {
    gauge: 'ruler',
    what: '1 to 6 readings, both ends anywhere within a millimetre, scale off by 0.1 %',
    counted: ['length_m'],
    draw: (random, normal) => {
      const length = betweenLog(random, 0.02, 1);
      const scale = 1 + 1e-3 * normal();
      const count = Math.floor(between(random, 1, 7));
      const grain = (): number => 1e-3 * (random() - random());
      const readAs = Array.from({ length: count }, () => length * scale + grain());
      return { readings: readings({ columns: { length: readAs } }), truth: { length_m: length } };
    },
  },
  {
    gauge: 'screw-turns',
    what: 'up and down again by 2 to 4 turns, slack 0 to 0.1 turn, spot read to 0.5 mm, distance to 1 %',
    counted: ['mirror_rad_per_turn', 'slack_turns'],
    draw: (random, normal) => {
      const perTurn = between(random, 4e-3, 12e-3);
      const distance = between(random, 2, 5);
      const slack = between(random, 0.01, 0.1);
      const top = Math.floor(between(random, 2, 5));
      const up = evenly(0, top, 2 * top + 1);
      const turns = [-0.5, ...up, ...up.toReversed().map((t) => t - 0.25)];
      const spot = turns.map((t, i) => {
        const way = i === 0 || t > turns[i - 1]! ? 1 : -1;
        return 0.2 + 2 * perTurn * distance * (t - (way * slack) / 2) + 0.5e-3 * normal();
      });
      return {
        readings: readings({
          columns: { turns, spot },
          settings: { distance: stated(distance * (1 + 0.01 * normal()), 0.01 * distance) },
        }),
        truth: { mirror_rad_per_turn: perTurn, slack_turns: slack },
      };
    },
  },
  {
    gauge: 'imaging',
    what: '1 to 8 pairs, distances to 2 mm',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const focal = between(random, 0.03, 0.2);
      const pairs = Array.from({ length: Math.floor(between(random, 1, 9)) }, () => {
        const object = focal * between(random, 1.4, 4);
        return [object, 1 / (1 / focal - 1 / object)] as const;
      });
      const read = (x: number): number => x + 2e-3 * normal();
      return {
        readings: readings({
          columns: {
            'object distance': pairs.map(([a]) => read(a)),
            'image distance': pairs.map(([, b]) => read(b)),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'reverse-radius',
    what: '1 to 6 diameters to 0.2 mm, mode field diameter to 3 %',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const [focal, wavelength, mode] = [
        between(random, 4e-3, 20e-3),
        between(random, 450e-9, 850e-9),
        between(random, 3.5e-6, 6e-6),
      ];
      const diameter = (4 * wavelength * focal) / (Math.PI * mode);
      const read = Array.from(
        { length: Math.floor(between(random, 1, 7)) },
        () => diameter + 0.2e-3 * normal(),
      );
      return {
        readings: readings({
          columns: { diameter: read },
          settings: {
            wavelength: stated(wavelength),
            'mode field diameter': stated(mode * (1 + 0.03 * normal())),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'far-wall-spot',
    what: '2 to 8 distances to 10 m, diameters to 0.5 mm, mode field diameter to 3 %',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const [focal, wavelength, mode] = [
        between(random, 3e-3, 8e-3),
        between(random, 500e-9, 850e-9),
        between(random, 3.5e-6, 6e-6),
      ];
      const waist = (2 * wavelength * focal) / (Math.PI * mode);
      const distance = evenly(0.3, between(random, 6, 10), Math.floor(between(random, 2, 9)));
      const diameter = distance.map(
        (z) => 2 * Math.hypot(waist, (wavelength * (z - focal)) / (Math.PI * waist)) + 0.5e-3 * normal(),
      );
      return {
        readings: readings({
          columns: { distance, diameter: diameter.map((d) => Math.max(d, 1e-4)) },
          settings: {
            wavelength: stated(wavelength),
            'mode field diameter': stated(mode * (1 + 0.03 * normal())),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'two-colour-focus',
    what: '5 settings for each of 635 and 515 nm, each to 10 µm',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const focal = between(random, 8e-3, 25e-3);
      const glass = glassNamed('N-BK7');
      const [a, b] = [635e-9, 515e-9];
      const shift = focal * ((refractiveIndex(glass, a) - 1) / (refractiveIndex(glass, b) - 1) - 1);
      const set = (at: number): number[] => Array.from({ length: 5 }, () => at + 10e-6 * normal());
      const off = (): number => 1e-9 * normal();
      return {
        readings: readings({
          columns: { first: set(2e-3), second: set(2e-3 + shift) },
          settings: { 'wavelength 1': stated(a + off()), 'wavelength 2': stated(b + off()) },
          words: { glass: 'N-BK7' },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'thread-pitch',
    what: '2 to 8 readings over 5 to 10 turns, each to 0.1 mm',
    counted: ['pitch_m_per_turn'],
    draw: (random, normal) => {
      const pitch = between(random, 0.25e-3, 1e-3);
      const turns = evenly(0, Math.floor(between(random, 5, 11)), Math.floor(between(random, 2, 9)));
      const advance = turns.map((t) => 3e-3 + pitch * t + 0.1e-3 * normal());
      return { readings: readings({ columns: { turns, advance } }), truth: { pitch_m_per_turn: pitch } };
    },
  },
];

/** Fibres and detectors. */
export const fibreSimulators: readonly Simulator[] = [
  {
    gauge: 'core-picture',
    what: '1 to 6 pictures, widths to 1.5 pixels, cladding 125 ± 0.7 µm',
    counted: ['coreDiameter_m'],
    draw: (random, normal) => {
      const core = between(random, 40e-6, 65e-6);
      const scale = between(random, 2, 6) * 1e6;
      const count = Math.floor(between(random, 1, 7));
      const read = (width: number): number[] =>
        Array.from({ length: count }, () => width * scale + 1.5 * normal());
      const cladding = 125e-6 + 0.7e-6 * normal();
      return {
        readings: readings({
          columns: { core: read(core), cladding: read(cladding) },
          settings: { 'cladding diameter': stated(125e-6, 0.7e-6) },
        }),
        truth: { coreDiameter_m: core },
      };
    },
  },
  {
    gauge: 'mode-count',
    what: 'cut-off seen to 3 %, numerical aperture to 4 %',
    counted: ['coreDiameter_m'],
    draw: (random, normal) => {
      const [core, na] = [between(random, 3e-6, 9e-6), between(random, 0.1, 0.15)];
      const cutOff = ((Math.PI * core * na) / 2.404825557695773) * (1 + 0.03 * normal());
      return {
        readings: readings({
          settings: { 'cut-off': stated(cutOff), 'numerical aperture': stated(na * (1 + 0.04 * normal())) },
        }),
        truth: { coreDiameter_m: core },
      };
    },
  },
  {
    gauge: 'cut-back',
    what: '2 to 8 lengths, loss of 0.5 to 3 dB over them, each end repeats to 3 %',
    counted: ['attenuation_per_m'],
    draw: (random, normal) => {
      const longest = betweenLog(random, 5, 500);
      const attenuation = between(random, 0.12, 0.7) / (0.9 * longest);
      const length = evenly(longest, 0.1 * longest, Math.floor(between(random, 2, 9)));
      const power = length.map((l) => 1e-3 * Math.exp(-attenuation * l + 0.03 * normal()));
      return {
        readings: readings({ columns: { length, power } }),
        truth: { attenuation_per_m: attenuation },
      };
    },
  },
  ...(['substitution', 'before-and-after', 'cladding-light'] as const).map((gauge): Simulator => {
    const [first, second, counted] = {
      substitution: ['without', 'with', 'transmission'],
      'before-and-after': ['before', 'behind', 'transmission'],
      'cladding-light': ['before', 'after', 'claddingShare'],
    }[gauge] as [string, string, string];
    return {
      gauge,
      what: '1 to 8 pairs, each ratio to 3 %',
      counted: [counted],
      draw: (random, normal) => {
        const transmission = between(random, 0.6, 0.95);
        const count = Math.floor(between(random, 1, 9));
        const before = Array.from({ length: count }, () => between(random, 0.9, 1.1));
        const after = before.map((p) => p * transmission * Math.exp(0.03 * normal()));
        const truth = counted === 'transmission' ? transmission : 1 - transmission;
        return {
          readings: readings({ columns: { [first]: before, [second]: after } }),
          truth: { [counted]: truth },
        };
      },
    };
  }),
  {
    gauge: 'photodiode',
    what: '1 to 8 voltages to 0.5 % and 0.1 mV, load to 2 %, responsivity to 10 %',
    counted: ['power_W'],
    draw: (random, normal) => {
      const [power, load, responsivity] = [betweenLog(random, 2e-6, 5e-4), 400, between(random, 0.2, 0.5)];
      const full = power * responsivity * load;
      const scale = 1 + 0.005 * normal();
      const voltage = Array.from(
        { length: Math.floor(between(random, 1, 9)) },
        () => 2e-4 + full * scale * (1 + 0.005 * normal()) + 1e-4 * normal(),
      );
      return {
        readings: readings({
          columns: { voltage },
          settings: {
            load: stated(load * (1 + 0.02 * normal()), 8),
            responsivity: stated(responsivity * (1 + 0.1 * normal())),
            'dark voltage': stated(2e-4),
          },
        }),
        truth: { power_W: power },
      };
    },
  },
  {
    gauge: 'solar-cell',
    what: '1 to 8 currents to 1 %, quantum efficiency 85 ± 8 %',
    counted: ['power_W'],
    draw: (random, normal) => {
      const [power, wavelength] = [betweenLog(random, 1e-4, 2e-2), between(random, 450e-9, 850e-9)];
      const efficiency = 0.85 + 0.08 * normal();
      const full = power * efficiency * quantumLimitResponsivity(wavelength) * (1 + 0.01 * normal());
      const current = Array.from(
        { length: Math.floor(between(random, 1, 9)) },
        () => full * (1 + 0.01 * normal()),
      );
      return {
        readings: readings({ columns: { current }, settings: { wavelength: stated(wavelength) } }),
        truth: { power_W: power },
      };
    },
  },
  {
    gauge: 'calorimeter',
    what: 'three minutes dark, five lit, five dark, every 10 s to 0.02 K; heat capacity to 7 %, black to 2 %',
    counted: ['power_W', 'timeConstant_s'],
    draw: (random, normal) => {
      const [power, capacity, tau] = [
        between(random, 0.01, 0.2),
        between(random, 0.8, 3),
        between(random, 90, 400),
      ];
      const time = evenly(0, 780, 79);
      const light = time.map((t) => (t >= 180 && t < 480 ? 1 : 0));
      const room = 295 + between(random, -1, 1);
      let now = room;
      const temperature = time.map((_, i) => {
        if (i > 0) {
          const end = room + (light[i - 1]! * 0.95 * power * tau) / capacity;
          now = end + (now - end) * Math.exp(-10 / tau);
        }
        return now + 0.02 * normal();
      });
      return {
        readings: readings({
          columns: { time, temperature, light },
          settings: {
            'heat capacity': stated(capacity * (1 + 0.07 * normal())),
            absorptance: stated(0.95 + 0.02 * normal()),
          },
        }),
        truth: { power_W: power, timeConstant_s: tau },
      };
    },
  },
  {
    gauge: 'camera-linearity',
    what: '2 to 8 levels to 5 %, in proportion or to a power of 0.4 to 0.6',
    counted: ['exponent'],
    draw: (random, normal) => {
      const exponent = random() < 0.5 ? 1 : between(random, 0.4, 0.6);
      const light = evenly(0.15, 0.9, Math.floor(between(random, 2, 9)));
      const code = light.map((level) => 8 + 230 * level ** exponent);
      return {
        readings: readings({
          columns: {
            light: light.map((level) => level * Math.exp(0.05 * normal())),
            code: code.map((c) => rounded(c, 1)),
          },
          settings: { 'dark code': stated(8) },
        }),
        truth: { exponent },
      };
    },
  },
];

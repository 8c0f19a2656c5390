import { between, betweenLog, evenly, readings, type Simulator, stated } from './simulated.ts';

/** Cores, modes and losses of fibres. */
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
];

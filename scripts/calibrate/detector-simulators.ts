import { quantumLimitResponsivity } from '@coreward/optics';
import { between, betweenLog, evenly, readings, rounded, type Simulator, stated } from './simulated.ts';

/** Photodiode, solar cell, calorimeter and camera. */
export const detectorSimulators: readonly Simulator[] = [
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

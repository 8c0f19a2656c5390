/** What a quantity measures, and thereby which units it may be written in. */
export const dimensions = [
  'length',
  'angle',
  'power',
  'fraction',
  'number',
  'waves',
  'turns',
  'attenuation',
  'loss',
  'screwPitch',
  'anglePerTurn',
  'time',
  'temperature',
  'irradiance',
  'radiantExposure',
  'current',
  'voltage',
  'frequency',
  'energy',
  'resistance',
  'responsivity',
] as const;
export type Dimension = (typeof dimensions)[number];

/** How small a quantity can be at all. */
export type Floor = 'none' | 'orZero' | 'positive';

/** How quantities of one dimension are read and written. */
export interface DimensionFacts {
  /** With its article: "a length". */
  readonly name: string;
  /** Kinds of unit (`kindOf`) it may be written in; the first is what it is inside, SI. */
  readonly kinds: readonly string[];
  readonly floor: Floor;
  /** In SI; only where there is one for everybody. */
  readonly ceiling?: number;
  /** How people write one; the first gives the unit that a bare number is most likely to have meant. */
  readonly examples: readonly [string, ...string[]];
}

/** Every dimension that a document, a reading or a screen can hold. */
export const dimensionFacts: Readonly<Record<Dimension, DimensionFacts>> = {
  /** m. */
  length: { name: 'a length', kinds: ['m'], floor: 'none', examples: ['6.2 mm', '8.2 µm', '635 nm', '2 m'] },
  /** rad. */
  angle: { name: 'an angle', kinds: ['rad'], floor: 'none', examples: ['12 mrad', '45°', '3 arcmin'] },
  /** W; decibels over a milliwatt are read too. */
  power: { name: 'a power', kinds: ['W'], floor: 'orZero', examples: ['12 mW', '-3 dBm', '1 µW'] },
  /** 0 to 1: a reflectance, a transmission. */
  fraction: {
    name: 'a fraction',
    kinds: ['', '%'],
    floor: 'orZero',
    ceiling: 1,
    examples: ['97 %', '0.97', '5 %', '0.1 %'],
  },
  /** Bare: M², numerical aperture, a count. */
  number: { name: 'a bare number', kinds: [''], floor: 'none', examples: ['1.15', '2', '0.13'] },
  /** Waves of the light in use. */
  waves: { name: 'a number of waves', kinds: ['', 'wave'], floor: 'none', examples: ['0.25 waves', '0.25'] },
  /** Turns of a screw, or of a fibre around a post. */
  turns: {
    name: 'a number of turns',
    kinds: ['', 'turn'],
    floor: 'none',
    examples: ['2 turns', '2', '0.25'],
  },
  /** Nepers of power a metre: P = P₀ exp(−αz). */
  attenuation: {
    name: 'an attenuation',
    kinds: ['m^-1', 'm^-1·dB'],
    floor: 'orZero',
    examples: ['15 dB/km', '0.2 dB/m'],
  },
  /** Nepers of power, −ln(transmission). */
  loss: { name: 'a loss', kinds: ['dB', '%'], floor: 'orZero', examples: ['0.3 dB', '5 %'] },
  /** Advance a turn, m. */
  screwPitch: {
    name: 'a screw pitch',
    kinds: ['m', 'm·turn^-1'],
    floor: 'positive',
    // Nothing that adjusts by hand is coarser, and a bare `80` is rather threads an inch than millimetres.
    ceiling: 0.02,
    examples: ['0.25 mm', '80 tpi', '1/4-80', 'M6x0.25'],
  },
  /** rad a turn. */
  anglePerTurn: {
    name: 'an angle per turn',
    kinds: ['rad·turn^-1'],
    floor: 'positive',
    examples: ['7.9 mrad/turn'],
  },
  /** s. */
  time: { name: 'a time', kinds: ['s'], floor: 'orZero', examples: ['0.25 s', '10 ns'] },
  /** K; degrees Celsius are read too. */
  temperature: { name: 'a temperature', kinds: ['K'], floor: 'orZero', examples: ['20 °C', '293 K'] },
  /** W/m². */
  irradiance: { name: 'an irradiance', kinds: ['W·m^-2'], floor: 'orZero', examples: ['1 mW/cm^2'] },
  /** J/m². */
  radiantExposure: {
    name: 'a radiant exposure',
    kinds: ['W·s·m^-2'],
    floor: 'orZero',
    examples: ['5 mJ/m^2', '1 J/cm^2'],
  },
  /** A. */
  current: { name: 'a current', kinds: ['A'], floor: 'none', examples: ['3 µA', '40 mA'] },
  /** V. */
  voltage: { name: 'a voltage', kinds: ['W·A^-1'], floor: 'none', examples: ['1.2 V', '5 mV'] },
  /** Hz. */
  frequency: { name: 'a frequency', kinds: ['s^-1'], floor: 'orZero', examples: ['50 Hz', '10 kHz'] },
  /** J. */
  energy: { name: 'an energy', kinds: ['W·s'], floor: 'orZero', examples: ['3 mJ', '10 nJ'] },
  /** Ω. */
  resistance: { name: 'a resistance', kinds: ['W·A^-2'], floor: 'orZero', examples: ['10 kΩ', '50 Ω'] },
  /** A/W. */
  responsivity: { name: 'a responsivity', kinds: ['W^-1·A'], floor: 'orZero', examples: ['0.4 A/W'] },
};

/** What a unit of this kind measures, with its article; `null` where no dimension is written so. */
export function nameOfKind(kind: string): string | null {
  // A decibel and a per cent serve several; name the one that people mean by the unit alone.
  if (kind === '%') return 'a percentage';
  if (kind === 'dB') return 'a ratio in decibels';
  if (kind === 'turn') return 'a number of turns';
  return Object.values(dimensionFacts).find(({ kinds }) => kinds.includes(kind))?.name ?? null;
}

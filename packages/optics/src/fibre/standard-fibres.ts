/** A value with the limits within which a standard, or the trade, lets it lie. */
export interface Limits {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}

/** An attenuation that fibre of this designation does not exceed. */
export interface AttenuationCeiling {
  /** In vacuum, m. */
  readonly wavelength: number;
  /** Power attenuation, nepers a metre: P = P₀ exp(−αz). */
  readonly most: number;
}

/** How the figures were come by. */
export type Evidence =
  /** As remembered from the standard named; its text was not opened. */
  | 'from memory, unverified'
  /** Chosen here so that what the standard does give (from memory) comes out. */
  | 'derived'
  | 'common practice, no source';

/** What a designation promises, as far as light in the fibre is concerned. SI; RADII and diameters as their names say. */
export interface StandardFibre {
  readonly designation: StandardDesignation;
  readonly profile: 'step' | 'graded';
  readonly material: 'silica' | 'acrylic';
  /** m. For single-mode fibre that of an equivalent step index. */
  readonly coreDiameter: Limits;
  /** √(n_core² − n_cladding²), on the axis if graded. */
  readonly numericalAperture: Limits;
  /** m. */
  readonly claddingDiameter: Limits;
  readonly attenuation: readonly AttenuationCeiling[];
  /** The least bend radius at which the standard limits the loss, m; `null` if it names none. */
  readonly leastBendRadius: number | null;
  readonly source: string;
  /** Of core diameter and aperture; everything else is `from memory, unverified` where the source is a standard. */
  readonly evidence: Evidence;
}

export const standardDesignations = [
  'G.652.D',
  'G.657.A1',
  'G.657.A2',
  'G.657.B3',
  'G.651.1',
  'OM1',
  'OM2',
  'OM3',
  'OM4',
  'OM5',
  'A4a.2',
  'step 105/125 NA 0.22',
  'step 200/230 NA 0.37',
] as const;
export type StandardDesignation = (typeof standardDesignations)[number];

const um = 1e-6;
const within = (nominal: number, by: number, unit = 1): Limits => ({
  nominal: nominal * unit,
  least: (nominal - by) * unit,
  most: (nominal + by) * unit,
});
/** A ceiling as standards print it: nm, dB/km. */
const ceiling = (nanometres: number, decibelsPerKilometre: number): AttenuationCeiling => ({
  wavelength: nanometres * 1e-9,
  most: (decibelsPerKilometre * Math.LN10) / 10 / 1000,
});

/**
 * What ITU-T says of all four single-mode designations alike, at 1310 nm: the mode-field diameter (Petermann II) lies
 * within 8.6 to 9.2 µm nominally, ±0.4 µm, and the cut-off in the cable below 1260 nm.
 *
 * @source ITU-T G.652 (2016) table 2 and G.657 (2016) (from memory, unverified)
 */
export const singleModeRequirement = {
  wavelength: 1310e-9,
  modeFieldDiameter: { least: 8.6e-6, most: 9.2e-6 },
  modeFieldTolerance: 0.4e-6,
  cutoffWavelength: 1260e-9,
} as const;

/**
 * The standards give no core and no aperture. These limits were chosen so that a step index anywhere within them has a
 * mode-field diameter of 8.6 to 9.2 µm at 1310 nm and a theoretical LP11 cut-off below 1260 nm, which the tests check.
 * Real cores of these designations are often graded or trenched; away from 1310 nm the step is only their likeness.
 */
const equivalentStep = {
  profile: 'step',
  material: 'silica',
  coreDiameter: { nominal: 7.8e-6, least: 7.6e-6, most: 8.0e-6 },
  numericalAperture: { nominal: 0.1188, least: 0.117, most: 0.1205 },
  claddingDiameter: within(125, 0.7, um),
  evidence: 'derived',
} as const;

const graded50 = {
  profile: 'graded',
  material: 'silica',
  coreDiameter: within(50, 2.5, um),
  numericalAperture: within(0.2, 0.015),
  claddingDiameter: within(125, 2, um),
  leastBendRadius: 37.5e-3,
  evidence: 'from memory, unverified',
} as const;

/** By designation, in the order of `standardDesignations`. */
export const standardFibres: readonly StandardFibre[] = [
  {
    ...equivalentStep,
    designation: 'G.652.D',
    attenuation: [ceiling(1310, 0.4), ceiling(1383, 0.4), ceiling(1550, 0.3), ceiling(1625, 0.4)],
    leastBendRadius: 30e-3,
    source: 'ITU-T G.652 (2016), table 2',
  },
  {
    ...equivalentStep,
    designation: 'G.657.A1',
    attenuation: [ceiling(1310, 0.4), ceiling(1383, 0.4), ceiling(1550, 0.3), ceiling(1625, 0.4)],
    leastBendRadius: 10e-3,
    source: 'ITU-T G.657 (2016), table 1',
  },
  {
    ...equivalentStep,
    designation: 'G.657.A2',
    attenuation: [ceiling(1310, 0.4), ceiling(1383, 0.4), ceiling(1550, 0.3), ceiling(1625, 0.4)],
    leastBendRadius: 7.5e-3,
    source: 'ITU-T G.657 (2016), table 1',
  },
  {
    ...equivalentStep,
    designation: 'G.657.B3',
    attenuation: [ceiling(1310, 0.5), ceiling(1550, 0.3), ceiling(1625, 0.4)],
    leastBendRadius: 5e-3,
    source: 'ITU-T G.657 (2016), table 2',
  },
  {
    ...graded50,
    designation: 'G.651.1',
    coreDiameter: within(50, 3, um),
    attenuation: [ceiling(850, 3.5), ceiling(1300, 1)],
    leastBendRadius: 15e-3,
    source: 'ITU-T G.651.1 (2018), table 1',
  },
  {
    ...graded50,
    designation: 'OM1',
    coreDiameter: within(62.5, 2.5, um),
    numericalAperture: within(0.275, 0.015),
    attenuation: [ceiling(850, 3.5), ceiling(1300, 1.5)],
    source: 'ISO/IEC 11801-1 and IEC 60793-2-10',
  },
  {
    ...graded50,
    designation: 'OM2',
    attenuation: [ceiling(850, 3.5), ceiling(1300, 1.5)],
    source: 'ISO/IEC 11801-1 and IEC 60793-2-10',
  },
  {
    ...graded50,
    designation: 'OM3',
    attenuation: [ceiling(850, 3.5), ceiling(1300, 1.5)],
    source: 'ISO/IEC 11801-1 and IEC 60793-2-10',
  },
  {
    ...graded50,
    designation: 'OM4',
    attenuation: [ceiling(850, 3.5), ceiling(1300, 1.5)],
    source: 'ISO/IEC 11801-1 and IEC 60793-2-10',
  },
  {
    ...graded50,
    designation: 'OM5',
    attenuation: [ceiling(850, 3), ceiling(953, 2.3), ceiling(1300, 1.5)],
    source: 'ISO/IEC 11801-1 and IEC 60793-2-10',
  },
  {
    designation: 'A4a.2',
    profile: 'step',
    material: 'acrylic',
    coreDiameter: within(980, 60, um),
    numericalAperture: within(0.5, 0.15),
    claddingDiameter: within(1000, 60, um),
    attenuation: [ceiling(650, 180)],
    leastBendRadius: 25e-3,
    source: 'IEC 60793-2-40, the plastic fibre of 1 mm',
    evidence: 'from memory, unverified',
  },
  {
    designation: 'step 105/125 NA 0.22',
    profile: 'step',
    material: 'silica',
    coreDiameter: within(105, 3, um),
    numericalAperture: within(0.22, 0.02),
    claddingDiameter: within(125, 2, um),
    attenuation: [ceiling(532, 30), ceiling(650, 20), ceiling(850, 10), ceiling(1064, 10)],
    leastBendRadius: null,
    source: 'data sheets of the trade',
    evidence: 'common practice, no source',
  },
  {
    designation: 'step 200/230 NA 0.37',
    profile: 'step',
    material: 'silica',
    coreDiameter: within(200, 5, um),
    numericalAperture: within(0.37, 0.02),
    claddingDiameter: within(230, 10, um),
    attenuation: [ceiling(650, 20), ceiling(850, 12)],
    leastBendRadius: null,
    source: 'data sheets of the trade',
    evidence: 'common practice, no source',
  },
];

/** A value with the limits within which a standard, or the trade, lets it lie. */
export interface Limits {
  readonly nominal: number;
  readonly least: number;
  readonly most: number;
}

/** How core diameter and aperture of a designation were come by. The first and the last are never shown as read. */
export type FibreEvidence =
  /** As remembered from the standard named; its text was not opened. */
  | 'from memory, unverified'
  /** Chosen here so that what the standard does give comes out. */
  | 'derived'
  | 'common practice, no source';

/** Names of fibres for which this program knows what core and aperture they allow, as users write them. */
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

/** What a designation says of the glass (or plastic) that guides. What it promises of attenuation and bends is in `loss/`. */
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
  readonly source: string;
  readonly evidence: FibreEvidence;
  readonly note?: string;
}

/**
 * What ITU-T says of all four single-mode designations alike: the mode-field diameter at 1310 nm (Petermann II) lies
 * nominally within 8.6 to 9.2 µm, within ±0.4 µm of that, and the cut-off in the cable below 1260 nm.
 *
 * @source ITU-T G.652 (2016) table 2, G.657 (2016) (from memory, unverified)
 */
export const singleModeRequirement = {
  wavelength: 1310e-9,
  modeFieldDiameter: { least: 8.6e-6, most: 9.2e-6 },
  modeFieldTolerance: 0.4e-6,
  longestCutoffWavelength: 1260e-9,
} as const;

const within = (nominal: number, by: number): Limits => ({
  nominal,
  least: nominal - by,
  most: nominal + by,
});
const micrometres = (nominal: number, by: number): Limits => ({
  nominal: nominal * 1e-6,
  least: (nominal - by) * 1e-6,
  most: (nominal + by) * 1e-6,
});

const equivalentStep = {
  profile: 'step',
  material: 'silica',
  coreDiameter: { nominal: 7.8e-6, least: 7.6e-6, most: 8.0e-6 },
  numericalAperture: { nominal: 0.1188, least: 0.117, most: 0.1205 },
  claddingDiameter: micrometres(125, 0.7),
  evidence: 'derived',
  note:
    'The standard gives mode-field diameter and cut-off, no core and no aperture. A step index anywhere within these ' +
    'limits has a mode-field diameter of 8.6 to 9.2 µm at 1310 nm and a theoretical cut-off below 1260 nm. Real cores ' +
    'are often graded or trenched; far from 1310 nm the step is only their likeness.',
} as const;

const graded = {
  profile: 'graded',
  material: 'silica',
  claddingDiameter: micrometres(125, 2),
  evidence: 'from memory, unverified',
} as const;
const graded50 = {
  ...graded,
  coreDiameter: micrometres(50, 2.5),
  numericalAperture: within(0.2, 0.015),
  source: 'IEC 60793-2-10 and ISO/IEC 11801-1',
} as const;

/** By designation, in the order of `standardDesignations`. */
export const standardFibres: readonly StandardFibre[] = [
  { ...equivalentStep, designation: 'G.652.D', source: 'ITU-T G.652 (2016), table 2' },
  { ...equivalentStep, designation: 'G.657.A1', source: 'ITU-T G.657 (2016), table 1' },
  { ...equivalentStep, designation: 'G.657.A2', source: 'ITU-T G.657 (2016), table 1' },
  { ...equivalentStep, designation: 'G.657.B3', source: 'ITU-T G.657 (2016), table 2' },
  {
    ...graded,
    designation: 'G.651.1',
    coreDiameter: micrometres(50, 3),
    numericalAperture: within(0.2, 0.015),
    source: 'ITU-T G.651.1 (2018), table 1',
  },
  {
    ...graded,
    designation: 'OM1',
    coreDiameter: micrometres(62.5, 2.5),
    numericalAperture: within(0.275, 0.015),
    source: 'IEC 60793-2-10 and ISO/IEC 11801-1',
  },
  { ...graded50, designation: 'OM2' },
  { ...graded50, designation: 'OM3' },
  { ...graded50, designation: 'OM4' },
  { ...graded50, designation: 'OM5' },
  {
    designation: 'A4a.2',
    profile: 'step',
    material: 'acrylic',
    coreDiameter: micrometres(980, 60),
    numericalAperture: within(0.5, 0.15),
    claddingDiameter: micrometres(1000, 60),
    source: 'IEC 60793-2-40',
    evidence: 'from memory, unverified',
    note: 'the plastic fibre of 1 mm',
  },
  {
    designation: 'step 105/125 NA 0.22',
    profile: 'step',
    material: 'silica',
    coreDiameter: micrometres(105, 3),
    numericalAperture: within(0.22, 0.02),
    claddingDiameter: micrometres(125, 2),
    source: 'usual data sheets',
    evidence: 'common practice, no source',
  },
  {
    designation: 'step 200/230 NA 0.37',
    profile: 'step',
    material: 'silica',
    coreDiameter: micrometres(200, 5),
    numericalAperture: within(0.37, 0.02),
    claddingDiameter: micrometres(230, 10),
    source: 'usual data sheets of silica with a hard plastic cladding',
    evidence: 'common practice, no source',
  },
];

/** The row of `standardFibres` for a designation. @source the row's own */
export function standardFibre(designation: StandardDesignation): StandardFibre {
  return standardFibres.find((fibre) => fibre.designation === designation)!;
}

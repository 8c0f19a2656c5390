import { OutOfRange } from '../out-of-range.ts';
import { type Band, isInBand } from './band.ts';
import type { Provenance } from './evidence.ts';
import { type ComplexIndex, obliqueReflectance, type Reflectance } from './fresnel.ts';

/** Bare metals of which an index was found. */
export type Metal = 'aluminium' | 'silver' | 'gold';

/** The index of one metal at one wavelength. */
export interface MetalRow extends Provenance {
  readonly metal: Metal;
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  readonly index: ComplexIndex;
}

const rakic = {
  source:
    'A. D. Rakić, Appl. Opt. 34, 4755 (1995), interpolated linearly, from the refractiveindex.info database (CC0)',
  evidence: 'read',
} as const;
const johnsonChristy = {
  source:
    'P. B. Johnson and R. W. Christy, Phys. Rev. B 6, 4370 (1972), interpolated linearly, from the refractiveindex.info database (CC0)',
  evidence: 'read',
} as const;

/** Fresh, smooth, bare films in air. Bench mirrors reflect less: `benchMirrors`. */
export const metalIndices: readonly MetalRow[] = [
  { metal: 'aluminium', wavelength: 632.8e-9, index: { n: 1.4482, k: 7.5367 }, ...rakic },
  { metal: 'aluminium', wavelength: 850e-9, index: { n: 2.5884, k: 8.1687 }, ...rakic },
  { metal: 'silver', wavelength: 632.8e-9, index: { n: 0.0563, k: 4.276 }, ...johnsonChristy },
  { metal: 'gold', wavelength: 532e-9, index: { n: 0.5439, k: 2.2309 }, ...johnsonChristy },
  { metal: 'gold', wavelength: 632.8e-9, index: { n: 0.1838, k: 3.4313 }, ...johnsonChristy },
];

/** A row answers for a line rounded to the nanometre; gold at 532 nm changes by 0.005 of reflectance in one, the others by less. */
const reach = 1e-9;

/**
 * The row of `metalIndices` for a wavelength. There is nothing between the rows: aluminium has a dip near 830 nm and
 * gold an edge in the green that a straight line would miss.
 *
 * @param wavelength vacuum wavelength, m, within 1 nm of a row
 * @throws {OutOfRange} if the table has no such row
 * @source the row's own
 */
export function metalIndex(metal: Metal, wavelength: number): MetalRow {
  const rows = metalIndices.filter((candidate) => candidate.metal === metal);
  const row = rows.find((candidate) =>
    isInBand(wavelength, { from: candidate.wavelength - reach, to: candidate.wavelength + reach }),
  );
  if (row === undefined) {
    const known = rows.map((candidate) => `${(candidate.wavelength * 1e9).toFixed(1)} nm`).join(' or ');
    throw new OutOfRange({
      where: 'wavelength',
      what: `the table holds no ${metal} at ${wavelength} m`,
      mend: `Ask at ${known}, or take a reflectance from benchMirrors.`,
    });
  }
  return row;
}

/**
 * Reflectances of a bare, fresh metal film in air.
 *
 * @param incidence rad from the normal, 0 to π/2
 * @throws {OutOfRange} if the table has no such row, or the incidence leaves its range
 * @source Fresnel's equations with the row's n and k
 */
export function metalReflectance(metal: Metal, wavelength: number, incidence: number): Reflectance {
  return obliqueReflectance(incidence, 1, metalIndex(metal, wavelength).index);
}

/** Kinds of mirror as they are sold and guessed at. */
export type BenchMirrorKind =
  | 'protected aluminium'
  | 'enhanced aluminium'
  | 'protected silver'
  | 'protected gold'
  | 'dielectric in band'
  | 'dielectric out of band';

/** What a mirror of this kind reflects on a bench, dust and age included. Fractions of power at one bounce. */
export interface BenchMirror extends Provenance {
  readonly kind: BenchMirrorKind;
  /** For which the row speaks; `null`: the maker's own band and angle, which must be known. */
  readonly band: Band | null;
  /** `null`: no number can be guessed. */
  readonly reflectance: number | null;
  readonly low: number;
  readonly high: number;
}

const practice = { source: 'common practice, no source', evidence: 'common practice' } as const;

/** A dielectric mirror outside its band or angle may pass nearly everything on: a hazard, too. Two mirrors: square it. */
export const benchMirrors: readonly BenchMirror[] = [
  {
    kind: 'protected aluminium',
    band: { from: 400e-9, to: 700e-9 },
    reflectance: 0.87,
    low: 0.83,
    high: 0.91,
    ...practice,
  },
  { kind: 'enhanced aluminium', band: null, reflectance: 0.93, low: 0.9, high: 0.96, ...practice },
  {
    kind: 'protected silver',
    band: { from: 480e-9, to: 1100e-9 },
    reflectance: 0.965,
    low: 0.95,
    high: 0.985,
    ...practice,
  },
  {
    kind: 'protected gold',
    band: { from: 800e-9, to: 10e-6 }, // the practice says "above 800 nm"; 10 µm ends what this room can be asked
    reflectance: 0.97,
    low: 0.95,
    high: 0.985,
    ...practice,
  },
  { kind: 'dielectric in band', band: null, reflectance: 0.995, low: 0.985, high: 0.9995, ...practice },
  { kind: 'dielectric out of band', band: null, reflectance: null, low: 0, high: 1, ...practice },
];

/**
 * The row of `benchMirrors` for a kind, at a wavelength for which the row speaks.
 *
 * @param wavelength vacuum wavelength, m
 * @throws {OutOfRange} if the kind's band is known and the wavelength outside it
 * @source common practice, no source
 */
export function benchMirror(kind: BenchMirrorKind, wavelength: number): BenchMirror {
  const row = benchMirrors.find((candidate) => candidate.kind === kind)!;
  if (row.band !== null && !isInBand(wavelength, row.band)) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `nothing is known of ${kind} at ${wavelength} m`,
      mend: `Ask between ${row.band.from} m and ${row.band.to} m, or state the mirror's reflectance.`,
    });
  }
  return row;
}

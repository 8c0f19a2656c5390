import { OutOfRange } from '../out-of-range.ts';

/** Where a fit may be used, and how far it was found to err there against the solved modes of a step index. */
export interface Validity {
  readonly leastV: number;
  readonly mostV: number;
  /** Largest relative error in that range. */
  readonly relativeError: number;
}

/** Compared with the solved modes by the tests of `estimates.ts`, which hold these figures. */
export const estimateValidity = {
  marcuseRadius: { leastV: 1.2, mostV: 2.5, relativeError: 0.0085 },
  husseyMartinezRadius: { leastV: 1.5, mostV: 2.5, relativeError: 0.0105 },
  glogeU: { leastV: 1.2, mostV: 12, relativeError: 0.016 },
  rudolphNeumannW: { leastV: 1.5, mostV: 2.5, relativeError: 0.0013 },
} as const satisfies Record<string, Validity>;

/**
 * Best-Gaussian radius of LP01 of a step index in core radii, by fit: 0.65 + 1.619 V^−1.5 + 2.879 V^−6.
 *
 * @throws {OutOfRange} outside 1.2 ≤ V ≤ 2.5
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977) (from memory)
 */
export function marcuseRadiusEstimate(vNumber: number): number {
  mustBeValid(vNumber, 'marcuseRadius');
  return 0.65 + 1.619 * vNumber ** -1.5 + 2.879 * vNumber ** -6;
}

/**
 * Petermann II radius of LP01 of a step index in core radii, by fit: Marcuse's, less 0.016 + 1.567 V^−7.
 *
 * @throws {OutOfRange} outside 1.5 ≤ V ≤ 2.5
 * @source C. D. Hussey and F. Martinez, Electron. Lett. 21, 1103 (1985) (from memory)
 */
export function husseyMartinezRadiusEstimate(vNumber: number): number {
  mustBeValid(vNumber, 'husseyMartinezRadius');
  return marcuseRadiusEstimate(vNumber) - 0.016 - 1.567 * vNumber ** -7;
}

/**
 * u of LP01 of a step index: (1 + √2)V/(1 + (4 + V⁴)^¼).
 *
 * @throws {OutOfRange} outside 1.2 ≤ V ≤ 12
 * @source D. Gloge, Appl. Opt. 10, 2252 (1971) (from memory)
 */
export function glogeUEstimate(vNumber: number): number {
  mustBeValid(vNumber, 'glogeU');
  return ((1 + Math.SQRT2) * vNumber) / (1 + (4 + vNumber ** 4) ** 0.25);
}

/**
 * w of LP01 of a step index: 1.1428 V − 0.996.
 *
 * @throws {OutOfRange} outside 1.5 ≤ V ≤ 2.5
 * @source H.-D. Rudolph and E.-G. Neumann, Nachrichtentech. Z. 29, 328 (1976) (from memory)
 */
export function rudolphNeumannWEstimate(vNumber: number): number {
  mustBeValid(vNumber, 'rudolphNeumannW');
  return 1.1428 * vNumber - 0.996;
}

function mustBeValid(vNumber: number, fit: keyof typeof estimateValidity): void {
  const { leastV, mostV } = estimateValidity[fit];
  // a rounding of V must not refuse the very end of the range
  if (!(vNumber >= leastV * (1 - 1e-12) && vNumber <= mostV * (1 + 1e-12))) {
    throw new OutOfRange({
      where: `${fit}Estimate V`,
      what: `${vNumber} is outside ${leastV} … ${mostV}, where the fit holds`,
      mend: 'Solve the mode: stepModes(V) costs microseconds.',
    });
  }
}

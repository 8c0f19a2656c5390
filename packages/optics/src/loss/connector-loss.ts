import { nepersFromDecibel, transmissionFromDecibel } from './decibel.ts';
import type { Provenance } from './evidence.ts';

/** The most a mated pair of this polish reflects, as a fraction of power. */
export interface ReturnLossClass extends Provenance {
  readonly polish: 'PC' | 'PC good' | 'UPC' | 'APC' | 'grade 1' | 'grade 2' | 'grade 3' | 'grade 4';
  readonly highestReflectance: number;
}

const level = {
  source: 'requirement levels quoted in tutorials of fibre theory',
  evidence: 'secondary',
} as const;
const grade = { source: 'IEC 61755-1', evidence: 'from memory' } as const;

/** Scattering at the polish keeps even angled parts at 60 to 70 dB (common practice, no source). */
export const returnLossClasses: readonly ReturnLossClass[] = [
  { polish: 'PC', highestReflectance: transmissionFromDecibel(35), ...level },
  { polish: 'PC good', highestReflectance: transmissionFromDecibel(45), ...level },
  { polish: 'UPC', highestReflectance: transmissionFromDecibel(50), ...level },
  { polish: 'APC', highestReflectance: transmissionFromDecibel(60), ...level },
  { polish: 'grade 1', highestReflectance: transmissionFromDecibel(60), ...grade },
  { polish: 'grade 2', highestReflectance: transmissionFromDecibel(45), ...grade },
  { polish: 'grade 3', highestReflectance: transmissionFromDecibel(35), ...grade },
  { polish: 'grade 4', highestReflectance: transmissionFromDecibel(26), ...grade },
];

/** What a mated pair usually takes: nepers of power. */
export interface InsertionLoss extends Provenance {
  readonly pair: 'SC' | 'FC' | 'LC' | 'FC multimode' | 'polished at home';
  readonly low: number;
  readonly high: number;
}

const pair = (
  name: InsertionLoss['pair'],
  low: number,
  high: number,
  provenance: Provenance,
): InsertionLoss => ({
  pair: name,
  low: nepersFromDecibel(low), // printed in dB
  high: nepersFromDecibel(high),
  ...provenance,
});
const typical = {
  source: 'typical values in a standards commentary and data tables; not normative',
  evidence: 'secondary',
} as const;

/** New, clean telecom parts at their own wavelengths, single mode where not said otherwise; a visible mode loses more. */
export const insertionLosses: readonly InsertionLoss[] = [
  pair('SC', 0.15, 0.3, typical),
  pair('FC', 0.15, 0.3, typical),
  pair('LC', 0.1, 0.25, typical),
  pair('FC multimode', 0.25, 0.5, typical),
  pair('polished at home', 0, 1, { source: 'common practice, no source', evidence: 'common practice' }),
];

/** The most planners grant a mated pair: nepers of power. */
export const connectorPairCeiling = {
  loss: nepersFromDecibel(0.75),
  source: 'ANSI/TIA-568 (C.3 era), quoted in installers’ reference text',
  evidence: 'secondary',
} as const satisfies Provenance & { loss: number };

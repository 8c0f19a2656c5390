import { type Band, isInBand } from './band.ts';
import { nepersPerMetreFromDecibelPerKilometre } from './decibel.ts';
import type { Provenance } from './evidence.ts';

/** Designations for which a standard limits the attenuation. */
export type CableDesignation =
  | 'G.652.D'
  | 'G.657.A'
  | 'G.651.1'
  | 'TIA-568 multimode'
  | 'TIA-568 outside plant';

/** What a designation promises at most (`ceiling`) or lets planners assume (`typical`). Neither predicts a fibre. */
export interface AttenuationCeiling extends Provenance {
  readonly designation: CableDesignation;
  readonly kind: 'ceiling' | 'typical';
  /** A single wavelength where both ends are equal; `null` where the rule names none. */
  readonly band: Band | null;
  /** Np/m of power. */
  readonly attenuation: number;
  readonly note?: string;
}

const row = (
  designation: CableDesignation,
  kind: 'ceiling' | 'typical',
  band: Band | null,
  printed: number, // dB/km
  provenance: Provenance & { readonly note?: string },
): AttenuationCeiling => ({
  designation,
  kind,
  band,
  attenuation: nepersPerMetreFromDecibelPerKilometre(printed),
  ...provenance,
});

const g657 = { source: 'ITU-T G.657 (10/2012 or later), Table 1 (A1/A2)', evidence: 'secondary' } as const;
const g652 = {
  source: 'ITU-T G.652.D, whose cable limits ITU-T G.657 (10/2012 or later), Table 1, takes over',
  evidence: 'secondary',
} as const;
const afterHydrogen = 'after hydrogen ageing';
const g651 = { source: 'ITU-T G.651.1 (2007), Table 1', evidence: 'from memory' } as const;
const tia = {
  source: 'ANSI/TIA-568 (C.3 era), quoted in installers’ reference text',
  evidence: 'secondary',
} as const;

/** What standards allow at most, band by band; each row carries its source and whether it was opened. */
export const attenuationCeilings: readonly AttenuationCeiling[] = [
  row('G.652.D', 'ceiling', { from: 1310e-9, to: 1625e-9 }, 0.4, g652),
  row('G.652.D', 'ceiling', { from: 1383e-9, to: 1383e-9 }, 0.4, { ...g652, note: afterHydrogen }),
  row('G.652.D', 'ceiling', { from: 1530e-9, to: 1565e-9 }, 0.3, g652),
  row('G.657.A', 'ceiling', { from: 1310e-9, to: 1625e-9 }, 0.4, g657),
  row('G.657.A', 'ceiling', { from: 1383e-9, to: 1383e-9 }, 0.4, { ...g657, note: afterHydrogen }),
  row('G.657.A', 'ceiling', { from: 1530e-9, to: 1565e-9 }, 0.3, g657),
  row('G.651.1', 'ceiling', { from: 850e-9, to: 850e-9 }, 3.5, {
    ...g651,
    note: 'a tertiary page says 2.8 dB/km for the 2018 edition: not settled',
  }),
  row('G.651.1', 'ceiling', { from: 1300e-9, to: 1300e-9 }, 1, g651),
  row('TIA-568 multimode', 'typical', { from: 850e-9, to: 850e-9 }, 3, tia),
  row('TIA-568 multimode', 'typical', { from: 1300e-9, to: 1300e-9 }, 1, tia),
  row('TIA-568 multimode', 'ceiling', { from: 850e-9, to: 850e-9 }, 3.5, {
    source: 'ANSI/TIA-568, cabled multimode',
    evidence: 'from memory',
  }),
  row('TIA-568 multimode', 'ceiling', { from: 1300e-9, to: 1300e-9 }, 1.5, {
    source: 'ANSI/TIA-568, cabled multimode',
    evidence: 'from memory',
  }),
  row('TIA-568 outside plant', 'ceiling', null, 0.5, tia),
];

/**
 * The lowest ceiling that holds for a designation at a wavelength, or `null` if its standard is silent there; and in
 * the visible every one is.
 *
 * @param wavelength vacuum wavelength, m
 * @source `attenuationCeilings`
 */
export function attenuationCeiling(
  designation: CableDesignation,
  wavelength: number,
): AttenuationCeiling | null {
  const holding = attenuationCeilings.filter(
    (candidate) =>
      candidate.designation === designation &&
      candidate.kind === 'ceiling' &&
      candidate.band !== null &&
      isInBand(wavelength, candidate.band),
  );
  return holding.toSorted((one, other) => one.attenuation - other.attenuation)[0] ?? null;
}

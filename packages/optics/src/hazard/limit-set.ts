import type { Basis } from './evidence.ts';

/** Two generations of exposure limits. Both are computed, and the lower one governs. */
export const limitSets = ['eu2006', 'icnirp2013'] as const;
export type LimitSet = (typeof limitSets)[number];

/** The tissue that is hit. */
export const tissues = ['eye', 'skin'] as const;
export type Tissue = (typeof tissues)[number];

/** What each set stands for, in words. */
export const limitSetTitles: Readonly<Record<LimitSet, string>> = {
  eu2006: 'Directive 2006/25/EC, Annex II (ICNIRP 1996/2000; IEC 60825-1:2007 has the same eye limits)',
  icnirp2013: 'ICNIRP 2013, the generation of IEC 60825-1:2014 and ANSI Z136.1-2014',
};

/** What a limit set is called where there is room for two words. */
export const limitSetNames: Readonly<Record<LimitSet, string>> = {
  eu2006: 'EU 2006',
  icnirp2013: 'ICNIRP 2013',
};

/** Directive 2006/25/EC, Annex II, one of its tables as transposed in the French Code du travail, which was read. */
export const directiveTable = (table: string): Basis => ({
  evidence: 'read',
  source: `Directive 2006/25/EC, Annex II, table ${table}, in the French Code du travail, annexe II (livre IV, titre V, ch. II)`,
});

/** Table 2.3 was not in the copy that was read. */
export const directiveLongExposures: Basis = {
  evidence: 'from memory',
  source: 'Directive 2006/25/EC, Annex II, table 2.3 (eye, 10 s and longer)',
};

/** The limits of the newer set: their tables were not opened. */
export const icnirp2013: Basis = {
  evidence: 'from memory',
  source: 'ICNIRP, Health Phys. 105, 271 (2013), tables 5 to 7; IEC 60825-1:2014, tables A.1 to A.5',
};

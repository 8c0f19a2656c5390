/**
 * How a number of this folder came to be known, strongest first. Kept with every result, so that it can be shown.
 *
 * - `mathematics`: an identity, checked by numerical integration
 * - `read`: the formula, table entry or number stood in a stored copy of the source named
 * - `from memory`: remembered from the source named, not looked up
 * - `proposal`: our proposal or common practice; nobody stands behind it
 */
export const hazardEvidences = ['mathematics', 'read', 'from memory', 'proposal'] as const;
export type HazardEvidence = (typeof hazardEvidences)[number];

/** The letter that stands for each kind of evidence where there is little room. */
export const evidenceMarks: Readonly<Record<HazardEvidence, 'G' | 'R' | 'M' | 'P'>> = {
  mathematics: 'G',
  read: 'R',
  'from memory': 'M',
  proposal: 'P',
};

/** What one step of a computation rests on. */
export interface Basis {
  readonly evidence: HazardEvidence;
  readonly source: string;
}

/** Everything a result rests on, each named once, in the order in which it was used. */
export function joinBases(...bases: readonly (readonly Basis[])[]): readonly Basis[] {
  const all = bases.flat();
  return all.filter(
    ({ evidence, source }, i) =>
      all.findIndex((other) => other.evidence === evidence && other.source === source) === i,
  );
}

/** A chain is as strong as its weakest link; `proposal` where there is none. */
export function weakestEvidence(basis: readonly Basis[]): HazardEvidence {
  if (basis.length === 0) return 'proposal';
  const rank = Math.max(...basis.map(({ evidence }) => hazardEvidences.indexOf(evidence)));
  return hazardEvidences[rank] ?? 'proposal';
}

/** Said of what is an identity about Gaussian beams. */
export const gaussianMathematics: Basis = {
  evidence: 'mathematics',
  source: 'identity of Gaussian beams, checked by numerical integration',
};

import type { Basis } from '@coreward/optics';
import type { Section } from '../ledger/section.ts';
import { markMeanings, weakestMark } from './limit-texts.ts';

/** What numbers rest on, each source once with its mark, and what the marks mean. */
export function sourcesSection(basis: readonly Basis[], remark: string): Section {
  const sources = basis.filter(
    ({ source, evidence }, i) =>
      basis.findIndex((other) => other.source === source && other.evidence === evidence) === i,
  );
  const used = (['R', 'M', 'G', 'P'] as const).filter((mark) =>
    sources.some((one) => weakestMark([one]) === mark),
  );
  return {
    heading: `What it rests on; ${remark}`,
    blocks: [
      {
        kind: 'list',
        numbered: false,
        items: sources.map((one) => `[${weakestMark([one])}] ${one.source}`),
      },
      { kind: 'text', text: `${used.map((mark) => `[${mark}] ${markMeanings[mark]}`).join('; ')}.` },
    ],
  };
}

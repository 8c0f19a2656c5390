import { figure } from '../ledger/figures.ts';
import type { MatchedPair, MatchPurpose } from './matched.ts';

/** From this share of LP01 in what is guided, the other modes are not worth a word. */
const nearlyAll = 0.98;

/** When the share of LP01 is told, in one line. */
export const otherModesRule =
  'Where under 98 % of what is guided at the facet is in LP01, its share is told.';

/** How much of what is guided at the facet LP01 is, where the ranking goes by LP01 and others come with it; else null. */
export function otherModes({ guided, fundamental }: MatchedPair, purpose: MatchPurpose): string | null {
  if (purpose === 'total' || guided <= 0 || fundamental >= nearlyAll * guided) return null;
  return `LP01 is ${figure(fundamental / guided, 'fraction', 2)} of what is guided`;
}

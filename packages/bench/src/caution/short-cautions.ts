/** The cautions of a launch in a few lines, for where a forecast is told. */
import type { Launch } from '../launch/launch.ts';
import { type Cautions, cautionsFor } from './cautions.ts';
import { type Hazard, hazardText } from './hazard.ts';
import { standingLine } from './standing-line.ts';

/** A hazard in one line. */
export interface ShortCaution {
  readonly id: string;
  readonly level: string;
  readonly text: string;
}

/** Who decides: the last of every list of cautions. */
export const whoDecides: ShortCaution = { id: 'who-decides', level: 'who decides', text: standingLine };

/** What must be told apart; of each the worst hazard is said. */
type Kind =
  | 'together'
  | 'together at the far end'
  | 'unseen'
  | 'free beam'
  | 'backwards'
  | 'magnified'
  | 'fibre end'
  | 'skin'
  | 'source'
  | 'facet';

function kindOf({ id, atRisk, place, invisible }: Hazard): Kind {
  // a sum of lines reaches farther than each of them
  if (id.startsWith('together')) return place.part === 'path' ? 'together' : 'together at the far end';
  if (atRisk.includes('source')) return 'source';
  if (atRisk.includes('facet')) return 'facet';
  if (!atRisk.includes('eye')) return 'skin';
  if (invisible) return 'unseen';
  if (id === 'back-light' || id === 'launch-end') return 'backwards';
  if (id.endsWith('magnified')) return 'magnified';
  return place.part === 'fibre' || place.part === 'output' ? 'fibre end' : 'free beam';
}

/** The cautions of a launch about which nothing was answered, in short. */
export function shortCautions(launch: Launch): readonly ShortCaution[] {
  return shortened(cautionsFor(launch));
}

/** The worst hazard of each kind, how many more there are, and who decides. Never an empty list. */
export function shortened({ hazards, questions }: Cautions): readonly ShortCaution[] {
  const above = hazards.filter(({ level }) => level !== 'mind' && level !== 'under the limit');
  const kinds = above.map(kindOf);
  const told = above.filter((hazard, i) => kinds.indexOf(kindOf(hazard)) === i);
  const worst = told.length === 0 ? hazards.slice(0, 1) : told;
  const rest = hazards.length - worst.length;
  return [
    ...worst.map((hazard) => ({ id: hazard.id, level: hazard.level, text: hazardText(hazard) })),
    {
      id: 'more-cautions',
      level: 'mind',
      text: `The cautions of this launch tell ${rest} more, step by step, and ask ${questions.length} questions; without answers the worse is counted.`,
    },
    whoDecides,
  ];
}

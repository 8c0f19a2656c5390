import { type Hazard, isOfParts } from './hazard.ts';

/** Hazards as a long list is read: what is above a limit or not evaluated, and what folds behind it. */
export interface ReadFirst {
  /** Worst first, as they came: `severe`, `serious`, and `not evaluated` of people or parts. */
  readonly first: readonly Hazard[];
  /** `mind` and `under the limit`: no limit is passed there. */
  readonly folded: readonly Hazard[];
}

/** What must be read without a press of anything, and what may wait behind one. Nothing is lost between the two. */
export function readFirst(hazards: readonly Hazard[]): ReadFirst {
  return {
    first: hazards.filter((hazard) => !mayFold(hazard)),
    folded: hazards.filter(mayFold),
  };
}

function mayFold(hazard: Hazard): boolean {
  switch (hazard.level) {
    case 'not evaluated':
    case 'severe':
    case 'serious':
      return false;
    case 'mind':
    case 'under the limit':
      return true;
  }
}

/** How many of them are about people, and how many about parts only: for the line that unfolds them. */
export function countedHazards(hazards: readonly Hazard[]): {
  readonly people: number;
  readonly parts: number;
} {
  const parts = hazards.filter(isOfParts).length;
  return { people: hazards.length - parts, parts };
}

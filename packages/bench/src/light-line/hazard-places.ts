import type { CautionLevel, Hazard, HazardPlace } from '../caution/hazard.ts';
import type { LinePart } from './line-parts.ts';

/** What can hurt at one part of the line, or, at `bench`, anywhere around it. */
export interface PlaceOfHazards {
  /** The id of the part on the line; `bench` for what belongs to no part. */
  readonly part: string;
  /** What the part is called there. */
  readonly name: string;
  /** Of the worst of them. */
  readonly level: CautionLevel;
  /** Worst first, as they came; never none. */
  readonly hazards: readonly Hazard[];
}

/** Where on the line the hazards of a walk are, in the order of the light; each hazard is at one place. */
export function hazardPlaces(
  parts: readonly Pick<LinePart, 'id' | 'name' | 'position'>[],
  hazards: readonly Hazard[],
): readonly PlaceOfHazards[] {
  const facet = parts.find(({ id }) => id === 'facet')?.position ?? 0;
  const end = Math.max(facet, ...hazards.map(({ place }) => place.to));
  const ids = new Set(parts.map(({ id }) => id));
  const at = new Map<string, Hazard[]>();
  for (const hazard of hazards) {
    const wanted = partOf(hazard.place, facet, end);
    const id = ids.has(wanted) ? wanted : wanted === 'collimator' ? 'facet' : 'bench';
    at.set(id, [...(at.get(id) ?? []), hazard]);
  }
  return [...parts, { id: 'bench', name: 'around the bench' }].flatMap(({ id, name }) => {
    const here = at.get(id);
    const [worst] = here ?? [];
    return here === undefined || worst === undefined
      ? []
      : [{ part: id, name, level: worst.level, hazards: here }];
  });
}

/** @param facet @param end positions from the laser's exit along the light, m */
function partOf({ part, index, from, to }: HazardPlace, facet: number, end: number): string {
  switch (part) {
    case 'laser':
      return 'laser';
    case 'path':
      // what is summed over the whole path begins at the laser
      return index === null ? 'laser' : `path-${index + 1}`;
    case 'collimator':
      return 'collimator';
    case 'fibre':
      if (index !== null || to > from) return 'fibre';
      return Math.abs(from - facet) <= Math.abs(end - from) ? 'facet' : 'far-end';
    case 'output':
    case 'reference':
      return 'far-end';
    case 'bench':
      return 'bench';
  }
}

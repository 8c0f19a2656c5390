import type { LightLine } from './light-line.ts';
import type { LinePart } from './line-parts.ts';
import { placesApart } from './places-apart.ts';
import { cut, type EdgePoint, edgeAlong, type Stretch } from './stretches.ts';

/** The paper a line is drawn on: its length along the light, and the room above the axis (and below it); any unit. */
export interface Paper {
  readonly length: number;
  readonly half: number;
  /** Of a part's label along the light, gap included. */
  readonly label: number;
}

/** The edge of the light on paper: distances from the axis, upwards for lab x, downwards for lab y. */
export interface DrawnPoint {
  readonly along: number;
  readonly above: number;
  readonly below: number;
}

/** The light between two parts: nothing takes any of it there. */
export interface DrawnSection {
  /** The id of the part it comes from. */
  readonly id: string;
  /** Share of the laser's light. */
  readonly left: number;
  readonly points: readonly DrawnPoint[];
}

/** A part and where it and its label stand on the drawing. */
export interface DrawnPart {
  readonly part: LinePart;
  /** Where it is. */
  readonly along: number;
  /** Where its label has room; a whole number. */
  readonly label: number;
}

/** A light line on paper. Along the path everything is to scale; the fibre is drawn short, and the beam is widened. */
export interface LineDrawing {
  /** The free light from part to part, in the order of the light: to the facet and, behind the fibre, from the far end on. */
  readonly sections: readonly DrawnSection[];
  /** Where the fibre begins and ends, and the shares of the laser's light at both places. */
  readonly fibre: {
    readonly from: number;
    readonly to: number;
    readonly arriving: number;
    readonly leaving: number;
  };
  readonly parts: readonly DrawnPart[];
  /** How many times wider across than along. */
  readonly widened: number;
  /** Metres of path for one unit of paper. */
  readonly scale: number;
}

/** Shares of the paper: before the laser's exit, for the path, for the fibre; the light behind it has the rest. */
const share = { laser: 0.05, path: 0.6, fibre: 0.17 } as const;

/** Room that the widest place of the beam may fill, of the half. */
const fill = 0.86;

/** A beam is widened by one of these times a power of ten: few enough that it stays while a hand moves a little. */
const roundFactors = [1, 1.5, 2, 3, 5, 7] as const;

const stepsOf = { longest: 48, least: 4 } as const;

/** A path may end so far from its place before the scale changes, as a share of the paper: too little to be missed. */
const slack = 0.004;

/**
 * Where and how large everything is on this paper.
 *
 * @param before an earlier drawing of much the same line on the same paper: its scale is kept while the path still ends
 *   about where it did, so that what a hand does not move stays where it is
 */
export function drawLine(
  line: LightLine,
  { length, half, label }: Paper,
  before: LineDrawing | null = null,
): LineDrawing {
  const { stretches, beyond, parts } = line;
  const pathLength = stretches.at(-1)?.to ?? 0;
  const fromLaser = share.laser * length;
  const room = share.path * length;
  const fitting = (pathLength === 0 ? 1e-3 : pathLength) / room;
  const still = before !== null && Math.abs(pathLength / before.scale - room) <= slack * length;
  const scale = still ? before.scale : fitting;
  const facetAt = fromLaser + (pathLength === 0 ? room : pathLength / scale);
  const farEnd = fromLaser + (share.path + share.fibre) * length;
  const edges = sectionsOf(parts).map(({ part, to }) => ({
    part,
    points: stretches
      .filter((stretch) => stretch.to > part.position && stretch.from < to)
      .map((stretch) => cut(stretch, part.position, to))
      .flatMap((here) => edgeAlong(here, stepsFor((here.to - here.from) / Math.max(pathLength, 1e-12)))),
  }));
  const all = edges.flatMap(({ points }) => points);
  const widest = Math.max(1e-9, ...all.map(({ radiusX, radiusY }) => Math.max(radiusX, radiusY)));
  const widened = roundDown((fill * half * scale) / widest);
  const across = widened / scale;
  const point =
    (from: number) =>
    ({ position, radiusX, radiusY }: EdgePoint): DrawnPoint => ({
      along: from + position / scale,
      above: Math.min(2 * half, radiusX * across),
      below: Math.min(2 * half, radiusY * across),
    });
  const behind: Stretch = { ...beyond, from: 0, to: (length - farEnd) * scale };
  const placed = parts.map((part) => placeOf(part, { fromLaser, scale, facetAt, farEnd }));
  // on whole units they stay still, and their letters sharp, while what they belong to moves by less
  const labels = placesApart(placed, label, length).map(Math.round);
  return {
    sections: [
      ...edges
        .filter(({ points }) => points.length > 0)
        .map(({ part: { id, leaving }, points }) => ({
          id,
          left: leaving,
          points: points.map(point(fromLaser)),
        })),
      {
        id: 'beyond',
        left: parts.at(-1)?.leaving ?? 0,
        points: edgeAlong(behind, stepsOf.longest / 2).map(point(farEnd)),
      },
    ],
    fibre: {
      from: facetAt,
      to: farEnd,
      arriving: parts.find(({ kind }) => kind === 'fibre')?.arriving ?? 0,
      leaving: parts.find(({ kind }) => kind === 'fibre')?.leaving ?? 0,
    },
    parts: parts.map((part, i) => ({ part, along: placed[i]!, label: labels[i]! })),
    widened,
    scale,
  };
}

/** Each part with the place of the next one, as far as the facet. */
const sectionsOf = (
  parts: readonly LinePart[],
): readonly { readonly part: LinePart; readonly to: number }[] =>
  parts.flatMap((part, i) => {
    const next = parts[i + 1];
    return next === undefined || next.position <= part.position ? [] : [{ part, to: next.position }];
  });

const stepsFor = (shareOfPath: number): number =>
  Math.max(stepsOf.least, Math.ceil(stepsOf.longest * shareOfPath));

function placeOf(
  { kind, position }: LinePart,
  paper: {
    readonly fromLaser: number;
    readonly scale: number;
    readonly facetAt: number;
    readonly farEnd: number;
  },
): number {
  switch (kind) {
    case 'facet':
      return paper.facetAt;
    case 'fibre':
      return (paper.facetAt + paper.farEnd) / 2;
    case 'far end':
      return paper.farEnd;
    case 'laser':
    case 'mirror':
    case 'lens':
    case 'stop':
    case 'filter':
    case 'collimator':
      return paper.fromLaser + position / paper.scale;
  }
}

function roundDown(factor: number): number {
  if (!(factor > 0) || !Number.isFinite(factor)) return 1;
  const decade = 10 ** Math.floor(Math.log10(factor));
  const leading = factor / decade;
  return decade * (roundFactors.findLast((round) => round <= leading * (1 + 1e-12)) ?? 1);
}

import type { FieldPath } from '../document/fields.ts';
import type { LedgerEntry, PowerRange } from '../forecast/expected.ts';
import type { Launch, PathElement } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';

/** What can stand on the light line. */
export type LinePartKind =
  | 'laser'
  | 'mirror'
  | 'lens'
  | 'stop'
  | 'filter'
  | 'collimator'
  | 'facet'
  | 'fibre'
  | 'far end';

/** A part of the launch at its place on the line. */
export interface LinePart {
  /** `laser`, `path-2` (the second entry of the path), `collimator`, `facet`, `fibre`, `far-end`: stays while parts stay. */
  readonly id: string;
  readonly kind: LinePartKind;
  /** What its owner calls it, or what it is. */
  readonly name: string;
  /** From the laser's exit along the path, m; fibre and far end stand where the facet does. */
  readonly position: number;
  /** Shares of the laser's light that reach it and that leave it. */
  readonly arriving: number;
  readonly leaving: number;
  /** Of the power that reaches it (that it sends, of the laser), W, 90 %; null where the ledger has no ranges. */
  readonly powerRange: PowerRange | null;
  /** The ledger's entries that happen here, in its order. */
  readonly losses: readonly LedgerEntry[];
  /** By how much a mirror turns the light, rad; null for what does not. */
  readonly fold: number | null;
  /** The places of the launch document that its tag shows. */
  readonly places: readonly FieldPath[];
}

type NewPart = Omit<LinePart, 'arriving' | 'leaving' | 'fold' | 'powerRange'> & { readonly fold?: number };

/**
 * The parts in the order of the light, each with the losses that happen there. Every entry of the ledger stands at
 * exactly one part.
 *
 * @param distance of the facet behind the collimator or, without one, behind the end of the path, m
 */
export function lineParts(
  launch: Launch,
  ledger: readonly LedgerEntry[],
  distance: number,
): readonly LinePart[] {
  const parts: LinePart[] = [];
  let left = 1;
  let next = 0;
  const take = (belongs: (entry: LedgerEntry) => boolean): readonly LedgerEntry[] => {
    const from = next;
    while (next < ledger.length && belongs(ledger[next]!)) next += 1;
    return ledger.slice(from, next);
  };
  const { laser, collimator, fibre, output } = launch;
  const sent = intervalOf(laser.power, 0.9);
  let powerRange: PowerRange | null = { low: Math.max(0, sent.low), high: sent.high };
  const put = (part: NewPart) => {
    const arriving = left;
    left = part.losses.reduce((share, { transmission }) => share * transmission, left);
    parts.push({ fold: null, ...part, arriving, leaving: left, powerRange });
    const last = part.losses.at(-1);
    if (last !== undefined) powerRange = last.left;
  };
  put({
    id: 'laser',
    kind: 'laser',
    name: laser.name ?? 'laser',
    position: 0,
    losses: [],
    // the whole way from its exit on: where nothing lies on it yet, no other part could take the first mirror
    places: [['laser'], ['path']],
  });
  let position = 0;
  let spaces: FieldPath[] = [];
  launch.path.forEach((element, index) => {
    if (element.kind === 'space') {
      position += element.length.value;
      spaces.push(['path', index, 'space']);
      return;
    }
    const entries = element.kind === 'mirror' || element.kind === 'lens' ? clipped(element) : 1;
    let taken = 0;
    put({
      id: `path-${index + 1}`,
      kind: element.kind,
      name: element.name,
      position,
      losses: take(({ group }) => group === 'path' && taken++ < entries),
      ...(element.kind === 'mirror' ? { fold: Math.PI - 2 * element.angle.value } : {}),
      places: [...spaces, ['path', index, element.kind]],
    });
    spaces = [];
  });
  if (collimator !== null) {
    put({
      id: 'collimator',
      kind: 'collimator',
      name: collimator.name ?? 'lens',
      position,
      losses: take(({ group }) => group === 'lens'),
      places: [...spaces, ['collimator']],
    });
    spaces = [];
  }
  const facet = position + Math.max(0, distance);
  put({
    id: 'facet',
    kind: 'facet',
    name: 'facet',
    position: facet,
    losses: take(({ group }) => group === 'facet' || group === 'overlap'),
    places: [
      ...spaces,
      ...(collimator === null ? [['collimator']] : []),
      ['fibre', 'ends'],
      ['misalignment'],
    ],
  });
  put({
    id: 'fibre',
    kind: 'fibre',
    name: fibre.name ?? fibre.type ?? 'fibre',
    position: facet,
    losses: take(({ group }) => group === 'fibre'),
    places: [['fibre']],
  });
  put({
    id: 'far-end',
    kind: 'far end',
    name: output === null ? 'far end' : 'far end, lens',
    position: facet,
    losses: take(({ group }) => group === 'output'),
    places: [['output'], ['reference']],
  });
  return parts;
}

/** How many entries of the ledger a mirror or a lens makes: its own, and its edge's where that is known. */
const clipped = ({ clearAperture }: Extract<PathElement, { kind: 'mirror' | 'lens' }>): number =>
  clearAperture === null ? 1 : 2;

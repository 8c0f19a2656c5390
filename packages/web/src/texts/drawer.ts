import type { PartKind } from '@coreward/bench';

/** The kinds of parts, one and many. */
const kinds: Readonly<Record<PartKind, { readonly one: string; readonly many: string }>> = {
  laser: { one: 'laser', many: 'Lasers' },
  collimator: { one: 'lens or collimator', many: 'Lenses and collimators' },
  fibre: { one: 'fibre', many: 'Fibres' },
  mirror: { one: 'mirror', many: 'Mirrors' },
  detector: { one: 'detector', many: 'Detectors' },
  reference: { one: 'reference source', many: 'Reference sources' },
};

/** Words of the drawer page. */
export const drawerTexts = {
  title: 'The drawer',
  intro:
    'The parts you own, as far as you know them. What is not known is left empty: it gets a range of its own.',
  kinds,
  none: 'none yet',
  add: (kind: PartKind): string => `add a ${kinds[kind].one}`,
  newName: (kind: PartKind): string => `new ${kinds[kind].one}`,
  adding: (kind: PartKind): string => `A new ${kinds[kind].one}`,
  needed: (keys: string): string => `Still needed before it is kept: ${keys}.`,
  with: ' with ',
  or: ' or ',
  giveUp: 'Give it up',
  measuredBy: 'Measured by the gauges',
  versions: 'earlier versions',
  putAway: (kind: PartKind): string => `Put this ${kinds[kind].one} away`,
  bringBack: 'Bring back',
  away: (count: number): string => (count === 1 ? '1 part put away' : `${count} parts put away`),
  invented: 'invented',
  inventedAll: 'Some of these parts are our invention, to try things with.',
  putInventedAway: 'Put all invented parts away',
  what: (name: string, what: string): string => `${name}: ${what}`,
  whatNew: (name: string): string => `“${name}” into the drawer`,
  whatAway: (name: string): string => `“${name}” put away`,
  whatBack: (name: string): string => `“${name}” brought back`,
  taken: (name: string, many: string): string =>
    `\`${name}\` is the name of another of the ${many.toLowerCase()}`,
  takenMend: (name: string): string => `Write \`${name} 2\` or another name of its own.`,
  way: 'The way between',
  wayAbout: 'from any laser to any lens: what a match takes to lie between them',
  wayNone: 'Nothing lies between: every lens stands right at the laser’s exit.',
  wayEdit: 'element by element',
  wayFrom: 'Take the way from',
  wayChoose: 'a launch …',
  whatWay: (name: string): string => `way between taken from “${name}”`,
  whatWayEdit: (what: string): string => `way between: ${what}`,
  waiting: 'Asking the station …',
} as const;

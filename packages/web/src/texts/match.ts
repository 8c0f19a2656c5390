import type { MatchColumn, MatchPurpose, PlugInBarrel } from '@coreward/bench';

/** Words of the match page. */
export const matchTexts = {
  title: 'What goes with what',
  intro:
    'Every laser with every lens and fibre of the drawer, each with the best focus and walked by hand. Ranges hold nine times in ten; they are estimates, a launch computes them.',
  purpose: 'ranked by',
  purposes: {
    total: 'all light that leaves the far end',
    lp01: 'power in LP01; other modes may come with it',
  } satisfies Record<MatchPurpose, string>,
  laser: 'laser',
  allLasers: 'all lasers',
  progress: (done: number, total: number): string => `${done} of ${total} combinations`,
  best: (text: string): string => `best so far: ${text}`,
  stop: 'Stop',
  stopped: 'Stopped.',
  again: 'Match again',
  before: 'Below still stands what was found before this was asked.',
  combination: (collimator: string, fibre: string): string => `${lens(collimator)} + ${fibre}`,
  lens,
  map: (laser: string): string => `Lens by fibre, for ${laser}`,
  mapHint: 'Arrow keys move through the map; Enter shows a combination.',
  mapLens: 'lens',
  leftOutCell: 'left out',
  table: 'All combinations',
  columns: {
    laser: 'laser',
    collimator: 'lens',
    fibre: 'fibre',
    share: 'share',
    power: 'power',
    reason: 'what costs it most',
  } satisfies Record<MatchColumn, string>,
  plug: 'plug',
  act: 'launch',
  make: 'make a launch',
  all: (count: number): string => `Show all ${count}`,
  makeLabel: (what: string): string => `make a launch: ${what}`,
  whatMade: (name: string): string => `launch “${name}” out of the match`,
  plugs: {
    fits: 'fits',
    'needs an adapter': 'needs an adapter',
    'must not meet': 'must not meet',
    unknown: 'not known',
  } satisfies Record<PlugInBarrel, string>,
  leftOut: (count: number): string => `${count} left out, for no formula covers them`,
  noParts: 'A match needs a laser and a fibre at least.',
  toDrawer: 'To the drawer',
  refused: 'The drawer cannot be read as it stands:',
  fault: 'The matching broke, a fault of ours.',
  printed: (purpose: string, laser: string): string => `Ranked by ${purpose}; ${laser}.`,
} as const;

function lens(collimator: string): string {
  return collimator === 'none' ? 'no lens' : collimator;
}

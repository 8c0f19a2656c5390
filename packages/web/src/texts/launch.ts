/** Words of the launch page. What is said about the light itself comes from bench. */
export const launchTexts = {
  lineParts: 'Parts in the order of the light',
  invisible: 'this light is invisible',
  leavesFarEnd: 'leaves the far end',
  ofLaser: (share: string): string => `${share} of the laser`,
  range: (range: string): string => `${range}, nine times in ten`,
  /** In place of a range. */
  noRange: {
    fresh: '',
    coming: 'the range follows',
    stopped: 'range not worked out',
    failed: 'range not known',
  },
  takesLong: 'The ranges of this launch take long to work out.',
  stop: 'Stop',
  stopped: (older: boolean): string =>
    older
      ? 'Stopped: the ranges shown are those of the launch before the last change.'
      : 'Stopped: the powers are those of the stated values, without ranges.',
  failed: 'The ranges could not be worked out; the powers are those of the stated values.',
  again: 'Work them out',
  ledger: 'Ledger: what each part lets through',
  ledgerColumns: { loss: 'loss', passes: 'passes', range: '90 % range', left: 'left' },
  costNothing: (labels: string): string => `These cost nothing here: ${labels}.`,
  focus: 'Focus at the facet',
  focusSeen: 'Above face on; below from the side, the light coming from the left, not to scale along it.',
  close: 'Close',
  more: 'More of this forecast',
  refused: 'This launch cannot be read',
  turn: (label: string): string => `turn ${label}`,
  turning: 'Lengths to turn',
  swap: 'swap in from the drawer',
  way: 'the way to the lens, element by element',
  layWay: 'Lay in the way of your drawer',
  whatWay: 'the drawer’s way laid in',
  toGauge: (name: string): string => `to the gauge: ${name.replaceAll('-', ' ')}`,
  swapped: (before: string, after: string): string => `${before} swapped for ${after}`,
} as const;

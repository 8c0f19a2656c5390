/** Words of the launch page. What is said about the light itself comes from bench. */
export const launchTexts = {
  line: 'Light line',
  lineParts: 'Parts in the order of the light',
  invented: 'An invented example: change anything, nothing of it exists.',
  invisible: 'invisible',
  leavesFarEnd: 'leaves the far end',
  ofLaser: (share: string): string => `${share} of the laser`,
  range: (range: string): string => `${range}, nine times in ten`,
  rangeComing: 'the range follows',
  rangeStale: 'ranges follow the hand',
  arrives: (power: string): string => `${power} arrives`,
  sends: (power: string): string => `${power} sets out`,
  ledger: 'Ledger: what each part lets through',
  ledgerColumns: { loss: 'loss', passes: 'passes', range: '90 % range', left: 'left' },
  setsOut: 'leaves the laser',
  allTogether: 'all together',
  costNothing: (labels: string): string => `These cost nothing here: ${labels}.`,
  turns: (angle: string): string => `turns the light by ${angle}`,
  focus: 'Focus at the facet',
  close: 'Close',
  words: 'Forecast in words',
  more: 'More of this forecast',
  refused: 'This launch cannot be read',
  turn: (label: string): string => `turn ${label}`,
  originOf: (label: string): string => `where ${label} comes from`,
  notWritten: 'not written',
  computedWith: (text: string): string => `computed with ${text}`,
  mendButton: (text: string): string => `Write ${text}`,
  changed: (label: string, before: string, after: string): string =>
    after === ''
      ? `${label} taken out`
      : before === ''
        ? `${label} ${after}`
        : `${label} ${before} to ${after}`,
  unwritten: (count: number): string => `not written down: ${count}`,
  working: 'working out the ranges',
} as const;

/** Words of the detector before an instrument. */
export const detectorTexts = {
  title: 'detector of the drawer before it',
  none: 'none: readings as they are',
  noFloor: 'one reading, with the dark still in it: take the floor',
  overFloor: 'one reading, less the floor',
  what: (detector: string, instrument: string): string => `“${detector}” is read by “${instrument}”`,
  whatNone: (detector: string): string => `“${detector}” is read by none`,
} as const;

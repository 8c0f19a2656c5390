/** Words of the instruments' page and of whatever shows their readings. */
export const instrumentTexts = {
  noAnswer: 'The station does not answer. Try again when it is back.',
} as const;

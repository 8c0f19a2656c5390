/** Stands under every result about hazards, whatever it says. */
export const standingLine =
  'Caution only, computed from what you entered. Your local rules and your laser safety officer decide; ask before you ' +
  'switch on.';

/** Stands under every result about hazards, once, whatever it says. */
export const standingLine =
  'Caution only, computed from what you entered. Your local rules and your laser safety officer decide; ask before you ' +
  'switch on.';

/** For those who have nobody to ask. */
export const nobodyAppointed =
  'No one appointed? Treat this like class 3B work and get someone qualified to look at the setup before raising the power.';

/** What to do when it has happened. */
export const afterExposure =
  'If light may have hit an eye: stop, go to an eye doctor at once, and take the data of the laser along. Do not wait for ' +
  'symptoms.';

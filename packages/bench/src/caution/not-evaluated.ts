import type { ShortCaution } from './short-cautions.ts';

/** Said where many benches are told at once and none is walked. */
export const notEvaluated: ShortCaution = {
  id: 'not-evaluated',
  level: 'not evaluated',
  text:
    'Hazards are not evaluated here; the cautions of a launch are. No one appointed? Treat this like class 3B work and get ' +
    'someone qualified to look at the setup before raising the power.',
};

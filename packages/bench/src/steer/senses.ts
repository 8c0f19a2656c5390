import type { Screw, Sense } from '../walk/step.ts';

/** Which way a spot went when a screw was turned a quarter turn, seen looking downstream. */
export type WentTo = 'right' | 'left' | 'up' | 'down';

/**
 * What was learned of each screw: +1 if the way it was turned then moves the spot to the right, or up. Mirrors flip
 * sides, mounts are screwed on either way round: a sense is learned and never reckoned. A screw that is missing was not
 * learned.
 */
export type ScrewSenses = ReadonlyMap<string, Sense>;

/** One name for each screw. */
export const screwKey = ({ mirror, axis }: Screw): string => `${mirror} ${axis}`;

/** All four, in the order in which they are learned. */
export const allScrews: readonly Screw[] = [
  { mirror: 'M1', axis: 'horizontal' },
  { mirror: 'M1', axis: 'vertical' },
  { mirror: 'M2', axis: 'horizontal' },
  { mirror: 'M2', axis: 'vertical' },
];

/** What a hand turns to see which way a spot goes, turns. */
export const learningTurn = 0.25;

/** Which ways a spot can go by a screw. */
export const waysOf = ({ axis }: Screw): readonly WentTo[] =>
  axis === 'horizontal' ? ['left', 'right'] : ['up', 'down'];

/**
 * The sense of a screw by the way the spot went. The forward spot on a card downstream of the mirror and the reverse
 * spot on one upstream of it go the same way, for both beams are turned alike.
 */
export const senseThat = (went: WentTo): Sense => (went === 'right' || went === 'up' ? 1 : -1);

/** The sense of a screw; +1 where nothing was learned. */
export const senseOf = (senses: ScrewSenses, screw: Screw): Sense => senses.get(screwKey(screw)) ?? 1;

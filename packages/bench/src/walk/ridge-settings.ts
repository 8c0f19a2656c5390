/** Screws turned at most. */
export const budget = 110;

/** What decides when a walk goes on and when it ends; chosen on benches drawn for that, never on those it is counted on. */
export const settings = {
  /** Wanted of the light along the ridges: no more lost (ln) than what M2 will leave lets over of this, so surely. */
  allLoss: 0.047,
  leftShare: 0.7,
  leastLoss: 0.012,
  mostLoss: 0.03,
  alongChance: 0.95,
  /** After so few steps a good start is believed a little sooner. */
  fewSteps: 3,
  earlyChance: 0.83,
  /** Share of the expected loss that must come from the mean for a move to go there. */
  meanShare: 0.45,
  /** A step that is to teach is so many uncertainties long, within these limits. */
  learnTimes: 1.5,
  learnLeast: 0.25,
  learnMost: 0.5,
  /** Deepest detuning, √(−ln fraction), clear of a weak wide foot under the peak; and how many floors stay. */
  deepest: 2.1,
  floors: 5,
  shallowest: 0.3,
  /** Left by M2 at the end: this little (ln) is expected in one axis. */
  left: 0.008,
  polishTries: 7,
  /** or so many throws of a hand are worse, and more with every try. */
  content: 0.35,
  contentMore: 0.1,
  /** A first sweep near the floor that may have left more than this (ln) is made again. */
  leftInTheDark: 0.05,
  /** A reading whose likelihood (a density of ln) is below the first is a surprise; below the second M2 is swept once more. */
  surprising: 0.3,
  incredible: 0.03,
  /** A step that goes this far, √(−ln fraction), would show that the peak depends on M1. */
  farStep: 1.2,
  /** A thread's run-out moves the light along the ridge by so much, 1σ, half-widths. */
  movedByFocus: 0.25,
  /** Screws that are kept for the last look at M2. */
  keptForPolish: 12,
  /** Steps along the ridge before it is polished whatever is believed. */
  mostSteps: 30,
  rounds: 3,
  claim: 0.85,
};

/** At which share of its peak the edge of a far field is read; the two are never mixed. */
export const levels = ['1/e2', '5%'] as const;
export type Level = (typeof levels)[number];

/** How a level is spelled. */
export const levelWords: Readonly<Record<string, Level>> = {
  '1/e2': '1/e2',
  '1/e²': '1/e2',
  '1/e^2': '1/e2',
  '13.5%': '1/e2',
  '5%': '5%',
  '5percent': '5%',
  '0.05': '5%',
};

/**
 * sin θ at 5 % over sin θ at 1/e² of a Gaussian, √(ln 20/2). The LP01 mode of a step-index fibre has 1.28 to 1.31
 * (computed from its closed-form far field), a filled multimode fibre less than a Gaussian.
 *
 * @source elementary; 5 % is the level of IEC 60793-1-43 for multimode fibre (from memory)
 */
export const gaussianLevelRatio = Math.sqrt(Math.log(20) / 2);

/** Standard uncertainty of that ratio as a share, for a far field that need not be Gaussian. */
export const levelRatioDoubt = 0.03;

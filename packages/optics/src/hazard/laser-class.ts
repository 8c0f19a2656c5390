/** The names of laser classes, mildest first: a later one is never treated as milder than an earlier one. */
export const laserClasses = ['1', '2', '1M', '2M', '3R', '3B', '4'] as const;
export type LaserClass = (typeof laserClasses)[number];

/** The more hazardous of classes. */
export function worstClass(first: LaserClass, ...others: readonly LaserClass[]): LaserClass {
  return others.reduce((worst, one) => (rank(one) > rank(worst) ? one : worst), first);
}

const rank = (laserClass: LaserClass): number => laserClasses.indexOf(laserClass);

/**
 * How an estimate is said: never that a laser is of a class, which is for its maker to find out.
 *
 * @source wording: our proposal
 */
export function classWording(laserClass: LaserClass): string {
  return `would be treated like class ${laserClass} here`;
}

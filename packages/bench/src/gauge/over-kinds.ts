import { brentRoot, studentProbability, studentQuantile } from '@coreward/optics';
import { lastDigit } from './last-digit.ts';
import { alongSlopes, covarianceOf, type Scatter } from './scatter.ts';

/**
 * Standard uncertainty of a fit's answer where the readings leave open how they scatter: that with which one Student's law
 * has the same 90 % interval as the laws of all likely kinds together, each as likely as the residuals make it.
 *
 * @param slopes of the answer along the parameters of the fit
 * @param inverse of the normal equations
 * @param freedom degrees of freedom of each law
 * @source averaging over models by their likelihoods, R. E. Kass and A. E. Raftery, J. Am. Stat. Assoc. 90, 773 (1995)
 *   (from memory)
 */
export function doubtOverKinds(
  slopes: readonly number[],
  inverse: readonly (readonly number[])[],
  columns: readonly (readonly number[])[],
  { kinds }: Scatter,
  freedom: number,
): number {
  const laws = kinds.map(({ weight, variances }) => ({
    weight,
    doubt: alongSlopes(slopes, covarianceOf(inverse, columns, variances)),
  }));
  const doubts = laws.map(({ doubt }) => doubt);
  const [least, most] = [Math.min(...doubts), Math.max(...doubts)];
  if (!(most > least * 1.0001 && least > 0)) return most;
  const total = laws.reduce((sum, { weight }) => sum + weight, 0);
  const above = (reach: number): number =>
    laws.reduce((sum, { weight, doubt }) => sum + weight * studentProbability(reach / doubt, freedom), 0) /
      total -
    0.95;
  const t = studentQuantile(0.95, freedom);
  // the two functions of Student's law agree to 0.002 of t
  return brentRoot(above, 0.98 * least * t, 1.02 * most * t) / t;
}

/**
 * What the last digit of the readings leaves open of a fit's answer at the least. Readings that came out alike were rounded
 * alike, and are off alike: however many they are, their mean is no better than one.
 *
 * @param slopes of the answer along the parameters of the fit
 * @param inverse of the normal equations
 * @param moves by how much what is fitted changes with each reading; left out: the readings themselves are fitted
 * @source even law from −½ to ½ of a step, JCGM 100:2008, F.2.2.1 (from memory)
 */
export function digitDoubt(
  slopes: readonly number[],
  inverse: readonly (readonly number[])[],
  columns: readonly (readonly number[])[],
  readings: readonly number[],
  moves: readonly number[] = readings.map(() => 1),
): number {
  const step = lastDigit(readings);
  if (step === 0) return 0;
  // how much one reading moves the answer: a row of (AᵀA)⁻¹Aᵀ
  const weights = columns.map((_, k) => slopes.reduce((sum, slope, j) => sum + slope * inverse[j]![k]!, 0));
  const alike = new Map<number, number>();
  readings.forEach((reading, i) => {
    const gain = moves[i]! * columns.reduce((sum, column, k) => sum + weights[k]! * column[i]!, 0);
    alike.set(reading, (alike.get(reading) ?? 0) + gain);
  });
  return (step / Math.sqrt(12)) * Math.hypot(...alike.values());
}

import { orthonormal } from '@coreward/optics';

/** How far readings scatter about a curve, and by which rule. */
export interface Scatter {
  /** `even`: the same everywhere. `growing`: more where the reading is larger. `rare`: more where something rarer is. */
  readonly rule: 'even' | 'growing' | 'rare';
  /** Variance of each reading, by the likeliest rule. */
  readonly variances: readonly number[];
  /** Every rule that was tried and may be true, with its variances. */
  readonly kinds: readonly ScatterKind[];
}

/** One way in which readings may scatter. */
export interface ScatterKind {
  /** How likely it is, relative to the others. */
  readonly weight: number;
  readonly variances: readonly number[];
}

/** Scatter of a reading of nought over the growth of scatter at the largest one, for the rules that are tried. */
const floors = [1, 0.3, 0.1, 0.03, 0.01];

/** With fewer readings to spare than this, no rule but the plainest can be told from another. */
const fewestToSpare = 3;

/** So much likelier, in logarithms, the rarer rule must be: chance favours one of many. */
const rareMargin = 2;

/** A kind less likely than this, relative to the likeliest, moves no doubt. */
const leastWeight = 1e-3;

/**
 * Scatter of readings from what a fit left over: the same for all, or the root of a floor and a share squared of the
 * reading, or of something rarer; whichever makes the residuals most likely. Few readings leave open which it is: the
 * others are told as well.
 *
 * @param residuals of least squares with equal weights
 * @param columns slopes of the curve along each parameter; fewer than readings
 * @param curve the fitted values, where growing scatter is measured against
 * @param rare what else scatter may grow with: the slope of the curve, for instance, where the places of the readings are
 *   off or their last digit is coarse
 * @param least variance of each reading that is known whatever the residuals say, such as that of its last digit
 * @source restricted likelihood of a normal law, its scale estimated: H. D. Patterson and R. Thompson, Biometrika 58, 545
 *   (1971) (from memory); the plain one would favour weights that leave the fit most freedom
 */
export function scatterOf(
  residuals: readonly number[],
  columns: readonly (readonly number[])[],
  curve: readonly number[],
  rare: readonly number[] = [],
  least: readonly number[] = [],
): Scatter {
  const freedom = residuals.length - columns.length;
  const even = { rule: 'even' as const, sizes: new Float64Array(residuals.length).fill(1), share: 1 };
  const share = 1 / floors.length;
  const rules =
    freedom < fewestToSpare
      ? [even]
      : [
          even,
          ...growingWith(curve).map((sizes) => ({ rule: 'growing' as const, sizes, share })),
          ...growingWith(rare).map((sizes) => ({ rule: 'rare' as const, sizes, share })),
        ];
  const directions = orthonormal(columns);
  const tried = rules.flatMap(({ rule, sizes, share }) => {
    // what a fit with such weights would leave: equal weights let large readings bend the curve near small ones
    const left = leftWith(directions, residuals, sizes);
    if (left === null) return [];
    const scale = left.squares / freedom;
    let logs = 0;
    for (const size of sizes) logs += Math.log(size);
    const likelihood = -0.5 * (freedom * Math.log(scale) + left.logDeterminant) - logs;
    const handicap = rule === 'rare' ? rareMargin : 0;
    return [{ rule, sizes, share, scale, likelihood, handicapped: likelihood - handicap }];
  });
  const variancesOf = ({ sizes, scale }: (typeof tried)[number]): readonly number[] =>
    Array.from(sizes, (size, i) => Math.max(scale * size * size, least[i] ?? 0));
  const [first] = tried;
  if (first === undefined) return { rule: 'even', variances: [], kinds: [] };
  const best = tried.reduce((a, b) => (b.handicapped > a.handicapped ? b : a), first);
  const variances = variancesOf(best);
  // residuals of nought are infinitely likely
  const weightOf = ({ share, likelihood }: (typeof tried)[number]): number =>
    likelihood === best.likelihood ? share : share * Math.exp(likelihood - best.likelihood);
  const kinds = tried
    .map((kind) => ({ kind, weight: weightOf(kind) }))
    .filter(({ weight }) => weight > leastWeight)
    .map(({ kind, weight }) => ({ weight, variances: kind === best ? variances : variancesOf(kind) }));
  return { rule: best.rule, variances, kinds };
}

/**
 * Variances over all kinds of scatter that may be true, each as likely as the residuals make it: what a covariance in
 * proportion to the variances needs. The likeliest kind alone is too small where few readings made it look likely by chance.
 *
 * @source mean over models by their likelihoods, R. E. Kass and A. E. Raftery, J. Am. Stat. Assoc. 90, 773 (1995) (from
 *   memory)
 */
export function variancesOverKinds({ kinds, variances }: Scatter): readonly number[] {
  if (kinds.length < 2) return variances;
  const total = kinds.reduce((sum, { weight }) => sum + weight, 0);
  return variances.map(
    (_, i) => kinds.reduce((sum, { weight, variances: of }) => sum + weight * of[i]!, 0) / total,
  );
}

/** Sizes of scatter that grow with `of`, from each floor; none where it is nought or not told. */
function growingWith(of: readonly number[]): readonly Float64Array[] {
  let largest = 0;
  for (const y of of) largest = Math.max(largest, Math.abs(y));
  if (!(largest > 0)) return [];
  return floors.map((floor) => new Float64Array(of).map((y) => Math.sqrt(y * y + (floor * largest) ** 2)));
}

/**
 * Sum of the squares that least squares with weights 1/size² leave, and the logarithm of the determinant of their normal
 * equations. By these: the columns are orthogonal to begin with, and a likelihood needs few digits.
 *
 * @returns null where a size is zero, or the weights leave the columns alike
 */
function leftWith(
  directions: readonly Float64Array[],
  residuals: readonly number[],
  sizes: Float64Array,
): { readonly squares: number; readonly logDeterminant: number } | null {
  const n = directions.length;
  // the columns with the residuals as the last one: what is left is that one's share of the triangle; row by row
  const width = n + 1;
  const sums = new Float64Array(width * width);
  const at = new Float64Array(width);
  for (let i = 0; i < residuals.length; i++) {
    const weight = 1 / sizes[i]!;
    for (let j = 0; j < n; j++) at[j] = directions[j]![i]! * weight;
    at[n] = residuals[i]! * weight;
    for (let j = 0, k0 = 0; j <= n; j++, k0 += width) {
      const value = at[j]!;
      for (let k = j; k <= n; k++) sums[k0 + k]! += value * at[k]!;
    }
  }
  let logDeterminant = 0;
  for (let j = 0; j < n; j++) {
    const pivot = sums[j * width + j]!;
    if (!(pivot > 0 && pivot < Number.POSITIVE_INFINITY)) return null;
    logDeterminant += Math.log(pivot);
    for (let i = j + 1; i <= n; i++) {
      const share = sums[j * width + i]! / pivot;
      for (let k = i; k <= n; k++) sums[i * width + k]! -= share * sums[j * width + k]!;
    }
  }
  return { squares: Math.max(0, sums[n * width + n]!), logDeterminant };
}

/**
 * Covariance of least-squares coefficients whose readings do not all scatter alike: H·diag(variances)·Hᵀ with
 * H = (AᵀA)⁻¹Aᵀ.
 *
 * @source H. White, Econometrica 48, 817 (1980), with modelled variances (from memory)
 */
export function covarianceOf(
  inverse: readonly (readonly number[])[],
  columns: readonly (readonly number[])[],
  variances: readonly number[],
): readonly (readonly number[])[] {
  const gains = inverse.map((row) => gainOf(row, columns));
  return gains.map((a) => gains.map((b) => weightedProduct(a, b, variances)));
}

/** A row of H: how much each reading moves one coefficient. */
function gainOf(row: readonly number[], columns: readonly (readonly number[])[]): Float64Array {
  const gain = new Float64Array(columns[0]?.length ?? 0);
  for (const [j, column] of columns.entries()) {
    const share = row[j]!;
    for (let i = 0; i < gain.length; i++) gain[i] = gain[i]! + share * column[i]!;
  }
  return gain;
}

function weightedProduct(a: Float64Array, b: Float64Array, weights: readonly number[]): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]! * weights[i]!;
  return sum;
}

/** Standard uncertainty of a formula of correlated inputs, by its slopes. @source JCGM 100:2008, 5.2.2 (from memory) */
export function alongSlopes(slopes: readonly number[], covariance: readonly (readonly number[])[]): number {
  let sum = 0;
  for (const [i, a] of slopes.entries())
    for (const [j, b] of slopes.entries()) sum += a * b * covariance[i]![j]!;
  return Math.sqrt(Math.max(0, sum));
}

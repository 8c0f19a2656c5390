/**
 * Laguerre-Gauss radial functions of azimuthal order `l` and radial orders 0 … count − 1 at the given radii, each
 * normalised to ∫f²ρdρ = 1 and positive in its innermost lobe: out[p·nodes + i].
 *
 * @param waist 1/e² radius of the basis, in the unit of `rho`
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966), eq. for cylindrical modes (from memory); recurrence of the
 *   Laguerre polynomials in Abramowitz and Stegun 22.7.12 (from memory), carried out on the normalised functions
 */
export function laguerreGauss(waist: number, l: number, count: number, rho: ArrayLike<number>): Float64Array {
  const out = new Float64Array(count * rho.length);
  let logFactorial = 0;
  for (let n = 2; n <= l; n += 1) logFactorial += Math.log(n);
  // √((p+1)(p+1+l)) f_{p+1} = (2p+1+l−x) f_p − √(p(p+l)) f_{p−1}
  const roots = Float64Array.from({ length: count + 1 }, (_, p) => Math.sqrt(p * (p + l)));
  for (let i = 0; i < rho.length; i += 1) {
    const x = 2 * (rho[i]! / waist) ** 2;
    const ground = (2 / waist) * Math.exp((l * Math.log(x) - x - logFactorial) / 2);
    let below = 0;
    let here = l === 0 ? (2 / waist) * Math.exp(-x / 2) : x === 0 ? 0 : ground;
    for (let p = 0; p < count; p += 1) {
      out[p * rho.length + i] = here;
      const above = ((2 * p + 1 + l - x) * here - roots[p]! * below) / roots[p + 1]!;
      below = here;
      here = above;
    }
  }
  return out;
}

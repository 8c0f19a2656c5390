"""Writes ../src/numerics/erfc-chebyshev.ts: Chebyshev coefficients of exp(x^2) erfc(x).

Run with mpmath (any version from 1.2): python3 erfc_chebyshev.py > ../src/numerics/erfc-chebyshev.ts
"""
from mpmath import mp, mpf, cos, pi, erfc, exp

mp.dps = 40
N = 80


def g(t):
    x = mpf(15) / 4 * (1 + t) / (1 - t)  # t = (x - 3.75)/(x + 3.75)
    return exp(x * x) * erfc(x) * (1 + 2 * x)  # 1 + 2x makes it flat at both ends


theta = [pi * (k + mpf(1) / 2) / N for k in range(N)]
values = [g(cos(t)) for t in theta]
c = [2 * sum(v * cos(j * t) for v, t in zip(values, theta)) / N for j in range(N)]
c[0] /= 2
last = max(j for j in range(N) if abs(c[j]) > mpf(10) ** -18)
print("""/**
 * Chebyshev coefficients of (1 + 2x)·exp(x²)·erfc(x), x ≥ 0, in t = (x − 3.75)/(x + 3.75).
 * Made by `packages/optics/scripts/erfc_chebyshev.py`; not to be edited by hand.
 *
 * @source computed with mpmath, 40 digits, from its erfc
 */
export const erfcCoefficients: readonly number[] = [""")
for x in c[: last + 1]:
    print(f"  {repr(float(x))},")
print("];")

"""Writes ../src/numerics/bessel-chebyshev.ts: Chebyshev coefficients of the parts from which J0, J1, K0, K1 and I0 are built.

Run with mpmath (any version from 1.2): python3 bessel_chebyshev.py > ../src/numerics/bessel-chebyshev.ts
"""
from mpmath import mp, mpf, cos, pi, besselj, bessely, besselk, besseli, sqrt, exp, log, sin

mp.dps = 40
N = 64  # sampling points, far more than the coefficients that are kept


def chebyshev(f):
    """Coefficients of f on [-1, 1], cut where they fall below 1e-18 of the largest; the first one already halved."""
    theta = [pi * (k + mpf(1) / 2) / N for k in range(N)]
    values = [f(cos(t)) for t in theta]
    c = [2 * sum(v * cos(j * t) for v, t in zip(values, theta)) / N for j in range(N)]
    c[0] /= 2
    biggest = max(abs(x) for x in c)
    last = max(j for j in range(N) if abs(c[j]) > biggest * mpf(10) ** -18)
    return c[: last + 1]


def hankel(n, x):
    """P and Q of J_n = sqrt(2/(pi x)) (P cos X - Q sin X), X = x - (n/2 + 1/4) pi."""
    phase = x - (mpf(n) / 2 + mpf(1) / 4) * pi
    j, y, scale = besselj(n, x), bessely(n, x), sqrt(pi * x / 2)
    return scale * (j * cos(phase) + y * sin(phase)), scale * (y * cos(phase) - j * sin(phase))


def far(f):
    """f of x >= 8, with t = 128/x^2 - 1; the end t = -1 (x infinite) is never sampled."""
    return lambda t: f(8 * sqrt(2 / (t + 1)))


def inverse(low, high):
    """x from t running with 1/x from 1/high to 1/low; high None is infinity."""
    a, b = (mpf(0) if high is None else 1 / mpf(high)), 1 / mpf(low)
    return lambda t: 1 / (a + (b - a) * (t + 1) / 2)


tables = [
    ("besselJ0Near", "J0(x), 0 ≤ x ≤ 8, in t = x²/32 − 1", lambda t: besselj(0, sqrt(32 * (t + 1)))),
    ("besselJ1Near", "J1(x)/x, 0 ≤ x ≤ 8, in t = x²/32 − 1", lambda t: besselj(1, sqrt(32 * (t + 1))) / sqrt(32 * (t + 1))),
    ("besselP0", "P of J0, x ≥ 8, in t = 128/x² − 1", far(lambda x: hankel(0, x)[0])),
    ("besselQ0", "x·Q of J0, x ≥ 8, in t = 128/x² − 1", far(lambda x: x * hankel(0, x)[1])),
    ("besselP1", "P of J1, x ≥ 8, in t = 128/x² − 1", far(lambda x: hankel(1, x)[0])),
    ("besselQ1", "x·Q of J1, x ≥ 8, in t = 128/x² − 1", far(lambda x: x * hankel(1, x)[1])),
]


def k_near(n):
    def f(t):
        x = sqrt(2 * (t + 1))
        if n == 0:
            return besselk(0, x) + log(x / 2) * besseli(0, x)
        return x * (besselk(1, x) - log(x / 2) * besseli(1, x))

    return f


for n in (0, 1):
    tables.append((f"besselK{n}Near", ["K0 + ln(x/2)·I0", "x·(K1 − ln(x/2)·I1)"][n] + ", 0 < x ≤ 2, in t = x²/2 − 1", k_near(n)))
    for name, low, high in (("Middle", 2, 8), ("Far", 8, None)):
        where = "2 ≤ x ≤ 8, in t = 16/(3x) − 5/3" if high else "x ≥ 8, in t = 16/x − 1"
        tables.append(
            (f"besselK{n}{name}", f"√x·eˣ·K{n}, {where}", lambda t, n=n, x=inverse(low, high): sqrt(x(t)) * exp(x(t)) * besselk(n, x(t)))
        )
for n in (0, 1):
    tables.append((f"besselI{n}Near", ["I0(x)", "I1(x)/x"][n] + ", 0 ≤ x ≤ 2, in t = x²/2 − 1", lambda t, n=n: besseli(n, sqrt(2 * (t + 1))) / (sqrt(2 * (t + 1)) if n else 1)))
tables.append(("besselI0Middle", "e⁻ˣ·I0(x), 0 ≤ x ≤ 8, in t = x/4 − 1", lambda t: exp(-4 * (t + 1)) * besseli(0, 4 * (t + 1))))
tables.append(("besselI0Far", "√x·e⁻ˣ·I0(x), x ≥ 8, in t = 16/x − 1", lambda t, x=inverse(8, None): sqrt(x(t)) * exp(-x(t)) * besseli(0, x(t))))

print("/**")
print(" * Chebyshev coefficients of the parts from which J0, J1, K0, K1 and I0 are built in `bessel-j.ts`, `bessel-k.ts` and `bessel-i.ts`: f(t) = Σ c_k T_k(t).")
print(" * Made by `packages/optics/scripts/bessel_chebyshev.py`; not to be edited by hand.")
print(" *")
print(" * @source computed with mpmath, 40 digits, from its Bessel functions")
print(" */")
for name, what, f in tables:
    print(f"\n/** {what}. */")
    print(f"export const {name}: readonly number[] = [")
    for c in chebyshev(f):
        print(f"  {repr(float(c))},")
    print("];")

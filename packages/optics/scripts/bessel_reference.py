"""Writes ../reference/bessel.json: Bessel functions at 40 digits, rounded to double, for the tests of src/numerics.

Run with mpmath (any version from 1.2): python3 bessel_reference.py > ../reference/bessel.json
"""
import json
from mpmath import mp, mpf, besselj, besselk, besseli, besseljzero, exp

mp.dps = 40
X = [1e-6, 0.003, 0.4, 0.999, 1.0, 1.999999, 2.0, 2.4, 5.5, 7.999999, 8.0, 8.000001, 11.25, 24.9, 44.0, 60.5, 109.0, 150.25, 333.0, 1000.5, 3999.0]
ORDERS = [0, 1, 2, 3, 5, 10, 20, 50, 107, 150, 300, 400]


def rows(function, keep=lambda v: 1e-290 < abs(v) < 1e290):
    out = []
    for n in ORDERS:
        for x in X:
            v = function(n, mpf(x))
            if keep(v):
                out.append([n, x, float(v)])
    return out


zeros = [[n, m, float(besseljzero(n, m))] for n in (0, 1, 2, 3, 7, 20, 50, 106, 140) for m in (1, 2, 3, 5, 10, 30)]
print(json.dumps({
    "format": "coreward-reference-bessel/1",
    "source": "computed with mpmath %s at 40 digits by packages/optics/scripts/bessel_reference.py, rounded to double" % __import__("mpmath").__version__,
    "columns": {"j": "order, x, J_n(x)", "kScaled": "order, x, e^x K_n(x)", "iScaled": "order, x, e^-x I_n(x)", "zeros": "order, rank, zero of J_n"},
    "j": rows(besselj),
    "kScaled": rows(lambda n, x: exp(x) * besselk(n, x)),
    "iScaled": rows(lambda n, x: exp(-x) * besseli(n, x)),
    "zeros": zeros,
}, indent=None, separators=(",", ":")).replace('"j":', '\n"j":').replace('"kScaled":[', '\n"kScaled":[').replace('"iScaled":[', '\n"iScaled":[').replace('"zeros":[', '\n"zeros":['))

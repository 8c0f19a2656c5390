"""Writes ../reference/normal.json: the normal distribution at 40 digits, rounded to double, for the tests of src/numerics.

Run with mpmath (any version from 1.2): python3 normal_reference.py > ../reference/normal.json
"""
import json
from mpmath import mp, mpf, erfc, sqrt

mp.dps = 40
Z = [-37.0, -20.0, -8.5, -5.0, -3.0, -1.6448536269514729, -1.0, -0.5, -1e-3, 0.0, 1e-9, 0.25, 0.674, 1.0, 2.0, 4.0, 6.0, 8.0]
P = [1e-300, 1e-100, 1e-20, 1e-9, 1e-4, 0.02, 0.05, 0.1, 0.25, 0.4, 0.499999, 0.5, 0.6, 0.75, 0.9, 0.95, 0.975, 0.99, 0.9999, 0.999999999]
X = [-3.0, -1.0, -0.1, 0.0, 1e-8, 0.1, 0.5, 1.0, 1.5, 2.0, 3.75, 5.0, 10.0, 13.3, 20.0, 22.222, 24.13, 26.0]


def quantile(p):
    if p > mpf(1) / 2:
        return -quantile(1 - p)
    low, high = mpf(-40), mpf(1)
    for _ in range(140):
        middle = (low + high) / 2
        low, high = (middle, high) if erfc(-middle / sqrt(2)) / 2 < p else (low, middle)
    return low


print(json.dumps({
    "format": "coreward-reference-normal/1",
    "source": "computed with mpmath %s at 40 digits by packages/optics/scripts/normal_reference.py, rounded to double" % __import__("mpmath").__version__,
    "columns": {"cdf": "z, probability below z", "quantile": "probability, z", "erfc": "x, erfc(x)"},
    "cdf": [[z, float(erfc(-mpf(z) / sqrt(2)) / 2)] for z in Z],
    "quantile": [[p, 0.0 if p == 0.5 else float(quantile(mpf(p)))] for p in P],
    "erfc": [[x, float(erfc(mpf(x)))] for x in X],
}, separators=(",", ":")))

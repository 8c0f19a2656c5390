"""Writes ../reference/graded-modes.json: modes of the truncated parabola at V where Kummer's function needs 80 digits.

R = rho^l exp(-V rho^2/2) M(a, l+1, V rho^2), a = (l+1)/2 - u^2/4V, inside; K_l(w rho) outside; R and R' continuous.
Run with mpmath (any version from 1.2): python3 graded_reference.py > ../reference/graded-modes.json
"""
import json
from mpmath import mp, mpf, hyp1f1, besselk, sqrt, exp, quad

mp.dps = 80
CASES = [(0.5, 0, 1), (23.98, 0, 6), (23.98, 4, 4), (37, 9, 4), (37, 1, 9), (60, 0, 15), (60, 12, 9), (60, 28, 1), (100, 0, 1), (100, 3, 24), (100, 20, 15), (100, 44, 3)]


def parts(l, V, u):
    a, b = mpf(l + 1) / 2 - u * u / (4 * V), mpf(l + 1)
    return hyp1f1(a, b, V), a / b * hyp1f1(a + 1, b + 1, V)


def mismatch(l, V, u):
    w = sqrt(V * V - u * u)
    m, slope = parts(l, V, u)
    return (w * besselk(l + 1, w) / besselk(l, w) - V) * m + 2 * V * slope


def solve(V, l, m):
    group = 2 * m + l - 1
    # between the levels of the endless parabola half-way to the next lower group of this l, and its own
    low, high = sqrt(2 * V * (group - 1)) + mpf(10) ** -3, min(V * (1 - mpf(10) ** -40), sqrt(2 * V * group) * (1 + mpf(10) ** -60))
    f_low = mismatch(l, V, low)
    assert f_low * mismatch(l, V, high) < 0, (V, l, m)
    for _ in range(150):
        middle = (low + high) / 2
        if f_low * mismatch(l, V, middle) > 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


modes = []
for V, l, m in CASES:
    V = mpf(V)
    u = solve(V, l, m)
    w = sqrt(V * V - u * u)
    a = mpf(l + 1) / 2 - u * u / (4 * V)
    core = lambda r: r**l * exp(-V * r * r / 2) * hyp1f1(a, l + 1, V * r * r)
    edge = core(mpf(1))
    kl = besselk(l, w)
    cladding = edge * edge * (besselk(abs(l - 1), w) * besselk(l + 1, w) / kl**2 - 1) / 2
    mp.dps = 60
    norm = sqrt(quad(lambda r: core(r) ** 2 * r, [mpf(i) / 12 for i in range(13)]) + cladding)
    mp.dps = 80
    field = [[r, float((core(mpf(r)) if r <= 1 else edge * besselk(l, w * mpf(r)) / kl) / norm)] for r in (0.05, 0.2, 0.45, 0.7, 0.9, 1.0, 1.1, 1.5)]
    modes.append({"V": float(V), "l": l, "m": m, "u": float(u), "w": float(w), "coreFraction": float(1 - cladding / norm**2), "field": field})
print(json.dumps({
    "format": "coreward-reference-graded/1",
    "source": "computed with mpmath %s at 80 digits by packages/optics/scripts/graded_reference.py, rounded to double" % __import__("mpmath").__version__,
    "columns": {"field": "rho, R(rho) with the integral of R^2 rho over all rho equal to 1, positive near the axis"},
    "modes": modes,
}, indent=1))

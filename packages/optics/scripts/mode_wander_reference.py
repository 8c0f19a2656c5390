"""Writes ../reference/mode-wander.json: how far the centroid and the direction of light in a few modes wander.

Another route than the package's: fields on a square grid, the direction by finite differences, the mean square over
random mixes drawn one by one. Run with NumPy and SciPy: python3 mode_wander_reference.py > ../reference/mode-wander.json
"""
import json
import numpy as np
from scipy.optimize import brentq
from scipy.special import jv, kv, jn_zeros

CASES = [(4.1, 0.12, 650), (4.1, 0.12, 850), (4.1, 0.12, 520)]  # core radius um, NA, wavelength nm
MIXES = 400_000


def modes(V):
    found = []
    for l in range(30):
        poles = [0.0] + list(jn_zeros(l, 30))
        for low, high in zip(poles, poles[1:]):
            def f(u):
                w = np.sqrt(V * V - u * u)
                return u * jv(l + 1, u) * kv(l, w) - w * kv(l + 1, w) * jv(l, u)
            top = min(high, V)
            us = np.linspace(low + 1e-9, top - 1e-9, 4000) if low < V else []
            for a, b in zip(us, us[1:]):
                if f(a) * f(b) < 0:
                    found.append((l, brentq(f, a, b, xtol=1e-13)))
    return found


rng = np.random.default_rng(1)
out = []
for radius, na, nm in CASES:
    V = 2 * np.pi * radius * na / (nm * 1e-3)
    half, count = 7.0, 1401
    axis = np.linspace(-half, half, count)
    step = axis[1] - axis[0]
    x, y = np.meshgrid(axis, axis, indexing="ij")
    rho, phi = np.hypot(x, y), np.arctan2(y, x)
    fields = []
    lp = modes(V)
    for l, u in lp:
        w = np.sqrt(V * V - u * u)
        r = np.where(rho <= 1, jv(l, u * rho) / jv(l, u), kv(l, w * np.maximum(rho, 1)) / kv(l, w))
        for turned in ([np.cos(l * phi)] if l == 0 else [np.cos(l * phi), np.sin(l * phi)]):
            field = r * turned
            fields.append(field / np.sqrt((field**2).sum()) / step)
    n = len(fields)
    slopes = [np.gradient(f, step, axis=0) for f in fields]
    place = np.array([[(a * x * b).sum() for b in fields] for a in fields]) * step**2
    turn = np.array([[(a * s).sum() for s in slopes] for a in fields]) * step**2  # q = -i d/dx
    amplitudes = rng.normal(size=(MIXES, 2 * n)) + 1j * rng.normal(size=(MIXES, 2 * n))
    amplitudes /= np.linalg.norm(amplitudes, axis=1)[:, None]
    def mean(matrix, c):
        return np.einsum("ij,jk,ik->i", c.conj(), matrix, c, optimize=True).real
    one = amplitudes[:, :n] / np.linalg.norm(amplitudes[:, :n], axis=1)[:, None]
    both = (amplitudes[:, :n], amplitudes[:, n:])
    rms = lambda values: float(np.sqrt((values**2).mean()))
    k = 2 * np.pi / (nm * 1e-3)
    out.append({
        "coreRadius_um": radius, "numericalAperture": na, "wavelength_nm": nm, "V": V,
        "lpModes": len(lp), "orientations": n,
        "onePolarization": {"centroid_um": rms(mean(place, one)) * radius, "angle_mrad": rms(mean(-1j * turn, one)) / (k * radius) * 1e3},
        "bothPolarizations": {"centroid_um": rms(sum(mean(place, c) for c in both)) * radius, "angle_mrad": rms(sum(mean(-1j * turn, c) for c in both)) / (k * radius) * 1e3},
    })
print(json.dumps({"computed": "NumPy and SciPy, mode_wander_reference.py; grid 1401 x 1401, 400000 random mixes", "cases": out}, indent=1))

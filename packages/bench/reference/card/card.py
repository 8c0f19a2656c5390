"""Writes card.json: homographies and centres of spots, computed with NumPy and SciPy by other routes than ours.

Homography: direct linear transform, the right singular vector of least singular value (numpy.linalg.svd).
Centre: least squares of an elliptical Gaussian on a plane, scipy.optimize.least_squares, all pixels alike.
"""
import json
import pathlib

import numpy as np
import scipy
from scipy.optimize import least_squares

random = np.random.default_rng(20261129)


def homography(source, target):
    rows = []
    for (x, y), (u, v) in zip(source, target):
        rows.append([-x, -y, -1, 0, 0, 0, u * x, u * y, u])
        rows.append([0, 0, 0, -x, -y, -1, v * x, v * y, v])
    h = np.linalg.svd(np.array(rows))[2][-1].reshape(3, 3)
    return h / h[2, 2]


def carried(h, point):
    x, y, w = h @ [point[0], point[1], 1]
    return [x / w, y / w]


def quad():
    corners = np.array([[110, 90], [540, 96], [533, 410], [102, 399]]) + random.normal(0, 25, (4, 2))
    sides = random.uniform(20e-3, 60e-3, 2)
    w, h = sides / 2
    target = np.array([[-w, h], [w, h], [w, -h], [-w, -h]])
    # metres and pixels differ by 1e5: scaled before the decomposition, and back
    m = homography(corners / 300, target / 0.02)
    points = random.uniform([120, 110], [500, 380], (3, 2))
    there = [[20e-3 * one for one in carried(m, point / 300)] for point in points]
    return {"corners": corners.tolist(), "sides_m": sides.tolist(), "points": points.tolist(), "carried_m": there}


def spot():
    width, height = 72, 60
    x0, y0 = random.uniform([30, 25], [42, 35])
    major, minor, angle = random.uniform(4, 6), random.uniform(3, 4), random.uniform(0, np.pi)
    x, y = np.meshgrid(np.arange(width), np.arange(height))

    def bell(p):
        a, cx, cy, s1, s2, t, level, gx, gy = p
        u, v = (x - cx) * np.cos(t) + (y - cy) * np.sin(t), (y - cy) * np.cos(t) - (x - cx) * np.sin(t)
        return a * np.exp(-((u / s1) ** 2 + (v / s2) ** 2) / 2) + level + gx * x + gy * y

    truth = [170, x0, y0, major, minor, angle, 12, 0.03, -0.02]
    codes = np.clip(np.round(bell(truth) + random.normal(0, 1.5, x.shape)), 0, 255)
    fit = least_squares(lambda p: (bell(p) - codes).ravel(), truth, x_scale=[100, 1, 1, 1, 1, 0.1, 1, 0.01, 0.01])
    return {"width": width, "height": height, "codes": codes.astype(int).ravel().tolist(), "centre": fit.x[1:3].tolist(),
            "deviations": [major, minor]}


here = pathlib.Path(__file__).parent
(here / "card.json").write_text(json.dumps({
    "source": f"computed with NumPy {np.__version__} and SciPy {scipy.__version__}, card.py beside this file",
    "homographies": [quad() for _ in range(6)],
    "spots": [spot() for _ in range(4)],
}) + "\n")

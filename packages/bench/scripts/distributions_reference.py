"""Recomputes reference/distributions.json: quantiles of the three shapes of doubt, from scipy.stats.

Run: python3 packages/bench/scripts/distributions_reference.py
"""

import json
from pathlib import Path

import numpy as np
import scipy
from scipy import stats

value, uncertainty = 6.2, 1.9
half = uncertainty * np.sqrt(3)
shapes = {
    "normal": stats.norm(value, uncertainty),
    "rectangular": stats.uniform(value - half, 2 * half),
    "positive": stats.lognorm(s=uncertainty / value, scale=value),
}
document = {
    "obtained": f"computed with scipy {scipy.__version__} (scipy.stats norm, uniform, lognorm), scripts/distributions_reference.py",
    "value": value,
    "uncertainty": uncertainty,
    "columns": "shape, probability, quantile",
    "rows": [
        [name, p, float(law.ppf(p))]
        for name, law in shapes.items()
        for p in (1e-6, 0.05, 0.16, 0.5, 0.9, 0.95, 0.999)
    ],
}
path = Path(__file__).parents[1] / "reference" / "distributions.json"
path.write_text(json.dumps(document, indent=1) + "\n")

"""Recomputes reference/units.json: what quantities are in SI, by other hands than ours.

Factors of units come from scipy.constants, pi and logarithms from mpmath at 60 digits; each value is rounded to the
nearest double once, at the end. Run: python3 packages/bench/scripts/units_reference.py
"""

import json
from pathlib import Path

import mpmath
import scipy
from mpmath import log, mp, mpf, pi
from scipy import constants as c

mp.dps = 60


def dec(x):
    """A scipy constant that is a short decimal, without the noise of its double."""
    return mpf(repr(x))


inch = dec(c.inch)
foot, thou = 12 * inch, inch / 1000
for exact, double in ((foot, c.foot), (thou, c.mil)):  # scipy's are products of doubles
    assert abs(exact / mpf(double) - 1) < 1e-15
deg, arcmin, arcsec = pi / 180, pi / 180 / 60, pi / 180 / 3600
for exact, double in ((deg, c.degree), (arcmin, c.arcminute), (arcsec, c.arcsecond)):
    assert abs(exact / mpf(double) - 1) < 1e-15
dB = log(10) / 10

rows = [
    ("1 in", "length", inch),
    ("0.5 in", "length", inch / 2),
    ('1"', "length", inch),
    ("1/4 in", "length", inch / 4),
    ("1 3/8 in", "length", inch * 11 / 8),
    ("7/64 in", "length", inch * 7 / 64),
    ("3 ft", "length", 3 * foot),
    ("5 thou", "length", 5 * thou),
    ("5.1 thou", "length", mpf("5.1") * thou),
    ("5893 Å", "length", 5893 * dec(c.angstrom)),
    ("635 nm", "length", mpf("635e-9")),
    ("632.8 nm", "length", mpf("632.8e-9")),
    ("8.2 µm", "length", mpf("8.2e-6")),
    ("0.82 mm", "length", mpf("0.82e-3")),
    ("1.55 µm", "length", mpf("1.55e-6")),
    ("18 m", "length", mpf(18)),
    ("2.5 cm", "length", mpf("0.025")),
    ("1.2 km", "length", mpf(1200)),
    ("45°", "angle", 45 * deg),
    ("8 deg", "angle", 8 * deg),
    ("0.3°", "angle", mpf("0.3") * deg),
    ("3 arcmin", "angle", 3 * arcmin),
    ("8 arcsec", "angle", 8 * arcsec),
    ("0.7 arcsec", "angle", mpf("0.7") * arcsec),
    ("12 mrad", "angle", mpf("0.012")),
    ("7.9 mrad/turn", "anglePerTurn", mpf("0.0079")),
    ("0.45 deg/turn", "anglePerTurn", mpf("0.45") * deg),
    ("80 tpi", "screwPitch", inch / 80),
    ("100 tpi", "screwPitch", inch / 100),
    ("1/4-80", "screwPitch", inch / 80),
    ("3/16-100", "screwPitch", inch / 100),
    ("#8-32", "screwPitch", inch / 32),
    ("M6x0.25", "screwPitch", mpf("0.25e-3")),
    ("0.25 mm/turn", "screwPitch", mpf("0.25e-3")),
    ("0.35 dB/km", "attenuation", mpf("0.35e-3") * dB),
    ("15 dB/km", "attenuation", mpf("15e-3") * dB),
    ("0.2 dB/m", "attenuation", mpf("0.2") * dB),
    ("0.3 dB", "loss", mpf("0.3") * dB),
    ("3.0103 dB", "loss", mpf("3.0103") * dB),
    ("97 %", "fraction", mpf("0.97")),
    ("99.7 %", "fraction", mpf("0.997")),
    ("10 mW/cm^2", "irradiance", mpf(100)),
    ("2.5 W/in^2", "irradiance", mpf("2.5") / inch**2),
    ("5 mJ/cm²", "radiantExposure", mpf(50)),
    ("10 min", "time", 10 * dec(c.minute)),
    ("2 h", "time", 2 * dec(c.hour)),
    ("633 THz", "frequency", mpf("633e12")),
    ("4.7 kΩ", "resistance", mpf(4700)),
    ("0.4 A/W", "responsivity", mpf("0.4")),
    ("400 µA/mW", "responsivity", mpf("0.4")),
]
# Through an exponential or an added zero: held to a few units in the last place, not to the bit.
rounded = [
    ("0 dBm", "power", mpf("1e-3")),
    ("-3 dBm", "power", mpf("1e-3") * mpf(10) ** (mpf(-3) / 10)),
    ("17.5 dBm", "power", mpf("1e-3") * mpf(10) ** (mpf("17.5") / 10)),
    ("-60 dBm", "power", mpf("1e-9")),
    ("5 %", "loss", -log(1 - mpf("0.05"))),
    ("0.1 %", "loss", -log(1 - mpf("0.001"))),
    ("20 °C", "temperature", 20 + dec(c.zero_Celsius)),
    ("-40 °C", "temperature", -40 + dec(c.zero_Celsius)),
]

document = {
    "obtained": f"computed with scipy {scipy.__version__} (scipy.constants) and mpmath {mpmath.__version__}, scripts/units_reference.py",
    "columns": "text, dimension, SI value: the double nearest to the exact one",
    "exact": [[t, d, float(v)] for t, d, v in rows],
    "rounded": [[t, d, float(v)] for t, d, v in rounded],
}
path = Path(__file__).parents[1] / "reference" / "units.json"
path.write_text(json.dumps(document, ensure_ascii=False, indent=1) + "\n")

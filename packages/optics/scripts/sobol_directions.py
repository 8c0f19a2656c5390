"""Writes ../src/numerics/sobol-directions.ts from the table of Joe and Kuo as SciPy stores it.

Run with SciPy: python3 sobol_directions.py > ../src/numerics/sobol-directions.ts
"""
import os
import numpy
import scipy.stats

table = numpy.load(os.path.join(os.path.dirname(scipy.stats.__file__), "_sobol_direction_numbers.npz"))
print("""/**
 * Primitive polynomials and first direction numbers of Sobol's sequence, dimensions 2 to 64; each row is the polynomial
 * (its bits, highest power first) and m_1, m_2, …
 * Made by `packages/optics/scripts/sobol_directions.py`; not to be edited by hand.
 *
 * @source S. Joe and F. Y. Kuo, SIAM J. Sci. Comput. 30, 2635 (2008) (from memory), table D6 as stored in SciPy %s (read there)
 */
export const sobolDirections: readonly (readonly number[])[] = [""" % scipy.__version__)
for i in range(1, 64):
    polynomial = int(table["poly"][i])
    degree = polynomial.bit_length() - 1
    print("  [%s]," % ", ".join(str(int(x)) for x in [polynomial, *table["vinit"][i][:degree]]))
print("];")

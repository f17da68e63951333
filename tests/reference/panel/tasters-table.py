"""Tasters needed by vectorised SciPy: 5 alphas x 4 powers x 5 shares, triangle, every n up to 2000.

Run in this folder: python3 tasters-table.py > tasters-table.csv
"""
import sys

import numpy as np
import scipy
from scipy.stats import binom

ALPHAS, POWERS, SHARES, LARGEST = [0.2, 0.1, 0.05, 0.01, 0.001], [0.8, 0.9, 0.95, 0.99], np.array([0.1, 0.2, 0.3, 0.4, 0.5]), 2000


def table():
    n, rows = np.arange(1, LARGEST + 1), []
    right = SHARES + (1 - SHARES) / 3
    for alpha in ALPHAS:
        critical = binom.isf(alpha, n, 1 / 3) + 1
        power = binom.sf(critical[None, :] - 1, n[None, :], right[:, None])
        for target in POWERS:
            reached = power >= target
            first = np.where(reached.any(axis=1), reached.argmax(axis=1) + 1, -1)
            always = LARGEST - (~reached)[:, ::-1].argmax(axis=1) + 1
            rows += [(alpha, target, s, f, a) for s, f, a in zip(SHARES, first, always)]
    return rows


if __name__ == "__main__":
    print(f"# Python {sys.version.split()[0]}, SciPy {scipy.__version__}, NumPy {np.__version__}")
    print("# First n that reaches the power and n from which every n up to 2000 does; -1 or 2001 where none. Printed by tasters-table.py")
    print("alpha,power,pd,first,always")
    for row in table():
        print(",".join(f"{v:g}" for v in row))

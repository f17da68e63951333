"""Tasters needed by vectorised SciPy: 5 alphas, 4 powers, 5 shares, triangle, every n to 2000. Prints the milliseconds of each round."""
import time

import numpy as np
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


for _ in range(6):
    start = time.perf_counter()
    table()
    print(1000 * (time.perf_counter() - start))

"""The vectorised NumPy counterpart of simulated triangles: 10 million tastings, three normal draws each, d-prime 1, in chunks that fit the cache.

Run with one thread: OMP_NUM_THREADS=1 python3 triangle_race.py
"""
import sys
import time

import numpy as np

random = np.random.Generator(np.random.SFC64(1))
print(f"# python {sys.version.split()[0]}, numpy {np.__version__}")
for chunk in (10_000_000, 65_536, 16_384):
    for _ in range(3):
        start, correct = time.process_time(), 0
        for done in range(0, 10_000_000, chunk):
            size = min(chunk, 10_000_000 - done)
            x, y, odd = random.standard_normal(size), random.standard_normal(size), random.standard_normal(size) + 1.0
            like = np.abs(x - y)
            correct += np.count_nonzero((like < np.abs(x - odd)) & (like < np.abs(y - odd)))
        print(f"chunks of {chunk}: share {correct / 1e7:.5f}, {time.process_time() - start:.3f} s")

"""10 million simulated triangles by vectorised NumPy: three normal draws each, d-prime 1, in chunks that fit the cache. Prints the milliseconds of each round."""
import time

import numpy as np

TASTINGS = 10_000_000
random = np.random.Generator(np.random.SFC64(1))
for chunk in (65_536, 16_384, 16_384, 16_384):
    start, correct = time.perf_counter(), 0
    for done in range(0, TASTINGS, chunk):
        size = min(chunk, TASTINGS - done)
        x, y, odd = random.standard_normal(size), random.standard_normal(size), random.standard_normal(size) + 1.0
        like = np.abs(x - y)
        correct += np.count_nonzero((like < np.abs(x - odd)) & (like < np.abs(y - odd)))
    print(1000 * (time.perf_counter() - start))

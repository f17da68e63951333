"""A million draws of two hop doses with their errors by vectorised NumPy, by the reference script's own function. Prints the milliseconds of each round."""
import runpy
import time
from pathlib import Path

import numpy as np

summary = runpy.run_path(str(Path(__file__).resolve().parents[2] / "reference/bitterness/dose_monte_carlo.py"))["summary"]

for seed in range(6):
    start = time.perf_counter()
    summary(np.random.Generator(np.random.SFC64(seed)))  # NumPy's fastest generator
    print(1000 * (time.perf_counter() - start))

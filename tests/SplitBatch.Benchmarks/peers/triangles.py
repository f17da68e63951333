"""10 million simulated triangles by vectorised NumPy, by the reference script's own function. Prints the milliseconds of each round."""
import runpy
import time
from pathlib import Path

triangle = runpy.run_path(str(Path(__file__).resolve().parents[2] / "reference/panel/simulation_race.py"))["triangle"]

for _ in range(4):
    start = time.perf_counter()
    triangle(10_000_000)
    print(1000 * (time.perf_counter() - start))

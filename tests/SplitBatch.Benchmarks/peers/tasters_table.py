"""Tasters needed by vectorised SciPy, by the reference script's own function. Prints the milliseconds of each round."""
import runpy
import time
from pathlib import Path

table = runpy.run_path(str(Path(__file__).resolve().parents[2] / "reference/panel/tasters-table.py"))["table"]

for _ in range(6):
    start = time.perf_counter()
    table()
    print(1000 * (time.perf_counter() - start))

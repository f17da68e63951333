"""Raw output of NumPy's SFC64 from a set state, after the same 18 thrown-away outputs that the library's seeding takes.

Run: python3 sfc64.py > sfc64.csv
"""
import sys

import numpy as np

print(f"# python {sys.version.split()[0]}, numpy {np.__version__}")
print("seed,stream,index,bits")
for seed, stream in [(0, 0), (1, 0), (2026, 0), (2026, 1), (-1, 7)]:
    generator = np.random.SFC64(1)
    state = generator.state
    state["state"]["state"] = np.array([seed % 2**64, stream % 2**64, 0x9E3779B97F4A7C15, 1], dtype=np.uint64)
    generator.state = state
    generator.random_raw(18)
    for index, bits in enumerate(generator.random_raw(5)):
        print(f"{seed},{stream},{index},{bits}")

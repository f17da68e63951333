"""Two hop doses with their errors, drawn with NumPy: the whole case, as a competent user would write it.

Each half: 20 L at the end of a 60 min boil, 1.050, 3 L/h boiled off. A: 41 g of cones at 6.8 %; B: 31 g of pellets at 8.3 %.
Tinseth's formula, pellets at 1.07 of cones.
Run: python3 dose_monte_carlo.py > dose_monte_carlo.csv
"""
import platform

import numpy as np

DRAWS = 1_000_000


def draw(rng):
    normal = lambda: rng.standard_normal(DRAWS)
    rectangular = lambda: rng.uniform(-np.sqrt(3), np.sqrt(3), DRAWS)
    start = 1 + 0.050 * 20 / 23
    mean_gravity = (start + 1.050) / 2
    # Shared by both beers.
    scale, gauge, gravity, formula = normal(), normal(), normal(), normal()

    def half(grams, alpha, form, form_sd):
        assay = 1 + 0.10 / np.sqrt(3) * rectangular()
        mass = (grams + rectangular() / np.sqrt(12)) * (1 + 0.002 * scale)
        volume = 20 * (1 + 0.015 * gauge) * (1 + 0.015 * normal())
        minutes = 60 + 0.5 * normal()
        utilisation = 1.65 / 4.15 * 0.000125 ** (mean_gravity - 1 + 0.001 * gravity) * (1 - np.exp(-0.04 * minutes))
        factor = form * (1 + form_sd * normal()) if form_sd else form
        return mass * alpha * assay * factor * utilisation * 1000 / volume * (1 + 0.20 * formula) * (1 + 0.04 * normal())

    a, b = half(41, 0.068, 1.0, 0), half(31, 0.083, 1.07, 0.07)
    return a, b, b - a


def summary(rng):
    a, b, difference = draw(rng)
    rows = [(name, x.mean(), x.std(ddof=1), *np.percentile(x, [2.5, 97.5])) for name, x in (("A", a), ("B", b), ("B-A", difference))]
    return rows, np.mean(np.abs(difference) > 3.5), np.mean(np.abs(difference) > 5.0)


if __name__ == "__main__":
    rows, beyond_critical, beyond_taste = summary(np.random.default_rng(2026))
    print(f"# Python {platform.python_version()}, NumPy {np.__version__}, {DRAWS} draws, seed 2026")
    print("what,mean,deviation,low,high")
    for row in rows:
        print(",".join([row[0], *(f"{value:.6f}" for value in row[1:])]))
    print(f"beyond 3.5,{beyond_critical:.6f},,,")
    print(f"beyond 5,{beyond_taste:.6f},,,")

"""Alpha acid to iso-alpha acid by numerical integration, independent of the library's closed forms.

Rates: Malowicki and Shellhammer (2005), J. Agric. Food Chem. 53, 4434-4439.
Run: python3 kinetics.py > kinetics.csv
"""
import platform

import numpy
import scipy
from scipy.integrate import solve_ivp


def rates(celsius):
    kelvin = celsius + 273.15
    return 7.9e11 * numpy.exp(-11858 / kelvin), 4.1e12 * numpy.exp(-12994 / kelvin)


def integrate(profile):
    """profile: list of (minute, celsius) points joined by straight lines."""
    minutes, celsius = zip(*profile)

    def slope(t, y):
        k1, k2 = rates(numpy.interp(t, minutes, celsius))
        return [-k1 * y[0], k1 * y[0] - k2 * y[1], k1]

    state = [1.0, 0.0, 0.0]
    for (a, _), (b, _) in zip(profile, profile[1:]):
        # Restarted at each corner, so that no step crosses one.
        state = solve_ivp(slope, (a, b), state, method="DOP853", rtol=1e-12, atol=1e-14).y[:, -1]
    return state


print(f"# Python {platform.python_version()}, NumPy {numpy.__version__}, SciPy {scipy.__version__}, solve_ivp DOP853")
print("case,points,alpha_left,iso,conversion")


def report(case, profile):
    alpha, iso, conversion = integrate(profile)
    points = " ".join(f"{minute:g}:{celsius:g}" for minute, celsius in profile)
    print(f"{case},{points},{alpha:.12f},{iso:.12f},{conversion:.12f}")


for celsius in (70, 80, 90, 95, 100, 110, 120, 130):
    for minutes in (10, 60, 90):
        report("hold", [(0, celsius), (minutes, celsius)])
report("cool", [(0, 100), (30, 80)])
report("stand", [(0, 100), (10, 95), (30, 88), (45, 20)])
report("slow", [(0, 98), (120, 30)])
report("altitude", [(0, 94.7), (20, 90), (40, 25)])

"""Exact tails, psychometric functions and limits, written out from their definitions with SciPy's special functions alone."""
import functools
import math

import numpy as np
from scipy.optimize import brentq
from scipy.special import bdtr, bdtrc, ndtr

CHANCE = {
    "triangle": 1 / 3, "duo-trio": 1 / 2, "duo-trio constant reference": 1 / 2, "tetrad": 1 / 3, "paired directional": 1 / 2,
    "paired two-sided": 1 / 2, "3-AFC": 1 / 3, "two-out-of-five": 1 / 10, "A-not-A": None, "same-different": None,
}
DIRECTED = {"paired directional", "3-AFC"}
TWO_SIDED = "paired two-sided"
TIE = 1 + 1e-12


def at_most(x, n, p):
    return 0.0 if x < 0 else 1.0 if x >= n else float(bdtr(x, n, p))


def at_least(x, n, p):
    return 1.0 if x <= 0 else 0.0 if x > n else float(bdtrc(x - 1, n, p))


def pmf(n, p):
    """All chances of a binomial, stable for every p."""
    x = np.arange(n + 1)
    if p <= 0 or p >= 1:
        return (x == (0 if p <= 0 else n)).astype(float)
    log = np.array([math.lgamma(n + 1) - math.lgamma(k + 1) - math.lgamma(n - k + 1) for k in x]) if n < 60 else _log_choose(n)
    return np.exp(log + x * math.log(p) + (n - x) * math.log1p(-p))


@functools.lru_cache(4096)
def _log_choose(n):
    return np.array([math.lgamma(n + 1) - math.lgamma(k + 1) - math.lgamma(n - k + 1) for k in range(n + 1)])


@functools.lru_cache(1 << 18)
def critical(protocol, n, alpha):
    """The smallest count that shows a difference (of a two-sided pair: of the more frequent answer); None where none does."""
    sides = 2 if protocol == TWO_SIDED else 1
    counts = np.arange(1, n + 1)
    reached = np.flatnonzero(sides * bdtrc(counts - 1, n, CHANCE[protocol]) <= alpha * TIE)
    return int(counts[reached[0]]) if reached.size else None


@functools.lru_cache(1 << 18)
def largest(n, p, beta):
    """The largest count with P(X <= count | p) <= beta; -1 where none."""
    return int(np.count_nonzero(bdtr(np.arange(n + 1), n, p) <= beta * TIE)) - 1


@functools.lru_cache(1 << 18)
def rules_out(protocol, n, share, reversed_chance, beta):
    """The counts (low, high) that rule the margin out, one set for each taster; None where none does."""
    g = CHANCE[protocol]
    high = largest(n, share + (1 - share) * g, beta)
    if protocol == TWO_SIDED:
        low = n - high
    elif protocol in DIRECTED:
        low = n - largest(n, 1 - reversed_chance, beta)
    else:
        low = 0
    return (low, high) if low <= high and high >= n * g - 1e-9 else None


@functools.lru_cache(1 << 18)
def upper(x, n, beta):
    """Clopper and Pearson's upper limit of a share, one-sided."""
    from scipy.special import betaincinv
    return 1.0 if x >= n else float(betaincinv(x + 1, n - x, 1 - beta))


def lower(x, n, beta):
    from scipy.special import betaincinv
    return 0.0 if x <= 0 else float(betaincinv(x, n - x + 1, beta))


# Psychometric functions: integrals over one normal variable by the trapezoid rule, which for such integrands is exact to rounding.
Z = np.linspace(-10, 10, 801)
W = np.exp(-Z * Z / 2) / math.sqrt(2 * math.pi) * (Z[1] - Z[0])
FROM_NIL = np.linspace(0, 10, 401)  # by Simpson's rule, where the integral starts in the middle
SIMPSON = np.where(np.arange(401) % 2, 4, 2) * np.exp(-FROM_NIL ** 2 / 2) / math.sqrt(2 * math.pi) * (FROM_NIL[1] / 3)
SIMPSON[[0, -1]] /= 2
GRID = np.concatenate([np.arange(0, 6, 0.01), np.arange(6, 40.01, 0.05)])


def _triangle(d):
    z = FROM_NIL[:, None]
    return 2 * SIMPSON @ (ndtr(-z * math.sqrt(3) + d * math.sqrt(2 / 3)) + ndtr(-z * math.sqrt(3) - d * math.sqrt(2 / 3)))


def _tetrad(d):
    low = ndtr(Z[:, None] - d)
    return 1 - 2 * W @ (2 * ndtr(Z)[:, None] * low - low * low)


def _duo_trio(d):
    a, b = ndtr(d / math.sqrt(2)), ndtr(d / math.sqrt(6))
    return 1 - a - b + 2 * a * b


def _three(d):
    return W @ ndtr(Z[:, None] + d) ** 2


def _five(d):
    """Two cups about d, three about 0: the split with the smallest sum of squares takes the pair above the strongest of the three where it lies further above it than the other two lie below it, and the same at the other end."""
    h, step = 0.02, 0.05
    y = np.arange(0, 16, h)
    m = np.arange(-8, 8.001, step)
    weight = 3 * np.exp(-m * m / 2) / math.sqrt(2 * math.pi) * step

    def sums(centre):
        """Chances of the sum of two distances beyond the strongest of the three, each above zero and normal about its centre."""
        f = np.exp(-(y[None, :] - centre[:, None]) ** 2 / 2) / math.sqrt(2 * math.pi) * h
        f[:, 0] /= 2
        return np.fft.irfft(np.fft.rfft(f, 2 * len(y), axis=1) ** 2, 2 * len(y), axis=1)

    below = sums(m)
    no_further = np.cumsum(below, axis=1) - below / 2
    highest = lambda one: float(weight @ np.sum(sums(one - m) * no_further, axis=1))
    return np.array([highest(one) + highest(-one) for one in d])


FUNCTIONS = {
    "triangle": _triangle, "duo-trio": _duo_trio, "duo-trio constant reference": _duo_trio, "tetrad": _tetrad,
    "paired directional": lambda d: ndtr(d / math.sqrt(2)), "paired two-sided": lambda d: ndtr(d / math.sqrt(2)), "3-AFC": _three, "two-out-of-five": _five,
}


@functools.lru_cache(None)
def _table(protocol):
    """Right answers over d-prime."""
    if protocol == "two-out-of-five":
        coarse = np.concatenate([np.arange(0, 6, 0.1), np.arange(6, 12.1, 0.5)])
        from scipy.interpolate import CubicSpline
        return GRID, np.minimum(1, CubicSpline(coarse, _five(coarse))(np.minimum(GRID, 12)))
    return GRID, FUNCTIONS[protocol](GRID)


def right_share(protocol, d):
    grid, share = _table(protocol)
    return float(np.interp(d, grid, share)) if protocol == "two-out-of-five" else float(FUNCTIONS[protocol](np.array([d]))[0])


def right_share_reversed(protocol, d):
    """The share for the expected beer where the beers stand the other way round."""
    return float(FUNCTIONS[protocol](np.array([-d]))[0])


@functools.lru_cache(1 << 16)
def d_prime(protocol, share):
    """The d-prime of a share of right answers; infinite at 1."""
    grid, shares = _table(protocol)
    if share <= CHANCE[protocol]:
        return 0.0
    if share >= 1:
        return math.inf
    k = int(np.searchsorted(shares, share))
    if k >= len(grid):
        return float(grid[-1])
    a, b = grid[max(0, k - 1)], grid[k]
    try:
        return brentq(lambda d: right_share(protocol, d) - share, a, b, xtol=1e-10)
    except ValueError:
        return float(np.interp(share, shares, grid))


@functools.lru_cache(1 << 14)
def looking_after_each(protocol, n, alpha):
    """How often guessers reach the critical count after one ballot or another."""
    g, alive, caught = CHANCE[protocol], np.ones(1), 0.0
    for k in range(1, n + 1):
        step = np.zeros(k + 1)
        step[:-1] += alive * (1 - g)
        step[1:] += alive * g
        needed = critical(protocol, k, alpha)
        if needed is not None:
            x = np.arange(k + 1)
            hit = np.maximum(x, k - x) >= needed if protocol == TWO_SIDED else x >= needed
            caught += step[hit].sum()
            step[hit] = 0
        alive = step
    return caught


# People with several sets: each can always tell (with the chance of the ability) or guesses; or all are alike.

def power_of(chances, times):
    result = np.ones(1)
    while times:
        if times & 1:
            result = np.convolve(result, chances)
        chances = np.convolve(chances, chances)
        times >>= 1
    return result


def spread(people, ability, alike):
    """Chances of each number of right answers. people: {tuple of (sets, chance): how many}."""
    total = np.ones(1)
    for tasks, many in people.items():
        one, sets = np.ones(1), sum(n for n, _ in tasks)
        for n, g in tasks:
            one = np.convolve(one, pmf(n, ability + (1 - ability) * g if alike else g))
        if not alike:
            one = one * (1 - ability)
            one[sets] += ability
        total = np.convolve(total, power_of(one, many))
    return total


def tail(people, right, ability, alike, up=False):
    chances = spread(people, ability, alike)
    return float(min(1, chances[max(0, right):].sum() if up else chances[:right + 1].sum()))


def sets_of(people):
    return sum(many * sum(n for n, _ in tasks) for tasks, many in people.items())


def by_chance(people):
    return math.ceil(sum(many * sum(n * g for n, g in tasks) for tasks, many in people.items()) - 1e-9)


def ability_limit(people, right, beta, alike):
    """The largest ability with P(S <= right) >= beta."""
    if right >= sets_of(people):
        return 1.0
    f = lambda m: tail(people, right, m, alike) - beta
    return 0.0 if f(0) <= 0 else brentq(f, 0, 1, xtol=1e-9)


def ability_floor(people, right, beta, alike):
    f = lambda m: tail(people, right, m, alike, up=True) - beta
    return 0.0 if f(0) >= 0 else brentq(f, 0, 1, xtol=1e-9)


def largest_people(people, share, beta, alike):
    return int(np.count_nonzero(np.cumsum(spread(people, share, alike)) <= beta * TIE)) - 1


def people_largest(people, share, beta):
    """The largest count of right answers that rules the share out; None where the people are too few."""
    repeats = any(sum(n for n, _ in tasks) > 1 for tasks in people)
    if repeats and sum(people.values()) == 1:
        return None
    most = largest_people(people, share, beta, False)
    if repeats:
        most = min(most, largest_people(people, share, beta, True))
    return most if most >= by_chance(people) else None

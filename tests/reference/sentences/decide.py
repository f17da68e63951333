"""What a panel's count allows one to say, by the method note alone: alarm, difference, margin."""
import math

import numpy as np
from scipy.stats import hypergeom

import exact
from exact import DIRECTED, TIE, TWO_SIDED, at_least, at_most

ALARM = 0.01


class Decision:
    """alarm, shown, ruled_out; p and critical of the difference; limit, limit_reversed; why the margin is not ruled out."""


def margin_of(panel):
    """The margin as a share in the task, the chance of the expected answer if it stands the other way round, and its d-prime."""
    protocol, g = panel.protocol, panel.chance
    if g is None:
        return panel.plan.get("margin", 0.3), None, None
    if "margin as d-prime" in panel.plan:
        d = panel.plan["margin as d-prime"]
        share = (exact.right_share(protocol, d) - g) / (1 - g)
        return share, exact.right_share_reversed(protocol, d) if protocol in DIRECTED else None, d
    share = panel.plan.get("margin", 0.3)
    return share, g * (1 - share) if protocol in DIRECTED else None, exact.d_prime(protocol, share + (1 - share) * g)


def decide(panel, people=None):
    """Decides on a list of (sets, right) for each person; the panel's own counted people by default."""
    people = list(panel.people.values()) if people is None else people
    r = Decision()
    r.people, r.n, r.x = len(people), sum(n for n, _ in people), sum(x for _, x in people)
    r.repeats = any(n > 1 for n, _ in people)
    protocol, g, alpha, beta = panel.protocol, panel.chance, panel.alpha, panel.beta
    r.share, r.reversed, r.d = margin_of(panel)
    if g is None:
        return by_two_kinds(panel, r)
    r.low_tail = 1.0 if protocol == TWO_SIDED else at_most(r.x, r.n, g)
    r.alarm = r.low_tail <= ALARM * TIE
    count = max(r.x, r.n - r.x) if protocol == TWO_SIDED else r.x
    r.critical = exact.critical(protocol, r.n, alpha)
    r.p = min(1.0, (2 if protocol == TWO_SIDED else 1) * at_least(count, r.n, g))
    r.could_show = r.critical is not None
    r.shown = r.could_show and count >= r.critical
    r.leaning = protocol == TWO_SIDED and r.repeats
    if r.leaning:
        r.p, r.critical = leaning(people), None
        r.shown = r.p <= alpha * TIE
        r.could_show = r.shown or 2.0 ** (1 - len(people)) <= alpha
    (by_people if r.repeats else by_count)(r, protocol, g, beta, people)
    r.answer = "alarm" if r.alarm else {(True, False): "shown", (True, True): "within", (False, True): "ruled out", (False, False): "open"}[(r.shown, r.ruled_out)]
    return r


def by_two_kinds(panel, r):
    hits, unlike, false, alike = panel.table
    r.table = panel.table
    r.low_tail = float(hypergeom.sf(false - 1, unlike + alike, alike, hits + false))
    r.alarm = r.low_tail <= ALARM * TIE
    r.p = float(min(1, hypergeom.sf(hits - 1, unlike + alike, unlike, hits + false)))
    r.shown = r.p <= panel.alpha * TIE
    r.could_show = r.shown or 1 / math.comb(unlike + alike, unlike) <= panel.alpha * TIE
    r.ruled_out, r.limit, r.critical, r.leaning = False, None, None, False
    r.answer = "alarm" if r.alarm else "shown" if r.shown else "open"
    return r


def by_count(r, protocol, g, beta, people):
    r.range = exact.rules_out(protocol, r.n, r.share, r.reversed, beta)
    r.ruled_out = r.range is not None and r.range[0] <= r.x <= r.range[1]
    count = max(r.x, r.n - r.x) if protocol == TWO_SIDED else r.x
    at = max(count, math.ceil(r.n * g - 1e-9))
    r.limit = max(0.0, (exact.upper(at, r.n, beta) - g) / (1 - g))
    r.limit_reversed = max(0.0, 1 - exact.lower(r.x, r.n, beta) / g) if protocol in DIRECTED else None
    r.why = None if r.ruled_out else "sets" if r.range is None else "other way" if protocol in DIRECTED and r.x < r.n * g - 1e-9 else "count"


def grouped(people, g):
    groups = {}
    for n, _ in people:
        groups[((n, g),)] = groups.get(((n, g),), 0) + 1
    return groups


def by_people(r, protocol, g, beta, people):
    plain = exact.rules_out(protocol, r.n, r.share, r.reversed, beta)
    straight, mirrored = grouped(people, g), grouped(people, 1 - g)
    high = exact.people_largest(straight, r.share, beta)
    if protocol == TWO_SIDED:
        low = None if high is None else r.n - high
    elif protocol in DIRECTED:
        far = exact.people_largest(mirrored, 1 - r.reversed / g, beta)
        low = None if far is None else r.n - far
    else:
        low = 0
    r.range = (low, high) if low is not None and high is not None and low <= high else None
    steady_enough = protocol != TWO_SIDED or so_few_steady(people, r.share) <= beta * TIE
    in_range = r.range is not None and r.range[0] <= r.x <= r.range[1]
    in_plain = plain is not None and plain[0] <= r.x <= plain[1]
    r.ruled_out = bool(in_plain and in_range and steady_enough)
    count = max(r.x, r.n - r.x) if protocol == TWO_SIDED else r.x
    if len(people) < 6:
        r.limit = None
    else:
        at = max(count, exact.by_chance(straight))
        r.limit = max(exact.ability_limit(straight, at, beta, False), exact.ability_limit(straight, at, beta, True))
        if protocol == TWO_SIDED:
            r.limit = max(r.limit, steady_allowed(people, beta))
    r.limit_reversed = None
    below = protocol in DIRECTED and r.x < r.n * g - 1e-9
    r.why = (None if r.ruled_out else "sets" if plain is None else "people" if r.range is None
             else ("other way" if below else "count") if not in_plain else "steady" if protocol == TWO_SIDED else "count")


def leaning(people):
    """Two-sided: every sign of every person's net leaning is as likely; the chance of so large a sum."""
    net = [2 * x - n for n, x in people]
    reach, chances = sum(map(abs, net)), np.ones(1)
    for size in map(abs, net):
        if size:
            wider = np.zeros(len(chances) + 2 * size)
            wider[:len(chances)] += chances / 2
            wider[2 * size:] += chances / 2
            chances = wider
    sums = np.arange(len(chances)) - reach
    return float(min(1, chances[np.abs(sums) >= abs(sum(net))].sum()))


def so_few_steady(people, ability):
    """The largest chance of so few people, or fewer, who always chose the same beer."""
    several = [(n, x) for n, x in people if n > 1]
    steady, chances = sum(x in (0, n) for n, x in several), np.ones(1)
    for n, _ in several:
        always = ((1 + ability) ** n + (1 - ability) ** n) / 2 ** n
        chances = np.convolve(chances, [1 - always, always])
    return float(chances[:steady + 1].sum())


def steady_allowed(people, beta):
    several = [(n, x) for n, x in people if n > 1]
    if not several or so_few_steady(people, 0) <= beta:
        return 0.0
    if sum(x in (0, n) for n, x in several) == len(several):
        return 1.0
    return exact.brentq(lambda s: so_few_steady(people, s) - beta, 0, 1)


class Wald:
    """A sequential plan: its lines, its course and its true rates."""

    def __init__(self, panel):
        g, (share, _, _) = panel.chance, margin_of(panel)
        p1 = share + (1 - share) * g
        scale = math.log(p1 * (1 - g) / (g * (1 - p1)))
        self.slope, self.last = math.log((1 - g) / (1 - p1)) / scale, panel.plan["tasters"]
        self.low, self.high = math.log(panel.beta / (1 - panel.alpha)) / scale, math.log((1 - panel.beta) / panel.alpha) / scale
        self.g, self.p1 = g, p1

    def similar_at(self, n):
        line = self.slope * n + self.low
        return -1 if line < -1e-9 else math.floor(line + 1e-9)

    def different_at(self, n):
        return math.ceil(self.slope * n + self.high - 1e-9)

    def follow(self, answers):
        right = 0
        for n, one in enumerate(answers, start=1):
            right += one
            if right <= self.similar_at(n):
                return "similar", n, right
            if right >= self.different_at(n):
                return "different", n, right
            if n == self.last:
                return "undecided", n, right
        return "pour on", len(answers), right

    def rates(self, p):
        """(chance of a difference shown, chance of the margin ruled out, tasters on average)"""
        alive, shown, out, size = np.ones(1), 0.0, 0.0, 0.0
        for n in range(1, self.last + 1):
            size += alive.sum()
            step = np.zeros(n + 1)
            step[:-1] += alive * (1 - p)
            step[1:] += alive * p
            x = np.arange(n + 1)
            low, high = x <= self.similar_at(n), x >= self.different_at(n)
            out += step[low].sum()
            shown += step[high & ~low].sum()
            step[low | high] = 0
            alive = step
            if not alive.any():
                break
        return shown, out, size

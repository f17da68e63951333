"""Every number that the write-ups of the three invented trials state, worked out again from the trials' own files.

Nothing of this project is used: the formulas are written out from their sources, the tests are SciPy's.
Run from this folder: python3 recompute.py > recompute.csv
"""
import csv
import datetime
import hashlib
import io
import json
import math
import pathlib
import platform
import re

import numpy as np
import scipy
from scipy import stats
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, minimize_scalar

DATA = pathlib.Path(__file__).resolve().parents[3] / "data-demo"
LITRES, GRAMS, QUARTS = 3.785411784, 28.349523125, 0.946352946  # a US gallon, an ounce, a US quart
SEED, DRAWS = 7, 500_000

print(f"# Python {platform.python_version()}, NumPy {np.__version__}, SciPy {scipy.__version__}; {DRAWS} draws, seed {SEED}")
print("trial,what,values")


def out(trial, what, *values):
    print(f"{trial},{what},{' '.join(value if isinstance(value, str) else format(float(value), '.12g') for value in values)}")


def rows(path):
    text = "".join(line for line in path.read_text(encoding="utf-8-sig").splitlines(keepends=True) if not line.startswith("#"))
    head = text.splitlines()[0]
    return list(csv.DictReader(io.StringIO(text), delimiter=";" if ";" in head else ","))


def number(text):
    return float(text.replace(",", "."))


def plato_to_sg(plato):
    cubic = lambda s: ((135.997 * s - 630.272) * s + 1111.14) * s - 616.868 - plato
    low, high = 1.0, 1.2
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if cubic(middle) < 0 else (low, middle)
    return low


def boiling(metres):
    """Standard atmosphere, then Antoine's equation for water."""
    mercury = 760 * (1 - 2.25577e-5 * metres) ** 5.25588
    return 1730.63 / (8.07131 - math.log10(mercury)) - 233.426


def k1(celsius):
    return 7.9e11 * math.exp(-11858 / (celsius + 273.15))


def k2(celsius):
    return 4.1e12 * math.exp(-12994 / (celsius + 273.15))


def iso(stretches):
    """Iso-alpha acid after stretches of (minutes, temperature as a function of the minute)."""
    state = [1.0, 0.0]
    for minutes, celsius in stretches:
        if minutes > 0:
            slope = lambda t, y: [-k1(celsius(t)) * y[0], k1(celsius(t)) * y[0] - k2(celsius(t)) * y[1]]
            state = solve_ivp(slope, (0, minutes), state, method="DOP853", rtol=1e-11, atol=1e-13, max_step=1).y[:, -1]
    return state[1]


FORMS = {"whole cones": (1.00, 0.0, 7.5), "pellets": (1.07, 0.07, 6.5)}  # against cones, its uncertainty, litres held by a kilogram


PACKED = {"open": 1.0, "sealed with air": 0.75, "barrier": 0.5}


def storage(lot, brewed, us):
    """Share of the alpha acid left on brew day and its relative standard uncertainty: Garetz (1994), the rate taken as sure to 30 %."""
    if not lot.get("loss in six months [%]"):
        return 1.0, 0.0  # too little is known of the lot: as assayed
    celsius = (number(lot["storage [°F]"]) - 32) / 1.8 if us else number(lot["storage [°C]"])
    days = (brewed - datetime.date.fromisoformat(lot["assay date"])).days
    rate = -math.log(1 - number(lot["loss in six months [%]"]) / 100) / 180 * 2 ** ((celsius - 20) / 15) * PACKED[lot["packaging"]]
    return math.exp(-rate * days), 0.30 * rate * days


class Half:
    """One half's dose: one charge from one lot, as in all three trials."""

    def __init__(self, trial, charge, lot, brewed):
        kettle = trial["kettle"]
        self.us = trial["units"] == "us"
        self.volume = kettle["volume [gal]"] * LITRES if self.us else kettle["volume [L]"]
        rate = kettle["evaporation per hour [gal]"] * LITRES if self.us else kettle["evaporation per hour [L]"]
        self.metres = kettle["altitude [ft]"] * 0.3048 if self.us else kettle["altitude [m]"]
        gravity = kettle.get("gravity [SG]") or plato_to_sg(kettle["gravity [°P]"])
        boil = kettle["boil [min]"]
        start = self.volume + rate * boil / 60
        self.mean_volume = (start + self.volume) / 2
        self.gravity = (1 + (gravity - 1) * self.volume / start + gravity) / 2
        self.boils_at = boiling(self.metres)
        self.grams = number(charge["amount [oz]"]) * GRAMS if self.us else number(charge["amount [g]"])
        self.alpha, self.beta = number(lot["alpha [%]"]) / 100, number(lot["beta [%]"]) / 100
        self.assay = number(lot["alpha uncertainty [%]"]) / 1.96 / 100 / self.alpha  # stated as half of a 95 % range
        left, self.storage = storage(lot, brewed, self.us)
        self.alpha *= left
        self.form = lot["form"]
        self.lot = lot["lot"]
        self.stage, time = charge["stage"], number(charge["time [min]"])
        self.minutes = {"boil": time, "first wort": boil, "whirlpool": 0.0}[self.stage]
        celsius = lambda p: (p["temperature [°F]"] - 32) / 1.8 if self.us else p["temperature [°C]"]
        points = [(p["time [min]"], celsius(p)) for p in kettle.get("after flame-out", [])]
        self.stand = [(b[0] - a[0], lambda t, a=a, b=b: a[1] + (b[1] - a[1]) * t / (b[0] - a[0])) for a, b in zip(points, points[1:])]
        self.before = [(time, lambda t: 75.0)] if self.stage == "first wort" else []
        elsewhere = sum(quad(lambda t: k1(f(t)), 0, m)[0] for m, f in self.before + self.stand)
        self.extra = elsewhere / k1(self.boils_at)
        self.time_weight = k1(points[0][1]) / k1(self.boils_at) if self.stage == "whirlpool" else 1.0

    @property
    def equivalent(self):
        return self.minutes + self.extra

    def ibu(self, share):
        return self.grams * self.alpha * 1000 / self.volume * FORMS[self.form][0] * share

    def tinseth(self, gravity=None, minutes=None):
        g, t = self.gravity if gravity is None else gravity, self.equivalent if minutes is None else minutes
        return 1.65 * 0.000125 ** (g - 1) * (1 - np.exp(-0.04 * t)) / 4.15

    def rager(self):
        return (18.11 + 13.86 * math.tanh((self.equivalent - 31.32) / 18.27)) / 100 / (1 + max(0, self.gravity - 1.050) / 0.2)

    def garetz(self):
        share = max(0, 7.2994 + 15.0746 * math.tanh((self.equivalent - 21.86) / 24.71)) / 100 / max(1, 1 + (self.gravity - 1.050) / 0.2)
        plain, altitude = self.ibu(share), 1 + 0.02 * (self.metres / 0.3048) / 550
        value = plain
        for _ in range(200):  # the hopping-rate factor holds the result: repeated until it stands still
            value = plain / altitude / (1 + self.volume / self.mean_volume * value / 260)
        return value

    def kinetics(self):
        return self.ibu(0.613 * iso(self.before + [(self.minutes, lambda t: self.boils_at)] + self.stand))

    @property
    def plant(self):
        return self.grams * (1 - self.alpha - self.beta)

    @property
    def held(self):
        return self.grams / 1000 * FORMS[self.form][2]


def contributions(a, b, scale_grams):
    """Shares of the variance of B less A by source, to the first order, and 95 % intervals by drawing."""
    alike = abs(a.equivalent - b.equivalent) <= 0.2 * max(a.equivalent, b.equivalent)
    same_lot, same_form = a.lot == b.lot, a.form == b.form
    reading = scale_grams / math.sqrt(12)
    terms = {}  # name: list of (effect on A, effect on B) of one standard deviation, relative

    def add(name, sd, shared, weight=lambda half: 1.0):
        terms[name] = [(sd * weight(a), sd * weight(b))] if shared else [(sd * weight(a), 0.0), (0.0, sd * weight(b))]

    if same_lot:
        add(f"assay, {a.lot}", a.assay, True)
        add(f"storage, {a.lot}", a.storage, True)
    else:
        terms[f"assay, {a.lot}"], terms[f"assay, {b.lot}"] = [(a.assay, 0.0)], [(0.0, b.assay)]
        terms[f"storage, {a.lot}"], terms[f"storage, {b.lot}"] = [(a.storage, 0.0)], [(0.0, b.storage)]
    for form in {a.form, b.form}:
        terms[f"form {form}"] = [(FORMS[form][1] * (a.form == form), FORMS[form][1] * (b.form == form))]
    add("scale, reading", 1.0, False, lambda half: reading / half.grams)
    add("scale, calibration", 0.002, True)
    add("volume, common gauge", 0.015, True)
    add("volume, each kettle", 0.015, False)
    add("gravity", 1.0, True, lambda half: 0.001 * math.log(0.000125))
    add("time", 1.0, False, lambda half: 0.5 * half.time_weight * 0.04 * math.exp(-0.04 * half.equivalent) / (1 - math.exp(-0.04 * half.equivalent)))
    add("formula", 0.20, True)
    if not alike:
        add("formula, unlike times", 0.10, False)
    add("kettle and yeast, each half", 0.04, False)
    ibu_a, ibu_b = a.ibu(a.tinseth()), b.ibu(b.tinseth())
    variance = {name: sum((y * ibu_b - x * ibu_a) ** 2 for x, y in effects) for name, effects in terms.items()}
    total = sum(variance.values())

    rng = np.random.default_rng(SEED)
    normal = lambda: rng.standard_normal(DRAWS)
    common = {name: normal() for name in ("calibration", "gauge", "gravity", "formula", "assay", "form", "storage")}

    def draws(half):
        factor, spread, _ = FORMS[half.form]
        mass = (half.grams + reading * rng.uniform(-math.sqrt(3), math.sqrt(3), DRAWS)) * (1 + 0.002 * common["calibration"])
        assay = 1 + half.assay * (common["assay"] if same_lot else normal())
        kept = 1 + half.storage * (common["storage"] if same_lot else normal())
        form = factor * (1 + spread * (common["form"] if same_form else normal()))
        volume = half.volume * (1 + 0.015 * common["gauge"]) * (1 + 0.015 * normal())
        used = half.tinseth(half.gravity + 0.001 * common["gravity"], np.maximum(0, half.equivalent + 0.5 * half.time_weight * normal()))
        rest = (1 + 0.20 * common["formula"]) * (1 + 0.04 * normal())
        return mass * half.alpha * assay * kept * 1000 * form * used / volume * rest * (1 if alike else 1 + 0.10 * normal())

    da, db = draws(a), draws(b)
    intervals = [np.percentile(x, [2.5, 97.5]) for x in (da, db, db - da)]
    return sorted((100 * v / total for v in variance.values()), reverse=True), intervals


def critical(n, alpha, chance=1 / 3):
    low_enough = np.flatnonzero(stats.binom.sf(np.arange(n + 1) - 1, n, chance) <= alpha)
    return int(low_enough[0]) if low_enough.size else n + 1


def most_for_margin(n, beta, margin, chance=1 / 3):
    """The largest count with a chance of at most beta if the margin were true; -1 for none."""
    right = margin + (1 - margin) * chance
    largest = int(np.count_nonzero(stats.binom.cdf(np.arange(n + 1), n, right) <= beta)) - 1
    return largest if largest >= n * chance else -1


def settles(n, plan):
    return critical(n, plan["alpha"]) - 1 <= most_for_margin(n, plan["beta"], plan["margin"])


def upper(count, n, risk):
    return 1.0 if count == n else stats.beta.ppf(1 - risk, count + 1, n - count)


def lower(count, n, risk):
    return 0.0 if count == 0 else stats.beta.ppf(risk, count, n - count + 1)


def tell(share, chance=1 / 3):
    return max(0.0, (share - chance) / (1 - chance))


def power(n, plan):
    right = plan["margin"] + (1 - plan["margin"]) / 3
    return stats.binom.sf(critical(n, plan["alpha"]) - 1, n, right)


def odd_or_pair(protocol, served):
    """Which answers are right: the odd cup of a triangle, either pair of a tetrad."""
    by = lambda side: frozenset(code for code, beer in served if beer == side)
    return [cups for cups in (by("A"), by("B")) if len(cups) == {"triangle": 1, "tetrad": 2}[protocol]]


def right_share(protocol, d):
    """Psychometric functions, written as integrals over one standard normal variable."""
    phi, cdf = stats.norm.pdf, stats.norm.cdf
    if protocol == "triangle":
        return 2 * quad(lambda z: (cdf(-z * math.sqrt(3) + d * math.sqrt(2 / 3)) + cdf(-z * math.sqrt(3) - d * math.sqrt(2 / 3))) * phi(z), 0, 12)[0]
    return 1 - 2 * quad(lambda z: phi(z) * (2 * cdf(z) * cdf(z - d) - cdf(z - d) ** 2), -12, 12)[0]


def d_prime(counts):
    """One d-prime for several counts (protocol, right, n), by maximum likelihood, with the exact 95 % interval from the distribution of all right answers together."""
    log = lambda d: sum(x * math.log(right_share(p, d)) + (n - x) * math.log(1 - right_share(p, d)) for p, x, n in counts)
    best = minimize_scalar(lambda d: -log(d), bounds=(0, 8), method="bounded", options={"xatol": 1e-9}).x
    right = sum(x for _, x, _ in counts)

    def sums(d):
        chance = np.ones(1)
        for p, _, n in counts:
            chance = np.convolve(chance, stats.binom.pmf(np.arange(n + 1), n, right_share(p, d)))
        return chance

    most, least = (lambda d: sums(d)[:right + 1].sum()), (lambda d: sums(d)[right:].sum())
    low = 0 if least(0) >= 0.025 else brentq(lambda d: least(d) - 0.025, 0, best)
    return best, low, brentq(lambda d: most(d) - 0.025, best, 8)


def d_of_share(protocol, share):
    """The d-prime at which so large a share above guessing is right."""
    return brentq(lambda d: right_share(protocol, d) - (1 / 3 + 2 / 3 * share), 0, 12)


def likelihood(right, n, margin):
    """How much likelier the count is under the likelier of two: everybody guesses, or a share as large as the margin can tell."""
    ratio = stats.binom.pmf(right, n, 1 / 3 + 2 / 3 * margin) / stats.binom.pmf(right, n, 1 / 3)
    return [max(ratio, 1 / ratio)]


def signed_ranks(differences):
    """Wilcoxon's test, exact on the ranks at hand: every sign is tried by convolution."""
    used = [d for d in differences if d]
    ranks = [round(2 * r) for r in stats.rankdata([abs(d) for d in used])]
    chance = {0: 1.0}
    for rank in ranks:
        step = {}
        for total, c in chance.items():
            for after in (total, total + rank):
                step[after] = step.get(after, 0) + c / 2
        chance = step
    seen = sum(r for r, d in zip(ranks, used) if d > 0)
    return min(1, 2 * min(sum(c for t, c in chance.items() if t <= seen), sum(c for t, c in chance.items() if t >= seen)))


def holm(values):
    adjusted, largest = [0] * len(values), 0
    for left, i in enumerate(sorted(range(len(values)), key=lambda i: values[i])):
        largest = max(largest, min(1, (len(values) - left) * values[i]))
        adjusted[i] = largest
    return adjusted


def asked(name, folder, panel, beers, right):
    """Ratings, preferences and words of one panel, decoded by its key; right: taster to whether the counted answer was right."""
    if (folder / f"ratings-{panel}.csv").exists():
        rated, questions = {}, []
        table = rows(folder / f"ratings-{panel}.csv")
        attributes = [column for column in table[0] if column not in ("taster", "code")]
        for row in table:
            for attribute in attributes:
                rated.setdefault((attribute, row["taster"]), {}).setdefault(beers[(row["taster"], row["code"])], []).append(float(row[attribute]))
        for only in (False, True):
            for attribute in attributes:
                d = [np.mean(v["B"]) - np.mean(v["A"]) for (a, t), v in rated.items() if a == attribute and t in right and (right[t] or not only)]
                questions.append((attribute, only, d, signed_ranks(d)))
        chosen = [(b["preferred"], b["taster"]) for b in rows(folder / f"ballots-{panel}.csv") if b["taster"] in right and b["preferred"]]
        sides = [[beers.get((t, code), "none") for code, t in chosen if right[t] or not only] for only in (False, True)]
        counts = [tuple(side.count(x) for x in ("A", "B", "none")) for side in sides]
        p = [q[3] for q in questions] + [stats.binomtest(b, a + b, 0.5).pvalue for a, b, _ in counts]
        adjusted = holm(p)
        out(name, f"limit.panel.{panel}.questions", len(p), 5, 100 * (1 - 0.95 ** len(p)))
        for (attribute, only, d, plain), corrected in zip(questions, adjusted):
            half = stats.t.ppf(0.975, len(d) - 1) * np.std(d, ddof=1) / math.sqrt(len(d))
            out(name, f"panel.{panel}.rating.{attribute}{'.right' if only else ''}", len(d), np.mean(d), np.mean(d) - half, np.mean(d) + half, 95, plain, len(p), corrected)
        for only, count, plain, corrected in zip((False, True), counts, p[len(questions):], adjusted[len(questions):]):
            out(name, f"panel.{panel}.preference{'.right' if only else ''}", *count, plain, len(p), corrected)
    if (folder / f"comments-{panel}.csv").exists():
        said = [(beers[(row["taster"], row["code"])], row["taster"], row["comment"]) for row in rows(folder / f"comments-{panel}.csv") if row["taster"] in right]
        malty = {side: len({t for s, t, words in said if s == side and re.search(r"\b(malt|bread|biscuit|caramel|toast|grain)", words)}) for side in "AB"}
        out(name, f"panel.{panel}.words", len(said), malty["A"], malty["B"])


def panel(name, folder, plan, captions):
    known = plan["name"]
    cups = {}
    for row in rows(folder / f"serving-{known}.csv"):
        cups.setdefault((row["taster"], row["set"]), []).append((row["code"], row["beer"]))
    beers = {(taster, code): beer for (taster, _), served in cups.items() for code, beer in served}
    ballots = rows(folder / f"ballots-{known}.csv")
    counted, places, twice = [], {}, {}
    for ballot in ballots:
        place = (ballot["taster"], ballot["set"])
        twice[place] = twice.get(place, 0) + 1
        if ballot["answer"].strip() and not (ballot.get("knew variable") or "").strip() and place not in places:
            places[place] = frozenset(ballot["answer"].split()) in odd_or_pair(plan["protocol"], cups[place])
            counted.append(ballot)
    right, n = sum(places.values()), len(counted)
    p = stats.binom.sf(right - 1, n, 1 / 3)
    needed = critical(n, plan["alpha"])
    still = tell(upper(right, n, plan["beta"]))
    shown, ruled_out = p <= plan["alpha"], right <= most_for_margin(n, plan["beta"], plan["margin"])
    out(name, f"panel.{known}.count", n, right, n / 3)
    out(name, f"panel.{known}.difference", *([100 * p, 100 * plan["alpha"]] if shown else [100 * p, 100 * plan["alpha"], needed]))
    sure = 100 * (1 - plan["beta"])
    margin, none_would_do = 100 * plan["margin"], most_for_margin(n, plan["beta"], plan["margin"]) < 0
    distances = [d_of_share(plan["protocol"], share) for share in (plan["margin"], still)]
    out(name, f"panel.{known}.margin", margin, 100 * still, sure, *([n] if none_would_do else []), margin, *distances)
    out(name, f"panel.{known}.likelihood", *likelihood(right, n, plan["margin"]), margin)
    if known == "main":
        count = [right, n, n / 3]
        captions["headline"] = count if shown else [margin, sure, *count] if ruled_out else [*count, 100 * still, sure]
    if not shown and not ruled_out:
        good = [settles(m, plan) for m in range(1, 1500)]
        from_here = max(i for i, fine in enumerate(good, start=1) if not fine) + 1
        out(name, f"panel.{known}.settle", from_here)
        if known == "main":
            out(name, "next.panel", from_here)
    came = len(twice)  # A blank ballot came in, and is not counted.
    if known == "main" and came < plan["tasters"]:
        captions["headline"] = [*captions["headline"], came, plan["tasters"]]
    if n != plan["tasters"]:
        out(name, f"limit.panel.{known}.departure.1", plan["tasters"], n if came == plan["tasters"] else came)
    missing = len(cups) - sum(bool(b["answer"].strip()) for b in ballots if twice[(b["taster"], b["set"])] == 1) - sum(times > 1 for times in twice.values())
    if missing:
        out(name, "returned", missing, len(cups))
        out(name, f"limit.panel.{known}.ballots", missing)
    for (taster, place), times in twice.items():
        if times > 1:
            out(name, f"duplicate {known} {taster}", times, int(place))
    asked(name, folder, known, beers, {taster: fine for (taster, _), fine in places.items()})

    low, high = tell(lower(right, n, 0.025)), tell(upper(right, n, 0.025))
    enough = [power(m, plan) >= plan["power"] for m in range(1, 800)]
    first = enough.index(True) + 1
    always = max(i for i, fine in enumerate(enough, start=1) if not fine) + 1
    best = d_prime([(plan["protocol"], right, n)])
    for what, values in (
            ("count", (right, n, 100 * p, needed, 100 * plan["alpha"])),
            ("share", (100 * tell(right / n), 95, 100 * low, 100 * high)),
            ("power", (100 * plan["margin"], 100 * plan["power"], first, always, plan["tasters"], 100 * power(plan["tasters"], plan))),
            ("forest", (right, n, *best, 95))):
        captions.setdefault(what, []).extend(values)
    return plan["protocol"], right, n, {taster: fine for (taster, _), fine in places.items()}


def over_people(panels, exact):
    """An interval of d-prime over people who sat at several panels: Student's t over each person's surplus of right answers, joined with the interval for independent sets."""
    names = sorted({taster for _, right in panels for taster in right})

    def t(d):
        share = {protocol: right_share(protocol, d) for protocol, _ in panels}
        surplus = [sum(right[name] - share[protocol] for protocol, right in panels if name in right) for name in names]
        return np.mean(surplus) / (np.std(surplus, ddof=1) / math.sqrt(len(names)))

    bound = stats.t.ppf(0.975, len(names) - 1)
    low = 0 if t(0) <= bound else brentq(lambda d: t(d) - bound, 0, 8)
    return len(names), min(low, exact[1]), max(brentq(lambda d: t(d) + bound, 0, 8), exact[2])


def panels(name, folder, trial, gap):
    captions = {}
    if len(trial["panels"]) > 1:
        out(name, "limit.panels", len(trial["panels"]), 100 * sum(plan["alpha"] for plan in trial["panels"]))
    counts = [panel(name, folder, plan, captions) for plan in trial["panels"]]
    if trial.get("panels together") == "stratified":
        sets, right = sum(n for _, _, n, _ in counts), sum(x for _, x, _, _ in counts)
        p, best = stats.binom.sf(right - 1, sets, 1 / 3), d_prime([one[:3] for one in counts])  # both protocols guess with one chance in three
        if len({taster for one in counts for taster in one[3]}) < sum(len(one[3]) for one in counts):
            people, low, high = over_people([(one[0], one[3]) for one in counts], best)
            out(name, "panels.together", len(counts), people, right, sets, 100 * p, low, high, 95)
        else:
            out(name, "panels.together", len(counts), right, sets, 100 * p, *best, 95)
    out(name, "headline", *captions.pop("headline"), *gap)
    for what, values in captions.items():
        out(name, f"caption.{what}", *values)


def lab(name, folder, precision):
    if (folder / "lab-returns.csv").exists():
        found = [(r["sample"], number(r["value"])) for r in rows(folder / "lab-returns.csv") if r["analyte"] == "bitterness"]
    else:
        found = [(r["bottle"], number(r["result"])) for r in rows(folder / "incoming" / "lab-return.csv") if r["test"] == "bitterness"]
    samples = json.loads((folder / "trial.json").read_text())["lab"]["samples"]
    values = {side: [v for s, v in found if samples[s] == side] for side in "AB"}
    a, b = np.mean(values["A"]), np.mean(values["B"])
    n, m = len(values["A"]), len(values["B"])
    # ISO 5725-6: a 95 % limit r of two single results becomes r sqrt(1/(2n) + 1/(2m)) for two means; r = 2.8 standard deviations.
    single = {"standard deviation": lambda: 2.8 * precision["value [BU]"],
              "95 % limit": lambda: precision["value [BU]"],
              "coefficient of variation": lambda: 2.8 * precision["value [%]"] / 100 * (a + b) / 2}[precision["kind"]]()
    limit = single * math.sqrt(1 / (2 * n) + 1 / (2 * m))
    size = abs(a - b)
    out(name, "lab.means", *([a, b, n] if n == m else [a, b, n, m]))
    out(name, "lab.difference", size, 100 * size / ((a + b) / 2), limit, 95, 100)
    out(name, "caption.lab", a, b, size, limit)
    return a, b, limit


for folder in sorted(p for p in DATA.iterdir() if p.is_dir()):
    name, trial = folder.name, json.loads((folder / "trial.json").read_text())
    for path in sorted(p for p in folder.rglob("*") if p.suffix in (".csv", ".json")):
        out(name, f"file {path.relative_to(folder).as_posix()}", hashlib.sha256(path.read_bytes()).hexdigest())
    lots = {row["lot"]: row for row in rows(folder / "hops.csv")}
    charges = {row["beer"]: row for row in rows(folder / "charges.csv")}
    brewed = min(datetime.date.fromisoformat(row["when"]) for row in rows(folder / "batch-log.csv"))
    a, b = (Half(trial, charges[side], lots[charges[side]["lot"]], brewed) for side in "AB")
    mass = GRAMS if a.us else 1
    out(name, "dose.mass", *(x / mass for half in (a, b) for x in (half.grams, half.grams * half.alpha)))
    estimates = [half.ibu(half.tinseth()) for half in (a, b)]
    out(name, "dose.estimate", *estimates)
    litres = QUARTS if a.us else 1
    out(name, "dose.plant", a.plant / mass, b.plant / mass, a.held / litres, b.held / litres)
    models = [x for half in (a, b) for x in (half.ibu(half.tinseth()), half.ibu(half.rager()), half.garetz(), half.kinetics())]
    out(name, "caption.charges", *(x / mass for half in (a, b) for x in (half.grams, half.grams * half.alpha, half.plant)))
    out(name, "caption.models", *models)
    scale = trial["scale [oz]"] * GRAMS if a.us else trial["scale [g]"]
    shares, intervals = contributions(a, b, scale)
    out(name, "caption.doubt", *shares, sum(shares[8:]))  # the chart shows eight and the rest as one
    means = lab(name, folder, trial["lab"]["precision"][0])
    off = [100 * (mean / estimate - 1) for mean, estimate in zip(means[:2], estimates)]
    out(name, "lab.estimate", *map(abs, off))
    out(name, "caption.estimate", *estimates, *means[:2], *(x for pair in intervals[:2] for x in pair))
    out(name, "table.doubt", *(x for pair in intervals for x in pair))
    panels(name, folder, trial, [abs(means[0] - means[1])] if abs(means[0] - means[1]) > means[2] else [])

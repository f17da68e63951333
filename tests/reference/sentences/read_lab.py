"""What is printed of the laboratory's return."""
import functools
import math
import re

import numpy as np
from scipy.special import ndtr
from scipy.stats import beta as beta_of, t as student

from raw import rows
from read_brew import derived, dose, has_doses, is_the_variable, line_of, lots, charges
from reading import is_true, number, percent, plain, sentence

UNITS = {"bitterness": ("BU", 1), "alcohol": ("% vol", 2), "pH": ("", 2), "colour": ("EBC", 1), "iso-alpha acids": ("mg/L", 1)}
ORDER = ["bitterness", "alcohol", "pH", "colour", "iso-alpha acids"]
VALUE = r"({N})(?: (BU|% vol|EBC|mg/L))?".replace("{N}", r"[+−]?[\d,]+(?:\.\d+)?")
LAB = r"(lab|caption)$"
OWN = "own reading, iso-octane extraction, 275 nm"


class Result:
    def __init__(self, row, t):
        self.id, self.sample, self.analyte, self.replicate = row["id"], row["sample"], row["analyte"], int(row["replicate"])
        self.half = row["beer"] or t.json["lab"]["samples"].get(self.sample)
        self.own = bool(row["absorbance"])
        self.absorbance, self.blank = (float(row["absorbance"]), float(row["blank"] or 0)) if self.own else (None, None)
        self.value = round(50 * (self.absorbance - self.blank), 2) if self.own else float(row["value"])
        self.by, self.method = row["lab"].strip() or ("own instrument" if self.own else ""), (row["method"].strip() or (OWN if self.own else ""))
        self.run, self.day = row["run"].strip(), row["received"].strip()


def results(t):
    if not hasattr(t, "_results"):
        table = rows(t.files.get("lab-returns.csv", "id\n"))
        gone = {row["supersedes"] for row in table if row["supersedes"]}
        t._results = [Result(row, t) for row in table if row["id"] not in gone]
    return t._results


def analytes(t):
    return list(dict.fromkeys(r.analyte for r in results(t)))


def measured_by(t, analyte):
    found = {}
    for r in results(t):
        if r.analyte == analyte and r.by:
            found.setdefault(r.by.lower(), r.by)
    return list(found.values())


def compared_by(t, analyte):
    several = measured_by(t, analyte)
    if len(several) < 2:
        return None
    return next((name for name in several if {r.half for r in results(t) if r.analyte == analyte and r.by.lower() == name.lower()} >= {"A", "B"}), None)


def compared(t, analyte):
    by = compared_by(t, analyte)
    found = [r for r in results(t) if r.analyte == analyte and (by is None or r.by.lower() == by.lower())]
    methods = list(dict.fromkeys(r.method.lower() for r in found if r.method))
    both = next((m for m in methods if {r.half for r in found if r.method.lower() == m} >= {"A", "B"}), None) if len(methods) > 1 else None
    return found if both is None else [r for r in found if r.method.lower() == both]


def half(t, analyte, side):
    return sorted((r for r in compared(t, analyte) if r.half == side), key=lambda r: (r.sample.lower(), r.replicate))


def circumstance(a, b):
    if len({r.method.lower() for r in a + b if r.method}) > 1:
        return "methods"
    lab = lambda side: (names := {r.by.lower() for r in side}).pop() if len({r.by.lower() for r in side}) == 1 else ""
    x, y = lab(a), lab(b)
    if x and y and x != y:
        return "two labs"
    if all(r.run for r in a) and all(r.run for r in b):
        runs_a, runs_b = {r.run.lower() for r in a}, {r.run.lower() for r in b}
        return "one run" if runs_a == runs_b and len(runs_a) == 1 else "each run" if runs_a == runs_b else "separate"
    if any(all(r.run for r in side) and len({r.run.lower() for r in side}) > 1 for side in (a, b)):
        return "separate"
    if all(r.day for r in a) and all(r.day for r in b) and {r.day for r in a} != {r.day for r in b}:
        return "separate"
    return "not told"


def figures(t, analyte):
    """What the laboratory's figures can mean: a list of readings, each {condition: (kind, percent, figure)}, and whether the meaning is known."""
    stated = t.json["lab"].get("precision", [])
    stated = [one for one in (stated if isinstance(stated, list) else [stated]) if one["analyte"] == analyte]
    known, first_open = {}, None
    for one in stated:
        key = next(k for k in one if k.startswith("value ["))
        unit = key[7:-1]
        low, high = one[key], one.get(f"up to [{unit}]", one[key])
        kinds = [one["kind"]] if "kind" in one else ["coefficient of variation" if unit == "%" and analyte != "never" else "standard deviation", "95 % limit"]
        conditions = [one["condition"]] if "condition" in one else ["repeatability", "reproducibility"]
        readings = [(c, (k, unit == "%", f)) for k in kinds for c in conditions for f in ([low] if low == high else [low, high])]
        if len(readings) == 1:
            known.setdefault(*readings[0])
        elif first_open is None and one is stated[0]:
            first_open = readings
    if known:
        return [known]
    return [{c: figure} for c, figure in first_open] if first_open else []


def deviation(figure, level):
    kind, is_percent, value = figure
    value = value / 100 * abs(level) if is_percent else value
    return value / 2.8 if kind == "95 % limit" else value


def limit(figure, level):
    kind, is_percent, value = figure
    value = value / 100 * abs(level) if is_percent else value
    return value if kind == "95 % limit" else value * 2.8


class Comparison:
    """The two halves by one analyte: the difference, the critical difference, and what may be said."""

    def __init__(self, t, analyte):
        self.a, self.b = half(t, analyte, "A"), half(t, analyte, "B")
        self.n, self.m = len(self.a), len(self.b)
        self.mean_a, self.mean_b = (sum(r.value for r in side) / len(side) for side in (self.a, self.b))
        self.where = circumstance(self.a, self.b)
        self.difference, self.level = self.mean_a - self.mean_b, (self.mean_a + self.mean_b) / 2
        if self.where == "each run":
            runs = sorted({r.run.lower() for r in self.a})
            mean = lambda side, run: (lambda v: sum(v) / len(v))([r.value for r in side if r.run.lower() == run])
            d = [mean(self.a, run) - mean(self.b, run) for run in runs]
            self.runs, self.difference = len(d), sum(d) / len(d)
            half_width = student.ppf(0.975, len(d) - 1) * np.std(d, ddof=1) / math.sqrt(len(d))
            self.low, self.high, self.critical = self.difference - half_width, self.difference + half_width, half_width
            self.outcome = "within" if self.low <= 0 <= self.high else "apart"
            self.readings = []
            return
        self.readings = [self.reading(one) for one in figures(t, analyte)] or [(None, False, "open")]
        outcomes = {outcome for *_, outcome in self.readings}
        self.critical = self.readings[0][0] if len(self.readings) == 1 else None
        self.outcome = outcomes.pop() if len(outcomes) == 1 else "depends"

    def reading(self, known):
        small, between, large = (known.get(c) for c in ("repeatability", "intermediate precision", "reproducibility"))
        r, big = (small and limit(small, self.level)), (large and limit(large, self.level))
        spread = math.sqrt(1 / (2 * self.n) + 1 / (2 * self.m))
        apart = abs(self.mean_a - self.mean_b)
        two = lambda r: math.sqrt(big ** 2 - r ** 2 * (1 - 1 / (2 * self.n) - 1 / (2 * self.m)))
        judged = lambda critical: (critical, False, "apart" if apart > critical * (1 + 1e-9) else "within")
        bound = lambda critical: (critical, True, "apart" if apart > critical * (1 + 1e-9) else "open")
        none = (None, False, "open")
        if self.where == "methods":
            return none
        if self.where == "separate":
            within = small and deviation(small, self.level)
            if between:
                runs = deviation(between, self.level)
                return judged(1.959963984540054 * math.sqrt(2 * (runs ** 2 - within ** 2) + within ** 2 * (1 / self.n + 1 / self.m))) if small else bound(1.959963984540054 * runs * math.sqrt(2))
            return bound(two(r or 0)) if big else none
        if self.where == "two labs":
            return judged(two(r)) if r and big else bound(two(0)) if big else none
        return judged(r * spread) if r else bound(big * spread) if big else none


def comparison(t, analyte):
    if not hasattr(t, "_compared"):
        t._compared = {}
    if analyte not in t._compared:
        t._compared[analyte] = Comparison(t, analyte) if half(t, analyte, "A") and half(t, analyte, "B") else None
    return t._compared[analyte]


def same_unit(analyte, *units):
    return all((unit or "") == UNITS[analyte][0] for unit in units)


# ---- results

@sentence(LAB, r"The lab measured " + VALUE + " in half A and " + VALUE + r" in half B, (?:(by a single reading of each)|each the mean of {n} readings|the means of {n} and {n} readings?)\.")
def means(t, panel, a, unit_a, b, unit_b, single, equal, n, m):
    c = comparison(t, "bitterness")
    if c is None:
        return "the halves were not both measured"
    counts = (c.n, c.m) == ((1, 1) if single else (plain(equal), plain(equal)) if equal else (plain(n), plain(m)))
    return is_true(same_unit("bitterness", unit_a, unit_b), number(a, c.mean_a, 1e-9), number(b, c.mean_b, 1e-9), counts or f"{c.n} and {c.m} readings", not (equal and c.n == 1))


SIGNED = r"([+−]?[\d,]+(?:\.\d+)?) BU"


@sentence(LAB, r"The halves differ by " + VALUE + r"(?:, {n} % of their mean)?; (.+?)\.(?= |$)(?<!\d\.)")
def lab_difference(t, panel, apart, unit, share, judged):
    c = comparison(t, "bitterness")
    claims = [same_unit("bitterness", unit), number(apart, abs(c.difference), 1e-9), percent(share, abs(c.difference / c.level), 1e-9) if share else c.level == 0]
    scatter = re.fullmatch(r"two such means of the same beer, measured (in one run|in separate runs|by two laboratories), would lie within ([\d.]+) BU of each other in 95 cases out of 100, so (.+)", judged)
    over = re.fullmatch(r"over (\d+) runs that each hold both halves, half B minus half A lies between " + SIGNED + " and " + SIGNED + r" \(95 % confidence\), so (.+)", judged)
    apart_words, within_words = "the halves differ in bitterness as this method measures it", "the lab does not tell the halves apart, which does not prove them equal"
    if scatter:
        where = {"in one run": ("one run", "not told"), "in separate runs": ("separate",), "by two laboratories": ("two labs",)}[scatter[1]]
        bound = c.readings[0][1]
        claims += [c.where in where or f"they were measured {c.where}", c.critical is not None, number(scatter[2], c.critical, 1e-9), scatter[3] == (apart_words if c.outcome == "apart" else within_words), c.outcome != "open",
                   not bound or c.outcome == "apart", (abs(plain(apart)) > plain(scatter[2])) == (c.outcome == "apart") or "the printed numbers say otherwise"]
    elif over:
        claims += [c.where == "each run" or f"they were measured {c.where}", int(over[1]) == getattr(c, "runs", 0), number(over[2].lstrip("+"), -c.high, 1e-9), number(over[3].lstrip("+"), -c.low, 1e-9),
                   over[4] == (apart_words if c.outcome == "apart" else within_words)]
    elif judged.startswith("that is more than the method's own scatter however"):
        claims += [len(c.readings) > 1, c.outcome == "apart", judged.endswith(apart_words)]
    elif judged.startswith("that is no more than the method's own scatter however"):
        claims += [len(c.readings) > 1, c.outcome == "within", judged.endswith(within_words)]
    elif judged.startswith("whether that is more than the method's own scatter depends"):
        claims += [c.outcome == "depends"]
    elif bound := re.fullmatch(r"the precision that is known bounds the method's own scatter from above only, at ([\d.]+) BU, which settles nothing", judged):
        claims += [c.outcome == "open", c.readings[0][1], number(bound[1], c.critical, 1e-9)]
    elif judged.startswith("they were measured by different methods"):
        claims += [c.where == "methods"]
    elif judged.startswith("they were measured in separate runs"):
        claims += [c.where == "separate", c.outcome == "open", c.critical is None]
    elif judged.startswith("they were measured by two laboratories"):
        claims += [c.where == "two labs", c.outcome == "open", c.critical is None]
    elif judged == "what is known of the method's precision does not settle whether that is more than its own scatter":
        claims += [c.outcome == "open", all(critical is None for critical, *_ in c.readings) or len(c.readings) > 1, c.where in ("one run", "not told")]
    else:
        return "the judgement is not one that is known"
    return is_true(*claims)


@sentence("lab$", r"The lab found {n} % (less|more) bitterness than estimated in half A and {n} % (less|more) in half B\.")
def against_estimate(t, panel, a, way_a, b, way_b):
    c = comparison(t, "bitterness")
    off = [mean / dose(t, side)[2] - 1 for mean, side in ((c.mean_a, "A"), (c.mean_b, "B"))]
    return is_true(has_doses(t), percent(a, abs(off[0]), 1e-6), percent(b, abs(off[1]), 1e-6), (way_a == "less") == (off[0] < 0), (way_b == "less") == (off[1] < 0))


PAIRS = {4: (0.0000, 0.0002), 5: (0.0018, 0.0090), 6: (0.0116, 0.0349), 7: (0.0308, 0.0708), 8: (0.0563, 0.1101), 9: (0.0851, 0.1492), 10: (0.1150, 0.1864), 11: (0.1448, 0.2213), 12: (0.1738, 0.2537)}  # ISO 5725-2, table 5


def samples(t, analyte):
    found = {}
    for r in compared(t, analyte):
        found.setdefault(r.sample, []).append(r)
    return {sample: sorted(all_of, key=lambda r: r.replicate) for sample, all_of in found.items()}


def squares(values):
    mean = sum(values) / len(values)
    return sum((v - mean) ** 2 for v in values)


def grubbs(values):
    n, mean = len(values), sum(values) / len(values)
    if n < 3 or max(values) == min(values):
        return None
    s = math.sqrt(squares(values) / (n - 1))
    suspect = max(values, key=lambda v: abs(v - mean))

    def critical(alpha):
        q = student.ppf(1 - alpha / (2 * n), n - 2)
        return (n - 1) / math.sqrt(n) * math.sqrt(q * q / (n - 2 + q * q))
    statistic, at5, at1 = abs(suspect - mean) / s, critical(0.05), critical(0.01)
    single = ("Grubbs, one value", [suspect], statistic, at5, at1, "an outlier" if statistic > at1 else "a straggler" if statistic > at5 else None)
    if single[-1] or n not in PAIRS:
        return single
    ordered, (at1, at5) = sorted(values), PAIRS[n]
    pairs = [(squares(rest) / squares(ordered), pair) for pair, rest in ((ordered[:2], ordered[2:]), (ordered[-2:], ordered[:-2]))]
    statistic, pair = min(pairs, key=lambda one: one[0])
    return ("Grubbs, two values", pair, statistic, at5, at1, "an outlier" if statistic < at1 else "a straggler" if statistic < at5 else None)


def cochran(t, analyte):
    usable = {sample: [r.value for r in all_of] for sample, all_of in samples(t, analyte).items() if len(all_of) > 1}
    variances = {sample: squares(v) / (len(v) - 1) for sample, v in usable.items()}
    if len(usable) < 2 or sum(variances.values()) == 0:
        return None
    counts = sorted(len(v) for v in usable.values())
    n, p = max(sorted(set(counts)), key=lambda c: (counts.count(c), -c)), len(usable)
    worst = max(variances, key=variances.get)
    critical = lambda alpha: beta_of.ppf(1 - alpha / p, (n - 1) / 2, (p - 1) * (n - 1) / 2)
    statistic, at5, at1 = variances[worst] / sum(variances.values()), critical(0.05), critical(0.01)
    return (worst, usable[worst], statistic, at5, at1, "an outlier" if statistic > at1 else "a straggler" if statistic > at5 else None)


@sentence("lab$", r"In sample (\w+), (the spread of )?(.+?) of (" + "|".join(ORDER) + r") (?:is|are) (an outlier|a straggler|outliers|stragglers) \((Grubbs, one value|Grubbs, two values|Cochran): {n}; critical {n} at 5 % and {n} at 1 %\)\. It is kept in every mean\.")
def flagged(t, panel, sample, spread, values, analyte, status, test, statistic, at5, at1):
    own = [r.value for r in samples(t, analyte)[sample]]
    found = cochran(t, analyte) if spread else grubbs(own)
    told = [plain(v.split(" ")[0]) for v in values.split(" and ")]
    label, seen, stat, five, one, verdict = found if spread else (sample, *found[1:])
    decimals = UNITS[analyte][1]
    same = len(told) == len(seen) and all(abs(x - y) <= 0.5 * 10 ** -decimals + 1e-9 for x, y in zip(told, seen))
    return is_true(label == sample, same or f"the values are {seen}", (test == "Cochran") == bool(spread), spread is not None or found[0] == test, status == verdict or f"it is {verdict}",
                   number(statistic, stat, 1e-7), number(at5, five, 2e-6), number(at1, one, 2e-6), all(r in compared(t, analyte) for r in samples(t, analyte)[sample]))


@functools.lru_cache(None)
def range_factor(n):
    z = np.linspace(-9, 9, 4001)
    phi = np.exp(-z * z / 2) / math.sqrt(2 * math.pi) * (z[1] - z[0])
    from scipy.optimize import brentq
    return brentq(lambda w: n * float(phi @ (ndtr(z + w) - ndtr(z)) ** (n - 1)) - 0.95, 0.1, 10, xtol=1e-10)


@sentence("lab$", r"In sample (\w+), {n} replicates of (" + "|".join(ORDER) + r") span " + VALUE + ", more than the " + VALUE + r" that the stated repeatability allows: the run did not repeat as well as the lab states\.")
def too_wide(t, panel, sample, count, analyte, span, unit, most, unit_most):
    own = samples(t, analyte)[sample]
    known = figures(t, analyte)
    figure = known[0].get("repeatability") if len(known) == 1 else None
    values = [r.value for r in own]
    told = {(r.run.lower(), r.day, r.by.lower(), r.method.lower()) for r in own}
    if figure is None:
        return "no repeatability is stated"
    allowed = range_factor(len(values)) * deviation(figure, sum(values) / len(values))
    return is_true(plain(count) == len(values), len(told) == 1 or "they are no replicates of one run", same_unit(analyte, unit, unit_most), number(span, max(values) - min(values), 1e-9), number(most, allowed, 1e-6), max(values) - min(values) > allowed)


# ---- limits

LIMIT = "limits, lab"


@sentence(LIMIT, r"No lab return is logged, so it is not known how bitter the halves were\.")
def no_return(t, panel):
    return len(results(t)) == 0 or "a return is logged"


@sentence(LIMIT, r"The lab's return holds no bitterness of both halves, so it is not known how their bitterness compares\.")
def no_bitterness(t, panel):
    return is_true(len(results(t)) > 0, comparison(t, "bitterness") is None)


@sentence(LIMIT, r"The lab's precision is not known well enough to say what its difference means\.")
def precision_unclear(t, panel):
    c = comparison(t, "bitterness")
    return is_true(c is not None, c and c.outcome in ("depends", "open"), c and not (c.outcome == "open" and c.critical is None and c.where in ("methods", "separate", "two labs")))


@sentence(LIMIT, r"The two halves were not measured alike, so the lab's difference between them says nothing about the beers\.")
def not_alike(t, panel):
    c = comparison(t, "bitterness")
    return is_true(c is not None, c and c.where in ("methods", "separate", "two labs"), c and c.outcome == "open", c and c.critical is None)


@sentence(LIMIT, r"The return does not say whether both halves were measured in one run; they are judged as if they were, and halves from separate runs would be told apart too easily\.")
def run_not_told(t, panel):
    c = comparison(t, "bitterness")
    return is_true(c.where == "not told", c.critical is not None)


@sentence(LIMIT, r"The two doses were estimated to be equally bitter, and the lab found that the beers are not\. What tasters notice may be that difference in bitterness and not the variable itself\.")
def dosed_alike(t, panel):
    a, b = dose(t, "A")[2], dose(t, "B")[2]
    return is_true(has_doses(t), abs(a - b) < 0.05 * a, comparison(t, "bitterness").outcome == "apart", not is_the_variable(t, "bitterness"))


@sentence(LIMIT, r"The bitterness was read on an instrument of one's own and not by a laboratory\.|Some of the bitterness was read on an instrument of one's own and not by a laboratory\.")
def own_instrument(t, panel):
    return any(r.own for r in results(t))


@sentence(LIMIT, r"(Beer without hops reads 1 to 4 BU by this method, so a number this small says little about hops|The published range of the method is 10 to 40 BU for beer; outside it the precision is not stated|The factor of 50 fits beers of about 15 to 35 BU best)\.")
def range_of_method(t, panel, what):
    values = [50 * (r.absorbance - r.blank) for r in results(t) if r.own]
    inside = {"B": lambda u: u < 5, "T": lambda u: True}[what[0]] if what[0] == "B" else (lambda u: 5 <= u < 10 or u > 40) if "published" in what else (lambda u: 10 <= u < 15 or 35 < u <= 40)
    return any(inside(u) for u in values)


@sentence(LIMIT, r"The blank absorbs {n}; iso-octane for this method absorbs below 0\.010 against water\. (.+?)\.(?= |$)")
def blank_high(t, panel, blank, advice):
    return any(r.own and r.blank > 0.010 and number(blank, r.blank) is True for r in results(t))


@sentence(LIMIT, r"More than one measured (" + "|".join(ORDER) + r"): ([\w ,]+?)\. (?:The halves are compared by the results of ([\w ]+?) alone|None of them measured both halves, so what differs between laboratories counts with what differs between beers)\.")
def several(t, panel, analyte, names, used):
    by = measured_by(t, analyte)
    return is_true(len(by) > 1, names.split(", ") == by or f"measured by {by}", used == compared_by(t, analyte))


@sentence(LIMIT, r"In (" + "|".join(ORDER) + r") the halves differ by " + VALUE + r", more than the method's own scatter: what tasters notice may be that difference and not the variable itself\.")
def analyte_apart(t, panel, analyte, apart, unit):
    c = comparison(t, analyte)
    return is_true(analyte != "bitterness", not is_the_variable(t, analyte), c is not None, same_unit(analyte, unit), c.outcome == "apart", number(apart, abs(c.difference), 1e-9))


# ---- swapped samples

def signs(t):
    """{analyte: what it says about the labels}, and None where it hangs on the doses' spread."""
    found = {}
    foretold = {"alcohol": None, "pH": None, "colour": None}
    line = line_of(t, "alcohol by volume")
    if line is not None:
        foretold["alcohol"] = (line.difference, line.tolerance) if line.difference is not None else None
    elif derived(t):
        foretold["alcohol"] = derived(t)
    for analyte in ("pH", "colour"):
        line = line_of(t, analyte)
        if line is not None and line.difference is not None:
            foretold[analyte] = (line.difference, line.tolerance)
    for analyte, told in foretold.items():
        c = comparison(t, analyte)
        if told and c:
            found[analyte] = [sign(told[0], c.difference, together(told[1], limit_of(c)))]
    c = comparison(t, "bitterness")
    if has_doses(t) and c:
        a, b = dose(t, "A")[2], dose(t, "B")[2]
        found["bitterness"] = sorted({str(sign(a - b, c.difference, together(1.96 * s, limit_of(c)))) for s in spreads(t, a, b)})
    return found


def together(a, b):
    return None if a is None or b is None else math.hypot(a, b)


def limit_of(c):
    if c.critical is not None:
        return c.critical
    known = [critical for critical, *_ in c.readings if critical is not None]
    if known:
        return max(known)
    if c.n < 2 or c.m < 2:
        return None
    freedom = c.n + c.m - 2
    return student.ppf(0.975, freedom) * math.sqrt((squares([r.value for r in c.a]) + squares([r.value for r in c.b])) / freedom * (1 / c.n + 1 / c.m))


def sign(foretold, measured, most):
    if most is None:
        return "cannot tell"
    return {(True, False): "labels", (False, True): "swapped", (False, False): "neither", (True, True): "cannot tell"}[(abs(measured - foretold) <= most, abs(measured + foretold) <= most)]


def spreads(t, a, b):
    """The standard deviation of the difference of the doses to the first order, a little below and above: draws give it with a percent or two."""
    all_lots = lots(t)
    terms = [(0.20 * (a - b)) ** 2, (0.015 * (a - b)) ** 2, (0.04 * a) ** 2 + (0.04 * b) ** 2, (0.015 * a) ** 2 + (0.015 * b) ** 2]
    parts = {}
    for side, total in (("A", a), ("B", b)):
        weights = {}
        for charge in charges(t, side):
            use = float(charge["amount [g]"]) * float(all_lots[charge["lot"]]["alpha [%]"]) * (1 - math.exp(-0.04 * float(charge["time [min]"])))
            weights[charge["lot"]] = weights.get(charge["lot"], 0) + use
        parts[side] = {lot: total * use / sum(weights.values()) for lot, use in weights.items()}
    for lot, row in all_lots.items():
        shared = parts["A"].get(lot, 0) - parts["B"].get(lot, 0)
        one = float(row["alpha uncertainty [%]"]) / 1.96 / float(row["alpha [%]"]) if row["alpha uncertainty [%]"] else 0.10 / math.sqrt(3)
        terms.append((one * shared) ** 2)
    pellets = [sum(part for lot, part in parts[side].items() if all_lots[lot]["form"] == "pellets") for side in "AB"]
    terms.append((0.07 * (pellets[0] - pellets[1])) ** 2)
    plain_ = math.sqrt(sum(terms))
    unlike = math.sqrt(sum(terms) + (0.10 * a) ** 2 + (0.10 * b) ** 2)
    minutes = [sum(float(c["amount [g]"]) * float(c["time [min]"]) for c in charges(t, side)) / sum(float(c["amount [g]"]) for c in charges(t, side)) for side in "AB"]
    alike = abs(minutes[0] - minutes[1]) < 1e-9
    return list(np.linspace(0.95 * plain_, 1.06 * (plain_ if alike else unlike), 25))


def names_in(text):
    return re.split(r", | and ", text)


@sentence(LIMIT, r"The samples may have been swapped: ([\w ,-]+?) fits? only if they were\. Check the labels, the shipping list and what is left in the bottles before using the return\."
          r"|The analytes contradict each other: ([\w ,-]+?) fits? only if the samples were swapped, ([\w ,-]+?) fits? only if they were not\. One analysis may have mixed them up; ask the laboratory\.")
def swapped(t, panel, only, some, others):
    found = signs(t)
    surely = lambda sign_: {analyte for analyte, told in found.items() if told == [sign_]}
    maybe = lambda sign_: {analyte for analyte, told in found.items() if sign_ in told}
    told_swapped, told_right = set(names_in(only or some)), set(names_in(others)) if others else set()
    fits = lambda told, sign_: surely(sign_) <= told <= maybe(sign_)
    return is_true(fits(told_swapped, "swapped") or f"the signs are {found}", fits(told_right, "labels") or f"the signs are {found}")

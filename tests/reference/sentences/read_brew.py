"""What is printed of the doses, the batch log and the hop lots."""
import datetime
import math
import re

from raw import rows
from reading import is_true, number, percent, plain, sentence

GRAMS, QUARTS = 28.349523125, 0.946352946
COMMON = {"°P": "SG", "°F": "°C", "SRM": "EBC"}
EXPECTED = ["original gravity", "final gravity", "volume into fermenter", "pitching temperature", "fermentation temperature", "pH", "colour", "carbonation", "yeast lot", "pitching date", "packaging date"]
FROM_GRAVITIES = {"alcohol", "alcohol by volume", "apparent attenuation", "real attenuation", "attenuation", "real extract", "apparent extract"}
SMALL = {"of", "the", "a", "an", "and", "in", "at", "by", "or", "for"}


def plato(s):
    return ((135.997 * s - 630.272) * s + 1111.14) * s - 616.868


def specific(p):
    low, high = 1.0, 1.2
    for _ in range(80):
        middle = (low + high) / 2
        low, high = (middle, high) if plato(middle) < p else (low, middle)
    return low


def common(value, unit):
    return {"°P": specific, "°F": lambda v: (v - 32) / 1.8, "SRM": lambda v: v * 1.97}.get(unit, lambda v: v)(value)


def words(text):
    return {word for word in re.findall(r"\w+", text.lower()) if word not in SMALL}


def is_the_variable(t, quantity):
    """Whether a quantity is what the trial changes, was named as following from it, or follows from such gravities by arithmetic."""
    follows = {one.lower() for one in t.json.get("follows from the variable", [])}
    variable = words(t.json["variable"])

    def changed(one):
        own = words(one)
        return one.lower() in follows or bool(own and variable and (own <= variable or variable <= own))
    return changed(quantity) or (quantity.lower() in FROM_GRAVITIES and (changed("original gravity") or changed("final gravity")))


class Line:
    def __init__(self, t, quantity, entries):
        self.quantity = quantity
        self.a, self.b = ([e for e in entries if e["beer"] in (side, "both")] for side in "AB")
        self.unit = self.difference = self.tolerance = None
        if not self.a or not self.b:
            self.verdict = "not measured"
            return
        units = {COMMON.get(e["unit"], e["unit"]) for e in self.a + self.b}
        if units == {""}:
            texts = [sorted({e["value"].lower() for e in side}) for side in (self.a, self.b)]
            self.verdict = "same" if texts[0] == texts[1] else "variable" if is_the_variable(t, quantity) else "confound"
            return
        self.unit = units.pop()
        mean = lambda side: sum(common(float(e["value"]), e["unit"]) for e in side) / len(side)
        self.difference = mean(self.a) - mean(self.b)
        half = [max((abs(common(float(e["value"]) + float(e["uncertainty"]), e["unit"]) - common(float(e["value"]), e["unit"])) for e in side), default=0)
                if all(e["uncertainty"] for e in side) else None for side in (self.a, self.b)]
        self.tolerance = math.hypot(*half) if None not in half else None
        apart = abs(self.difference)
        self.verdict = ("same" if apart < 1e-9 else "variable" if is_the_variable(t, quantity) else "confound" if self.tolerance is None
                        else "within" if apart <= self.tolerance * (1 + 1e-9) else "confound")

    def shown(self, side):
        entries = self.a if side == "A" else self.b
        texts = []
        for e in entries:
            value = e["value"] if not e["unit"] else repr(float(e["value"])).removesuffix(".0")
            text = e["value"] + (f" ± {repr(float(e['uncertainty'])).removesuffix('.0')}" if e["uncertainty"] else "") + (f" {e['unit']}" if e["unit"] and e["unit"] != e["quantity"] else "")
            texts.append(text if not e["unit"] else text.replace(e["value"], value, 1))
        return ", ".join(dict.fromkeys(texts))


def lines(t):
    """The batch log, quantity by quantity; None where no log is kept."""
    if not hasattr(t, "_lines"):
        text = t.files.get("batch-log.csv")
        if text is None:
            t._lines = None
            return None
        table = rows(text)
        gone = {row["supersedes"] for row in table if row["supersedes"]}
        entries = [row for row in table if row["id"] not in gone]
        names = list(dict.fromkeys(row["quantity"] for row in entries))
        names += [name for name in EXPECTED if name not in names]
        t._lines = [Line(t, name, [row for row in entries if row["quantity"] == name]) for name in names]
    return t._lines


def line_of(t, quantity):
    return next((line for line in lines(t) or [] if line.quantity == quantity), None)


def derived(t):
    """Alcohol by volume of both halves, by Balling, with what the hydrometer leaves open: (difference, tolerance); None without four gravities."""
    og, fg = line_of(t, "original gravity"), line_of(t, "final gravity")
    if not (og and fg and og.a and og.b and fg.a and fg.b):
        return None
    mean = lambda side: sum(common(float(e["value"]), e["unit"]) for e in side) / len(side)
    half = lambda side: max(abs(common(float(e["value"]) + float(e["uncertainty"]), e["unit"]) - common(float(e["value"]), e["unit"])) for e in side) if all(e["uncertainty"] for e in side) else None

    def abv(o, f):
        extract = 0.1808 * plato(o) + 0.8192 * plato(f)
        return (plato(o) - extract) / (2.0665 - 0.010665 * plato(o)) * f / 0.7907
    found = []
    for o, f in ((og.a, fg.a), (og.b, fg.b)):
        a, b, u, v = mean(o), mean(f), half(o), half(f)
        if b > a:
            return None
        found.append((abv(a, b), None if u is None or v is None else math.hypot((abv(a + u, b) - abv(a - u, b)) / 2, (abv(a, b + v) - abv(a, b - v)) / 2)))
    (x, s), (y, w) = found
    return x - y, None if s is None or w is None else math.hypot(s, w)


# ---- the batch log

LIMIT = "limits, batches"


@sentence(LIMIT, r"No batch log is kept, so it is not known whether the halves differ in anything but the variable\.")
def no_log(t, panel):
    return lines(t) is None


@sentence(LIMIT, r"The ([\w ]+?) was (.+?) in half A and (.+?) in half B(?:, {n}(?: (\S+))? apart, (?:more than the {n}(?: (\S+))? that the instruments' uncertainty explains|and the uncertainty of the instrument is not logged))?: a confound( unless it is shown to be none)?\.")
def halves_differ(t, panel, quantity, a, b, apart, unit, most, same_unit, unless):
    line = line_of(t, quantity)
    if line is None or line.verdict != "confound":
        return f"the log says: {line and line.verdict}"
    claims = [a == line.shown("A") or f"A is {line.shown('A')}", b == line.shown("B") or f"B is {line.shown('B')}", bool(apart) == (line.difference is not None)]
    if apart:
        claims += [number(apart, abs(line.difference), 1e-9), (unit or "pH") == line.unit, bool(most) == (line.tolerance is not None), bool(unless) == (line.tolerance is None)]
    if most:
        claims += [number(most, line.tolerance, 1e-9), plain(apart) > plain(most) or "it is not more as it is printed"]
    return is_true(*claims)


@sentence(LIMIT, r"Meant to be held equal were: (.+?)\. The batch log shows otherwise: not equal was the ([\w ,]+?)\.")
def meant_equal(t, panel, statement, quantities):
    named = re.split(r", | and ", quantities)
    stem = lambda text: {"date" if w == "day" else w[:-1] if w.endswith("s") and len(w) > 3 else w for w in re.findall(r"\w+", text.lower())}
    parts = [stem(part) for part in re.split(r",|;|\band\b", statement)]
    touched = [line for line in lines(t) if any(stem(line.quantity) <= part for part in parts)]
    wrong = [line.quantity for line in touched if line.verdict == "confound"]
    return is_true(statement in t.json["held equal"], sorted(named) == sorted(wrong) or f"not equal was {wrong}")


@sentence(LIMIT, r"Not measured on both halves: (.+?)\. Nobody can say whether (this was|these were) equal\.")
def not_measured(t, panel, quantities, these):
    missing = [line.quantity for line in lines(t) if line.verdict == "not measured"]
    return is_true(quantities.split(", ") == missing or f"not measured are {missing}", (these == "this was") == (len(missing) == 1))


# ---- hop lots

def lots(t):
    return {row["lot"]: row for row in rows(t.files["hops.csv"])} if "hops.csv" in t.files else {}


def charges(t, side):
    return [row for row in rows(t.files["charges.csv"]) if row["beer"] == side] if "charges.csv" in t.files else []


def bittering(t, side):
    own, all_lots = charges(t, side), lots(t)
    return all_lots[own[0]["lot"]] if own else list(all_lots.values())[0 if side == "A" else -1]


def unlike(t):
    """{in what: (A, B)} for the two bittering lots."""
    if not lots(t):
        return {}
    a, b = bittering(t, "A"), bittering(t, "B")
    if a == b:
        return {}
    found, none = {}, "not stated"
    if a["crop year"] != b["crop year"] or not a["crop year"]:
        found["crop year"] = (a["crop year"] or none, b["crop year"] or none)
    if a["form"] != b["form"]:
        found["form"] = (a["form"], b["form"])
    store = "storage [°C]"
    if a[store] and b[store] and abs(float(a[store]) - float(b[store])) > 2:
        found["storage"] = (f"{a[store]} °C", f"{b[store]} °C")
    if a["packaging"] and b["packaging"] and a["packaging"] != b["packaging"]:
        found["packaging"] = (a["packaging"], b["packaging"])
    if a["assay date"] and b["assay date"] and abs((datetime.date.fromisoformat(a["assay date"]) - datetime.date.fromisoformat(b["assay date"])).days) > 30:
        found["age"] = (a["assay date"], b["assay date"])
    if a["HSI"] and b["HSI"] and abs(float(a["HSI"]) - float(b["HSI"])) > 2.8 * 0.028 * max(float(a["HSI"]), float(b["HSI"])):
        found["storage index"] = (f"{float(a['HSI']):.2f}", f"{float(b['HSI']):.2f}")
    return {what: pair for what, pair in found.items() if what != t.json.get("hop variable")}


@sentence(LIMIT, r"The hop lots (differ|may differ) in more than the variable\. ([\w ]+): A ([^,]+), B (.+?)\. ([A-Z][^.]+\.)")
def lots_differ(t, panel, sure, what, a, b, why):
    pair = unlike(t).get(what.lower())
    if pair is None:
        return f"they differ in {unlike(t)}"
    mean = {"crop year": "Crops differ", "form": "Forms yield", "storage": "Warmer hops", "packaging": "Hops that meet air", "age": "The older figure", "storage index": "One lot has aged"}[what.lower()]
    return is_true(pair == (a, b) or f"the lots have {pair}", (sure == "may differ") == ("not stated" in pair), why.startswith(mean))


# ---- doses

FORMS = {"whole cones": (1.00, 7.5), "pellets": (1.07, 6.5)}


def dose(t, side):
    """(grams, grams of alpha acid, IBU by Tinseth, grams of plant matter, litres held)"""
    kettle, total = t.json["kettle"], [0.0] * 5
    volume, boil = kettle["volume [L]"], kettle["boil [min]"]
    start = volume + kettle["evaporation per hour [L]"] * boil / 60
    gravity = (1 + (kettle["gravity [SG]"] - 1) * volume / start + kettle["gravity [SG]"]) / 2
    for charge in charges(t, side):
        lot, grams, minutes = lots(t)[charge["lot"]], float(charge["amount [g]"]), float(charge["time [min]"])
        alpha, beta = float(lot["alpha [%]"]) / 100, float(lot["beta [%]"] or 0) / 100
        used = 1.65 * 0.000125 ** (gravity - 1) * (1 - math.exp(-0.04 * minutes)) / 4.15
        factor, held = FORMS[lot["form"]]
        for i, part in enumerate((grams, grams * alpha, grams * alpha * 1000 / volume * factor * used, grams * (1 - alpha - beta), grams / 1000 * held)):
            total[i] += part
    return total


def has_doses(t):
    return "kettle" in t.json and bool(charges(t, "A")) and bool(charges(t, "B"))


def mass(t, text, unit, grams):
    return is_true((unit == "oz") == t.us, number(text, grams / GRAMS if t.us else grams))


@sentence("(doses|caption)$", r"Half A \((.+?)\) was hopped with {n} (g|oz) holding {n} (?:g|oz) of alpha acid, half B \((.+?)\) with {n} (?:g|oz) holding {n} (?:g|oz) of alpha acid\.|"
          r"Half A \((.+?)\) was hopped with {n} (g|oz) holding {n} (?:g|oz) of alpha acid, half B \((.+?)\) with {n} (?:g|oz) holding {n} (?:g|oz)\.")
def hopped(t, panel, *groups):
    a, grams_a, unit, alpha_a, b, grams_b, alpha_b = groups[:7] if groups[0] else groups[7:]
    one, two = dose(t, "A"), dose(t, "B")
    return is_true(has_doses(t), (a, b) == (t.a, t.b), mass(t, grams_a, unit, one[0]), mass(t, alpha_a, unit, one[1]), mass(t, grams_b, unit, two[0]), mass(t, alpha_b, unit, two[1]))


@sentence("(doses|caption)$", r"By Tinseth's formula the dose of half A is worth {n} IBU and that of half B {n} IBU\.")
def worth(t, panel, a, b):
    return is_true(has_doses(t), number(a, dose(t, "A")[2], 1e-6), number(b, dose(t, "B")[2], 1e-6))


@sentence("(doses|caption)$", r"By the form of the hops, half A took {n} (g|oz) of plant matter into the kettle and half B {n} (?:g|oz), and their hops kept back about {n} (?:L|qt) and {n} (L|qt) of wort\.")
def plant(t, panel, a, unit, b, held_a, held_b, volume):
    one, two = dose(t, "A"), dose(t, "B")
    litres = QUARTS if t.us else 1
    return is_true(has_doses(t), mass(t, a, unit, one[3]), mass(t, b, unit, two[3]), (volume == "qt") == t.us, number(held_a, one[4] / litres), number(held_b, two[4] / litres))

"""Captions that say something of their own: what a plan could have told, orders and positions, estimates and their doubts."""
import functools
import math
import re

import numpy as np
from scipy.integrate import solve_ivp

import exact
from decide import margin_of
from exact import CHANCE, TWO_SIDED
from read_beside import groupings
from read_brew import FORMS, charges, dose, has_doses, lots
from read_lab import comparison, spreads
from reading import NUM, is_true, number, percent, plain, rounds, sentence

CAPTION = "caption$"


@functools.lru_cache(1 << 14)
def power(protocol, n, alpha, share):
    needed, g = exact.critical(protocol, n, alpha), CHANCE[protocol]
    if needed is None:
        return 0.0
    p = share + (1 - share) * g
    return exact.at_least(needed, n, p) + (exact.at_most(n - needed, n, p) if protocol == TWO_SIDED else 0.0)


@sentence(CAPTION, r"The chance of showing a difference rises with the number of tasters\. For {n} % discriminators and a chance of {n} %, it takes {n} tasters? \({n} or more always reach it\); this panel has {n}\.")
def power_curve(t, panel, share, chance, first, always, tasters):
    def fits(p):
        if p.chance is None or p.sequential:
            return False
        m, want = margin_of(p)[0], p.plan.get("power", 0.8) * (1 - 1e-12)
        reached = lambda n: power(p.protocol, n, p.alpha, m) >= want
        n, every = int(plain(first)), int(plain(always))
        return (percent(share, m) is True and rounds(chance, 100 * p.plan.get("power", 0.8)) and plain(tasters) == p.plan["tasters"] and reached(n) and not any(map(reached, range(1, n)))
                and all(map(reached, range(every, every + 60))) and (every == 1 or not reached(every - 1)))
    return any(fits(p) for p in t.panels) or "no plan of the trial is like that"


@sentence(CAPTION, r'Right answers by serving order and by position, and wrong picks by position\. An upright mark shows what to expect if order and position did not matter; the counts and their tests stand in a table under "Data and method"\.')
def order_and_position(t, panel):
    return any(groupings(p)[0] for p in t.counted)


# ---- models of bitterness, written out from their sources: see the script beside the write-ups

def k1(celsius):
    return 7.9e11 * math.exp(-11858 / (celsius + 273.15))


def k2(celsius):
    return 4.1e12 * math.exp(-12994 / (celsius + 273.15))


@functools.lru_cache(None)
def iso(minutes, metres):
    mercury = 760 * (1 - 2.25577e-5 * metres) ** 5.25588
    boils = 1730.63 / (8.07131 - math.log10(mercury)) - 233.426
    a, b = k1(boils), k2(boils)
    return a / (b - a) * (math.exp(-a * minutes) - math.exp(-b * minutes))


def by_models(t, side):
    kettle = t.json["kettle"]
    volume, boil, metres = kettle["volume [L]"], kettle["boil [min]"], kettle["altitude [m]"]
    start = volume + kettle["evaporation per hour [L]"] * boil / 60
    gravity, mean_volume = (1 + (kettle["gravity [SG]"] - 1) * volume / start + kettle["gravity [SG]"]) / 2, (start + volume) / 2
    rager = plain_garetz = kinetics = 0.0
    for charge in charges(t, side):
        lot, minutes = lots(t)[charge["lot"]], float(charge["time [min]"])
        base = float(charge["amount [g]"]) * float(lot["alpha [%]"]) / 100 * 1000 / volume * FORMS[lot["form"]][0]
        rager += base * (18.11 + 13.86 * math.tanh((minutes - 31.32) / 18.27)) / 100 / (1 + max(0, gravity - 1.050) / 0.2)
        plain_garetz += base * max(0, 7.2994 + 15.0746 * math.tanh((minutes - 21.86) / 24.71)) / 100 / max(1, 1 + (gravity - 1.050) / 0.2)
        kinetics += base * 0.613 * iso(minutes, metres)
    altitude, garetz = 1 + 0.02 * (metres / 0.3048) / 550, plain_garetz
    for _ in range(200):
        garetz = plain_garetz / altitude / (1 + volume / mean_volume * garetz / 260)
    return {"Tinseth": dose(t, side)[2], "Rager": rager, "Garetz": garetz, "Kinetics": kinetics}


@sentence(CAPTION, r"(Tinseth|Rager|Garetz|Kinetics): A {n}, B {n} IBU( \(outside the model's range\))?\.")
def by_model(t, panel, model, a, b, outside):
    return is_true(has_doses(t), number(a, by_models(t, "A")[model], 1e-3), number(b, by_models(t, "B")[model], 1e-3))


def doubts(t):
    """The variance of the difference by source, to the first order."""
    a, b, all_lots = dose(t, "A")[2], dose(t, "B")[2], lots(t)
    kettle = t.json["kettle"]
    parts, times, readings, minutes_effect = {"A": {}, "B": {}}, {}, {}, {}
    for side, total in (("A", a), ("B", b)):
        uses = [(c, float(c["amount [g]"]) * float(all_lots[c["lot"]]["alpha [%]"]) * FORMS[all_lots[c["lot"]]["form"]][0] * (1 - math.exp(-0.04 * float(c["time [min]"])))) for c in charges(t, side)]
        everything = sum(use for _, use in uses)
        readings[side] = minutes_effect[side] = 0.0
        alpha = 0.0
        times[side] = 0.0
        for c, use in uses:
            ibu, minutes = total * use / everything, float(c["time [min]"])
            parts[side][c["lot"]] = parts[side].get(c["lot"], 0) + ibu
            readings[side] += (t.json["scale [g]"] / math.sqrt(12) / float(c["amount [g]"]) * ibu) ** 2
            minutes_effect[side] += (0.5 * 0.04 * math.exp(-0.04 * minutes) / (1 - math.exp(-0.04 * minutes)) * ibu) ** 2
            weight = float(c["amount [g]"]) * float(all_lots[c["lot"]]["alpha [%]"])
            times[side] += weight * minutes
            alpha += weight
        times[side] /= alpha
    terms = {}
    in_use = [lot for lot in all_lots if lot in parts["A"] or lot in parts["B"]]
    for lot in in_use:
        row, x, y = all_lots[lot], parts["A"].get(lot, 0), parts["B"].get(lot, 0)
        one = float(row["alpha uncertainty [%]"]) / 1.96 / float(row["alpha [%]"]) if row["alpha uncertainty [%]"] else 0.10 / math.sqrt(3)
        terms[f"assay, {lot}"] = (one * (y - x)) ** 2
    pellets = [sum(ibu for lot, ibu in parts[side].items() if all_lots[lot]["form"] == "pellets") for side in "AB"]
    if any(all_lots[lot]["form"] == "pellets" for lot in in_use):
        terms["form factor, pellets"] = (0.07 * (pellets[1] - pellets[0])) ** 2
    terms["scale, reading"] = readings["A"] + readings["B"]
    terms["scale, calibration"] = (0.002 * (b - a)) ** 2
    terms["volume, common gauge"] = (0.015 * (b - a)) ** 2
    terms["volume, each kettle"] = (0.015 * a) ** 2 + (0.015 * b) ** 2
    terms["gravity"] = (0.001 * math.log(0.000125) * (b - a)) ** 2
    terms["time"] = minutes_effect["A"] + minutes_effect["B"]
    terms["formula"] = (0.20 * (b - a)) ** 2
    if abs(times["A"] - times["B"]) > 0.2 * max(times.values()):
        terms["formula, unlike times"] = (0.10 * a) ** 2 + (0.10 * b) ** 2
    terms["kettle and yeast, each half"] = (0.04 * a) ** 2 + (0.04 * b) ** 2
    return terms


@sentence(CAPTION, r"The largest doubt about the difference: ([\w ,]+)\. To reduce it, ([^.]+)\. In shares: (.+?) %\.")
def doubt(t, panel, largest, advice, shares):
    terms = doubts(t)
    total = sum(terms.values())
    told = [(name.strip(), value) for name, value in re.findall(r"([a-z][\w ,]+?) (" + NUM + r")(?: %,? ?|$)", shares)]
    rest, claims = 1.0, [has_doses(t), largest == max(terms, key=terms.get) or f"the largest is {max(terms, key=terms.get)}"]
    for name, value in told:
        if name == "all others":
            claims.append(percent(value, rest, 0.03))
        else:
            claims += [name in terms or f"there is no such source: {name}", percent(value, terms.get(name, 0) / total, 0.03)]
            rest -= terms.get(name, 0) / total
    return is_true(*claims)


SPOKEN = r"{n} IBU(?: \({n} to {n}\))?"


@sentence(CAPTION, r"Beer A: estimated " + SPOKEN + r", measured {n} BU\. Beer B: estimated " + SPOKEN + r", measured {n} BU\.")
def beside_the_lab(t, panel, a, low_a, high_a, lab_a, b, low_b, high_b, lab_b):
    c, one, two = comparison(t, "bitterness"), dose(t, "A")[2], dose(t, "B")[2]
    return is_true(number(a, one, 1e-6), number(b, two, 1e-6), number(lab_a, c.mean_a, 1e-9), number(lab_b, c.mean_b, 1e-9), *(within(low, high, value) for low, high, value in ((low_a, high_a, one), (low_b, high_b, two)) if low))


def within(low, high, value):
    """The 95 % interval of an estimate is about twice a fifth of it either way: the formula's own doubt leads."""
    return 0.45 * value < plain(low) < 0.75 * value and 1.3 * value < plain(high) < 1.65 * value or f"{low} to {high} about {value}"

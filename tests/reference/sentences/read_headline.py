"""The headline, what a result does not show, and what to do next."""
import re

from decide import margin_of
from exact import DIRECTED, TWO_SIDED
from read_beside import biases, questions
from read_brew import has_doses, is_the_variable, line_of, lines, unlike
from read_lab import UNITS, analytes, comparison, results
from read_panels import decided, settles, shares, wald_rates
from reading import is_true, number, percent, plain, sentence

HEAD = "headline$"


def main(t):
    return t.counted[0] if t.counted else None


def under_way(panel):
    return panel.sequential and decided(panel).answer != "alarm" and panel.course == "pour on"


def shown(panel):
    return decided(panel).answer in ("shown", "within")


def is_lead(panel):
    """Practice left the plan so far that the result is no test."""
    return panel.standing != "before" or lopsided(panel)


def lopsided(panel):
    from itertools import permutations
    uses = {}
    for place in panel.sets.values():
        uses[place.order] = uses.get(place.order, 0) + 1
    every = all_orders(panel)
    counts = [uses.get(order, 0) for order in every]
    return max(counts) - min(counts) > 1 and max(counts) > 2 * min(counts)


def all_orders(panel):
    """Every order in which a set of the protocol can stand."""
    from itertools import permutations
    patterns = {
        "triangle": ["AAB", "ABB"], "tetrad": ["AABB"], "two-out-of-five": ["AABBB", "AAABB"], "paired directional": ["AB"], "paired two-sided": ["AB"],
        "3-AFC": ["AAB" if panel.expected == "B" else "ABB"], "A-not-A": ["A", "B"], "same-different": ["AA", "BB", "AB"],
    }.get(panel.protocol)
    if patterns is None:
        return [f"{r}:{p}" for r in ("AB" if panel.protocol == "duo-trio" else "A") for p in ("AB", "BA")]
    return sorted({"".join(order) for pattern in patterns for order in permutations(pattern)})


def halves_called(t):
    return (t.a, t.b) if len(t.a.split()) + len(t.b.split()) <= 9 else ("A", "B")


SETS = {"triangle": "triangle", "tetrad": "tetrad", "duo-trio": "duo-trio", "duo-trio constant reference": "duo-trio", "paired directional": "pair", "paired two-sided": "pair"}
BLIND = r"{n} of {n} blind (triangle|tetrad|duo-trio|pair|set)s? "
COUNT = r"(?:" + BLIND + r"(was right|were right|named one half|went to one half), where (?:guessing|chance) gives {n}|{n} of {n} unlike sets? (?:was|were) noticed, and {n} of {n} alike ones? taken for unlike)"


def count_is(panel, right, sets, kind, did, by_chance, hits, unlike_sets, false, alike):
    r = decided(panel)
    if hits:
        return tuple(map(plain, (hits, unlike_sets, false, alike))) == panel.table or f"the table is {panel.table}"
    larger = max(r.x, r.n - r.x)
    two = panel.protocol == TWO_SIDED
    return is_true(plain(right) == (larger if two else r.x), plain(sets) == r.n, kind == SETS.get(panel.protocol, "set"), (did in ("named one half", "went to one half")) == two,
                   (did == "went to one half") == panel.asks_preference, number(by_chance, r.n * panel.chance))


@sentence(HEAD, r"(.+?) or (.+?)\?")
def question(t, panel, a, b):
    names = halves_called(t)
    return (a, b) == (("Half A", "half B") if names == ("A", "B") else (names[0][0].upper() + names[0][1:], names[1]))


@sentence(HEAD, r"No panel is counted yet, so nothing is known about the taste\.")
def no_panel(t, panel):
    return main(t) is None


@sentence(HEAD, r"The panel is not finished, and nothing is decided; so far " + COUNT + r"\.")
def not_finished(t, panel, *count):
    return is_true(under_way(main(t)), count_is(main(t), *count))


@sentence(HEAD, r"Something looks wrong at the panel: " + COUNT + r"\. The key, the codes and the question must be checked; nothing is concluded\.")
def looks_wrong(t, panel, *count):
    return is_true(decided(main(t)).alarm, count_is(main(t), *count))


def lead(t, text):
    return bool(text) == is_lead(main(t)) or f"the plan stands '{main(t).standing}', lopsided orders {lopsided(main(t))}"


LEAD = "(A lead to follow, not a test: )?"


@sentence(HEAD, LEAD + r"[Tt]asters could tell them apart: " + COUNT + r"\.")
def told_apart(t, panel, lead_, *count):
    m = main(t)
    return is_true(lead(t, lead_), decided(m).answer == "shown", not m.asks_preference, count_is(m, *count))


@sentence(HEAD, LEAD + r"[Tt]asters could tell them apart, but that {n} % or more can is ruled out in this task \({n} % confidence\): " + COUNT + r"\.")
def told_apart_within(t, panel, lead_, share, confidence, *count):
    m = main(t)
    return is_true(lead(t, lead_), decided(m).answer == "within", not m.asks_preference, shares(share, m), number(confidence, 100 * (1 - m.beta)), count_is(m, *count))


@sentence(HEAD, LEAD + r"[Tt]hat {n} % or more of such tasters can tell them apart( in the direction expected)? is ruled out in this task \({n} % confidence\): " + COUNT + r"\.")
def ruled_out(t, panel, lead_, share, directed, confidence, *count):
    m = main(t)
    sure = 100 * (1 - wald_rates(m.protocol, m.plan["tasters"], margin_of(m)[0], m.alpha, m.beta)[1][1]) if m.sequential else 100 * (1 - m.beta)
    return is_true(lead(t, lead_), decided(m).answer == "ruled out", not m.asks_preference, shares(share, m), bool(directed) == (m.sequential and m.protocol in DIRECTED), number(confidence, sure), count_is(m, *count))


@sentence(HEAD, LEAD + r"[Mm]ore tasters like (.+?) better: " + COUNT + r"\.")
def more_like(t, panel, lead_, liked, *count):
    m = main(t)
    r = decided(m)
    half = m.expected if 2 * r.x > r.n else "A" if m.expected == "B" else "B"
    name = dict(zip("AB", halves_called(t)))[half]
    return is_true(lead(t, lead_), m.asks_preference, shown(m), liked == (f"half {half}" if halves_called(t) == ("A", "B") else name), count_is(m, *count))


@sentence(HEAD, LEAD + r"[Nn]o majority likes either better: " + COUNT + r"\. Whether people can tell is another question\.")
def no_majority_likes(t, panel, lead_, *count):
    m = main(t)
    return is_true(lead(t, lead_), m.asks_preference, not shown(m), count_is(m, *count))


@sentence(HEAD, LEAD + r"[Ii]t is open whether tasters can tell them apart: " + COUNT + r"(?:, and up to {n} % of such tasters might in this task \({n} % confidence\))?\.")
def open_(t, panel, lead_, *groups):
    m, (*count, up, confidence) = main(t), groups
    r = decided(m)
    claims = [lead(t, lead_), r.answer == "open", not m.asks_preference, not under_way(m), count_is(m, *count)]
    if up:
        claims += [not m.sequential, r.limit is not None, percent(up, r.limit), r.limit >= r.share - 1e-12, number(confidence, 100 * (1 - m.beta))]
    return is_true(*claims)


@sentence(HEAD, r"One batch of each(; the plan was not sealed)?\.")
def one_batch_of_each(t, panel, unsealed):
    m = main(t)
    return is_true(m is not None, m and not decided(m).alarm, m and bool(unsealed) == (m.standing == "before"), not any(file.startswith("seal-") for file in t.files))


# ---- what else could explain it

def others(t):
    """What else could explain a result, the heaviest first: (kind, size, words)."""
    m, names, found = main(t), halves_called(t), []
    for analyte in analytes(t):
        c = comparison(t, analyte)
        if c and c.outcome == "apart" and not is_the_variable(t, analyte):
            most = max((critical for critical, *_ in c.readings if critical is not None), default=c.critical)
            found.append((0, abs(c.difference) / most if most else 1, ("gap", analyte, names[0] if c.difference > 0 else names[1], abs(c.difference))))
    for line in lines(t) or []:
        if line.verdict == "confound":
            found.append((1, abs(line.difference) / line.tolerance if line.difference is not None and line.tolerance else 0, ("log", line.quantity)))
    if m and m.standing != "before":
        found.append((2, 0, ("plan", m.standing)))
    if m and lopsided(m):
        found.append((2, 0, ("orders",)))
    if m and not decided(m).alarm:
        for part, text in t.said:
            if part == f"limits, panel {m.name}" and (told := re.search(r"has a bias: (?:right answers|wrong picks) depend on the ([\w ()]+?) \(\w", text)):
                found.append((3, 0, ("bias", told[1])))
    for what in unlike(t):
        found.append((4, 0, ("hops", what)))
    if lines(t) is None:
        found.append((5, 1, ("no log",)))
    elif missing := [line.quantity for line in lines(t) if line.verdict == "not measured"]:
        found.append((5, 0, ("unmeasured", missing[0])))
    return sorted(found, key=lambda one: (one[0], -one[1]))


def heaviest(t, what, *detail):
    """Whether this is the heaviest of what could explain the result otherwise, or as heavy as it."""
    ranked = others(t)
    if not ranked:
        return "nothing else is known that could explain it"
    top = [one for one in ranked if one[0] == ranked[0][0] and abs(one[1] - ranked[0][1]) <= 1e-6 * max(1, abs(ranked[0][1]))]
    return any(one[2][:1 + len(detail)] == (what, *detail) for one in top) or f"the heaviest is {top[0][2]}"


def needs(t, but, so):
    """A difference that is shown is said with 'But ..., so the variable need not be the reason'; else what differs is told alone."""
    m = main(t)
    return bool(but) == bool(so) == shown(m) or "the form does not fit the answer"


OTHERWISE = r"(But )?{WHAT}(, so the variable need not be the reason)?\."


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Tt]he (.+?) half measured {n}(?: (BU|% vol|EBC|mg/L))? more (?:bitter|in ([\w -]+?))"))
def gap(t, panel, but, name, size, unit, analyte, so):
    analyte = analyte or "bitterness"
    c = comparison(t, analyte)
    return is_true(needs(t, but, so), heaviest(t, "gap", analyte, name), number(size, abs(c.difference), 1e-9), (unit or "") == UNITS[analyte][0])


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Tt]he halves differ in ([\w ]+?)"))
def log_differs(t, panel, but, quantity, so):
    return is_true(needs(t, but, so), heaviest(t, "log", quantity))


@sentence(HEAD, r"(No plan was declared beforehand|The plan was written after serving|The cups stood in lopsided orders)\.")
def left_the_plan(t, panel, what):
    return heaviest(t, *{"N": ("plan", "nobody"), "T": ("plan", "after")}[what[0]]) if "plan" in what else heaviest(t, "orders")


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Aa]nswers depended on ([\w ()]+?)"))
def bias_named(t, panel, but, by, so):
    return is_true(needs(t, but, so), heaviest(t, "bias", by))


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Tt]he hop lots (differ|may differ) in ([\w ]+?) too"))
def hops_differ(t, panel, but, sure, what, so):
    return is_true(needs(t, but, so), heaviest(t, "hops", what), (sure == "may differ") == ("not stated" in unlike(t)[what]) or f"the lots have {unlike(t)[what]}")


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Nn]obody measured ([\w ]+?) on both halves"))
def unmeasured(t, panel, but, quantity, so):
    return is_true(needs(t, but, so), heaviest(t, "unmeasured", quantity))


@sentence(HEAD, OTHERWISE.replace("{WHAT}", r"[Nn]o batch log says whether the halves differ otherwise"))
def no_log_says(t, panel, but, so):
    return is_true(needs(t, but, so), heaviest(t, "no log"))


# ---- what a result does not show, and what to do next: a warning fits what was found

def fits(part, text, condition):
    @sentence(part + "$", re.escape(text).replace(r"\ ", " ").replace("{", r"\{"))
    def judge(t, panel):
        return condition(t, main(t)) or "it does not fit what was found"
    judge.__name__ = text[:30]


ordinary = lambda m: m and not decided(m).alarm and not m.asks_preference
fits("not shown", "It does not show that everybody notices: some of those who answered right may only have guessed.", lambda t, m: ordinary(m) and shown(m))
fits("not shown", "It does not show that everybody prefers it, or why.", lambda t, m: m and m.asks_preference and shown(m))
fits("not shown", "It does not show which beer is better liked, or why the beers differ.", lambda t, m: ordinary(m) and shown(m))
fits("not shown", "It does not show that the beers are the same: a few tasters may still tell them apart.", lambda t, m: ordinary(m) and decided(m).answer == "ruled out")
fits("not shown", "It does not show that the beers taste the same.", lambda t, m: ordinary(m) and decided(m).answer == "open")
fits("not shown", "It does not show that the belief behind the question is wrong, or right.", lambda t, m: m and not decided(m).alarm and not shown(m))
fits("not shown", "It shows nothing about the beers until it is known why so few answers were right.", lambda t, m: m and decided(m).alarm)
fits("not shown", "It does not show that people cannot tell the beers apart: which they like and whether they can tell are two questions.", lambda t, m: m and m.asks_preference and not shown(m))
fits("not shown", "It shows nothing about taste yet.", lambda t, m: m is None)
fits("not shown", "A difference that the lab measures is not by itself a difference that people taste.", lambda t, m: comparison(t, "bitterness").outcome == "apart")
fits("not shown", "A lab difference within the method's scatter does not show that the halves are equally bitter.", lambda t, m: comparison(t, "bitterness").outcome == "within")
fits("not shown", "It does not carry over to other recipes, lots, doses or breweries.", lambda t, m: True)
fits("next", "Serve the panel of the plan, and type its ballots into the trial folder.", lambda t, m: m is None)
fits("next", "Serve the next taster of the sequential panel, as its plan says, until a line is reached or the last taster is served.", lambda t, m: m and under_way(m))
fits("next", "Look for what went wrong: compare the key with the cups that were poured, the codes, the direction that was expected, and how tasters read the question. Then serve a new panel.", lambda t, m: m and decided(m).alarm)
fits("next", "Serve a new panel, planned beforehand, by a protocol with a known guessing chance, such as the triangle: it can also rule a difference out.", lambda t, m: ordinary(m) and m.chance is None and not shown(m))
fits("next", "Serve a new, larger panel, one set each, planned beforehand; adding tasters to this one after seeing the count would raise the error.", lambda t, m: ordinary(m) and decided(m).answer == "open" and not under_way(m))
fits("next", "Brew the pair again and serve a new panel, to see whether the result belongs to the variable and not to these two batches.", lambda t, m: m and not decided(m).alarm and shown(m))
fits("next", "Ask other tasters what differs and which beer they prefer, in a panel planned for that question.", lambda t, m: ordinary(m) and shown(m))
fits("next", "Brew the pair again before relying on it, and try a larger change of the variable to learn where a difference begins.", lambda t, m: ordinary(m) and decided(m).answer == "ruled out")
fits("next", "Test whether people can tell the beers apart, in a panel planned for that question, such as a triangle.", lambda t, m: m and m.asks_preference and not shown(m))
fits("next", "Send both halves to a lab, blind and in one run, with two readings of each.", lambda t, m: comparison(t, "bitterness") is None or comparison(t, "bitterness").where in ("methods", "separate", "two labs"))
fits("next", "Ask the lab whether its precision figure is a coefficient of variation, a standard deviation or a limit at a stated confidence, and of repeatability or reproducibility.", lambda t, m: comparison(t, "bitterness").outcome in ("depends", "open"))
fits("next", "Correct the doses by what the lab measured before brewing the pair again.", lambda t, m: has_doses(t) and comparison(t, "bitterness").outcome == "apart" and not is_the_variable(t, "bitterness"))


@sentence("next", r"Serve a new panel of {n} tasters? or more, one set each, planned beforehand; adding tasters to this one after seeing the count would raise the error\.")
def larger_panel(t, panel, tasters):
    m = main(t)
    return is_true(ordinary(m), decided(m).answer == "open", not under_way(m), settles(m, int(plain(tasters))))

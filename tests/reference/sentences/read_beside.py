"""What is printed of questions asked beside the difference, and of biases."""
import functools
import math
import re

import numpy as np
from scipy.special import bdtr, bdtrc
from scipy.stats import chi2, rankdata, t as student

from raw import rows
from read_panels import PANEL, not_alarm
from reading import is_true, number, p_value, percent, plain, sentence

P = r"(p [<=] [\d.]+), after correction for {n} questions? (p [<=] [\d.]+)"
LEVEL = 0.05


def holm(values):
    adjusted, largest = [0.0] * len(values), 0.0
    for left, i in enumerate(sorted(range(len(values)), key=lambda i: values[i])):
        largest = max(largest, min(1.0, (len(values) - left) * values[i]))
        adjusted[i] = largest
    return adjusted


def two_sided(a, b):
    """Exact two-sided binomial against one half; 1 for nobody."""
    return 1.0 if a + b == 0 else min(1.0, 2 * float(bdtrc(max(a, b) - 1, a + b, 0.5)) if max(a, b) > 0 else 1.0)


def signed_ranks(differences):
    used = [d for d in differences if d]
    if not used:
        return 1.0
    ranks = np.rint(2 * rankdata(np.round(np.abs(used), 9))).astype(int)
    chances = np.ones(1)
    for rank in ranks:
        wider = np.zeros(len(chances) + rank)
        wider[:len(chances)] += chances / 2
        wider[rank:] += chances / 2
        chances = wider
    seen = int(sum(rank for rank, d in zip(ranks, used) if d > 0))
    return float(min(1, 2 * min(chances[:seen + 1].sum(), chances[seen:].sum())))


def rated(panel):
    """{(attribute, whether only those who were right): differences B less A}, and remarks on ratings left out."""
    text = panel.files.get(f"ratings-{panel.name}.csv")
    if text is None:
        return {}, []
    table = rows(text)
    attributes = [column for column in (table[0] if table else {}) if column not in ("taster", "set", "code")]
    given, beers = {}, {(place.taster, number, code): beer for number, place in panel.sets.items() for code, beer in place.cups}
    for row in table:
        beer = beers[(row["taster"], int(row["set"]), row["code"])]
        for attribute in attributes:
            given.setdefault((attribute, row["taster"]), {"A": [], "B": []})[beer].append(float(row[attribute]))
    found, out = {}, set()
    for (attribute, taster), values in given.items():
        n, x = panel.all_people[taster]
        if not n:
            out.add(f"The ratings of {taster} are left out, because no ballot of this taster counts.")
        elif not values["A"] or not values["B"]:
            out.add(f"The rating of {attribute} by {taster} is left out, because only one of the beers was rated.")
        else:
            d = float(np.mean(values["B"]) - np.mean(values["A"]))
            found.setdefault((attribute, False), []).append(d)
            if x == n:
                found.setdefault((attribute, True), []).append(d)
    return found, out


def preferred(panel):
    """One entry for each counted ballot that says what is liked: (taster, beer or None, whether the answer was right, share of cups B). With several sets of even cups by
    one taster there is one entry for the taster: the half chosen more often."""
    found = []
    if panel.chance is None:
        return found
    for ballot in panel.ballots:
        if ballot.state == "out" or not ballot.preferred or not ballot.set.mixed:
            continue
        found.append((ballot.set.taster, None if not re.search(r"\d", ballot.preferred) else ballot.set.beer.get(ballot.preferred), ballot.correct, ballot.set.share_b))
    if panel.has_repeats and found and all(abs(share - 0.5) < 1e-9 for *_, share in found):
        by_taster = {}
        for taster, beer, _, share in found:
            by_taster.setdefault(taster, []).append(beer)
        return [(taster, None if beers.count("A") == beers.count("B") else "A" if beers.count("A") > beers.count("B") else "B",
                 panel.all_people[taster][0] == panel.all_people[taster][1], 0.5) for taster, beers in by_taster.items()]
    return found


def liking(panel):
    """{whether only those who were right: (for A, for B, none, p, blindly for B or None where cups are even)}"""
    asked = preferred(panel)
    uneven = any(abs(share - 0.5) > 1e-9 for *_, share in asked)
    found = {}
    for only in (False,) if uneven else (False, True):
        chosen = [(beer, share) for _, beer, right, share in asked if right or not only]
        if not chosen:
            continue
        a, b, none = (sum(beer == side for beer, _ in chosen) for side in ("A", "B", None))
        if uneven:
            chances = np.ones(1)
            for share in (share for beer, share in chosen if beer):
                chances = np.convolve(chances, [1 - share, share])
            p = float(min(1, 2 * min(chances[:b + 1].sum(), chances[b:].sum()))) if a + b else 1.0
            found[only] = (a, b, none, p, sum(share for beer, share in chosen if beer))
        else:
            found[only] = (a, b, none, two_sided(a, b), None)
    return found


def questions(panel):
    """All questions asked beside the difference, with plain and corrected p: {('rating', attribute, only) or ('preference', only): (p, corrected)}."""
    if not hasattr(panel, "_questions"):
        ratings, panel.left_out = rated(panel)
        panel.ratings, panel.liking = ratings, liking(panel)
        plain_p = {("rating", *key): signed_ranks(d) for key, d in ratings.items()} | {("preference", only): found[3] for only, found in panel.liking.items()}
        panel._questions = dict(zip(plain_p, zip(plain_p.values(), holm(list(plain_p.values())))))
    return panel._questions


def corrected(panel, key, p, count, adjusted):
    asked = questions(panel)
    return is_true(p_value(p, asked[key][0]), plain(count) == len(asked), p_value(adjusted, asked[key][1]))


@sentence(PANEL, r"Rated for (\w+) by {n} tasters?( who answered right, perhaps by guessing)?, half B stands ([+−]?[\d.]+) from half A(?: \(between ([+−]?[\d.]+) and ([+−]?[\d.]+) with 95 % confidence\))?; " + P
          + r": (a difference is shown|no difference is shown, which does not mean that there is none)\.")
def rating(t, panel, attribute, tasters, only, difference, low, high, p, count, adjusted, outcome):
    asked = questions(panel)
    key = (attribute, bool(only))
    d = panel.ratings.get(key)
    if d is None:
        return "nobody rated it"
    mean, n = float(np.mean(d)), len(d)
    half = student.ppf(0.975, n - 1) * np.std(d, ddof=1) / math.sqrt(n) if n > 1 else None
    return is_true(not_alarm(panel), plain(tasters) == n, number(difference.lstrip("+"), mean, 1e-9), corrected(panel, ("rating", *key), p, count, adjusted),
                   (low is None) == (half is None), is_true(number(low.lstrip("+"), mean - half, 1e-7), number(high.lstrip("+"), mean + half, 1e-7)) if low else True,
                   (outcome == "a difference is shown") == (asked[("rating", *key)][1] <= LEVEL))


@sentence(PANEL, r"Asked which cup of their set they like best, tasters chose a cup of half B in {n} of {n} sets?, and {n} chose none; choosing blindly among those cups gives {n}; " + P
          + r": that the beer matters to the choice is (shown|not shown, which does not mean that both are liked alike)\.")
def liked_cup(t, panel, b, chosen, none, blindly, p, count, adjusted, outcome):
    asked = questions(panel)
    a_, b_, none_, _, blind = panel.liking[False]
    return is_true(not_alarm(panel), blind is not None, (plain(b), plain(chosen), plain(none)) == (b_, a_ + b_, none_), number(blindly, blind), corrected(panel, ("preference", False), p, count, adjusted),
                   (outcome == "shown") == (asked[("preference", False)][1] <= LEVEL))


@sentence(PANEL, r"Asked which they prefer, {n} tasters?( who answered right, perhaps by guessing,)? chose half A, {n} half B and {n} neither; " + P
          + r": (a preference is shown|no preference is shown\. Tasters who cannot tell, and two camps who can, both give such a count)\.")
def preference(t, panel, a, only, b, none, p, count, adjusted, outcome):
    asked, key = questions(panel), ("preference", bool(only))
    if bool(only) not in panel.liking:
        return "nobody was asked"
    a_, b_, none_, _, blind = panel.liking[bool(only)]
    return is_true(not_alarm(panel), blind is None, (plain(a), plain(b), plain(none)) == (a_, b_, none_) or f"{a_} people for A, {b_} for B, {none_} for neither", corrected(panel, key, p, count, adjusted),
                   (outcome == "a preference is shown") == (asked[key][1] <= LEVEL))


# ---- words: the generator's comments, and the descriptors that a reader of them would tick

SAID = {
    "bitter": [("bitter", True)], "not bitter": [("bitter", False)], "soft and malty": [("smooth", True), ("malty", True)], "citrus, a little harsh": [("harsh or astringent", True), ("citrus", True)],
    "less sweet": [("sweet", False)], "floral; rosemary": [("floral", True)], "dry finish, drying": [("harsh or astringent", True), ("dry", True)], "pineapple": [("fruity", True)],
    "nothing to say": [], "thin, I think": [("thin", True)], "harsh": [("harsh or astringent", True)],
}


def words(panel):
    """(comments, {descriptor: (tasters who said it of A, of B, corrected p)})"""
    table, count, used = rows(panel.files.get(f"comments-{panel.name}.csv", "taster,set,code,comment\n")), 0, {}
    for row in table:
        place = panel.sets[int(row["set"])]
        if panel.all_people[place.taster][0]:
            count += 1
            for descriptor, said in SAID[row["comment"]]:
                sides = used.setdefault(descriptor, {"A": set(), "B": set()})
                if said:
                    sides[place.beer[row["code"]]].add(place.taster)
    p = [two_sided(len(sides["A"] - sides["B"]), len(sides["B"] - sides["A"])) for sides in used.values()]
    return count, {word: (len(sides["A"]), len(sides["B"]), adjusted) for (word, sides), adjusted in zip(used.items(), holm(p))}


@sentence(PANEL, r'In {n} comments? "([^"]+)" sets the halves apart: {n} tasters? used it of half A and {n} of half B \((p [<=] [\d.]+) after correction for all descriptors\)\.')
def word_apart(t, panel, comments, word, a, b, p):
    count, used = words(panel)
    a_, b_, adjusted = used[word]
    return is_true(not_alarm(panel), plain(comments) == count, (plain(a), plain(b)) == (a_, b_), adjusted <= LEVEL, p_value(p, adjusted))


@sentence(PANEL, r'In {n} comments? (the most used descriptor is|no descriptor is used more than) "([^"]+)", by {n} tasters? of half A and {n} of half B; after correction for all descriptors none sets the halves apart\.')
def words_alike(t, panel, comments, how, word, a, b):
    count, used = words(panel)
    a_, b_, _ = used[word]
    return is_true(not_alarm(panel), plain(comments) == count, (plain(a), plain(b)) == (a_, b_), a_ + b_ == max(x + y for x, y, _ in used.values()),
                   how.startswith("the most") == ([x + y for x, y, _ in used.values()].count(a_ + b_) == 1), all(p > LEVEL for *_, p in used.values()))


# ---- biases

PLACES = ["1st", "2nd", "3rd", "4th", "5th"]


def groupings(panel):
    """{(what is counted, grouped by): {group: (sets, count)}} and, for wrong picks, the choices behind each."""
    counted = [ballot for ballot in panel.ballots if ballot.state == "counted"]
    found, picks = {}, {}

    def group(name, of):
        pairs = [(of(ballot.set), ballot.right) for ballot in counted if of(ballot.set) is not None]
        if len({g for g, _ in pairs}) > 1:
            table = {}
            for g, right in pairs:
                n, x = table.get(g, (0, 0))
                table[g] = (n + 1, x + right)
            found[("right answers", name)] = dict(sorted(table.items()))

    group("serving order", lambda s: s.order)
    group("session", lambda s: f"session {s.session}")
    group("server", lambda s: s.server)
    group("repeat", lambda s: f"set {s.replicate}")
    group("beer that was the odd one", lambda s: s.odd)
    group("beer that was the reference", lambda s: s.reference)
    group("position of the odd cup", lambda s: s.odd_at and PLACES[s.odd_at - 1])
    group("position of the first cup of A", lambda s: PLACES[[beer for _, beer in s.cups].index("A")] if s.odd_at is None and s.mixed else None)
    for name, place in (("position", lambda s, code: PLACES[[c for c, _ in s.cups].index(code)]), ("code (lowest to highest of the set)", lambda s, code: PLACES[sorted(c for c, _ in s.cups).index(code)])):
        wrong = [(place(b.set, b.cup), [place(b.set, code) for code, beer in b.set.cups if beer == b.set.beer[b.cup]]) for b in counted if b.cup and not b.right and b.set.odd_at]
        wrong = [(picked, choices) for picked, choices in wrong if len(choices) > 1]
        if wrong:
            table = {}
            for picked, choices in wrong:
                for choice in choices:
                    n, x = table.get(choice, (0, 0))
                    table[choice] = (n + 1, x + (choice == picked))
            found[("wrong picks", name)] = dict(sorted(table.items()))
            picks[name] = wrong
    return found, picks


DEALS = 20_000


def rough_p(kind, table, picks, name):
    """The chi-square's own approximation: enough to see that nothing is near."""
    if kind == "right answers":
        n, x = sum(a for a, _ in table.values()), sum(b for _, b in table.values())
        if x in (0, n):
            return 1.0
        share = x / n
        statistic = sum((b - a * share) ** 2 / (a * share * (1 - share)) for a, b in table.values())
        return float(chi2.sf(statistic * (n - 1) / n, len(table) - 1))
    return dealt_p(kind, table, picks, name, 4000)


def dealt_p(kind, table, picks, name, deals=DEALS):
    rng = np.random.default_rng(7)
    sizes, seen = np.array([a for a, _ in table.values()]), np.array([b for _, b in table.values()])
    if kind == "right answers":
        right = seen.sum()
        expected, weight = sizes * right / sizes.sum(), sizes
        deals_made = rng.multivariate_hypergeometric(sizes, right, size=deals)
    else:
        labels = list(table)
        deals_made, expected = np.zeros((deals, len(labels))), np.zeros(len(labels))
        by_choice = {}
        for _, choices in picks[name]:
            key = tuple(labels.index(choice) for choice in choices)
            by_choice[key] = by_choice.get(key, 0) + 1
        for key, many in by_choice.items():
            np.add.at(expected, list(key), many / len(key))
            dealt = rng.multinomial(many, np.ones(len(key)) / len(key), size=deals)
            for column, label in enumerate(key):
                deals_made[:, label] += dealt[:, column]
        weight = expected
    if expected.min() == 0:
        return 1.0
    statistic = ((seen - expected) ** 2 / weight).sum()
    return float((((deals_made - expected) ** 2 / weight).sum(axis=1) >= statistic - 1e-9).mean())


def biases(panel, exactly):
    """Each check with its p, dealt where it may matter."""
    found, picks = groupings(panel)
    p = {key: rough_p(key[0], table, picks, key[1]) for key, table in found.items()}
    if exactly or any(one * len(p) < 0.4 for one in p.values()):
        p = {key: dealt_p(key[0], found[key], picks, key[1]) for key in p}
    return found, p


def noise(p):
    return 5 * math.sqrt(max(p, 1e-3) * (1 - min(p, 0.999)) * (1 / DEALS + 1 / 9999)) + 3e-4


@sentence(PANEL, r"The checks of panel {w} whether order, position, code or the odd beer drove the answers show no bias, which does not rule one out in a panel of this size\.")
def no_bias(t, panel, name):
    _, p = biases(panel, False)
    smallest = min(holm(list(p.values())), default=1)
    return is_true(not_alarm(panel), name == panel.name, len(p) > 0 or "nothing was checked", smallest > 0.05 - len(p) * noise(smallest / max(1, len(p))) or f"a corrected p is {smallest}")


@sentence(PANEL, r"The answers of panel {w} depended on something besides the beers; what limits the trial names it\.")
def some_bias(t, panel, name):
    named = any(part == f"limits, panel {panel.name}" and "has a bias" in text for part, text in t.said)
    return is_true(not_alarm(panel), name == panel.name, named or "nothing names it")


@sentence("limits, panel", r"Panel {w} has a bias: (right answers|wrong picks) depend on the ([\w ()]+?) \(((?:[\w: ]+ [\d,]+ of [\d,]+(?:, |; ))+)(p [<=] [\d.]+), after correction for all checks (p [<=] [\d.]+)\)\.")
def bias(t, panel, name, kind, by, groups, p, adjusted):
    found, values = biases(panel, True)
    table = found.get((kind, by))
    if table is None:
        return "there is no such check"
    told = {label: (int(plain(n)), int(plain(x))) for label, x, n in re.findall(r"([\w: ]+?) ([\d,]+) of ([\d,]+)(?:, |; )", groups)}
    own = values[(kind, by)]
    all_p = holm(list(values.values()))[list(values).index((kind, by))]
    return is_true(not_alarm(panel), name == panel.name, told == {label: (n, x) for label, (n, x) in table.items()} or f"the groups are {table}", p_value(p, own, noise(own)),
                   p_value(adjusted, all_p, len(values) * noise(own)), all_p <= 0.05 + len(values) * noise(own))

"""What limits a panel and the trial: departures, ballots, looks, questions, several panels."""
import math
import re

import numpy as np
from scipy.optimize import brentq, minimize_scalar
from scipy.stats import chi2, t as student

import exact
from decide import decide
from exact import DIRECTED, TWO_SIDED
from read_beside import questions
from read_panels import decided, wald_rates
from decide import margin_of
from reading import is_true, number, percent, plain, sentence

LIMITS = r"limits, panel "


# ---- departures and remarks

@sentence(LIMITS, r"Panel {w} departed from its plan\. Declared: planned (before serving|[\d-]+), done (not declared|served [\d-]+)\. "
          r"(Nothing was fixed beforehand|The plan was written after the panel was served), so the result is a lead to follow and not a test\.")
def not_declared(t, panel, name, planned, done, why):
    declared = panel.plan.get("declared")
    if done == "not declared":
        return is_true(name == panel.name, declared is None, planned == "before serving", why.startswith("Nothing"))
    return is_true(name == panel.name, planned == declared, done == f"served {panel.first_served}", panel.first_served < declared, why.startswith("The plan"))


@sentence(LIMITS, r"Panel {w} departed from its plan\. Tasters: planned {n}, done {n}\. (Fewer tasters than planned: the panel can show and rule out less\. If the count was known when it stopped, the error is larger than stated"
          r"|More tasters than planned: sound only if the count was not known when they were added)\.")
def other_size(t, panel, name, planned, done, which):
    return is_true(name == panel.name, not panel.sequential, plain(planned) == panel.plan["tasters"], plain(done) == len(panel.people), which.startswith("Fewer") == (plain(done) < plain(planned)), plain(done) != plain(planned))


@sentence(LIMITS, r"Panel {w} departed from its plan\. Sets: planned {n} for each taster, done {n} for {n} tasters?\. Not every taster counts with as many sets as planned\.")
def other_sets(t, panel, name, planned, sets, tasters):
    each = panel.plan.get("replicates", 1)
    return is_true(name == panel.name, plain(planned) == each, plain(sets) == panel.n, plain(tasters) == len(panel.people), any(n != each for n, _ in panel.people.values()))


@sentence(LIMITS, r"Panel {w} departed from its plan\. Serving orders: planned each equally often, done not balanced: ([\w: ,]+)\. "
          r"(A liking for a position can pass for a difference between the beers, so the result is a lead to follow and not a test|A liking for a position weighs a little in the count)\.")
def orders(t, panel, name, uses, what):
    told = {order: int(n) for order, n in re.findall(r"([AB:]+) (\d+)", uses)}
    seen = {}
    for place in panel.sets.values():
        seen[place.order] = seen.get(place.order, 0) + 1
    most, least = max(told.values()), min(told.values())
    return is_true(name == panel.name, {order: n for order, n in told.items() if n} == seen, most - least > 1, what.startswith("A liking for a position can") == (most > 2 * least))


@sentence(LIMITS, r"Panel {w}: A ballot of (\w+) is (not counted|counted as wrong, as the plan says|counted, as the plan says): (.+?)\.(?= Panel|$)")
def ballot(t, panel, name, taster, state, reasons):
    wanted = {"not counted": "out", "counted as wrong, as the plan says": "wrong", "counted, as the plan says": "counted"}[state]
    return is_true(name == panel.name, any(b.taster == taster and b.state == wanted and "; ".join(b.notes) == reasons for b in panel.ballots) or "no ballot is like that")


@sentence(LIMITS, r"Panel {w}: Ballots not returned: {n} of {n}(, counted as wrong, as the plan says)?\.")
def not_returned(t, panel, name, missing, served, wrong):
    return is_true(name == panel.name, plain(missing) == len(panel.missing), plain(served) == len(panel.sets), bool(wrong) == panel.missing_wrong)


@sentence(LIMITS, r"Panel {w}: (The ratings? of .+?)(?= Panel|$)")
def rating_left_out(t, panel, name, text):
    questions(panel)
    return is_true(name == panel.name, text in panel.left_out)


@sentence(LIMITS, r"Panel {w}: Ballots that came in after the sequential panel had decided, and are not counted: {n}\.")
def unused(t, panel, name, count):
    return is_true(name == panel.name, panel.sequential, plain(count) == len(panel.in_order) - decided(panel).n)


@sentence(LIMITS, r"The plan of panel {w} was not sealed before its first ballot, so nobody can check that it was fixed beforehand\.")
def not_sealed(t, panel, name):
    return is_true(name == panel.name, not any(file.startswith("seal-") for file in t.files))


# ---- ballots that might have counted otherwise

ANSWERS = {
    "a difference is shown": "shown", "a difference is shown, and the margin ruled out": "within", "no difference is shown, and the margin is ruled out": "ruled out",
    "the count lies far below what guessing gives": "alarm", "neither is a difference shown nor the margin ruled out": "open",
    "a majority is shown": "shown", "no majority is shown": "open",
}
ANSWER = "(" + "|".join(sorted(ANSWERS, key=len, reverse=True)) + ")"


def with_missing(panel, right):
    """The answer if so many of the missing answers had been right."""
    people = {name: list(one) for name, one in panel.people.items()}
    for place in panel.missing:
        one = people.setdefault(place.taster, [0, 0])
        one[0] += 1
    left = right
    for place in panel.missing:
        if left:
            people[place.taster][1] += 1
            left -= 1
    return said_answer(panel, decide(panel, [tuple(one) for one in people.values()]).answer)


def said_answer(panel, answer):
    """A preference is asked for a majority and has no margin."""
    return {"within": "shown", "ruled out": "open"}.get(answer, answer) if panel.asks_preference else answer


def all_missing(panel):
    if not hasattr(panel, "_missing"):
        panel._missing = [with_missing(panel, k) for k in range(len(panel.missing) + 1)]
    return panel._missing


def own(panel):
    return said_answer(panel, decided(panel).answer)


@sentence(LIMITS, r"{n} sets? of panel {w} (was|were) served and not answered; (however those answers had turned out, the panel's answer would be the same|with all of those answers ([\w ]+?) it would be: " + ANSWER
          + r"|with {n} of those answers ([\w ]+?) it would be: " + ANSWER + r")\.(?: With all of those answers ([\w ]+?) it would be: " + ANSWER + r"\.)?")
def missing(t, panel, sets, name, were, what, which, answer, some, of, middle, last, highest):
    ways = all_missing(panel)
    right, wrong = ("right", "wrong") if panel.protocol != TWO_SIDED else ("for half B", "for half A") if panel.expected == "B" else ("for half A", "for half B")
    claims = [name == panel.name, plain(sets) == len(panel.missing), not panel.missing_wrong, ("majority" in (answer or "") + (middle or "") + (highest or "")) == panel.asks_preference or what.startswith("however")]
    if what.startswith("however"):
        claims.append(all(way == own(panel) for way in ways) or f"the answers are {ways}")
    if which:
        claims.append(which in (right, wrong))
        claims.append((ways[0] if which == wrong else ways[-1]) == ANSWERS[answer] or f"the answers are {ways}")
    if some:
        claims += [of == right, ways[int(plain(some))] == ANSWERS[middle] or f"the answers are {ways}", ways[int(plain(some))] != own(panel)]
    if last:
        claims += [last == right, ways[-1] == ANSWERS[highest] or f"the answers are {ways}"]
    return is_true(*claims)


RULES = {"late": "late ballots", "knew variable": "ballots of tasters who knew the variable", "brewer": "the brewer's ballots", "no usable answer": "ballots without a usable answer"}
DONE = {"exclude": "left out", "count": "counted", "count as wrong": "counted as wrong"}


def other_rules(panel):
    """{rule in words: answer} for every other rule that changes what is counted."""
    if hasattr(panel, "_others"):
        return panel._others
    now, keep = list(panel.people.items()), panel.rules
    found = {}

    def ask(words, changed):
        panel.count({**keep, **changed})
        people = [one for one in panel.people.values()]
        if people and [one for _, one in now] != people:
            found[words] = said_answer(panel, decide(panel, people).answer) if panel.chance is not None else None

    for rule, words in (("first", "the first of double ballots counted"), ("last", "the last of double ballots counted"), ("first if equal", "unlike double ballots left out")):
        if rule != keep.get("duplicates", "first"):
            ask(words, {"duplicates": rule})
    for doubtful, words in RULES.items():
        for rule, done in DONE.items():
            if rule != keep.get(doubtful, "exclude") and not (doubtful == "no usable answer" and rule == "count"):
                ask(f"{words} {done}", {doubtful: rule})
    if keep.get("missing") == "count as wrong":
        ask("missing ballots left out", {"missing": "exclude"})
    panel.count(keep)
    panel._others = found
    return found


@sentence(LIMITS, r"Counting doubtful ballots of panel {w} by other rules gives the same answer\.")
def rules_alike(t, panel, name):
    others = other_rules(panel)
    return is_true(name == panel.name, len(others) > 0 or "no other rule changes anything", all(answer == own(panel) for answer in others.values()) or f"other rules give {others}, the plan's {own(panel)}")


@sentence(LIMITS, r"With ([\w ']+?), panel {w} would give another answer: " + ANSWER + r"\.")
def rule_turns(t, panel, rule, name, answer):
    others = other_rules(panel)
    return is_true(name == panel.name, rule in others or "this rule changes nothing", others.get(rule) == ANSWERS[answer] or f"it gives {others.get(rule)}", others.get(rule) != own(panel), ("majority" in answer) == panel.asks_preference)


# ---- questions, control, looks

@sentence(LIMITS, r"Panel {w} was asked {n} questions? beside the difference\. Each by itself at 5 %, one at least would show something by chance in up to {n} % of such panels if they were independent; so their p-values are corrected for the number\.")
def asked_beside(t, panel, name, count, chance):
    n = len(questions(panel))
    return is_true(name == panel.name, plain(count) == n or f"{n} questions", n > 1, percent(chance, 1 - 0.95 ** n))


@sentence(LIMITS, r"Panel {w} was served no control with a known difference, so nobody knows what it could have told\.")
def no_control(t, panel, name):
    return is_true(name == panel.name, "control" not in panel.plan, not panel.asks_preference)


@sentence(LIMITS, r"It is not written down whether anybody saw the count of panel {w} before its end\. Looking after each of {n} ballots and stopping at the first (majority|difference) finds a false one in {n} % of panels\.")
def looks(t, panel, name, ballots, what, chance):
    r = decided(panel)
    return is_true(name == panel.name, plain(ballots) == r.n, (what == "majority") == panel.asks_preference, percent(chance, exact.looking_after_each(panel.protocol, r.n, panel.alpha)))


# ---- several panels

def task(panel):
    return (panel.protocol, panel.n, panel.x)


def combinable(t):
    if t.json.get("panels together") != "stratified":
        return []
    return [p for p in t.counted if p.chance is not None and p.protocol != TWO_SIDED and not p.sequential and not p.has_repeats]


def sums(counts, d):
    chances = np.ones(1)
    for protocol, n, _ in counts:
        chances = np.convolve(chances, exact.pmf(n, exact.right_share(protocol, d)))
    return chances


FAR = 12


def common(counts, tail=0.025):
    """One d-prime for several counts: by maximum likelihood, with the exact interval from the distribution of all right answers."""
    right = sum(x for *_, x in counts)
    log = lambda d: sum((x * math.log(s) if x else 0) + ((n - x) * math.log(1 - s) if n > x else 0) for p, n, x in counts for s in [min(exact.right_share(p, d), 1 - 1e-15)])
    grid = np.linspace(0, FAR, 49)
    top = grid[int(np.argmax([log(d) for d in grid]))]
    best = minimize_scalar(lambda d: -log(d), bounds=(max(0, top - 0.25), min(FAR, top + 0.25)), method="bounded", options={"xatol": 1e-8}).x
    best = 0.0 if log(0) >= log(best) else best
    least, most = (lambda d: sums(counts, d)[right:].sum()), (lambda d: sums(counts, d)[:right + 1].sum())
    low = 0.0 if least(0) >= tail else min(best, brentq(lambda d: least(d) - tail, 0, FAR, xtol=1e-8))
    high = math.inf if most(FAR) >= tail else best if most(0) <= tail else max(best, brentq(lambda d: most(d) - tail, 0, FAR, xtol=1e-8))
    apart = sum((x * math.log(s) if x else 0) + ((n - x) * math.log(1 - s) if n > x else 0) for p, n, x in counts for s in [max(exact.CHANCE[p], x / n)])
    return best, low, high, max(0.0, 2 * (apart - log(best))), least(0)


def rough(panels):
    return 0.003 if any(p.protocol == "two-out-of-five" for p in panels) else 1e-6


@sentence("(panels|caption)$", r"The {n} panels together, each by its own guessing chance: {n} right of {n}, and guessing alone gives so many or more in {n} % of cases; the distance between the beers is put at a d-prime of "
          r"(?:{n} \(between {n} and {n} with 95 % confidence\)|{n} or more \(with 95 % confidence\)), and (there is no sign that the panels disagree|the panels disagree, so that one number hides something)\. This holds if no taster sat at two of the panels\.")
def together(t, panel, many, right, sets, chance, d, low, high, at_least, agree):
    panels = combinable(t)
    counts = [task(p) for p in panels]
    best, low_, high_, apart, p = common(counts)
    slack = rough(panels)
    alone = not returning(panels)
    p_apart = float(chi2.sf(apart, len(panels) - 1))
    return is_true(all(not decided(p).alarm for p in t.counted), plain(many) == len(panels), plain(right) == sum(p.x for p in panels), plain(sets) == sum(p.n for p in panels), percent(chance, p), alone or "a taster sat at two of them",
                   is_true(number(d, best, slack), number(low, low_, slack), number(high, high_, slack)) if d else is_true(math.isinf(high_), number(at_least, low_, slack)),
                   (agree.startswith("the panels disagree")) == (p_apart < 0.05) or abs(p_apart - 0.05) < 1e-4 or f"the panels disagree with p {p_apart}")


def returning(panels):
    names = [name.upper() for p in panels for name in p.people]
    return len(names) != len(set(names))


def by_person(panels):
    people = {}
    for p in panels:
        for name, (n, x) in p.people.items():
            people.setdefault(name.upper(), []).append((p.protocol, n, x))
    return list(people.values())


@sentence("(panels|caption)$", r"The {n} panels together, counting people, because some names stand in more than one key: {n} (?:person|people), equal names taken for one, (was|were) right in {n} of {n} sets?, and guessing alone gives so many or more in {n} % of cases"
          r"(?:; their mean ability in this task lies between {n} % and {n} % \(95 % confidence\)|; the distance between the beers is put at a d-prime between {n} and {n} \(95 % confidence\))?\.")
def people_together(t, panel, many, people, were, right, sets, chance, low, high, d_low, d_high):
    panels = combinable(t)
    persons = by_person(panels)
    groups = {}
    for one in persons:
        key = tuple(sorted((n, exact.CHANCE[p]) for p, n, _ in one))
        groups[key] = groups.get(key, 0) + 1
    x = sum(p.x for p in panels)
    claims = [all(not decided(p).alarm for p in t.counted), returning(panels), plain(many) == len(panels), plain(people) == len(persons), (were == "was") == (len(persons) == 1), plain(right) == x,
              plain(sets) == sum(p.n for p in panels), percent(chance, exact.tail(groups, x, 0, True, up=True))]
    if low:
        at = max(x, exact.by_chance(groups))
        claims += [len({p.protocol for p in panels}) == 1, len(persons) >= 6 or "too few people for a limit",
                   percent(low, min(exact.ability_floor(groups, x, 0.025, alike) for alike in (True, False)), 1e-5), percent(high, max(exact.ability_limit(groups, at, 0.025, alike) for alike in (True, False)), 1e-5)]
    if d_low:
        a, b = over_people(persons)
        claims += [len(persons) >= 8, number(d_low, a, rough(panels)), number(d_high, b, rough(panels))]
    return is_true(*claims)


def over_people(persons):
    """t over people of what each got above expectation, joined with the exact interval of independent sets."""
    counts = {}
    for one in persons:
        for p, n, x in one:
            m, y = counts.get(p, (0, 0))
            counts[p] = (m + n, y + x)
    _, low, high, *_ = common([(p, n, x) for p, (n, x) in counts.items()])
    bound, k = student.ppf(0.975, len(persons) - 1), len(persons)

    def surplus(d):
        share = {p: exact.right_share(p, d) for p in counts}
        return np.array([sum(x - n * share[p] for p, n, x in one) for one in persons])

    def t_of(d):
        e = surplus(d)
        error = math.sqrt(((e - e.mean()) ** 2).sum() / (k * (k - 1)))
        return e.mean() / error if error > 1e-12 else math.copysign(1e300, e.mean()) if abs(e.mean()) > 1e-12 else 0.0

    best = 0.0 if surplus(0).sum() <= 0 else FAR if surplus(FAR).sum() >= 0 else brentq(lambda d: surplus(d).sum(), 0, FAR)
    t_low = 0.0 if t_of(0) <= bound else best if t_of(best) >= bound else brentq(lambda d: t_of(d) - bound, 0, best)
    t_high = math.inf if t_of(FAR) >= -bound else best if t_of(best) <= -bound else brentq(lambda d: t_of(d) + bound, best, FAR)
    return min(low, t_low), max(high, t_high)


@sentence("limits, panels", r"The verdict rests on panel {w}, (?:(the first that trial\.json names)|because what trial\.json names before it is not counted: ([\w.]*\w(?:(?:, | and )[\w.]*\w)*))\."
          r"(?: (The others are read beside it and together with it|The others stand beside it and are not combined with it: the trial names no method for that, or they do not allow one"
          r"|Some of the others are read together with it; the rest stand beside it, because they cannot be combined|Some of the others are read together, but not with this one, which cannot be combined with them)\. "
          r"Of {n} panels, each with its own chance of a false difference, one at least shows a false one in up to {n} % of such trials\.)?")
def rests_on(t, panel, name, first, passed, others, many, chance):
    before = []
    for one in t.panels:
        if one.counted:
            break
        before.append(one.name)
    claims = [t.counted[0].name == name, bool(first) == (not before), passed is None or re.split(r", | and ", passed) == before, bool(others) == (len(t.counted) > 1)]
    if others:
        alphas = [wald_rates(p.protocol, p.plan["tasters"], margin_of(p)[0], p.alpha, p.beta)[0][0] if p.sequential else p.alpha for p in t.counted]
        combined = combinable(t) if len(combinable(t)) > 1 and not any(decided(p).alarm for p in t.counted) else []
        with_it, all_of_them = t.counted[0] in combined, len(combined) == len(t.counted)
        told = ("all" if others.startswith("The others are read") else "none" if others.startswith("The others stand") else "some" if others.startswith("Some") else "without it")
        truth = "none" if not combined else "all" if all_of_them else "some" if with_it else "without it"
        claims += [plain(many) == len(t.counted), percent(chance, min(1, sum(alphas))), told == truth or f"combined are {[p.name for p in combined]} of {[p.name for p in t.counted]}"]
    return is_true(*claims)


@sentence("limits, panels", r"No panel has been counted\.")
def none_counted(t, panel):
    return not t.counted


@sentence("limits, panels", r"The panel speaks for people like those who sat at it, with beer served as it was served\.|Each panel speaks for people like those who sat at it, with beer served as it was served\.")
def people_like_these(t, panel):
    return len(t.counted) > 0


@sentence("limits, trial", r"The data are invented to show how the work is done; nothing here is a finding about beer\.")
def invented(t, panel):
    return t.json.get("invented") is True


@sentence("limits, trial", r"One batch of each half was brewed\. Two batches of one recipe also differ a little, so a difference cannot be put down to the variable alone until the trial is repeated\.")
def one_batch(t, panel):
    return True

"""What is printed of one panel: count, alarm, difference, margin, likelihood, prior, sequential course, repeats, size."""
import functools
import math

import numpy as np
import exact
from decide import Wald, decide, margin_of
from exact import DIRECTED, TWO_SIDED
from reading import is_true, number, percent, plain, rounds, sentence

PANEL = r"(panel .+|caption)$"


def decided(panel):
    """What the panel's count says; a sequential one up to where it stopped."""
    if not hasattr(panel, "_decision"):
        if panel.sequential:
            panel.wald = Wald(panel)
            panel.course, n, x = panel.wald.follow(panel.in_order)
            panel._decision = decide(panel, [(1, 1)] * x + [(1, 0)] * (n - x))
            r = panel._decision
            if not r.alarm:
                r.answer = {"different": "shown", "similar": "ruled out"}.get(panel.course, "open")
        else:
            panel._decision = decide(panel)
        panel._decision.people = len(panel.people) if not panel.sequential else panel._decision.n
    return panel._decision


def count_of(panel):
    r = decided(panel)
    return r.people, r.n, r.x


def shares(share_text, panel):
    """A share that stands for the margin."""
    return percent(share_text, margin_of(panel)[0])


def not_alarm(panel):
    return not decided(panel).alarm or "the count raises the alarm, and yet something else is said of the panel"


def level(text, panel, standing):
    return is_true(number(text, 100 * panel.alpha), panel.standing == standing or f"the plan is dated so that its standing is '{panel.standing}'")


# ---- the count

TASTED = r"(?:{n} blind sets? (was|were) tasted (one after another )?by the ([\w -]+?) protocol, each by another person|{n} (?:person|people) tasted {n} blind sets? by the ([\w -]+?) protocol)"


def tasted(panel, one, verb, order, protocol, people, sets, other):
    who, n, _ = count_of(panel)
    if one:
        return is_true(plain(one) == n, who == n or "somebody tasted more than one set", (verb == "was") == (n == 1), bool(order) == panel.sequential, protocol == panel.protocol)
    return is_true(plain(people) == who, plain(sets) == n, n > who or "nobody tasted more than one set", other == panel.protocol)


def guessing(panel, text):
    return number(text, decided(panel).n * panel.chance)


@sentence(PANEL, TASTED + r", and {n} answers? (was|were) right; guessing gives {n} on average\.")
def answers_right(t, panel, one, verb, order, protocol, people, sets, other, right, were, by_chance):
    return is_true(panel.protocol not in DIRECTED and panel.protocol != TWO_SIDED, tasted(panel, one, verb, order, protocol, people, sets, other),
                   plain(right) == count_of(panel)[2], (were == "was") == (plain(right) == 1), guessing(panel, by_chance))


@sentence(PANEL, TASTED + r"; asked for the more (\w+) beer, tasters named half ([AB]), the expected one, in {n}; guessing gives {n} on average\.")
def expected_named(t, panel, one, verb, order, protocol, people, sets, other, attribute, half, right, by_chance):
    return is_true(panel.protocol in DIRECTED, tasted(panel, one, verb, order, protocol, people, sets, other), attribute == panel.attribute,
                   half == panel.expected, plain(right) == count_of(panel)[2], guessing(panel, by_chance))


def split(panel, a, b):
    _, n, x = count_of(panel)
    return (plain(a), plain(b)) == ((x, n - x) if panel.expected == "A" else (n - x, x)) or f"{x} of {n} for half {panel.expected}"


@sentence(PANEL, TASTED + r"; asked for the more (\w+) beer, tasters named half A in {n} and half B in {n}; guessing gives {n} on average for either\.")
def either_named(t, panel, one, verb, order, protocol, people, sets, other, attribute, a, b, by_chance):
    return is_true(panel.protocol == TWO_SIDED, not panel.asks_preference, tasted(panel, one, verb, order, protocol, people, sets, other),
                   attribute == panel.attribute, split(panel, a, b), guessing(panel, by_chance))


@sentence(PANEL, TASTED + r"; asked which half they like better, tasters chose half A in {n} and half B in {n}\.")
def either_liked(t, panel, one, verb, order, protocol, people, sets, other, a, b):
    return is_true(panel.asks_preference, tasted(panel, one, verb, order, protocol, people, sets, other), split(panel, a, b))


@sentence(PANEL, r"By the (A-not-A|same-different) protocol tasters called {n} of {n} (?:cups?|pairs?) of (half B not A|unlike beers different), and {n} of {n} (?:cups?|pairs?) of (half A|one beer)\.")
def two_kinds(t, panel, protocol, hits, unlike, what, false, alike, other):
    return is_true(protocol == panel.protocol, tuple(map(plain, (hits, unlike, false, alike))) == panel.table or f"the table is {panel.table}",
                   (what, other) == (("half B not A", "half A") if protocol == "A-not-A" else ("unlike beers different", "one beer")))


# ---- the alarm

@sentence(PANEL, r"Guessing gives so few right answers, or fewer, in {n} % of such panels, and one as far out, either way, in (?:at most )?{n} %\.")
def alarm_chance(t, panel, low, either):
    r = decided(panel)
    return is_true(panel.chance is not None, r.alarm or f"{r.x} of {r.n} raises no alarm", percent(low, r.low_tail), percent(either, min(1, 2 * r.low_tail)))


@sentence(PANEL, r"If both kinds of set were answered alike, so few of these answers, or fewer, would fall on the right kind in {n} % of such panels, and counts as far apart, either way, in (?:at most )?{n} %\.")
def alarm_chance_of_kinds(t, panel, low, either):
    r = decided(panel)
    return is_true(panel.chance is None, r.alarm or "no alarm", percent(low, r.low_tail), percent(either, min(1, 2 * r.low_tail)))


@sentence(PANEL, r"(The direction, the key, the codes and the question as it was read must be looked at: the halves may stand the other way round|The key, the codes, the blinding and the question as it was read must be looked at)\. "
          r"Nothing else is concluded from this panel, and nothing is ruled out\.")
def look_for_the_fault(t, panel, what):
    others = [text for part, text in t.said if part == f"panel {panel.name}"]
    return is_true(decided(panel).alarm, what.startswith("The direction") == (panel.protocol in DIRECTED), len(others) == 2 or "something else is concluded of the panel")


# ---- the difference

LUCK = {
    "By guessing alone so many right answers, or more, come up": "right", "If each half is as likely to be chosen, a split at least as uneven, either way, comes up": "preference",
    "By guessing alone a split at least as uneven, either way, comes up": "either", "If tasters leaned to either half equally often, a leaning at least as strong, either way, would come up": "leaning",
    "If both kinds of set were answered alike, so many of these answers, or more, would fall on the right kind": "kinds",
}
LEVEL = r"(?:the {n} % declared beforehand|{n} %, which was (declared after serving)|{n} %, which (nobody declared) beforehand)"


def stands(panel, groups):
    before, after, _, nobody, _ = groups
    return level(before, panel, "before") if before else level(after, panel, "after") if after else level(nobody, panel, "nobody")


@sentence(PANEL, r"Whatever so small a panel had answered, it could not have shown a difference at " + LEVEL + r"\.")
def could_not_show(t, panel, *standing):
    r = decided(panel)
    return is_true(not_alarm(panel), stands(panel, standing), not r.could_show or f"{r.critical} right would have shown one", not r.shown)


@sentence(PANEL, "(" + "|".join(LUCK) + r") in {n} % of such panels, (no more|more) than " + LEVEL + r": (a difference is shown|no difference is shown, which does not mean that there is none|a majority is shown|no majority is shown)\.")
def difference(t, panel, luck, chance, side, *rest):
    *standing, outcome = rest
    r, kind = decided(panel), LUCK[luck]
    expected = "kinds" if panel.chance is None else "leaning" if r.leaning else "preference" if panel.asks_preference else "either" if panel.protocol == TWO_SIDED else "right"
    shown = outcome in ("a difference is shown", "a majority is shown")
    return is_true(not_alarm(panel), not panel.sequential, percent(chance, r.p), stands(panel, standing), (side == "no more") == (r.p <= panel.alpha * (1 + 1e-12)),
                   shown == r.shown or f"p is {r.p:.6g} at {panel.alpha}", r.could_show, kind == expected or kind == "leaning" and expected == "leaning" or f"the question is {expected}",
                   ("majority" in outcome) == panel.asks_preference)


@sentence(PANEL, r"Tasters who cannot tell, and two camps who can, both give such a count\.")
def no_majority(t, panel):
    return is_true(panel.asks_preference, not decided(panel).shown)


@sentence(PANEL, r"{n} (right|for one half) would have been needed\.")
def needed(t, panel, count, what):
    r = decided(panel)
    return is_true(not r.shown, r.critical == plain(count) or f"{r.critical} would do", (what == "for one half") == (panel.protocol == TWO_SIDED))


# ---- the margin

MARGIN = r"{n} % or more of such tasters can tell the beers apart in this task"
ALLOWED = r"(?:; the count allows up to {n} %( who find them as expected and up to {n} % who find them the other way round)?)? ?\({n} % confidence\)"


def allowed(panel, up, both, other, confidence):
    r = decided(panel)
    if up is None:
        return number(confidence, 100 * (1 - panel.beta))
    return is_true(r.limit is not None or "no limit may be stated", percent(up, r.limit), number(confidence, 100 * (1 - panel.beta)),
                   bool(both) == ((r.limit_reversed or 0) > 0), percent(other, r.limit_reversed) if other else True)


def asks_margin(panel):
    return is_true(not_alarm(panel), panel.chance is not None, not panel.sequential, not panel.asks_preference)


@sentence(PANEL, "That " + MARGIN + " is ruled out" + ALLOWED + r"\.")
def margin_ruled_out(t, panel, share, up, both, other, confidence):
    r = decided(panel)
    return is_true(asks_margin(panel), shares(share, panel), r.ruled_out or f"{r.x} of {r.n} by {r.people} does not rule it out", allowed(panel, up, both, other, confidence))


@sentence(PANEL, "It is not ruled out that " + MARGIN + ALLOWED + r"\.")
def margin_not_ruled_out(t, panel, share, up, both, other, confidence):
    r = decided(panel)
    return is_true(asks_margin(panel), shares(share, panel), not r.ruled_out or f"{r.x} of {r.n} by {r.people} rules it out", allowed(panel, up, both, other, confidence),
                   up is None or max(r.limit, r.limit_reversed or 0) >= r.share - 1e-12 or "the limit lies below the margin")


@sentence(PANEL, r"No count of {n} sets? rules it out\.")
def too_few_sets(t, panel, sets):
    r = decided(panel)
    return is_true(plain(sets) == r.n, r.why == "sets" or f"what stood in the way is: {r.why}", exact.rules_out(panel.protocol, r.n, r.share, r.reversed, panel.beta) is None)


@sentence(PANEL, r"No count of {n} (?:person|people) with {n} sets? rules it out(?:: if it is so, in {n} % of such panels none of them can tell)?\.")
def too_few_people(t, panel, people, sets, nobody):
    r = decided(panel)
    return is_true(plain(people) == r.people, plain(sets) == r.n, r.why == "people" or f"what stood in the way is: {r.why}", percent(nobody, (1 - r.share) ** r.people) if nobody else True)


@sentence(PANEL, r"The count lies below what guessing gives, so the halves may stand the other way round\.")
def other_way_round(t, panel):
    r = decided(panel)
    return is_true(panel.protocol in DIRECTED, r.x < r.n * panel.chance, r.why == "other way" or f"what stood in the way is: {r.why}")


@sentence(PANEL, r"Too many tasters always chose the same half, some perhaps the one and some the other\.")
def too_steady(t, panel):
    r = decided(panel)
    return is_true(panel.protocol == TWO_SIDED, r.why == "steady" or f"what stood in the way is: {r.why}")


@sentence(PANEL, r"If all tasters are alike, {n} % is a d-prime of {n}(, as which the margin is stated)?(?:,? and the limit one of {n})?\.")
def as_d_prime(t, panel, share, d, stated, limit):
    r = decided(panel)
    rough = 0.003 if panel.protocol == "two-out-of-five" else 0
    g = panel.chance
    return is_true(asks_margin(panel), shares(share, panel), number(d, r.d, rough), bool(stated) == ("margin as d-prime" in panel.plan),
                   number(limit, exact.d_prime(panel.protocol, r.limit + (1 - r.limit) * g), rough) if limit else True)


# ---- what the count weighs

@sentence(PANEL, r"This count is {n} times as likely if (?:(everybody guesses) as if )?{n} % of such tasters can tell in this task( and find the halves as expected)?( as if everybody guesses)?\.")
def likelihood(t, panel, times, guess_first, share, directed, able_first):
    r, g = decided(panel), panel.chance
    p = r.share + (1 - r.share) * g
    log = lambda x: x * math.log(p / g) + (r.n - x) * math.log((1 - p) / (1 - g))
    ratio = (math.exp(log(r.x)) + math.exp(log(r.n - r.x))) / 2 if panel.protocol == TWO_SIDED else math.exp(log(r.x))
    ratio = 1 / ratio if guess_first else ratio
    return is_true(asks_margin(panel), not r.repeats, bool(guess_first) != bool(able_first), shares(share, panel), bool(directed) == (panel.protocol in DIRECTED),
                   ratio >= 1 - 1e-9 or f"the ratio is {ratio:.4g}", number(times, ratio, 2e-3 * ratio if panel.protocol == "two-out-of-five" and "margin as d-prime" in panel.plan else 0))


@sentence(PANEL, r"To someone with the prior that the plan states, a beta distribution with {n} and {n}, more than {n} % of such tasters can tell in this task with a probability of {n} %\.")
def prior(t, panel, a, b, share, chance):
    r = decided(panel)
    stated = panel.plan.get("prior", {})
    return is_true(asks_margin(panel), not r.repeats, (plain(a), plain(b)) == (stated.get("a"), stated.get("b")), shares(share, panel),
                   percent(chance, above_margin(panel.protocol, r.n, r.x, stated["a"], stated["b"], r.share), 1e-6))


NODES, WEIGHTS = np.polynomial.legendre.leggauss(400)


def above_margin(protocol, n, x, a, b, margin):
    """The posterior chance of more than the margin: integrals over the angle whose squared sine is the share, where both ends of the prior are tame."""
    g = exact.CHANCE[protocol]
    middle = math.asin(math.sqrt(margin))

    def log_weights(low, high):
        angle = low + (high - low) * (NODES + 1) / 2
        m = np.sin(angle) ** 2
        p = m + (1 - m) * g
        log = x * np.log(p) + (n - x) * np.log1p(-p)
        if protocol == TWO_SIDED:
            log = np.logaddexp(log, (n - x) * np.log(p) + x * np.log1p(-p))
        return log + (2 * a - 1) * np.log(np.sin(angle)) + (2 * b - 1) * np.log(np.cos(angle)) + np.log(WEIGHTS * (high - low) / 2)
    below, above = log_weights(0, middle), log_weights(middle, math.pi / 2)
    top = max(below.max(), above.max())
    below, above = np.exp(below - top).sum(), np.exp(above - top).sum()
    return float(above / (below + above))


@functools.lru_cache(1 << 16)
def leaves_open(protocol, n, alpha, share, reversed_chance, beta):
    """Whether some count of n tasters, one set each, neither answers a question nor raises the alarm."""
    x, g = np.arange(n + 1), exact.CHANCE[protocol]
    needed, out = exact.critical(protocol, n, alpha), exact.rules_out(protocol, n, share, reversed_chance, beta)
    count = np.maximum(x, n - x) if protocol == TWO_SIDED else x
    answered = np.zeros(n + 1, bool) if needed is None else count >= needed
    if out:
        answered |= (x >= out[0]) & (x <= out[1])
    if protocol != TWO_SIDED:
        answered |= exact.bdtr(x, n, g) <= 0.01 * exact.TIE
    return not answered.all()


def settles(panel, tasters):
    """Whether from so many tasters on every count answers, and just below not."""
    share, other, _ = margin_of(panel)
    key = (panel.alpha, share, other, panel.beta)
    open_at = [n for n in range(tasters, tasters + 25) if leaves_open(panel.protocol, n, *key)]
    return is_true(not open_at or f"{open_at[0]} tasters can leave both questions open", tasters == 1 or leaves_open(panel.protocol, tasters - 1, *key) or f"{tasters - 1} tasters would do")


@sentence(PANEL, r"From {n} tasters? on, one set each, every count would have answered one of the two questions of panel {w}(, or been so low that something must be wrong)?\.")
def size_that_settles(t, panel, tasters, name, low):
    return is_true(asks_margin(panel), name == panel.name, decided(panel).answer == "open", bool(low) == (panel.protocol != TWO_SIDED), settles(panel, int(plain(tasters))))


@sentence(PANEL, r"Repeats by one taster are not new tasters: what is said of other people counts {n} (?:person|people) and not {n} sets?\.")
def repeats(t, panel, people, sets):
    who, n, _ = count_of(panel)
    return is_true(not_alarm(panel), plain(people) == who, plain(sets) == n, n > who)


# ---- sequential panels

@sentence(PANEL, r"The count reached the upper of the two lines of the plan, and the panel stopped: a difference is shown\.")
def upper_line(t, panel):
    return is_true(not_alarm(panel), panel.sequential, decided(panel) is not None, panel.course == "different")


@sentence(PANEL, r"The count reached the lower of the two lines of the plan, and the panel stopped: that " + MARGIN + r"(, in the direction expected,)? is ruled out\.")
def lower_line(t, panel, share, directed):
    return is_true(not_alarm(panel), panel.sequential, panel.course == "similar", shares(share, panel), bool(directed) == (panel.protocol in DIRECTED))


@sentence(PANEL, r"After the last taster the count lay between the two lines of the plan: nothing is decided, which does not mean that there is no difference\.")
def between_at_the_end(t, panel):
    return is_true(not_alarm(panel), panel.sequential, panel.course == "undecided")


@sentence(PANEL, r"The count lies between the two lines of the plan: the panel is not finished, and the next taster is to be served\.")
def between_lines(t, panel):
    return is_true(not_alarm(panel), panel.sequential, panel.course == "pour on")


@functools.lru_cache(1 << 12)
def wald_rates(protocol, tasters, share, alpha, beta):
    class Plan:
        plan, chance = {"tasters": tasters, "margin": share}, exact.CHANCE[protocol]
    Plan.protocol, Plan.alpha, Plan.beta = protocol, alpha, beta
    wald = Wald(Plan)
    return wald.rates(wald.g), wald.rates(wald.p1)


@sentence(PANEL, r"By this plan a panel of guessers shows a false difference in {n} % of cases, and one in which {n} % can tell is let pass in {n} %; on average they take {n} and {n} tasters\.")
def true_rates(t, panel, false, share, passed, none, some):
    (shown, _, few), (_, out, many) = wald_rates(panel.protocol, panel.plan["tasters"], margin_of(panel)[0], panel.alpha, panel.beta)
    return is_true(panel.sequential, percent(false, shown), shares(share, panel), percent(passed, out), number(none, few), number(some, many))

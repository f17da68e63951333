"""Every check value once more, with SciPy, from the formulas of the methods: > methods_scipy.csv

Reads what is asked from check-values.tsv, and not what is expected.
"""
import itertools
import json
import math
from fractions import Fraction

import numpy as np
import scipy
from scipy import integrate, optimize, stats
from scipy.stats import beta as beta_dist, binom, norm, t as student


def chance(text):
    return float(Fraction(text))


def reaches(tail, limit):
    return tail <= limit * (1 + 1e-12)


def critical(n, g, alpha):
    """Smallest count whose upper tail is at most alpha; None where none is."""
    return next((c for c in range(n + 1) if reaches(binom.sf(c - 1, n, g), alpha)), None)


def largest(n, p, beta):
    """Largest count whose lower tail is at most beta; -1 where none is."""
    return max((x for x in range(n + 1) if reaches(binom.cdf(x, n, p), beta)), default=-1)


def upper_limit(x, n, tail):
    return 1.0 if x == n else beta_dist.isf(tail, x + 1, n - x)


def lower_limit(x, n, tail):
    return 0.0 if x == 0 else beta_dist.ppf(tail, x, n - x + 1)


def at(g, share):
    return g + (1 - g) * share


# 1. Below chance, and both directions

def low_tail(n, right, g):
    return binom.cdf(right, n, chance(g))


def alarm_count(n, g, level):
    return largest(n, chance(g), level)


def directed_range(n, g, margin, beta):
    g = chance(g)
    high = largest(n, at(g, margin), beta)
    low = critical(n, g * (1 - margin), beta)
    return [low, high] if low is not None and low <= high and high >= n * g else None


def directed_tails(n, right, g, margin, beta):
    span = directed_range(n, g, margin, beta)
    g = chance(g)
    return {"p_upper": binom.cdf(right, n, at(g, margin)), "p_lower": binom.sf(right - 1, n, g * (1 - margin)),
            "ruled_out": span is not None and span[0] <= right <= span[1]}


def limit_constrained(n, right, g, beta):
    g = chance(g)
    return (upper_limit(max(right, math.ceil(n * g - 1e-9)), n, beta) - g) / (1 - g)


GUESS = {"triangle": 1 / 3, "tetrad": 1 / 3, "3-afc": 1 / 3, "duo-trio": 1 / 2, "2-afc": 1 / 2}


def judge(n, right, g, alpha, margin, beta, directed, alarm=0.01):
    if reaches(binom.cdf(right, n, g), alarm):
        return "alarm"
    c = critical(n, g, alpha)
    shown = c is not None and right >= c
    high = largest(n, at(g, margin), beta)
    low = critical(n, g * (1 - margin), beta) if directed else 0
    out = high >= n * g - 1e-9 and low is not None and low <= right <= high
    return {(True, False): "shown", (True, True): "shown, within margin", (False, True): "ruled out", (False, False): "inconclusive"}[shown, out]


def verdict(protocol, n, right, alpha, margin, beta, alarm):
    return judge(n, right, GUESS[protocol], alpha, margin, beta, "afc" in protocol, alarm)


# 2. Preference

def preference_range(n, m, beta):
    high = largest(n, 0.5 + m, beta)
    return [n - high, high] if n - high <= high else None


def same_twice(n, same):
    return binom.sf(same - 1, n, 0.5)


# 3. Few people, many sets

def people_needed(m, beta):
    return next(n for n in itertools.count(1) if (1 - m) ** n <= beta)


def power_cap(n, m, beta):
    return min(1.0, beta / (1 - m) ** n)


def people_of(groups):
    return [[(r, chance(g)) for r, g in group["sets"]] for group in groups for _ in range(group["people"])]


def guesses(person):
    pmf = np.ones(1)
    for r, g in person:
        pmf = np.convolve(pmf, binom.pmf(np.arange(r + 1), r, g))
    return pmf


def all_or_nothing(people, share):
    pmf = np.ones(1)
    for person in people:
        own = (1 - share) * guesses(person)
        own[-1] += share
        pmf = np.convolve(pmf, own)
    return pmf


def alike(people, share):
    pmf = np.ones(1)
    for person in people:
        pmf = np.convolve(pmf, guesses([(r, at(g, share)) for r, g in person]))
    return pmf


def below(pmf, x):
    return pmf[:x + 1].sum()


def above(pmf, x):
    return pmf[x:].sum()


def all_or_nothing_tail(groups, right, share):
    return below(all_or_nothing(people_of(groups), share), right)


def few_people_largest(groups, margin, beta):
    people = people_of(groups)
    mean = sum(r * g for person in people for r, g in person)
    mixed, even = all_or_nothing(people, margin), alike(people, margin)
    counts = [s for s in range(len(mixed)) if reaches(below(mixed, s), beta) and reaches(below(even, s), beta)]
    return counts[-1] if counts and counts[-1] >= mean - 1e-9 else None


def few_people_limit(groups, right, beta):
    people = people_of(groups)
    s = max(right, math.ceil(sum(r * g for person in people for r, g in person) - 1e-9))
    return max(optimize.brentq(lambda m: below(spread(people, m), s) - beta, 0, 1, xtol=1e-14) for spread in (all_or_nothing, alike))


# 4. Preference inside sets of three cups

def set_choice(aab, abb, for_b):
    pmf = np.convolve(binom.pmf(np.arange(aab + 1), aab, 1 / 3), binom.pmf(np.arange(abb + 1), abb, 2 / 3))
    upper, lower = above(pmf, for_b), below(pmf, for_b)
    return {"upper": upper, "lower": lower, "two_sided": min(1.0, 2 * min(upper, lower))}


# 5. d-prime

def quad(f, a, b):
    return integrate.quad(f, a, b, epsabs=1e-13, epsrel=1e-12, limit=200)[0]


def correct(protocol, d):
    """The share right, from how the task is done: integrals over what one cup tastes like."""
    if protocol == "2-afc":
        return norm.cdf(d / math.sqrt(2))
    if protocol == "3-afc":
        return quad(lambda z: norm.pdf(z - d) * norm.cdf(z) ** 2, -9, 9 + d)
    if protocol == "duo-trio":
        return norm.cdf(d / math.sqrt(2)) * norm.cdf(d / math.sqrt(6)) + norm.sf(d / math.sqrt(2)) * norm.sf(d / math.sqrt(6))
    if protocol == "triangle":  # the noncentral F form: the odd cup is farthest from the mean of the two alike
        return stats.ncf.sf(3, 1, 1, 2 * d * d / 3) if d > 1e-6 else 1 / 3
    if protocol == "tetrad":  # all of one beer on one side of all of the other, either way
        return quad(lambda z: 2 * norm.pdf(z) * norm.cdf(z) * norm.sf(z - d) ** 2, -9, 9) + \
            quad(lambda z: 2 * norm.pdf(z) * norm.sf(z) * norm.cdf(z - d) ** 2, -9, 9)
    raise ValueError(protocol)


def discriminators_at(protocol, d):
    g = GUESS[protocol]
    return (correct(protocol, d) - g) / (1 - g)


def dprime(protocol, p):
    return optimize.brentq(lambda d: correct(protocol, d) - p, 1e-9, 12, xtol=1e-12)


def dprime_at(protocol, share):
    return dprime(protocol, at(GUESS[protocol], share))


def largest_at_dprime(protocol, n, d, beta):
    return largest(n, correct(protocol, d), beta)


def dprime_limit(protocol, n, right, beta):
    g = GUESS[protocol]
    return dprime(protocol, upper_limit(max(right, math.ceil(n * g - 1e-9)), n, beta))


# 6. The same people in several panels

def people_interval(groups, right, level):
    people, tail = people_of(groups), (1 - level) / 2
    s = max(right, math.ceil(sum(r * g for person in people for r, g in person) - 1e-9))

    def ends(spread):
        low = 0.0 if above(spread(people, 0), right) >= tail else optimize.brentq(lambda m: above(spread(people, m), right) - tail, 0, 1, xtol=1e-14)
        return low, optimize.brentq(lambda m: below(spread(people, m), s) - tail, 0, 1, xtol=1e-14)

    (low, high), (low_alike, high_alike) = ends(all_or_nothing), ends(alike)
    return {"low": min(low, low_alike), "high": max(high, high_alike), "low_alike": low_alike, "high_alike": high_alike}


def person_t(people, level):
    protocols = sorted({name for person in people for name in person})
    total = sum(x for person in people for x, _ in person.values())

    def surplus(d):
        share = {name: correct(name, d) for name in protocols}
        return np.array([sum(x - n * share[name] for name, (x, n) in person.items()) for person in people])

    def t(d):
        e = surplus(d)
        return e.mean() / (e.std(ddof=1) / math.sqrt(len(e)))

    def sums(d):
        pmf = np.ones(1)
        for name in protocols:
            n = sum(person[name][1] for person in people if name in person)
            pmf = np.convolve(pmf, binom.pmf(np.arange(n + 1), n, correct(name, d)))
        return pmf

    bound, tail = student.ppf((1 + level) / 2, len(people) - 1), (1 - level) / 2
    estimate = optimize.brentq(lambda d: surplus(d).sum(), 0, 10, xtol=1e-12)
    t_low = 0.0 if t(0) <= bound else optimize.brentq(lambda d: t(d) - bound, 0, estimate, xtol=1e-12)
    t_high = optimize.brentq(lambda d: t(d) + bound, estimate, 10, xtol=1e-12)
    exact_low = 0.0 if above(sums(0), total) >= tail else optimize.brentq(lambda d: above(sums(d), total) - tail, 0, estimate, xtol=1e-12)
    exact_high = optimize.brentq(lambda d: below(sums(d), total) - tail, estimate, 10, xtol=1e-12)
    return {"estimate": estimate, "t_low": t_low, "t_high": t_high, "exact_low": exact_low, "exact_high": exact_high,
            "low": min(t_low, exact_low), "high": max(t_high, exact_high), "p_guessing": above(sums(0), total)}


# 7. Lab values of several runs

def critical_difference(s_r, n1, n2, s_run, separate):
    return norm.ppf(0.975) * math.sqrt((2 * s_run ** 2 if separate else 0) + s_r ** 2 * (1 / n1 + 1 / n2))


def false_difference(ratio, n):
    return 2 * norm.sf(norm.ppf(0.975) * math.sqrt((2 / n) / (2 * ratio ** 2 + 2 / n)))


def components(runs):
    runs = np.array(runs)
    k, n = runs.shape
    within = runs.var(axis=1, ddof=1).mean()
    run = max(0.0, runs.mean(axis=1).var(ddof=1) - within / n)
    return {"s_r": math.sqrt(within), "s_run": math.sqrt(run), "s_between": math.sqrt(within + run), "df_r": k * (n - 1), "df_run": k - 1}


def run_means_cd(run_means, level):
    return student.ppf((1 + level) / 2, len(run_means) - 1) * math.sqrt(2) * np.std(run_means, ddof=1)


def paired_runs(a, b):
    d = np.subtract(a, b)
    se = stats.sem(d)
    low, high = student.interval(0.95, len(d) - 1, d.mean(), se)
    return {"mean": d.mean(), "se": se, "low": low, "high": high, "p": stats.ttest_rel(a, b).pvalue}


# 8. Several split batches

def brew_t(y):
    k, m, s = len(y), np.mean(y), np.std(y, ddof=1)
    low, high = student.interval(0.95, k - 1, m, s / math.sqrt(k))
    next_low, next_high = student.interval(0.95, k - 1, m, s * math.sqrt(1 + 1 / k))
    return {"mean": m, "sd": s, "low": low, "high": high, "next_low": next_low, "next_high": next_high, "p": stats.ttest_1samp(y, 0).pvalue}


def hartung_knapp(y, v):
    y, v, k = np.array(y), np.array(v), len(y)

    def fit(tau2):
        w = 1 / (v + tau2)
        mu = (w * y).sum() / w.sum()
        return w, mu, (w * (y - mu) ** 2).sum()

    tau2 = 0.0 if fit(0)[2] <= k - 1 else optimize.brentq(lambda x: fit(x)[2] - (k - 1), 0, 100, xtol=1e-13)
    w, mu, q = fit(tau2)
    se = math.sqrt(max(1, q / (k - 1)) / w.sum())
    bound = student.ppf(0.975, k - 1)
    reach = bound * math.sqrt(tau2 + se ** 2)
    return {"tau2": tau2, "mean": mu, "se": se, "low": mu - bound * se, "high": mu + bound * se,
            "p": 2 * student.sf(abs(mu) / se, k - 1), "next_low": mu - reach, "next_high": mu + reach}


def sign(brews, same):
    return stats.binomtest(same, brews, 0.5).pvalue


def sign_flip(y):
    sums = [abs(np.dot(signs, y)) for signs in itertools.product((1, -1), repeat=len(y))]
    return float(np.mean([s >= abs(sum(y)) - 1e-9 for s in sums]))


def at_least_u_brews(p, u):
    return min(1.0, (len(p) - u + 1) * sorted(p)[u - 1])


def share_of_brews(brews, found, level):
    return {"low": lower_limit(found, brews, 1 - level), "high": upper_limit(found, brews, 1 - level)}


# 9. Known-difference control

def control_power(protocol, n, d, alpha):
    c = critical(n, GUESS[protocol], alpha)
    return {"critical": c, "power": binom.sf(c - 1, n, correct(protocol, d))}


def control_tasters(protocol, d, alpha, power):
    g, p = GUESS[protocol], correct(protocol, d)
    good = []
    for n in range(1, 301):
        c = critical(n, g, alpha)
        good.append(c is not None and binom.sf(c - 1, n, p) >= power)
    return {"first": good.index(True) + 1, "always": len(good) - good[::-1].index(False) + 1}


def against_control(only_control, only_test):
    return stats.binomtest(only_control, only_control + only_test, 0.5, alternative="greater").pvalue


# 10. Equivalence of lab means

def equivalence(d, se, bound, tail, margin):
    return {"low": d - bound * se, "high": d + bound * se, "p": max(tail((margin - d) / se), tail((margin + d) / se)),
            "equivalent": bool(abs(d) + bound * se < margin)}


def equivalence_known(d, n1, n2, s_r, margin, alpha, s_run, separate):
    se = math.sqrt((2 * s_run ** 2 if separate else 0) + s_r ** 2 * (1 / n1 + 1 / n2))
    return {"se": se, **equivalence(d, se, norm.ppf(1 - alpha), norm.sf, margin)}


def equivalence_estimated(a, b, margin, alpha, others):
    groups = [a, b, *others]
    df = sum(len(x) - 1 for x in groups)
    s_r = math.sqrt(sum((len(x) - 1) * np.var(x, ddof=1) for x in groups if len(x) > 1) / df)
    d, se = np.mean(a) - np.mean(b), s_r * math.sqrt(1 / len(a) + 1 / len(b))
    return {"d": d, "s_r": s_r, "df": df, **equivalence(d, se, student.ppf(1 - alpha, df), lambda x: student.sf(x, df), margin)}


def smallest_margin(n1, n2, s_r, df, alpha):
    return (norm.ppf(1 - alpha) if df is None else student.ppf(1 - alpha, df)) * s_r * math.sqrt(1 / n1 + 1 / n2)


def equivalence_power(n1, n2, s_r, margin, d, alpha):
    se = s_r * math.sqrt(1 / n1 + 1 / n2)
    room = margin - norm.ppf(1 - alpha) * se
    return norm.cdf(room, d, se) - norm.cdf(-room, d, se)


# 11. Likelihood and Bayes

def likelihood_ratio(n, right, g, margin):
    g = chance(g)
    return binom.pmf(right, n, at(g, margin)) / binom.pmf(right, n, g)


def mixture(n, x, g, low, high, against):
    """The count foretold by all shares from low to high alike, over one share: by quadrature."""
    return quad(lambda s: binom.pmf(x, n, at(g, s)), low, high) / (high - low) / binom.pmf(x, n, at(g, against))


def bayes_factor(n, right, g, low, high):
    return mixture(n, right, chance(g), low, high, 0)


# 12. Looking early

def path(looks, p, stops):
    """The chance that one look or another stops: counts carried from look to look by a binomial step."""
    alive, n, stopped = np.ones(1), 0, 0.0
    for look in looks:
        alive = np.convolve(alive, binom.pmf(np.arange(look - n + 1), look - n, p))
        n = look
        hit = np.array([stops(n, x) for x in range(n + 1)])
        stopped += alive[hit].sum()
        alive = np.where(hit, 0, alive)
    return stopped


def path_to(looks, p, criticals):
    by_look = dict(zip(looks, criticals))
    return path(looks, p, lambda n, x: by_look[n] is not None and x >= by_look[n])


def true_alpha(looks, g, alpha):
    g = chance(g)
    return path_to(looks, g, [critical(n, g, alpha) for n in looks])


def looks_level(looks, g, alpha):
    g = chance(g)
    best = None
    for level in sorted({binom.sf(x - 1, n, g) for n in looks for x in range(n + 1)}):
        counts = [critical(n, g, level) for n in looks]
        true = path_to(looks, g, counts)
        if level > alpha or not reaches(true, alpha):
            break
        best = {"level": level, "criticals": counts, "true_alpha": true}
    return best


def any_time_count(n, g, alpha):
    g = chance(g)
    return next((x for x in range(n + 1) if x >= n * g and mixture(n, x, g, 0, 1, 0) >= 1 / alpha), None)


def any_time_alpha(n, g, alpha):
    looks = list(range(1, n + 1))
    return path_to(looks, chance(g), [any_time_count(k, g, alpha) for k in looks])


def true_beta(looks, g, margin, beta):
    g = chance(g)
    high = {n: largest(n, at(g, margin), beta) for n in looks}
    return path(looks, at(g, margin), lambda n, x: high[n] >= n * g - 1e-9 and x <= high[n])


def any_time_similar_count(n, g, margin, beta):
    g = chance(g)
    counts = [x for x in range(n + 1) if mixture(n, x, g, 0, margin, margin) >= 1 / beta]
    return counts[-1] if counts and counts[-1] >= n * g - 1e-9 else None


def any_time_beta(n, g, margin, beta):
    looks = list(range(1, n + 1))
    high = {k: any_time_similar_count(k, g, margin, beta) for k in looks}
    return path(looks, at(chance(g), margin), lambda k, x: high[k] is not None and x <= high[k])


# 13. Missing and double ballots

def missing(n, right, missing, g, alpha, margin, beta):
    g = chance(g)
    counted = judge(n, right, g, alpha, margin, beta, False)
    filled = [judge(n + missing, right + j, g, alpha, margin, beta, False) for j in range(missing + 1)]
    turned = [j for j, word in enumerate(filled) if word != counted]
    return {"counted": counted, "all_wrong": filled[0], "all_right": filled[-1], "turned_by": turned, "robust": not turned}


def best_of_doubles(n_single, doubles, g, alpha):
    g = chance(g)
    n = n_single + doubles
    with_all, with_none, shown = critical(n, g, alpha), critical(n_single, g, alpha), 0.0
    for x in range(n_single + 1):
        for first in range(doubles + 1):
            for last in range(doubles + 1):
                if x + first >= with_all or x + last >= with_all or x >= with_none:
                    shown += binom.pmf(x, n_single, g) * binom.pmf(first, doubles, g) * binom.pmf(last, doubles, g)
    return shown


def parts(value, name=""):
    """A value as lines: its name within the answer, and what it is."""
    if isinstance(value, dict):
        for key, item in value.items():
            yield from parts(item, key)
    elif isinstance(value, list):
        yield name, "[" + " ".join("null" if item is None else str(item) for item in value) + "]"
    elif value is None:
        yield name, "null"
    elif isinstance(value, (bool, str)):
        yield name, str(value).lower()
    elif isinstance(value, (int, np.integer)):
        yield name, str(value)
    else:
        yield name, f"{float(value):.12g}"


def main():
    print(f"# SciPy {scipy.__version__}, NumPy {np.__version__}")
    print("# Every row of check-values.tsv, recomputed. Printed by methods_scipy.py")
    print("id,part,value")
    for line in open("check-values.tsv", encoding="utf-8"):
        if line.startswith("#") or line.startswith("id\t"):
            continue
        row, quantity, asked, _, _ = line.rstrip("\n").split("\t")
        for name, value in parts(globals()[quantity](**json.loads(asked))):
            print(f'{row},{name},"{value}"' if "," in value else f"{row},{name},{value}")


if __name__ == "__main__":
    main()

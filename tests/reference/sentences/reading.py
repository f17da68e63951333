"""Sentences as patterns: each is read back into a proposition, and a judge says from the raw files whether it is true."""
import re

NUM = r"(?:less than |more than )?[−-]?[\d,]+(?:\.\d+)?"
NAME = r"[\w.]+"
READERS = []


def sentence(part, pattern):
    """Registers a judge for one kind of sentence. The pattern may use {n} for a number and {w} for a name; the judge gets (trial, panel, *groups) and
    returns True, or in words what is false."""
    text = pattern.replace("{n}", f"({NUM})").replace("{w}", f"({NAME})")

    def register(judge):
        READERS.append((re.compile(part), re.compile(text + r"(?= |$)", re.S), judge, judge.__name__))
        return judge
    return register


def plain(text):
    return float(text.replace(",", "").replace("−", "-").removeprefix("less than ").removeprefix("more than ").replace("+", ""))


def rounds(text, value, slack=0.0):
    """Whether a printed number is the value, rounded as printed."""
    if text.startswith("less than "):
        return 0 < value < plain(text)
    if text.startswith("more than "):
        return value > plain(text)
    decimals = len(text.split(".")[1]) if "." in text else 0
    return abs(plain(text) - value) <= 0.5 * 10 ** -decimals * (1 + 1e-6) + abs(value) * 1e-9 + slack


def percent(text, share, slack=0.0):
    return rounds(text, 100 * share, slack) or f"{text} % is printed and it is {100 * share:.6g} %"


def number(text, value, slack=0.0):
    return rounds(text, value, slack) or f"{text} is printed and it is {value:.6g}"


def p_value(text, p, slack=0.0):
    """'p = 0.070' or 'p < 0.001'."""
    if text == "p < 0.001":
        return p < 0.001 + slack or f"{text} is printed and p is {p:.4g}"
    return number(text.removeprefix("p = "), p, slack)


def is_true(*claims):
    """All must be True; the first that is not is what is false."""
    for place, claim in enumerate(claims, start=1):
        if isinstance(claim, str) or not claim:
            return claim or f"condition {place} of the sentence does not hold"
    return True


def said_elsewhere(trial, text):
    """A caption's sentences that stand in the text as well, where they are judged, and what is left of the caption."""
    found = []
    for claim in sorted({claim for part, claim in trial.said if part != "caption"}, key=len, reverse=True):
        while claim in text:
            text = text.replace(claim, "", 1)
            found.append(claim)
    return found, text.strip()


def read(trial, part, text):
    """Yields (kind, verdict, sentence) for each sentence of a text; a verdict is True, what is false, or None where nothing reads it."""
    if part == "caption":
        same, text = said_elsewhere(trial, text)
        yield from (("said_in_the_text_too", True, claim) for claim in same)
    about = re.search(r"panel (.+)$", part)
    panel = trial.panel(about[1]) if about and part != "panels" else None
    at = 0
    while at < len(text):
        best = None
        for where, pattern, judge, kind in READERS:
            if where.match(part) and (match := pattern.match(text, at)) and (best is None or match.end() > best[0].end()):
                best = (match, judge, kind)
        if best is None:
            yield "unread", None, text[at:]
            return
        match, judge, kind = best
        verdict = judge(trial, panel, *match.groups())
        yield kind, verdict if isinstance(verdict, str) else bool(verdict), text[at:match.end()]
        at = match.end()
        while at < len(text) and text[at] == " ":
            at += 1

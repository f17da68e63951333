"""The raw files of one trial as facts: plans, keys, ballots and what became of each; nothing of the library's own types is known here."""
import csv
import io
import json
import re

from exact import CHANCE

OWN = {"a": "A", "nota": "not A", "na": "not A", "no": "not A", "yes": "A"}
SAME = {"same": "same", "s": "same", "different": "different", "d": "different", "diff": "different"}


def rows(text):
    return list(csv.DictReader(io.StringIO("".join(line for line in text.splitlines(keepends=True) if not line.startswith("#")))))


class Set:
    def __init__(self, cups):
        first = cups[0]
        self.number, self.taster, self.session, self.server = int(first["set"]), first["taster"], first["session"], first["server"]
        self.replicate = first["replicate"]
        cups = sorted(cups, key=lambda cup: int(cup["position"]))
        self.reference = next((cup["beer"] for cup in cups if cup["position"] == "0"), None)
        self.cups = [(cup["code"], cup["beer"]) for cup in cups if cup["position"] != "0"]
        self.beer = dict(self.cups)
        self.order = (self.reference + ":" if self.reference else "") + "".join(beer for _, beer in self.cups)
        beers = [beer for _, beer in self.cups]
        a, b = beers.count("A"), beers.count("B")
        self.share_b = b / len(beers)
        self.odd = ("A" if a < b else "B") if a and b and a != b else None
        self.odd_at = beers.index(self.odd) + 1 if self.odd and min(a, b) == 1 else None
        self.mixed = a > 0 and b > 0


class Ballot:
    """One ballot and how it counts: 'counted', 'wrong' or 'out'."""

    def __init__(self, row, panel):
        self.taster, self.when, self.answer = row["taster"], row["when"].strip(), row["answer"].strip()
        self.preferred = row["preferred"].strip()
        self.set = panel.sets[int(row["set"])]
        self.notes, self.state = [], "counted"
        rules = panel.rules
        self.right, self.word, self.cup, problem = panel.judge(self)
        if problem:
            self.note(problem, rules.get("no usable answer", "exclude"))
        if row["knew variable"].strip():
            self.note("the taster knew the variable", rules.get("knew variable", "exclude"))
        if row["brewer"].strip() or self.taster in rules.get("brewers", []):
            self.note("the taster brewed the beer", rules.get("brewer", "exclude"))
        if row["late"].strip() or ("closes" in rules and self.when and self.when > rules["closes"]):
            self.note("handed in late", rules.get("late", "exclude"))
        self.usable = not problem

    def note(self, text, rule):
        self.notes.append(text)
        if rule == "exclude":
            self.state = "out"
        elif rule == "count as wrong" and self.state == "counted":
            self.state = "wrong"

    @property
    def plain(self):
        return self.answer if not self.usable else self.word or " ".join(sorted(re.findall(r"\d+", self.answer)))

    @property
    def correct(self):
        return self.state == "counted" and self.right


class Panel:
    def __init__(self, plan, files):
        self.plan, self.name = plan, plan["name"]
        self.protocol = plan["protocol"]
        self.chance = CHANCE[self.protocol]
        self.alpha, self.beta = plan.get("alpha", 0.05), plan.get("beta", 0.05)
        self.expected, self.attribute = plan.get("expected", "B"), plan.get("attribute", "bitter")
        self.sequential = plan.get("stopping") == "sequential"
        self.asks_preference = self.protocol == "paired two-sided" and self.attribute in ("preferred", "liked better")
        self.rules = plan.get("rules", {})
        self.files = files
        key, given = files.get(f"serving-{self.name}.csv"), files.get(f"ballots-{self.name}.csv")
        self.sets, cups = {}, {}
        for row in rows(key or ""):
            cups.setdefault(int(row["set"]), []).append(row)
        self.sets = {number: Set(cups[number]) for number in sorted(cups)}
        self.given = rows(given) if given is not None else []
        self.count(self.rules)

    def judge(self, ballot):
        """Whether the key says that an answer is right: (right, word, cup named, what is wrong with it)."""
        place, text = ballot.set, ballot.answer
        if not text:
            return False, None, None, "no answer was written"
        if self.chance is None:
            words = OWN if self.protocol == "A-not-A" else SAME
            word = words.get(re.sub("[^A-Za-z]", "", text).lower())
            if word is None:
                return False, None, None, f'"{text}" is not an answer to this task; write {"A or not A" if self.protocol == "A-not-A" else "same or different"}'
            differs = place.cups[0][1] == "B" if self.protocol == "A-not-A" else place.mixed
            return (word in ("not A", "different")) == differs, word, None, None
        codes = re.findall(r"\d+", text)
        for code in codes:
            if code not in place.beer:
                return False, None, None, f"the code {code} is not in set {place.number}, which holds {', '.join(c for c, _ in place.cups)}"
        beers = [place.beer[code] for code in codes]
        if self.protocol == "triangle":
            right = beers[0] == place.odd
        elif self.protocol.startswith("duo-trio"):
            right = beers[0] == place.reference
        elif self.protocol in ("tetrad", "two-out-of-five"):
            right = beers[0] == beers[1] and (place.odd is None or beers[0] == place.odd)
        else:
            right = beers[0] == self.expected
        return right, None, codes[0] if len(codes) == 1 else None, None

    def count(self, rules):
        """Scores all ballots by these rules."""
        keep, self.rules = self.rules, rules
        self.ballots = [Ballot(row, self) for row in self.given]
        self.rules = keep
        by_set = {}
        for ballot in self.ballots:
            by_set.setdefault(ballot.set.number, []).append(ballot)
        rule = rules.get("duplicates", "first")
        for number, same in by_set.items():
            if len(same) < 2:
                continue
            equal = len({ballot.plain for ballot in same}) == 1
            usable = [ballot for ballot in same if ballot.state != "out"]
            kept = None if not usable else usable[0] if rule == "first" else usable[-1] if rule == "last" else usable[0] if equal else None
            for ballot in same:
                what = "this one is used" if ballot is kept else "none is used" if kept is None else "another one is used"
                ballot.note(f"{len(same)} ballots with {'the same answer' if equal else 'different answers'} for set {number}, {what}", "count" if ballot is kept else "exclude")
        self.missing = [place for number, place in self.sets.items() if number not in by_set]
        self.missing_wrong = rules.get("missing", "exclude") == "count as wrong"
        people = {}
        for place in self.sets.values():
            people.setdefault(place.taster, [0, 0])
        for ballot in self.ballots:
            if ballot.state != "out":
                people[ballot.set.taster][0] += 1
                people[ballot.set.taster][1] += ballot.correct
        if self.missing_wrong:
            for place in self.missing:
                people[place.taster][0] += 1
        self.people = {name: (n, x) for name, (n, x) in people.items() if n}
        self.all_people = {name: tuple(one) for name, one in people.items()}
        self.n, self.x = sum(n for n, _ in self.people.values()), sum(x for _, x in self.people.values())

    @property
    def counted(self):
        """Whether the panel is counted at all: a key, ballots, an answer that counts, and both kinds of set where that is asked."""
        if not self.sets or not self.given or self.n == 0:
            return False
        if self.chance is None:
            kinds = {self.differs(ballot.set) for ballot in self.ballots if ballot.state != "out"}
            return len(kinds) == 2
        return True

    def differs(self, place):
        return place.cups[0][1] == "B" if self.protocol == "A-not-A" else place.mixed

    @property
    def has_repeats(self):
        return any(n > 1 for n, _ in self.people.values())

    @property
    def table(self):
        """Hits, sets with a difference, false alarms, sets without, for A/not-A and same/different."""
        counted = [ballot for ballot in self.ballots if ballot.state != "out"]
        unlike = [ballot.correct for ballot in counted if self.differs(ballot.set)]
        alike = [ballot.correct for ballot in counted if not self.differs(ballot.set)]
        return sum(unlike), len(unlike), len(alike) - sum(alike), len(alike)

    @property
    def in_order(self):
        """Whether each counted ballot was right, in the order in which they were handed in."""
        return [ballot.correct for ballot in sorted((b for b in self.ballots if b.state != "out"), key=lambda ballot: ballot.when or "9999")]

    @property
    def first_served(self):
        days = [ballot.when[:10] for ballot in self.ballots if ballot.when]
        return min(days) if days else None

    @property
    def standing(self):
        declared = self.plan.get("declared")
        return "nobody" if declared is None else "after" if self.first_served and self.first_served < declared else "before"


class Trial:
    def __init__(self, record):
        self.number, self.files = record["trial"], record["files"]
        self.json = json.loads(self.files["trial.json"])
        self.panels = [Panel(plan, self.files) for plan in self.json.get("panels", [])]
        self.counted = [panel for panel in self.panels if panel.counted]
        self.a, self.b = self.json["beers"]["A"], self.json["beers"]["B"]
        self.us = self.json.get("units") == "us"
        self.said = record["said"]

    def panel(self, name):
        return next(panel for panel in self.panels if panel.name == name)

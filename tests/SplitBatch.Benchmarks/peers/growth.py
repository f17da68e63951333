"""How the time of a command grows with what it is given: past trials, ballots, rows of a lab's log, cells of a notebook.

    /usr/bin/python3 growth.py SPLITBATCH... [--rounds 3] [--largest 1]

SPLITBATCH is the command as words, for example: splitbatch, or: dotnet PATH/SplitBatch.Cli.dll. Each row is run at an eighth, a quarter,
a half and the whole of its size; processor seconds are the least of the rounds, with what the smallest piece takes taken off, so that
start-up does not hide the growth: 1.0 is linear. --largest 0.1 takes a tenth of all sizes.
"""
import argparse
import csv
import json
import math
import os
import shutil
import subprocess
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[3]
DEMO = ROOT / "data-demo" / "amber-cone-or-pellet"


def described(folder, change):
    path = folder / "trial.json"
    trial = json.loads(path.read_text())
    change(trial)
    path.write_text(json.dumps(trial, ensure_ascii=False, indent=2))


def past_trials(place, n):
    """n finished trials beside each other, and a notebook that learns from all of them."""
    for i in range(n):
        folder = place / f"trial-{i:04}"
        shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("practice"))
        described(folder, lambda trial: trial.update(invented=False))
        rows = list(csv.reader((folder / "incoming" / "lab-return.csv").open()))
        head = next(i for i, row in enumerate(rows) if row and not row[0].startswith("#"))
        return_of(folder, rows[head:])
    notebook(place / "learn.ipynb", [f'HouseCalibration.Fit(PastTrials.In(@"{place}").Pairs)'])
    return ["run", str(place / "learn.ipynb"), "--out", str(place / "out")]


def return_of(folder, rows):
    """The lab's return as logged rows."""
    at = {name.split(" [")[0]: i for i, name in enumerate(rows[0])}
    with (folder / "lab-returns.csv").open("w") as out:
        print("id,received,sample,analyte,replicate,value,unit", file=out)
        for i, row in enumerate(rows[1:]):
            sample, test, run, value = (row[at[name]] for name in ("bottle", "test", "run", "result"))
            print(f"r{i},2026-05-01,{sample},{test},{run},{value},{row[at['unit']]}", file=out)


def ballots(place, n):
    """One panel of n tasters, counted and written up."""
    folder = place / "trial"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("practice", "ballots-*", "serving-*", "comments-*", "ratings-*"))

    def one_panel(trial):
        trial["panels"] = [dict(trial["panels"][0], tasters=n)]
        trial["invented"] = False
    described(folder, one_panel)
    subprocess.run([*COMMAND, "serve", str(folder)], check=True, stdout=subprocess.DEVNULL)
    key = [row for row in csv.DictReader(line for line in (folder / "serving-main.csv").open() if not line.startswith("#"))]
    with (folder / "ballots-main.csv").open("w") as out:
        print("taster,session,set,answer", file=out)
        for i in range(0, len(key), 3):
            cups = key[i:i + 3]
            odd = next(cup for cup in cups if [c["beer"] for c in cups].count(cup["beer"]) == 1)
            pick = odd if i % 5 < 2 else cups[0]
            print(f"{pick['taster']},{pick['session']},{pick['set']},{pick['code']}", file=out)
    return ["write-up", str(folder), "--out", str(place / "out")]


def lab_rows(place, n):
    """A log of n results, checked."""
    folder = place / "trial"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("practice"))
    with (folder / "lab-returns.csv").open("w") as out:
        print("id,received,sample,analyte,replicate,value,unit", file=out)
        for i in range(n):
            print(f"r{i},2026-05-01,{'S1' if i % 2 else 'S2'},bitterness,{i // 2 % 1000 + 1},{22 + i % 7 / 10},BU", file=out)
    return ["check", str(folder)]


def lab_import(place, n):
    """A lab's own file of n results, taken into the log by a write-up."""
    folder = place / "trial"
    shutil.copytree(DEMO, folder, ignore=shutil.ignore_patterns("practice"))
    file = folder / "incoming" / "lab-return.csv"
    lines = [line for line in file.read_text().splitlines() if not line.startswith("#")]
    head = lines[0].split(",")
    row = dict(zip(head, next(line for line in lines[1:] if "bitter" in line).split(",")))
    with file.open("w") as out:
        print(",".join(head), file=out)
        for i in range(n):
            run = next(name for name in head if name.startswith("run"))
            bottle = next(name for name in head if name.startswith("bottle"))
            print(",".join({**row, run: str(i // 2 + 1), bottle: "S1" if i % 2 else "S2"}[name] for name in head), file=out)
    return ["write-up", str(folder), "--out", str(place / "out")]


def cells(place, n):
    """A notebook of n cells, each with a variable and a printed line."""
    notebook(place / "long.ipynb", [f'var v{i} = {i} * 2; Console.WriteLine($"line {{v{i}}}");' for i in range(n)])
    return ["run", str(place / "long.ipynb"), "--out", str(place / "out")]


def notebook(path, sources):
    path.write_text(json.dumps({
        "nbformat": 4, "nbformat_minor": 5, "metadata": {"kernelspec": {"name": "splitbatch", "display_name": "C#", "language": "C#"}},
        "cells": [{"cell_type": "code", "id": f"c{i}", "metadata": {}, "execution_count": None, "outputs": [], "source": source} for i, source in enumerate(sources)],
    }))


def processor(words):
    before = os.times()
    done = subprocess.run([*COMMAND, *words], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True)
    after = os.times()
    if done.returncode not in (0, 1) or "Error:" in done.stdout:
        raise SystemExit(f"{' '.join(words)} ended with {done.returncode}: {done.stdout[-2000:]}")
    return after.children_user - before.children_user + after.children_system - before.children_system


ROWS = [
    ("past trials, learned from", past_trials, 1000), ("ballots of a panel, written up", ballots, 5000), ("rows of a lab's log, checked", lab_rows, 20000),
    ("rows of a lab's file, taken in", lab_import, 2000), ("cells of a notebook, run", cells, 1000),
]


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("command", nargs="+")
    options.add_argument("--rounds", type=int, default=3)
    options.add_argument("--largest", type=float, default=1)
    options.add_argument("--only", default="")
    given = options.parse_args()
    global COMMAND
    COMMAND = given.command
    print("| what | size | an eighth | a quarter | a half | all | power of n, from a quarter on |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: |")
    for name, prepare, size in ROWS:
        if given.only not in name:
            continue
        size = int(size * given.largest)
        sizes = [max(1, size // part) for part in (80, 8, 4, 2, 1)]
        with tempfile.TemporaryDirectory() as root:
            words = []
            for i, n in enumerate(sizes):
                place = Path(root) / str(i)
                place.mkdir()
                words.append(prepare(place, n))
            least = [min(processor(w) for _ in range(given.rounds)) for w in words]
        more = [max(1e-3, seconds - least[0]) for seconds in least[1:]]

        power = math.log(more[3] / more[1]) / math.log(sizes[4] / sizes[2])
        print(f"| {name} | {size:,} | " + " | ".join(f"{s:.2f} s" for s in least[1:]) + f" | {power:.2f} |", flush=True)


if __name__ == "__main__":
    main()

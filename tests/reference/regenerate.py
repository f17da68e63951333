"""Runs the reference scripts again and compares what they print with the CSV files that the tests read.

    python3 tests/reference/regenerate.py             compares, and ends with 1 where a value differs
    python3 tests/reference/regenerate.py panel/d-prime.R ...    only these scripts
    python3 tests/reference/regenerate.py --write     takes the new values over
    python3 tests/reference/regenerate.py --report    prints tests/reports/reference.md

Each script runs in a copy of its folder. Where its first lines say "> name.csv", what it prints goes there; other CSV files it
writes itself. Lines that open with # name the program and its version, and are not compared. Numbers may differ by one part in
a million, which other versions do; simulated ones come from fixed seeds.
"""
import csv
import datetime
import io
import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROGRAMS = {
    ".R": ["Rscript"],
    ".py": ["/usr/bin/python3"],
    ".java": ["java", "--add-modules", "jdk.random", "--add-exports", "jdk.random/jdk.random=ALL-UNNAMED"],
}
TOLERANCE = 1e-6
RACES = ["simulation_race.py"]  # prints times, which are not compared


def rows(text):
    return list(csv.reader(io.StringIO("\n".join(line for line in text.splitlines() if not line.startswith("#")))))


def alike(old, new):
    if old == new:
        return True
    try:
        a, b = float(old), float(new)
    except ValueError:
        return False
    return abs(a - b) <= TOLERANCE * max(abs(a), abs(b)) or (a != a and b != b)


def apart(old, new):
    """The largest relative difference between two files' numbers."""
    pairs = [pair for before, now in zip(rows(old), rows(new)) for pair in zip(before, now) if pair[0] != pair[1]]
    return max((abs(float(a) - float(b)) / max(abs(float(a)), abs(float(b))) for a, b in pairs if alike(a, b)), default=0)


def differences(old, new):
    old, new = rows(old), rows(new)
    if len(old) != len(new):
        yield f"{len(old)} rows before, {len(new)} now"
    for number, (before, now) in enumerate(zip(old, new), 1):
        if len(before) != len(now) or not all(map(alike, before, now)):
            yield f"row {number}: {','.join(before)} before, {','.join(now)} now"


def run(script, write):
    """Runs a script in a copy of its folder. Returns what differs, and the files it printed: name, program, rows and largest difference."""
    with tempfile.TemporaryDirectory() as place:
        copy = Path(place) / "tests" / "reference" / script.parent.name
        shutil.copytree(script.parent, copy)
        (Path(place) / "data-demo").symlink_to(HERE.parents[1] / "data-demo")  # where a script looks for the demo trials
        before = {path.name: path.read_text() for path in copy.glob("*.csv")}
        for path in copy.glob("*.csv"):
            os.utime(path, (0, 0))
        done = subprocess.run([*PROGRAMS[script.suffix], script.name], cwd=copy, capture_output=True, text=True)
        if done.returncode != 0:
            return [f"ended with {done.returncode}: {done.stderr.strip()}"], []
        own = copy / f"{script.stem}.csv"
        if f"> {own.name}" in script.read_text():
            own.write_text(done.stdout)
        found, printed = [], []
        for path in sorted(path for path in copy.glob("*.csv") if path.stat().st_mtime > 0):
            now = path.read_text()
            found += [f"{path.name}, {difference}" for difference in differences(before.get(path.name, ""), now)]
            printed.append((path.name, now.split("\n")[0].lstrip("# ").strip(), len(rows(now)) - 1, apart(before.get(path.name, ""), now)))
            if write and now != before.get(path.name):
                (script.parent / path.name).write_text(now)
        return found, printed


def report(scripts):
    """The reference report: each file, the program that printed it, and how it compares today."""
    print("# Reference report\n")
    print("What the tests hold the library to, printed by R, Python and the JDK and printed again for this report. Made by\n")
    print("```bash\npython3 tests/reference/regenerate.py --report > tests/reports/reference.md\n```\n")
    print(f"on {datetime.date.today()}. A number that is printed anew may differ by one part in a million, which other versions do.\n")
    print("| script | file | rows | printed by | largest difference | |\n| --- | --- | ---: | --- | ---: | --- |")
    bad = 0
    for script in scripts:
        found, printed = run(script, write=False)
        bad += len(found)
        name = script.relative_to(HERE)
        for file, program, count, most in printed or [("", "", 0, 0)]:
            differing = sum(line.startswith((file + ",", "ended")) for line in found)
            print(f"| `{name}` | `{file}` | {count} | {program} | {f'{most:.0e}' if most else 'none'} | {f'{differing} differences' if differing else 'as before'} |", flush=True)
    print()
    print((HERE / "print-and-exact.md").read_text(), end="")
    return 1 if bad else 0


def main(words):
    write = "--write" in words
    chosen = [HERE / word for word in words if not word.startswith("--")]
    scripts = chosen or sorted(path for path in HERE.glob("*/*") if path.suffix in PROGRAMS and path.name not in RACES)
    if "--report" in words:
        return report(scripts)
    bad = 0
    for script in scripts:
        found, _ = run(script, write)
        bad += len(found)
        print(f"{script.relative_to(HERE)}: {'as before' if not found else f'{len(found)} differences'}", flush=True)
        for line in found[:20]:
            print(f"    {line}")
    return 1 if bad and not write else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

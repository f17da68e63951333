"""Runs the reference scripts again and compares what they print with the CSV files that the tests read.

    python3 tests/reference/regenerate.py             compares, and ends with 1 where a value differs
    python3 tests/reference/regenerate.py panel/d-prime.R ...    only these scripts
    python3 tests/reference/regenerate.py --write     takes the new values over

Each script runs in a copy of its folder. Where its first lines say "> name.csv", what it prints goes there; other CSV files it
writes itself. Lines that open with # name the program and its version, and are not compared. Numbers may differ by one part in
a million, which other versions of R and SciPy do; simulated ones come from fixed seeds.
"""
import csv
import io
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROGRAMS = {".R": ["Rscript"], ".py": ["/usr/bin/python3"]}
TOLERANCE = 1e-6


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


def differences(old, new):
    old, new = rows(old), rows(new)
    if len(old) != len(new):
        yield f"{len(old)} rows before, {len(new)} now"
    for number, (before, now) in enumerate(zip(old, new), 1):
        if len(before) != len(now) or not all(map(alike, before, now)):
            yield f"row {number}: {','.join(before)} before, {','.join(now)} now"


def run(script, write):
    with tempfile.TemporaryDirectory() as place:
        copy = Path(place) / script.parent.name
        shutil.copytree(script.parent, copy)
        before = {path.name: path.read_text() for path in copy.glob("*.csv")}
        done = subprocess.run([*PROGRAMS[script.suffix], script.name], cwd=copy, capture_output=True, text=True)
        if done.returncode != 0:
            return [f"ended with {done.returncode}: {done.stderr.strip()}"]
        own = copy / f"{script.stem}.csv"
        if f"> {own.name}" in script.read_text():
            own.write_text(done.stdout)
        found = []
        for path in sorted(copy.glob("*.csv")):
            now = path.read_text()
            for difference in differences(before.get(path.name, ""), now):
                found.append(f"{path.name}, {difference}")
            if write and now != before.get(path.name):
                (script.parent / path.name).write_text(now)
        return found


def main(words):
    write = "--write" in words
    chosen = [HERE / word for word in words if word != "--write"]
    scripts = chosen or sorted(path for path in HERE.glob("*/*") if path.suffix in PROGRAMS)
    bad = 0
    for script in scripts:
        found = run(script, write)
        bad += len(found)
        print(f"{script.relative_to(HERE)}: {'as before' if not found else f'{len(found)} differences'}", flush=True)
        for line in found[:20]:
            print(f"    {line}")
    return 1 if bad and not write else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))

"""Reads every sentence that is printed of random whole trials back into a proposition, and judges it from the raw files alone.

    dotnet run -c Release --project tests/SplitBatch.Proof -- sentences 1000 | python3 tests/reference/sentences/read_sentences.py

One line of JSON for each trial: its files, and what is printed of it. Nothing of the library is used or known: the tests and limits are written out in
exact.py and decide.py from their definitions. Ends with 0 where every sentence is read and true.
"""
import collections
import json
import platform
import sys
import traceback

import scipy

import raw
import read_beside, read_brew, read_captions, read_headline, read_lab, read_limits, read_panels  # noqa: E401,F401  They register what they read.
from reading import read


def judge(record):
    """(kind, verdict, sentence) for each sentence of a trial."""
    trial = raw.Trial(record)
    for part, text in record["said"]:
        try:
            yield from read(trial, part, text)
        except Exception as error:  # A judge that fails has not judged.
            yield "unread", "".join(traceback.format_exception_only(error)).strip() + f" at {traceback.extract_tb(error.__traceback__)[-1].lineno} in {traceback.extract_tb(error.__traceback__)[-1].filename.rsplit('/', 1)[-1]}", f"{part}: {text}"


def main():
    counts, trials, shown = collections.defaultdict(lambda: [0, 0]), 0, 0
    for line in sys.stdin:
        if not line.endswith("\n"):  # A run that was ended in the middle of a trial.
            break
        record = json.loads(line)
        trials += 1
        for kind, verdict, text in judge(record):
            counts[kind][0] += 1
            if verdict is True:
                continue
            counts[kind][1] += 1
            if shown < 400:
                shown += 1
                print(f"trial {record['trial']}, {'not read' if kind == 'unread' else 'false'} ({kind}): {text}\n    {verdict}", file=sys.stderr)
    sentences, false = sum(n for n, _ in counts.values()), sum(bad for kind, (_, bad) in counts.items() if kind != "unread")
    print(f"Python {platform.python_version()}, SciPy {scipy.__version__}: {trials:,} trials, {sentences:,} sentences of {len(counts) - ('unread' in counts)} kinds; {counts['unread'][0]:,} not read, {false:,} false.\n")
    print("| kind of sentence | how many | false |\n| --- | ---: | ---: |")
    for kind, (n, bad) in sorted(counts.items()):
        if kind != "unread" or n:
            print(f"| {kind.replace('_', ' ')} | {n:,} | {bad:,} |")
    return 0 if counts["unread"][0] == false == 0 and trials else 1


if __name__ == "__main__":
    sys.exit(main())

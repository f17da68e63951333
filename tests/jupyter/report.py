"""Runs test modules of this folder and prints one line of JSON for each test: its name, how it ended, and why.

    /usr/bin/python3 report.py test_protocol [test_kernel ...] [only:test_name ...]

The test projects call this, so that each test here is one of theirs. By hand, python3 -m unittest -v MODULE reads better.
"""
import json
import sys
import unittest


class Report(unittest.TestResult):
    def tell(self, test, outcome, why=""):
        name = test.id().split(" ")[0].rsplit(".", 1)[-1]
        print(json.dumps({"test": name, "outcome": outcome, "why": why}), flush=True)

    def addSuccess(self, test):
        self.tell(test, "ok")

    def addFailure(self, test, error):
        self.tell(test, "failed", self._exc_info_to_string(error, test))

    def addError(self, test, error):
        self.tell(test, "failed", self._exc_info_to_string(error, test))

    def addSkip(self, test, reason):
        self.tell(test, "skipped", reason)

    def addSubTest(self, test, subtest, error):
        if error is not None:
            self.tell(test, "failed", f"{subtest.id()}\n{self._exc_info_to_string(error, test)}")


if __name__ == "__main__":
    modules = [word for word in sys.argv[1:] if not word.startswith("only:")]
    only = {word[5:] for word in sys.argv[1:] if word.startswith("only:")}
    loader = unittest.defaultTestLoader
    if only:
        loader.testNamePatterns = [f"*.{name}" for name in only]
    loader.loadTestsFromNames(modules).run(Report())

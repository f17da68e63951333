"""Interrupts cells of many kinds in the installed kernel, and says what became of each, of the kernel and of its variables.

    /usr/bin/python3 interrupts.py [--runs 50] [--kinds name ...] [--out ../reports/interrupts.csv]

A cell says that it has begun; it is interrupted after a random moment. Counted are: stopped within a second or later, left behind
(the kernel says that the cell sits in a call into a library, and goes on without it), not answered within 60 s, kernels that died,
and runs after which an earlier variable was gone. The next cell is timed as well. A machine that does much else makes all of it later.
"""
import argparse
import os
import random
import statistics
import sys
import time
from pathlib import Path

from jupyter_client.manager import start_new_kernel

from cells import NAME, run, value

DEMO = Path(os.environ.get("SPLITBATCH_ROOT", Path(__file__).resolve().parents[2])) / "data-demo" / "amber-cone-or-pellet"

KINDS = {
    "empty loop": "while (true) { }",
    "arithmetic": "var x = 0.0; for (long i = 0; ; i++) x += Math.Sqrt(i) * Math.Sin(i);",
    "Monte Carlo": "var random = new Random(1); long hits = 0; while (true) if (random.NextDouble() < 0.5) hits++;",
    "sorting": "var numbers = Enumerable.Range(0, 100_000).ToArray(); while (true) { Random.Shared.Shuffle(numbers); Array.Sort(numbers); }",
    "LINQ sum": "Enumerable.Range(0, int.MaxValue).Select(i => (long)i * i % 7).Sum()",
    "OrderBy": "while (true) Enumerable.Range(0, 200_000).OrderBy(i => i * 7919 % 200_003).Last();",
    "LINQ without a lambda": "Enumerable.Repeat(7, 400_000_000).Distinct().Count()",
    "regular expression": "System.Text.RegularExpressions.Regex.IsMatch(new string('a', 40) + \"!\", \"^(a+)+$\")",
    "JSON": "while (true) System.Text.Json.JsonSerializer.Deserialize<int[]>(System.Text.Json.JsonSerializer.Serialize(Enumerable.Range(0, 5000)));",
    "strings": "var text = \"\"; while (true) { text += \"x\"; if (text.Length > 20_000) text = \"\"; }",
    "Parallel.For": "Parallel.For(0, 64, i => { while (true) { } });",
    "tasks": "await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => Task.Run(() => { while (true) { } })));",
    "await": "await Task.Delay(600_000);",
    "sleep": "Thread.Sleep(600_000);",
    "recursion": "long Fib(int n) => n < 2 ? n : Fib(n - 1) + Fib(n - 2); Fib(70)",
    "async recursion": "async Task<int> Down(int n) { await Task.Yield(); return await Down(n + 1); } await Down(0)",
    "exceptions": "while (true) { try { throw new FormatException(); } catch (Exception) { } }",
    "simulated tastings": "Simulate.Tastings(Protocol.Triangle, 1.0, 900_000_000_000, seed: 1)",
    "draws of doses": f"var doses = Trial.Open(@\"{DEMO}\").WeighedDoses; while (true) DoseUncertainty.Of(doses!, draws: 1_000_000);",
    "matrix library": "MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Random(900, 900).Svd()",
}


def hear(client, type_, message, limit):
    """The next message of a type that belongs to a request; None when none came."""
    end = time.monotonic() + limit
    while time.monotonic() < end:
        try:
            heard = client.get_iopub_msg(timeout=max(0.01, end - time.monotonic()))
        except Exception:
            return None
        if heard["parent_header"].get("msg_id") == message and heard["msg_type"] == type_:
            return heard
    return None


def answer(client, message, limit):
    end = time.monotonic() + limit
    while time.monotonic() < end:
        try:
            heard = client.get_shell_msg(timeout=max(0.01, end - time.monotonic()))
        except Exception:
            return None
        if heard["parent_header"].get("msg_id") == message:
            return heard
    return None


def interrupt(manager, client, code):
    """One run: how long until the reply, whether the cell was left behind, and how long the next cell took."""
    message = client.execute(f'display("begun");\n{code}')
    if hear(client, "display_data", message, 600) is None:
        return None
    time.sleep(random.uniform(0.05, 0.5))
    began = time.monotonic()
    manager.interrupt_kernel()
    reply = answer(client, message, 60)
    stopped = time.monotonic() - began if reply else None
    left = bool(reply) and "goes on by itself" in reply["content"].get("evalue", "")
    other = reply["content"].get("ename") if reply and reply["content"]["status"] == "error" and not left else None
    began = time.monotonic()
    next_ = client.execute("kept")
    seen = hear(client, "execute_result", next_, 120)
    answer(client, next_, 120)
    return {"stopped": stopped, "left": left, "other": other if other != "Interrupted" else None,
            "next": time.monotonic() - began, "kept": seen is not None and seen["content"]["data"]["text/plain"] == "17"}


class Kernel:
    """A kernel that is used until it dies; then another takes its place."""

    def __init__(self):
        self.manager = None
        self.begin()

    def begin(self):
        self.manager, self.client = start_new_kernel(kernel_name=NAME, startup_timeout=600)
        run(self.client, "var kept = 17;", timeout=600)
        self.pid = self.manager.provisioner.pid

    def end(self):
        self.client.stop_channels()
        self.manager.shutdown_kernel(now=True)

    def try_kind(self, code, runs):
        """All runs of a kind, and how often the kernel died."""
        rows, dead = [], 0
        for _ in range(runs):
            row = interrupt(self.manager, self.client, code)
            if row is not None:
                rows.append(row)
            if not self.manager.is_alive() or self.manager.provisioner.pid != self.pid:
                dead += 1
                self.end()
                self.begin()
        return rows, dead


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--runs", type=int, default=50)
    options.add_argument("--kinds", nargs="*", default=list(KINDS))
    options.add_argument("--out", help="also write the rows here")
    given = options.parse_args()
    random.seed(7)
    lines = ["kind,runs,stopped within 1 s,stopped later,left behind,no answer,kernels dead,variables lost,"
             "median until the reply [s],slowest reply [s],slowest next cell [s]"]
    if given.out:
        Path(given.out).write_text(lines[0] + "\n")
    print(lines[0], flush=True)
    total = {"runs": 0, "soon": 0, "dead": 0, "lost": 0}
    kernel = Kernel()
    for kind in given.kinds:
        rows, dead = kernel.try_kind(KINDS[kind], given.runs)
        times = [r["stopped"] for r in rows if r["stopped"] is not None]
        soon = sum(1 for r in rows if r["stopped"] is not None and r["stopped"] <= 1 and not r["left"])
        later = sum(1 for r in rows if r["stopped"] is not None and r["stopped"] > 1 and not r["left"])
        left = sum(r["left"] for r in rows)
        lost = sum(not r["kept"] for r in rows)
        lines.append(f"{kind},{len(rows)},{soon},{later},{left},{len(rows) - len(times)},{dead},{lost},"
                     f"{statistics.median(times) if times else 0:.2f},{max(times, default=0):.2f},{max((r['next'] for r in rows), default=0):.2f}")
        for name, count in (("runs", len(rows)), ("soon", soon), ("dead", dead), ("lost", lost)):
            total[name] += count
        print(lines[-1], flush=True)
        if given.out:
            Path(given.out).write_text("\n".join(lines) + "\n")
    kernel.end()
    last = f"# {total['runs']} interrupts: {total['soon']} stopped within 1 s, {total['dead']} kernels dead, {total['lost']} lost their variables"
    print(last)
    if given.out:
        Path(given.out).write_text("\n".join(lines + [last]) + "\n")
    return 1 if total["dead"] or total["lost"] else 0


if __name__ == "__main__":
    sys.exit(main())

"""A long life: thousands of cells in one installed kernel, with help, interrupts, displays, errors and packages between them.

    /usr/bin/python3 soak.py [--cells 5000] [--help-every 25] [--interrupt-every 100] [--package "Humanizer.Core, 3.0.10"] [--out FILE]

Each cell makes something new, so that all are kept. Printed are, for each tenth of the life, the resident memory and how long a cell,
a completion and an interrupt took (median). Any wrong answer, and a kernel that died, ends it with an error.
"""
import argparse
import statistics
import sys
import time
from pathlib import Path

from jupyter_client.manager import start_new_kernel

from cells import NAME, run, value
from interrupts import interrupt
from measure import resident


def complete(client, code):
    message = client.complete(code)
    while True:
        heard = client.get_shell_msg(timeout=120)
        if heard["parent_header"].get("msg_id") == message:
            return heard["content"]["matches"]


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--cells", type=int, default=5000)
    options.add_argument("--help-every", type=int, default=25)
    options.add_argument("--interrupt-every", type=int, default=100)
    options.add_argument("--package", default="Humanizer.Core, 3.0.10")
    options.add_argument("--out")
    given = options.parse_args()
    manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=300)
    pid = manager.provisioner.pid
    lines = ["cells,resident [MB],median cell [ms],median completion [ms],slowest completion [ms],median interrupt [s]"]
    print(lines[0], flush=True)
    cells, helps, stops = [], [], []
    run(client, "var kept = 17;", timeout=120)
    try:
        for n in range(1, given.cells + 1):
            began = time.perf_counter()
            if n % 7 == 0:
                reply, outputs = run(client, f'var v{n} = {n}; display(HTML("<b>{n}</b>")); v{n}', timeout=120)
                assert len(outputs) == 2, outputs
            elif n % 11 == 0:
                reply, _ = run(client, f"var v{n} = {n}; throw new FormatException();", timeout=120)
                assert reply["ename"] == "FormatException", reply
            else:
                assert value(client, f"var v{n} = {n}; v{n} + v{max(n - 1, 1)}", timeout=120) == str(n + max(n - 1, 1))
            cells.append(time.perf_counter() - began)
            if n % given.help_every == 0:
                began = time.perf_counter()
                assert "CompareTo" in complete(client, f"v{n}.Comp"), n
                helps.append(time.perf_counter() - began)
            if n % given.interrupt_every == 0:
                row = interrupt(manager, client, ["while (true) { }", "Thread.Sleep(600_000);", "await Task.Delay(600_000);"][n // 100 % 3])
                assert row and row["stopped"] is not None and row["kept"], row
                stops.append(row["stopped"])
            if n == given.cells // 2 and given.package:
                reply, _ = run(client, f'#r "nuget: {given.package}"', timeout=300)
                assert reply["status"] == "ok", reply
            if n % max(given.cells // 10, 1) == 0:
                assert manager.is_alive() and manager.provisioner.pid == pid
                row = (f"{n},{resident(pid)[0] / 1024:.0f},{statistics.median(cells) * 1000:.0f},{statistics.median(helps or [0]) * 1000:.0f},"
                       f"{max(helps or [0]) * 1000:.0f},{statistics.median(stops or [0]):.2f}")
                lines.append(row)
                print(row, flush=True)
                cells, helps, stops = [], [], []
        assert value(client, "kept", timeout=120) == "17"
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)
        if given.out:
            Path(given.out).write_text("\n".join(lines) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())

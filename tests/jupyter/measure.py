"""Start time and idle memory of the installed kernel beside the stock .NET kernel and the Python kernel, in one run.

    /usr/bin/python3 measure.py [--rounds 5] [--stock PATH/dotnet-interactive] [--settle 5]

Time runs from the start of the process to the first result of `1 + 1` in the client. Memory is the resident set of the
process and its children, some seconds after that result. Kernels take turns, so that a busy machine is busy for all; medians
are printed, with the ratios to the stock kernel. The stock kernel is the public dotnet tool Microsoft.dotnet-interactive:

    dotnet tool install Microsoft.dotnet-interactive --version 1.0.712001 --tool-path PATH
"""
import argparse
import json
import os
import shutil
import statistics
import sys
import tempfile
import time
from pathlib import Path

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager


def resident(pid):
    """Resident kilobytes, and proportional ones, of a process and its children."""
    rss = pss = 0
    for line in Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines():
        if line.startswith("Rss:"):
            rss = int(line.split()[1])
        elif line.startswith("Pss:"):
            pss = int(line.split()[1])
    for task in Path(f"/proc/{pid}/task").iterdir():
        try:
            children = (task / "children").read_text().split()
        except (FileNotFoundError, ProcessLookupError):
            continue  # A thread that ended since the folder was listed has no children.
        for child in children:
            more = resident(child)
            rss, pss = rss + more[0], pss + more[1]
    return rss, pss


def listening(pid):
    """Addresses a process listens on, as hex from /proc/net."""
    inodes = set()
    for fd in Path(f"/proc/{pid}/fd").iterdir():
        try:
            target = os.readlink(fd)
        except OSError:
            continue
        if target.startswith("socket:["):
            inodes.add(target[8:-1])
    found = []
    for table in ("/proc/net/tcp", "/proc/net/tcp6"):
        for line in Path(table).read_text().splitlines()[1:]:
            words = line.split()
            if words[3] == "0A" and words[9] in inodes:
                found.append(words[1])
    return found


def processor_seconds(pid):
    """Processor time a process has used so far; unlike the clock, little moved by whatever else the machine does."""
    words = Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()
    return (int(words[11]) + int(words[12])) / os.sysconf("SC_CLK_TCK")


def run(name, specs, settle):
    manager = KernelManager(kernel_name=name, kernel_spec_manager=specs)
    began = time.perf_counter()
    manager.start_kernel(stderr=open(os.devnull, "w"), stdout=open(os.devnull, "w"))
    client = manager.client()
    client.start_channels()
    try:
        client.wait_for_ready(timeout=60)
        ready = time.perf_counter() - began
        message = client.execute("1 + 1")
        while True:
            heard = client.get_iopub_msg(timeout=60)
            if heard["parent_header"].get("msg_id") == message and heard["msg_type"] == "execute_result":
                assert "2" in next(iter(heard["content"]["data"].values())), heard["content"]
                break
        first = time.perf_counter() - began
        pid = manager.provisioner.pid
        spent = processor_seconds(pid)
        time.sleep(settle)
        rss, pss = resident(pid)
        return {"ready": ready, "first": first, "spent": spent, "rss": rss / 1024, "pss": pss / 1024, "listening": len(listening(pid))}
    finally:
        client.stop_channels()
        manager.shutdown_kernel(now=True)


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--rounds", type=int, default=5)
    options.add_argument("--settle", type=float, default=5)
    options.add_argument("--stock", default=shutil.which("dotnet-interactive"))
    options.add_argument("--kernels", nargs="*", default=["splitbatch"], help="installed kernels to measure beside")
    options.add_argument("--json", help="also write the medians here")
    given = options.parse_args()

    with tempfile.TemporaryDirectory() as folder:
        specs = KernelSpecManager(kernel_dirs=[folder, *KernelSpecManager().kernel_dirs])
        names = list(given.kernels) + ["python3"]
        if given.stock:
            spec = Path(folder) / "stock-net"
            spec.mkdir()
            (spec / "kernel.json").write_text(json.dumps({
                "argv": [given.stock, "jupyter", "--default-kernel", "csharp", "{connection_file}"],
                "display_name": "stock", "language": "C#",
                "env": {"DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT": "1", "DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE": "1"},
            }))
            names.append("stock-net")
        rows = {name: [] for name in names}
        for _ in range(given.rounds):
            for name in names:
                rows[name].append(run(name, specs, given.settle))
    medians = {n: {k: statistics.median(r[k] for r in rs) for k in rs[0]} for n, rs in rows.items()}
    print(f"{given.rounds} rounds, medians (least to most); memory {given.settle:g} s after the first result")
    print(f"{'kernel':14} {'ready s':>8} {'first result s':>22} {'processor s':>12} {'resident MB':>12} {'share of it MB':>15} {'listening':>10}")
    for name, m in medians.items():
        firsts = [r["first"] for r in rows[name]]
        spread = f"{m['first']:.2f} ({min(firsts):.2f} to {max(firsts):.2f})"
        print(f"{name:14} {m['ready']:8.2f} {spread:>22} {m['spent']:12.2f} {m['rss']:12.0f} {m['pss']:15.0f} {m['listening']:10.0f}")
    if "stock-net" in medians:
        for name in given.kernels:
            ours, stock = medians[name], medians["stock-net"]
            print(f"{name} / stock: first result {ours['first'] / stock['first']:.2f}, processor {ours['spent'] / stock['spent']:.2f}, resident {ours['rss'] / stock['rss']:.2f}")
    if given.json:
        Path(given.json).write_text(json.dumps(medians, indent=1) + "\n")
    return 0


if __name__ == "__main__":
    sys.exit(main())

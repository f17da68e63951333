"""Ten seats on one machine: a Jupyter server, one kernel for each seat, a workshop notebook run in all of them at once.

    python3 seats.py --prefix PREFIX [--seats 10] [--notebooks DIR] [--settle 5] [--gap 0] [--out seats.csv]

PREFIX is where the kernel was put with `splitbatch kernel install --prefix PREFIX`; nothing else of it is used, so this also tries
a kernel in a shared prefix. The server is Debian's (apt: jupyter-server). Each seat opens a session over HTTP and runs every code
cell of its notebook over the server's websocket, as a browser does; an error in a cell counts. Memory is read from /proc some
seconds after the last seat has ended: RSS counts what seats share in every one of them, PSS divides it among them, so the sum of
PSS is what the seats really take.
"""
import argparse
import asyncio
import json
import os
import secrets
import shutil
import socket
import statistics
import subprocess
import sys
import tempfile
import time
import uuid
from pathlib import Path

from tornado.httpclient import AsyncHTTPClient, HTTPRequest
from tornado.websocket import websocket_connect


def memory(pid):
    """Resident, proportional and private kilobytes of one process."""
    rss = pss = own = 0
    for line in Path(f"/proc/{pid}/smaps_rollup").read_text().splitlines():
        word = line.split()
        if word[0] == "Rss:":
            rss = int(word[1])
        elif word[0] == "Pss:":
            pss = int(word[1])
        elif word[0] in ("Private_Clean:", "Private_Dirty:"):
            own += int(word[1])
    return rss, pss, own


def children(pid):
    return [int(child) for task in Path(f"/proc/{pid}/task").iterdir() for child in (task / "children").read_text().split()]


def tree(pid):
    return [pid] + [each for child in children(pid) for each in tree(child)]


async def call(base, token, method, path, body=None):
    request = HTTPRequest(f"{base}/api/{path}", method=method, body=json.dumps(body) if body is not None else None,
                          headers={"Authorization": f"token {token}", "Content-Type": "application/json"}, request_timeout=300)
    answer = await AsyncHTTPClient().fetch(request)
    return json.loads(answer.body) if answer.body else None


async def run(socket_, code, heard):
    message = uuid.uuid4().hex
    await socket_.write_message(json.dumps({
        "header": {"msg_id": message, "msg_type": "execute_request", "username": "seat", "session": "seat", "version": "5.3", "date": ""},
        "parent_header": {}, "metadata": {}, "channel": "shell", "buffers": [],
        "content": {"code": code, "silent": False, "store_history": True, "user_expressions": {}, "allow_stdin": False, "stop_on_error": False},
    }))
    while True:
        answer = json.loads(await socket_.read_message())
        if answer["parent_header"].get("msg_id") != message:
            continue
        kind = answer["header"]["msg_type"]
        if kind == "error":
            heard["errors"] += 1
            print("".join(answer["content"]["traceback"]), file=sys.stderr)
        elif kind in ("execute_result", "display_data"):
            heard["results"] += 1
        elif kind == "status" and answer["content"]["execution_state"] == "idle":
            return


async def seat(number, base, token, notebook, wait):
    await asyncio.sleep(wait)
    cells = ["".join(cell["source"]) for cell in json.loads(notebook.read_text())["cells"] if cell["cell_type"] == "code"]
    heard = {"errors": 0, "results": 0}
    began = time.perf_counter()
    session = await call(base, token, "POST", "sessions", {
        "path": f"seat-{number}.ipynb", "name": f"seat-{number}", "type": "notebook", "kernel": {"name": "splitbatch"}})
    kernel = session["kernel"]["id"]
    socket_ = await websocket_connect(
        HTTPRequest(f"{base.replace('http', 'ws')}/api/kernels/{kernel}/channels", headers={"Authorization": f"token {token}"}),
        max_message_size=100_000_000)
    first = None
    for code in cells:
        await run(socket_, code, heard)
        first = first or time.perf_counter() - began
    return {"seat": number, "notebook": notebook.stem, "cells": len(cells), "results": heard["results"], "errors": heard["errors"],
            "first": first, "all": time.perf_counter() - began, "kernel": kernel, "socket": socket_}


async def measure(options, base, token, server):
    for _ in range(240):
        try:
            status = await call(base, token, "GET", "status")
            break
        except OSError:
            await asyncio.sleep(0.5)
    else:
        raise SystemExit("the server did not start")
    notebooks = sorted(Path(options.notebooks).glob("[1-6]-*.ipynb"))
    seats = await asyncio.gather(*[seat(i + 1, base, token, notebooks[i % len(notebooks)], i * options.gap) for i in range(options.seats)])
    await asyncio.sleep(options.settle)
    kernels = [pid for pid in children(server.pid)]
    if len(kernels) != options.seats:
        raise SystemExit(f"{len(kernels)} kernels for {options.seats} seats")
    use = [[sum(part) for part in zip(*[memory(each) for each in tree(pid)])] for pid in kernels]
    for one in seats:
        one["socket"].close()
        await call(base, token, "DELETE", f"kernels/{one['kernel']}")
    return status, seats, use, memory(server.pid)


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--prefix", required=True)
    options.add_argument("--seats", type=int, default=10)
    options.add_argument("--notebooks", default=str(Path(__file__).resolve().parents[2] / "notebooks" / "workshop"))
    options.add_argument("--settle", type=float, default=5)
    options.add_argument("--gap", type=float, default=0, help="seconds between one seat's start and the next")
    options.add_argument("--out", help="also write the rows here")
    given = options.parse_args()

    token = secrets.token_hex(16)
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    with tempfile.TemporaryDirectory() as folder:
        environment = dict(os.environ, JUPYTER_PATH=str(Path(given.prefix) / "share" / "jupyter"), JUPYTER_CONFIG_DIR=folder,
                           JUPYTER_DATA_DIR=str(Path(folder) / "data"), JUPYTER_RUNTIME_DIR=str(Path(folder) / "run"), HOME=folder,
                           DOTNET_CLI_HOME=folder, NUGET_PACKAGES=os.environ.get("NUGET_PACKAGES", str(Path.home() / ".nuget" / "packages")))
        log = open(Path(folder) / "server.log", "w")
        server = subprocess.Popen([shutil.which("jupyter-server"), "--no-browser", "--allow-root", "--ip=127.0.0.1", f"--port={port}", f"--ServerApp.token={token}",
                                   f"--ServerApp.root_dir={folder}", "--ServerApp.port_retries=0"], env=environment, cwd=folder, stdout=log, stderr=log)
        try:
            began = time.perf_counter()
            status, seats, use, own = asyncio.run(measure(given, f"http://127.0.0.1:{port}", token, server))
            took = time.perf_counter() - began
        except BaseException:
            print(Path(folder, "server.log").read_text()[-3000:], file=sys.stderr)
            raise
        finally:
            server.terminate()
            server.wait(30)

    version = subprocess.run([shutil.which("jupyter-server"), "--version"], capture_output=True, text=True).stdout.strip()
    pages = os.sysconf("SC_PAGE_SIZE") * os.sysconf("SC_PHYS_PAGES") / 2**30
    lines = [f"# jupyter-server {version}, python {sys.version.split()[0]}, {os.cpu_count()} processors, {pages:.0f} GiB of memory; {given.seats} seats, {given.gap:g} s apart",
             "seat,notebook,cells,results,errors,first result [s],whole notebook [s],rss [MiB],pss [MiB],private [MiB]"]
    for one, (rss, pss, private) in zip(seats, use):
        lines.append(f"{one['seat']},{one['notebook']},{one['cells']},{one['results']},{one['errors']},{one['first']:.1f},{one['all']:.1f},{rss / 1024:.0f},{pss / 1024:.0f},{private / 1024:.0f}")
    rss, pss, private = ([row[i] / 1024 for row in use] for i in range(3))
    lines.append(f"# per seat, median (least to most): rss {statistics.median(rss):.0f} ({min(rss):.0f} to {max(rss):.0f}) MiB, pss {statistics.median(pss):.0f} ({min(pss):.0f} to {max(pss):.0f}) MiB, "
                 f"private {statistics.median(private):.0f} ({min(private):.0f} to {max(private):.0f}) MiB")
    lines.append(f"# all seats together: pss {sum(pss):.0f} MiB; the server: pss {own[1] / 1024:.0f} MiB; all seats had their notebook after {took:.0f} s; errors {sum(one['errors'] for one in seats)}")
    print("\n".join(lines))
    if given.out:
        Path(given.out).write_text("\n".join(lines) + "\n")
    return 1 if any(one["errors"] for one in seats) else 0


if __name__ == "__main__":
    sys.exit(main())

"""`splitbatch run` over chart-free copies of the notebooks against nbclient with the stock .NET kernel over the same cells, in turns.

    /usr/bin/python3 notebooks.py --stock PATH/dotnet-interactive [--rounds 3]

The stock kernel draws no charts, so cells that show charts, pictures or write-ups are left out for both, as is every cell that
the stock kernel cannot run for another reason; how many are left is printed. Build first, with `dotnet build`. The stock kernel is
the public dotnet tool Microsoft.dotnet-interactive, version 1.0.712001.
"""
import argparse
import json
import os
import re
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

import nbformat
from nbclient import NotebookClient

ROOT = Path(__file__).resolve().parents[3]
BUILT = ROOT / "src/SplitBatch.Cli/bin/Debug/net10.0"
CHARTS = re.compile(r"\.(Chart|Explore)\w*\(|Figure|Picture|Sheets|WriteUp|TrialReport|TrialSummary|ShowFiles|Save")
ROOMS = (
    "Numbers", "Brewing", "BrewDay", "Bitterness", "Bitterness.Models", "Lab", "Evidence", "Trials",
    "Panel.Protocols", "Panel.Planning", "Panel.Serving", "Panel.Ballots", "Panel.Counting", "Panel.Simulation",
    "Display", "Display.Charts", "Display.Tables", "Display.Figures", "Display.Sheets", "Display.WriteUp")
SPACES = ["SplitBatch"] + [f"SplitBatch.{room}" for room in ROOMS] + ["UnitsNet", "UnitsNet.Units"]
OPENING = f'#r "{BUILT}/SplitBatch.Display.dll"\n' + "".join(f"using {space};\n" for space in SPACES) + "using Power = SplitBatch.Panel.Planning.Power;"


def chart_free(folder):
    for source in sorted((ROOT / "notebooks").glob("*.ipynb")):
        notebook = nbformat.read(source, as_version=4)
        notebook.cells = [cell for cell in notebook.cells if cell.cell_type == "code" and not CHARTS.search(cell.source)]
        for cell in notebook.cells:
            cell.outputs = []
        nbformat.write(notebook, folder / source.name)


def in_stock(path, forgiving=False):
    notebook = nbformat.read(path, as_version=4)
    notebook.cells.insert(0, nbformat.v4.new_code_cell(OPENING))
    NotebookClient(notebook, kernel_name="stock-net", timeout=300, allow_errors=forgiving, resources={"metadata": {"path": str(path.parent)}}).execute()
    return [any(output.output_type == "error" for output in cell.outputs) for cell in notebook.cells[1:]]


def leave_out_what_stock_cannot_run(path):
    while any(failed := in_stock(path, forgiving=True)):
        notebook = nbformat.read(path, as_version=4)
        notebook.cells = [cell for cell, bad in zip(notebook.cells, failed) if not bad]
        nbformat.write(notebook, path)


def timed(work):
    start = time.perf_counter()
    work()
    return time.perf_counter() - start


def main():
    options = argparse.ArgumentParser(description=__doc__.splitlines()[0])
    options.add_argument("--stock", default=shutil.which("dotnet-interactive"), required=shutil.which("dotnet-interactive") is None)
    options.add_argument("--rounds", type=int, default=3)
    given = options.parse_args()
    with tempfile.TemporaryDirectory() as place:
        place = Path(place)
        spec = place / "kernels/stock-net"
        spec.mkdir(parents=True)
        (spec / "kernel.json").write_text(json.dumps({
            "argv": [given.stock, "jupyter", "--default-kernel", "csharp", "{connection_file}"], "display_name": "stock", "language": "C#",
            "env": {"DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT": "1", "DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE": "1"}}))
        os.environ["JUPYTER_PATH"] = str(place)
        notebooks = place / "notebooks"
        notebooks.mkdir()
        shutil.copytree(ROOT / "data-demo", place / "data-demo")
        chart_free(notebooks)
        paths = sorted(notebooks.glob("*.ipynb"))
        for path in paths:
            leave_out_what_stock_cannot_run(path)
        cells = sum(len(nbformat.read(path, as_version=4).cells) for path in paths)
        ours, stock = [], []
        for _ in range(given.rounds):
            ours.append(timed(lambda: subprocess.run(
                ["dotnet", str(BUILT / "SplitBatch.Cli.dll"), "run", str(notebooks), "--out", str(place / "out")], check=True, stdout=subprocess.DEVNULL, cwd=place, env=os.environ)))
            stock.append(timed(lambda: [in_stock(path) for path in paths]))
        a, b = statistics.median(ours), statistics.median(stock)
        print(f"| {len(paths)} notebooks, {cells} cells without charts | splitbatch run {a:.1f} s | nbclient with the stock kernel {b:.1f} s | {a / b:.2f} | at most 0.50 |")
        return 0


if __name__ == "__main__":
    sys.exit(main())

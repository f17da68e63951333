"""Programs that run notebooks through the installed kernel: nbclient, nbconvert, and parameters given by them.

PythonSuiteTests runs it; by hand, with the kernel installed:  /usr/bin/python3 -m unittest -v test_clients
"""
import shutil
import subprocess
import tempfile
import unittest
from pathlib import Path

import nbclient
import nbformat

ROOT = Path(__file__).resolve().parents[2]
PICTURE = 'src="data:image/svg+xml;base64,'
NAMES = sorted(p.name for p in (ROOT / "notebooks").glob("*.ipynb"))


def says(notebook):
    """The plain text of every output, cell by cell."""
    return [["".join(o.get("data", {}).get("text/plain", o.get("text", ""))) for o in c.outputs] for c in notebook.cells if c.cell_type == "code"]


class Clients(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.root = Path(folder.name)
        shutil.copytree(ROOT / "notebooks", self.root / "notebooks", ignore=shutil.ignore_patterns("work", "pictures"))
        shutil.copytree(ROOT / "data-demo", self.root / "data-demo")

    def execute(self, notebook):
        """Through the kernel that the notebook itself names."""
        for cell in notebook.cells:
            if cell.cell_type == "code":
                cell.outputs, cell.execution_count = [], None
        nbclient.NotebookClient(notebook, timeout=300, resources={"metadata": {"path": str(self.root / "notebooks")}}).execute()
        return notebook

    def test_nbclient_runs_every_notebook_of_the_project_with_the_results_kept_in_it(self):
        self.assertEqual(len(NAMES), 6)
        for name in NAMES:
            with self.subTest(name):
                kept = nbformat.read(self.root / "notebooks" / name, 4)
                self.assertEqual(kept.metadata.kernelspec.name, "splitbatch")
                before = says(kept)
                self.assertGreater(sum(map(len, before)), 3)
                done = self.execute(kept)
                self.assertEqual(says(done), before)
                charts = [o for c in done.cells for o in c.get("outputs", []) if "application/vnd.plotly.v1+json" in o.get("data", {})]
                for chart in charts:
                    self.assertIn("<svg", chart.data["image/svg+xml"])
                    self.assertIn(PICTURE, chart.data["text/html"])
                    self.assertLess(len(chart.data["text/html"]), 100_000, "the chart library is not in every chart")

    def test_nbconvert_runs_every_notebook_of_the_project_to_a_page(self):
        out = self.root / "pages"
        ended = subprocess.run(
            ["/usr/bin/python3", "-m", "nbconvert", "--execute", "--to", "html", "--output-dir", out, *[self.root / "notebooks" / n for n in NAMES]],
            capture_output=True, text=True, timeout=540)
        self.assertEqual(ended.returncode, 0, ended.stderr)
        for name in NAMES:
            page = (out / name.replace(".ipynb", ".html")).read_text()
            self.assertIn(PICTURE, page)
            self.assertNotIn("Traceback", page)

    def test_a_client_gives_values_in_a_cell_after_the_parameters(self):
        """As programs that fill in notebooks do: a cell with the same names again, after the one tagged parameters."""
        notebook = nbformat.read(self.root / "notebooks" / "1-design.ipynb", 4)
        at = next(i for i, c in enumerate(notebook.cells) if "parameters" in c.metadata.get("tags", []))
        given = nbformat.v4.new_code_cell('// Parameters\nvar trialFolder = "../data-demo/stout-early-or-late";', metadata={"tags": ["injected-parameters"]})
        notebook.cells.insert(at + 1, given)
        said = says(self.execute(notebook))
        self.assertIn("Stout", said[2][0])
        self.assertNotIn("Amber", " ".join(t for cell in said for t in cell))

    def test_values_that_the_headless_runner_put_into_a_notebook_hold_in_a_client_too(self):
        notebook = nbformat.read(self.root / "notebooks" / "1-design.ipynb", 4)
        at = next(i for i, c in enumerate(notebook.cells) if "parameters" in c.metadata.get("tags", []))
        given = nbformat.v4.new_code_cell('// Given when the notebook was run\ntrialFolder = "../data-demo/lager-one-rest-or-two";', metadata={"tags": ["injected-parameters"]})
        notebook.cells.insert(at + 1, given)
        self.assertIn("lager", said_all(self.execute(notebook)).lower())


def said_all(notebook):
    return " ".join(t for cell in says(notebook) for t in cell)


if __name__ == "__main__":
    unittest.main()

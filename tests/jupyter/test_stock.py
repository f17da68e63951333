"""The library in the stock .NET notebook kernel: one #r line of the built library, then values, tables, and a chart that says why it is a picture.

StockKernelTests runs it; by hand:  STOCK=PATH/dotnet-interactive LIBRARY=.../SplitBatch.Display.dll /usr/bin/python3 -m unittest -v test_stock

The stock kernel is the public dotnet tool Microsoft.dotnet-interactive:
    dotnet tool install Microsoft.dotnet-interactive --version 1.0.712001 --tool-path PATH
"""
import json
import os
import tempfile
import unittest
from pathlib import Path

from jupyter_client.kernelspec import KernelSpecManager
from jupyter_client.manager import KernelManager

from cells import run


class StockNotebook:
    """A notebook of the stock kernel, whose first cell is FIRST with the environment's words in it."""
    FIRST = ""

    @classmethod
    def setUpClass(cls):
        cls.folder = tempfile.TemporaryDirectory()
        spec = Path(cls.folder.name) / "stock-net"
        spec.mkdir()
        (spec / "kernel.json").write_text(json.dumps({
            "argv": [os.environ["STOCK"], "jupyter", "--default-kernel", "csharp", "{connection_file}"],
            "display_name": "stock", "language": "C#",
            "env": {"DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT": "1", "DOTNET_INTERACTIVE_SKIP_FIRST_TIME_EXPERIENCE": "1"},
        }))
        cls.manager = KernelManager(kernel_name="stock-net", kernel_spec_manager=KernelSpecManager(kernel_dirs=[cls.folder.name]))
        cls.manager.start_kernel()
        cls.client = cls.manager.client()
        cls.client.start_channels()
        cls.client.wait_for_ready(timeout=120)
        cls.reply, cls.said = run(cls.client, cls.FIRST.format(**os.environ), timeout=300)

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel(now=True)
        cls.folder.cleanup()

    def shown(self, code):
        """The forms of what a cell shows last."""
        reply, outputs = run(self.client, code, timeout=120)
        self.assertEqual(reply["status"], "ok", reply)
        forms = [c["data"] for t, c in outputs if t in ("execute_result", "display_data")]
        self.assertTrue(forms, outputs)
        return forms[-1]


class StockKernel(StockNotebook, unittest.TestCase):
    FIRST = '#r "{LIBRARY}"'

    def test_one_line_loads_the_library(self):
        self.assertEqual(self.reply["status"], "ok", self.reply)

    def test_values_work(self):
        self.assertIn("1.0484", json.dumps(self.shown("using SplitBatch.Brewing; Gravity.FromPlato(12).Specific.ToString(\"0.0000\")")))

    def test_a_table_shows_as_a_table(self):
        forms = self.shown("""
            using SplitBatch.Display.Charts;
            SplitBatch.Display.NotebookDisplay.Register();
            SplitBatch.Panel.Counting.DifferenceTest.Of(SplitBatch.Panel.Protocols.Protocol.Triangle, 24, 11).Chart().Numbers""")
        self.assertIn("<table", forms["text/html"])

    def test_a_chart_shows_its_picture_and_says_plainly_why_it_is_no_more_and_what_to_do(self):
        forms = self.shown("""
            using SplitBatch.Display.Charts;
            SplitBatch.Display.NotebookDisplay.Register();
            SplitBatch.Panel.Counting.DifferenceTest.Of(SplitBatch.Panel.Protocols.Protocol.Triangle, 24, 11).Chart()""")
        html = forms["text/html"]
        self.assertIn('src="data:image/svg+xml;base64,', html)
        self.assertIn("which this kernel cannot load (it brings another version of FSharp.Core)", html)
        self.assertIn("splitbatch kernel install", html)


if __name__ == "__main__":
    unittest.main()

"""The library's packages in the stock .NET notebook kernel: one #r line, from a folder of packages.

ExampleTests runs it; by hand:  STOCK=PATH/dotnet-interactive FEED=FOLDER VERSION=0.1.0 /usr/bin/python3 -m unittest -v test_packages
"""
import json
import os
import unittest

from cells import run
from test_stock import StockNotebook


class Packages(StockNotebook, unittest.TestCase):
    FIRST = '#i "nuget:{FEED}"\n#r "nuget: SplitBatch.Display, {VERSION}"'

    def test_one_line_loads_the_package(self):
        self.assertEqual(self.reply["status"], "ok", self.reply)

    def test_a_result_shows_itself_as_a_sentence_without_another_call(self):
        forms = self.shown("SplitBatch.Panel.Counting.DifferenceTest.Of(SplitBatch.Panel.Protocols.Protocol.Triangle, 24, 13)")
        self.assertIn("13", forms["text/plain"])
        self.assertIn("difference is shown", forms["text/plain"])

    def test_a_chart_shows_its_picture(self):
        forms = self.shown("using SplitBatch.Display.Charts;\nSplitBatch.Panel.Counting.DifferenceTest.Of(SplitBatch.Panel.Protocols.Protocol.Triangle, 24, 13).Chart()")
        self.assertIn('src="data:image/svg+xml;base64,', forms["text/html"])

    def test_the_library_alone_is_one_line_too(self):
        reply, _ = run(self.client, f'#r "nuget: SplitBatch, {os.environ["VERSION"]}"', timeout=120)
        self.assertEqual(reply["status"], "ok", reply)
        self.assertIn("1.0484", json.dumps(self.shown('SplitBatch.Brewing.Gravity.FromPlato(12).Specific.ToString("0.0000")')))


if __name__ == "__main__":
    unittest.main()

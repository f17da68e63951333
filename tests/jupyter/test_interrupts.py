"""Every kind of cell of interrupts.py interrupted once: no kernel dies, no variable is lost, and each is answered.

PythonSuiteTests runs it; by hand, with the kernel installed:  /usr/bin/python3 -m unittest -v test_interrupts
"""
import unittest

from jupyter_client.manager import start_new_kernel

from cells import NAME, run
from interrupts import KINDS, interrupt


class Interrupts(unittest.TestCase):
    def test_no_kind_of_cell_takes_the_kernel_with_it(self):
        manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=300)
        try:
            run(client, "var kept = 17;", timeout=120)
            pid = manager.provisioner.pid
            for kind, code in KINDS.items():
                with self.subTest(kind):
                    row = interrupt(manager, client, code)
                    self.assertTrue(manager.is_alive())
                    self.assertEqual(manager.provisioner.pid, pid)
                    self.assertIsNotNone(row)
                    self.assertIsNotNone(row["stopped"])
                    self.assertIsNone(row["other"])
                    self.assertTrue(row["kept"])
        finally:
            client.stop_channels()
            manager.shutdown_kernel(now=True)


if __name__ == "__main__":
    unittest.main()

"""The installed kernel from its start to its end: restart, shutdown, many kernels, a long life.

PythonSuiteTests runs it; by hand, with the kernel installed:  /usr/bin/python3 -m unittest -v test_lives
"""
import time
import unittest

from jupyter_client.manager import KernelManager, start_new_kernel

from cells import NAME, PATIENCE, run, value
from measure import resident


class Lives(unittest.TestCase):
    def test_restart_forgets_and_shutdown_ends_the_process(self):
        manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=PATIENCE)
        try:
            run(client, "var gone = 1;")
            manager.restart_kernel()
            client.wait_for_ready(timeout=PATIENCE)
            reply, _ = run(client, "gone")
            self.assertEqual(reply["status"], "error")
            process = manager.provisioner.process
            client.shutdown()
            self.assertEqual(process.wait(timeout=PATIENCE), 0)
        finally:
            client.stop_channels()
            manager.shutdown_kernel(now=True)

    def test_shutdown_ends_a_kernel_in_an_endless_loop(self):
        manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=PATIENCE)
        client.execute("while (true) { }")
        time.sleep(1)
        process = manager.provisioner.process
        client.shutdown()
        try:
            self.assertEqual(process.wait(timeout=PATIENCE), 0)
        finally:
            client.stop_channels()
            manager.shutdown_kernel(now=True)

    def test_a_thousand_cells_cost_a_quarter_of_a_megabyte_each_and_no_more_as_they_grow_many(self):
        """The engine keeps every cell as an assembly of its own, so that later cells can use what it made."""
        manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=PATIENCE)
        try:
            pid = manager.provisioner.pid
            sizes = []
            for count in range(1, 1001):
                reply, _ = run(client, f"var note = Enumerable.Range(0, {count}).Sum(); Console.WriteLine(note); note")
                self.assertEqual((reply["status"], reply["execution_count"]), ("ok", count))
                if count in (100, 550, 1000):
                    time.sleep(4)  # The kernel hands memory back when it rests.
                    sizes.append(resident(pid)[0] / 1024)
            print(f"resident after 100 cells {sizes[0]:.0f} MB, after 550 {sizes[1]:.0f}, after 1000 {sizes[2]:.0f}", flush=True)
            self.assertLess((sizes[2] - sizes[0]) / 900, 0.35, sizes)
            self.assertLess(sizes[2] - sizes[1], 1.3 * max(sizes[1] - sizes[0], 30), sizes)
        finally:
            client.stop_channels()
            manager.shutdown_kernel(now=True)

    def test_ten_kernels_at_once(self):
        managers = [KernelManager(kernel_name=NAME) for _ in range(10)]
        clients = []
        try:
            for manager in managers:
                manager.start_kernel()
                client = manager.client()
                client.start_channels()
                clients.append(client)
            for client in clients:
                client.wait_for_ready(timeout=120)
            asked = [client.execute(f"{n} * 11") for n, client in enumerate(clients)]
            for n, client in enumerate(clients):
                while True:
                    heard = client.get_iopub_msg(timeout=120)
                    if heard["msg_type"] == "execute_result" and heard["parent_header"]["msg_id"] == asked[n]:
                        self.assertEqual(heard["content"]["data"]["text/plain"], str(n * 11))
                        break
        finally:
            for client in clients:
                client.stop_channels()
            for manager in managers:
                manager.shutdown_kernel(now=True)


if __name__ == "__main__":
    unittest.main()

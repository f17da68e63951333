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

    def test_a_thousand_cells_leave_memory_flat(self):
        """A cell is let go once no later cell can refer to it. What a kernel grows by at first is code of its own that is compiled as it runs."""
        manager, client = start_new_kernel(kernel_name=NAME, startup_timeout=PATIENCE)
        try:
            pid = manager.provisioner.pid
            sizes = {}
            for count in range(1, 1001):
                makes = f"var note = Enumerable.Range(0, {count}).Sum(); Console.WriteLine(note); note"
                computes = f"Console.WriteLine(Enumerable.Range(0, {count}).Sum()); note"
                reply, _ = run(client, makes if count % 2 else computes)
                self.assertEqual((reply["status"], reply["execution_count"]), ("ok", count))
                if count % 20 == 0:
                    client.complete("note.ToS", 8, reply=True, timeout=PATIENCE)
                if count in (100, 300, 1000):
                    time.sleep(4)  # The kernel hands memory back when it rests.
                    sizes[count] = resident(pid)[0] / 1024
            print("resident " + ", ".join(f"after {count} cells {size:.0f} MB" for count, size in sizes.items()), flush=True)
            self.assertLess((sizes[1000] - sizes[300]) / 700, 0.02, sizes)
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

"""The installed kernel as clients use it: interrupt, questions, displays, several clients.

PythonSuiteTests runs it; by hand, with the kernel installed:  /usr/bin/python3 -m unittest -v test_kernel
"""
import time
import unittest

from jupyter_client.blocking import BlockingKernelClient
from jupyter_client.manager import start_new_kernel

from cells import NAME, PATIENCE, run, text, value
from measure import listening, processor_seconds


class OneKernel(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.manager, cls.client = start_new_kernel(kernel_name=NAME, startup_timeout=PATIENCE)

    @classmethod
    def tearDownClass(cls):
        cls.client.stop_channels()
        cls.manager.shutdown_kernel()

    def test_the_library_is_there_in_cell_one(self):
        self.assertIn("1.050", value(self.client, "Gravity.FromSpecific(1.050).ToString()"))

    def test_an_endless_loop_is_interrupted_and_the_state_survives(self):
        run(self.client, "var kept = 17;")
        self.client.execute("while (true) { }")
        self.wait_for("execute_input")
        began = time.monotonic()
        self.manager.interrupt_kernel()
        reply = self.client.get_shell_msg(timeout=PATIENCE)
        self.assertEqual(reply["content"]["status"], "error")
        self.assertLess(time.monotonic() - began, 20)
        self.assertEqual(value(self.client, "kept"), "17")

    def test_a_sleeping_cell_is_interrupted(self):
        self.client.execute("Thread.Sleep(600000);")
        self.wait_for("execute_input")
        self.manager.interrupt_kernel()
        self.assertEqual(self.client.get_shell_msg(timeout=PATIENCE)["content"]["status"], "error")
        self.assertEqual(value(self.client, "1 + 1"), "2")

    def test_after_an_interrupt_the_kernel_rests(self):
        self.client.execute("while (true) { }")
        self.wait_for("execute_input")
        self.manager.interrupt_kernel()
        self.client.get_shell_msg(timeout=PATIENCE)
        spent = []  # The compiler's own work behind comes to an end; a loop that goes on does not.
        while len(spent) < 10 and (not spent or spent[-1] > 0.1):
            before = processor_seconds(self.manager.provisioner.pid)
            time.sleep(3)
            spent.append(processor_seconds(self.manager.provisioner.pid) - before)
        self.assertLessEqual(spent[-1], 0.1, spent)

    def test_output_streams_while_the_cell_runs(self):
        self.client.execute('Console.Write("first"); await Task.Delay(3000); Console.Write("second");')
        first = self.wait_for("stream")
        arrived = time.monotonic()
        second = self.wait_for("stream")
        self.assertEqual((first["content"]["text"], second["content"]["text"]), ("first", "second"))
        self.assertGreater(time.monotonic() - arrived, 1)
        self.client.get_shell_msg(timeout=PATIENCE)

    def test_much_printing_is_few_messages(self):
        _, outputs = run(self.client, "for (var i = 0; i < 20000; i++) Console.WriteLine(i);")
        self.assertEqual(text(outputs), "".join(f"{i}\n" for i in range(20000)))
        self.assertLess(len(outputs), 200)

    def test_a_display_is_updated_under_its_own_id(self):
        _, first = run(self.client, 'var shown = display("before");')
        _, second = run(self.client, 'shown.Update("after");')
        (kind, made), = first
        (update, changed), = second
        self.assertEqual((kind, update), ("display_data", "update_display_data"))
        self.assertEqual(made["transient"]["display_id"], changed["transient"]["display_id"])
        self.assertEqual(changed["data"]["text/plain"], "after")

    def test_a_failing_cell_is_one_error_with_a_traceback_a_person_can_read(self):
        reply, outputs = run(self.client, 'int Halve(int n) => n % 2 == 0 ? n / 2 : throw new ArgumentException("odd");\nHalve(3);')
        (kind, error), = outputs
        self.assertEqual((kind, error["ename"]), ("error", "ArgumentException"))
        self.assertIn("odd", error["evalue"])
        self.assertIn("odd", "\n".join(error["traceback"]))
        self.assertNotIn("Microsoft.CodeAnalysis.Scripting", "\n".join(error["traceback"]))
        self.assertEqual(reply["status"], "error")

    def test_a_cell_that_does_not_compile_says_where(self):
        _, outputs = run(self.client, "var a = 1;\nvar b = nowhere;")
        (kind, error), = outputs
        self.assertEqual(kind, "error")
        self.assertIn("CS0103", "\n".join(error["traceback"]))
        self.assertIn("nowhere", "\n".join(error["traceback"]))

    def test_a_question_is_answered(self):
        self.client.execute('var lot = await GetInputAsync("Lot? "); Console.Write(lot);', allow_stdin=True)
        question = self.client.get_stdin_msg(timeout=PATIENCE)
        self.assertEqual(question["content"]["prompt"], "Lot? ")
        self.client.input("H1")
        self.assertEqual(self.wait_for("stream")["content"]["text"], "H1")
        self.client.get_shell_msg(timeout=PATIENCE)

    def test_console_read_line_asks_too(self):
        self.client.execute("Console.Write(Console.ReadLine());", allow_stdin=True)
        self.client.get_stdin_msg(timeout=PATIENCE)
        self.client.input("typed")
        self.assertEqual(self.wait_for("stream")["content"]["text"], "typed")
        self.client.get_shell_msg(timeout=PATIENCE)

    def test_a_question_that_nobody_can_answer_is_an_error_at_once(self):
        reply, _ = run(self.client, 'await GetInputAsync("Lot? ")', allow_stdin=False)
        self.assertEqual(reply["status"], "error")

    def test_completion_and_help_count_code_points(self):
        before = 'var s = "\U0001F37A"; '
        reply = self.client.complete(before + "Gravity.FromSp", reply=True, timeout=PATIENCE)["content"]
        self.assertEqual(reply["matches"], ["FromSpecific"])
        self.assertEqual(reply["cursor_start"], len(before) + len("Gravity."))
        self.assertEqual(reply["cursor_end"], len(before) + len("Gravity.FromSp"))
        shown = self.client.inspect(before + "Gravity.FromSpecific", reply=True, timeout=PATIENCE)["content"]
        self.assertIn("Gravity", shown["data"]["text/plain"])

    def test_help_carries_the_library_s_own_documentation(self):
        shown = self.client.inspect("Gravity.FromSpecific", reply=True, timeout=PATIENCE)["content"]
        self.assertTrue(shown["found"])
        self.assertIn("specific gravity", shown["data"]["text/plain"].lower())

    def test_user_expressions(self):
        run(self.client, "var mass = 20;")
        reply, _ = run(self.client, "", user_expressions={"double": "mass * 2", "wrong": "nowhere"})
        self.assertEqual(reply["user_expressions"]["double"]["data"]["text/plain"], "40")
        self.assertEqual(reply["user_expressions"]["wrong"]["status"], "error")

    def test_cells_that_wait_behind_an_error_are_dropped(self):
        first = self.client.execute('await Task.Delay(500); throw new Exception("on purpose");')
        second = self.client.execute('Console.Write("must not run");')
        replies = {}
        while len(replies) < 2:
            reply = self.client.get_shell_msg(timeout=PATIENCE)
            replies[reply["parent_header"]["msg_id"]] = reply["content"]["status"]
        self.assertEqual((replies[first], replies[second]), ("error", "aborted"))
        self.assertEqual(value(self.client, "2 + 2"), "4")

    def test_two_clients_share_one_state(self):
        other = BlockingKernelClient(connection_file=self.manager.connection_file)
        other.load_connection_file()
        other.start_channels()
        try:
            other.wait_for_ready(timeout=PATIENCE)
            run(other, "var fromOther = 5;")
            self.assertEqual(value(self.client, "fromOther + 1"), "6")
        finally:
            other.stop_channels()

    def test_it_listens_on_five_loopback_sockets_and_nothing_else(self):
        found = listening(self.manager.provisioner.pid)
        self.assertEqual(len(found), 5, found)
        self.assertTrue(all(f.startswith("0100007F:") for f in found), found)

    def wait_for(self, kind):
        while True:
            message = self.client.get_iopub_msg(timeout=PATIENCE)
            if message["msg_type"] == kind:
                return message


if __name__ == "__main__":
    unittest.main()

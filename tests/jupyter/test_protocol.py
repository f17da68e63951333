"""The kernel against jupyter_kernel_test, with every test that it offers switched on.

PythonSuiteTests runs it; by hand, with the kernel installed:  /usr/bin/python3 -m unittest -v test_protocol
"""
import unittest

import jupyter_kernel_test


class SplitBatchKernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = "splitbatch"
    language_name = "C#"
    file_extension = ".cs"
    code_hello_world = 'Console.WriteLine("hello, world");'
    code_stderr = 'Console.Error.WriteLine("to the other side");'
    completion_samples = [
        {"text": "Math.Sqr", "matches": {"Sqrt"}},
        {"text": "System.Threading.Thread.CurrentThre", "matches": {"CurrentThread"}},
        {"text": "Gravity.FromSp", "matches": {"FromSpecific"}},
        {"text": "no_such_name.", "matches": set()},
    ]
    complete_code_samples = ["1 + 1", "var a = 2;", "if (true) { }", "class A { }", 'Console.WriteLine("x");', ""]
    incomplete_code_samples = ["if (true) {", "var a = ", "class A {", "Math.Sqrt(", "1 +", "/* note"]
    invalid_code_samples = ["}", "int x 5;"]
    code_page_something = "Gravity.FromSpecific?"
    code_generate_error = 'throw new InvalidOperationException("on purpose");'
    code_execute_result = [
        {"code": "6 * 7", "result": "42"},
        {"code": '"a" + "b"', "result": "ab"},
        {"code": "6 * 7", "result": "42"},
        {"code": "6 * 7", "result": "42"},
        {"code": "Gravity.FromSpecific(1.050)", "mime": "text/html"},
    ]
    code_display_data = [
        {"code": 'display(HTML("<b>bold</b>"));', "mime": "text/html"},
        {"code": '"*text*".DisplayAs("text/markdown");', "mime": "text/markdown"},
    ]
    code_history_pattern = "6 ?*"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "Gravity.FromSpecific"
    code_clear_output = "ClearOutput();"


if __name__ == "__main__":
    unittest.main()

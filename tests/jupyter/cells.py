"""Running cells from a test."""
NAME = "splitbatch"
PATIENCE = 60


def run(client, code, timeout=PATIENCE, **options):
    """Runs a cell; gives the reply's content and the outputs as (type, content)."""
    outputs = []
    reply = client.execute_interactive(
        code, timeout=timeout, output_hook=lambda m: outputs.append((m["msg_type"], m["content"])), **options)
    return reply["content"], [o for o in outputs if o[0] not in ("status", "execute_input")]


def value(client, code, **options):
    """The plain text of a cell's value."""
    reply, outputs = run(client, code, **options)
    assert reply["status"] == "ok", reply
    return next(c["data"]["text/plain"] for t, c in outputs if t == "execute_result")


def text(outputs, name="stdout"):
    return "".join(c["text"] for t, c in outputs if t == "stream" and c["name"] == name)

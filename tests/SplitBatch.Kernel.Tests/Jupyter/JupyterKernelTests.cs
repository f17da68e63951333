using SplitBatch.Kernel.Jupyter.Wire;
using Xunit;

namespace SplitBatch.Kernel.Jupyter;

public class JupyterKernelTests
{
    [Fact]
    public async Task Interrupt_is_served_beside_a_running_cell_and_ends_it_with_one_error()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"wait"}""", "1");
        Assert.Equal(["status", "execute_input"], [(await talk.HearAsync()).Type, (await talk.HearAsync()).Type]);
        talk.Say(JupyterChannel.Control, "interrupt_request", "{}", "2");
        List<Heard> heard = [];
        while (heard.Count(h => h.Type == "status") < 3)
        {
            heard.Add(await talk.HearAsync());
        }

        Assert.Equal("Interrupted", (string?)Assert.Single(heard, h => h.Type == "error").Content["ename"]);
        Assert.Equal("ok", (string?)Assert.Single(heard, h => h.Type == "interrupt_reply").Content["status"]);

        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 1"}""", "3");
        Assert.Contains(await talk.HearUntilIdleAsync("3"), h => h.Type == "execute_result");
    }

    [Fact]
    public async Task An_error_drops_the_cells_that_wait_but_not_other_requests()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"ask ?\nfail x"}""", "1");
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 2"}""", "2");
        talk.Say(JupyterChannel.Shell, "comm_info_request", "{}", "3");
        talk.Say(JupyterChannel.Stdin, "input_reply", """{"value":"too early"}""", "x", client: "b");
        while ((await talk.HearAsync()).Type != "input_request")
        {
        }

        talk.Say(JupyterChannel.Stdin, "input_reply", """{"value":"go"}""", "y");
        await talk.HearUntilIdleAsync("1");
        var second = await talk.HearUntilIdleAsync("2");
        Assert.Equal(["status", "execute_reply", "status"], second.Select(h => h.Type));
        Assert.Equal("aborted", (string?)second[1].Content["status"]);
        Assert.Contains(await talk.HearUntilIdleAsync("3"), h => h.Type == "comm_info_reply");

        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 4"}""", "4");
        Assert.Contains(await talk.HearUntilIdleAsync("4"), h => h.Type == "execute_result");
    }

    [Fact]
    public async Task Without_stop_on_error_the_waiting_cells_run()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"ask ?\nfail x","stop_on_error":false}""", "1");
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 2"}""", "2");
        while ((await talk.HearAsync()).Type != "input_request")
        {
        }

        talk.Say(JupyterChannel.Stdin, "input_reply", """{"value":"go"}""", "y");
        await talk.HearUntilIdleAsync("1");
        Assert.Contains(await talk.HearUntilIdleAsync("2"), h => h.Type == "execute_result");
    }

    [Fact]
    public async Task A_question_goes_to_the_client_that_ran_the_cell_and_others_cannot_answer_it()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"ask Lot?"}""", "1", client: "b");
        Heard question;
        while ((question = await talk.HearAsync()).Type != "input_request")
        {
        }

        Assert.Equal("b", question.Route);
        talk.Say(JupyterChannel.Stdin, "input_reply", """{"value":"from a"}""", "x", client: "a");
        talk.Say(JupyterChannel.Stdin, "input_reply", """{"value":"from b"}""", "y", client: "b");
        var heard = await talk.HearUntilIdleAsync("1");
        Assert.Equal("from b", (string?)Assert.Single(heard, h => h.Type == "stream").Content["text"]);
    }

    [Fact]
    public async Task Two_clients_get_their_own_replies_and_one_count()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 1"}""", "1", client: "a");
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"value 2"}""", "2", client: "b");
        var first = Assert.Single(await talk.HearUntilIdleAsync("1"), h => h.Type == "execute_reply");
        var second = Assert.Single(await talk.HearUntilIdleAsync("2"), h => h.Type == "execute_reply");
        Assert.Equal(("a", 1), (first.Route, (int)first.Content["execution_count"]!));
        Assert.Equal(("b", 2), (second.Route, (int)second.Content["execution_count"]!));
    }

    [Fact]
    public async Task A_thousand_prints_become_few_messages_and_lose_nothing()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        var code = string.Join("\\n", Enumerable.Range(0, 1000).Select(i => $"say {i}"));
        talk.Say(JupyterChannel.Shell, "execute_request", $$"""{"code":"{{code}}"}""", "1");
        var streams = (await talk.HearUntilIdleAsync("1")).Where(h => h.Type == "stream").ToList();
        Assert.Equal(string.Concat(Enumerable.Range(0, 1000).Select(i => $"{i}\n")),
            string.Concat(streams.Select(s => (string?)s.Content["text"])));
        Assert.InRange(streams.Count, 1, 50);
    }

    [Fact]
    public async Task Shutdown_ends_the_kernel_even_while_a_cell_runs()
    {
        await using var talk = new Conversation();
        await talk.HearAsync();
        talk.Say(JupyterChannel.Shell, "execute_request", """{"code":"ask ?"}""", "1");
        while ((await talk.HearAsync()).Type != "input_request")
        {
        }

        talk.Say(JupyterChannel.Control, "shutdown_request", """{"restart":false}""", "2");
        await talk.Running.WaitAsync(TimeSpan.FromSeconds(20));
    }
}

using System.Text.Json.Nodes;
using SplitBatch.Kernel.Jupyter.Wire;
using Xunit;

namespace SplitBatch.Kernel.Jupyter;

/// <summary>
/// Plays the exchanges in the folder beside: a line <c>&gt; id channel type content</c> is said to the kernel, the lines
/// <c>&lt; parent channel type content</c> behind it are what it must answer, in that order and nothing else.
/// </summary>
public class RecordedExchangeTests
{
    public static TheoryData<string> Exchanges()
    {
        var names = Directory.GetFiles(Folder, "*.txt").Select(Path.GetFileNameWithoutExtension).Order();
        return new TheoryData<string>(names!);
    }

    private static string Folder => Path.Combine(AppContext.BaseDirectory, "Jupyter", "Exchanges");

    [Theory]
    [MemberData(nameof(Exchanges))]
    public async Task The_kernel_answers_as_recorded(string exchange)
    {
        await using var talk = new Conversation();
        Assert.Equal("""< - iopub status {"execution_state":"starting"}""", (await talk.HearAsync()).ToString());
        foreach (var line in await File.ReadAllLinesAsync(Path.Combine(Folder, exchange + ".txt")))
        {
            var words = line.Split(' ', 5);
            if (line.StartsWith("> ", StringComparison.Ordinal))
            {
                talk.Say(Enum.Parse<JupyterChannel>(words[2], ignoreCase: true), words[3], words[4], words[1]);
            }
            else if (line.StartsWith("< ", StringComparison.Ordinal))
            {
                var heard = (await talk.HearAsync()).ToString().Split(' ', 5);
                Assert.Equal(words[..4], heard[..4]);
                Assert.True(
                    JsonNode.DeepEquals(JsonNode.Parse(words[4]), JsonNode.Parse(heard[4])),
                    $"in answer to {words[1]}, {words[3]} must be\n  {words[4]}\nand was\n  {heard[4]}");
            }
        }
    }
}

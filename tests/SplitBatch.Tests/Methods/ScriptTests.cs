using System.Globalization;
using System.Text.Json;

namespace SplitBatch.Methods;

/// <summary>The check values against what SciPy and R print today, by scripts that read the questions and not the answers.</summary>
public class ScriptTests
{
    [Theory]
    [InlineData("methods_scipy.csv", "# SciPy")]
    [InlineData("methods_r.csv", "# R version")]
    public void A_script_finds_every_check_value_again(string file, string program)
    {
        string[] lines = File.ReadAllLines(Path.Combine(CheckValue.Folder, file));
        Assert.StartsWith(program, lines[0], StringComparison.Ordinal);
        var printed = lines.Where(line => !line.StartsWith('#')).Skip(1).Select(line => line.Split(',', 3))
            .ToDictionary(cells => (cells[0], cells[1]), cells => cells[2].Trim('"'));
        var expected = CheckValue.All.Values
            .SelectMany(
                value => Parts(value.Expected).Select(part => (Key: (value.Id, part.Name), part.Value, value.Tolerance))).ToArray();
        Assert.Equal(expected.Select(part => part.Key).Order(), printed.Keys.Order());
        Assert.All(expected,
            part => Assert.True(Agrees(part.Value, printed[part.Key], part.Tolerance),
                $"{part.Key}: {part.Value} expected, {printed[part.Key]} printed"));
    }

    private static IEnumerable<(string Name, JsonElement Value)> Parts(JsonElement value) => value.ValueKind == JsonValueKind.Object
        ? value.EnumerateObject().Select(part => (part.Name, part.Value))
        : [("", value)];

    private static bool Agrees(JsonElement expected, string printed, double tolerance) => expected.ValueKind switch
    {
        JsonValueKind.Number when expected.TryGetInt32(out int whole) => double.Parse(printed, CultureInfo.InvariantCulture) == whole,
        JsonValueKind.Number => Math.Abs(expected.GetDouble() - double.Parse(printed, CultureInfo.InvariantCulture)) <= tolerance,
        JsonValueKind.Array => printed == $"[{string.Join(' ', expected.EnumerateArray().Select(Text))}]",
        _ => printed == Text(expected),
    };

    private static string Text(JsonElement value) => value.ValueKind switch
    {
        JsonValueKind.Null => "null",
        JsonValueKind.True => "true",
        JsonValueKind.False => "false",
        _ => value.ToString(),
    };
}

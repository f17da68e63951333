using System.Text.Json;

namespace SplitBatch.Methods;

/// <summary>Every row of the check values, through the public members of the library.</summary>
public class CheckValueTests
{
    public static TheoryData<string> Rows => [.. CheckValue.All.Keys];

    [Theory]
    [MemberData(nameof(Rows))]
    public void The_library_answers_as_SciPy_and_R_did(string id)
    {
        var value = CheckValue.All[id];
        var answer = JsonSerializer.SerializeToElement(Answers.Of(value));
        AssertAlike(value.Expected, answer, value.Tolerance, id);
    }

    [Fact]
    public void No_row_is_lost() => Assert.Equal(166, CheckValue.All.Count);

    [Theory]
    [InlineData("1.5", "1.50000001", 1e-8, true)]
    [InlineData("1.5", "1.5000001", 1e-8, false)]
    [InlineData("[1,null]", "[1,null]", 1e-8, true)]
    [InlineData("[1,null]", "[1,2]", 1e-8, false)]
    [InlineData("[1]", "[1,2]", 1e-8, false)]
    [InlineData("""{"a":true}""", """{"a":false}""", 1, false)]
    [InlineData("""{"a":"shown"}""", """{"a":"shown","b":1}""", 1, false)]
    [InlineData("\"shown\"", "\"alarm\"", 1, false)]
    [InlineData("2", "2.0000001", 1e-3, false)] // A whole number has to be met exactly.
    public void The_comparison_tells_what_differs(string expected, string answer, double tolerance, bool alike) =>
        Assert.Equal(alike, Differences(CheckValue.Json(expected), CheckValue.Json(answer), tolerance, "") is []);

    private static void AssertAlike(JsonElement expected, JsonElement answer, double tolerance, string id) =>
        Assert.Empty(Differences(expected, answer, tolerance, id));

    private static IReadOnlyList<string> Differences(JsonElement expected, JsonElement answer, double tolerance, string where)
    {
        if (expected.ValueKind != answer.ValueKind) return [$"{where}: {expected} expected, {answer} found"];
        return expected.ValueKind switch
        {
            JsonValueKind.Number => Near(expected, answer, tolerance) ? [] : [$"{where}: {expected} expected, {answer} found"],
            JsonValueKind.Array when expected.GetArrayLength() == answer.GetArrayLength() =>
                [.. expected.EnumerateArray().Zip(answer.EnumerateArray())
                    .SelectMany((pair, i) => Differences(pair.First, pair.Second, tolerance, $"{where}[{i}]"))],
            JsonValueKind.Object when Names(expected).SetEquals(Names(answer)) => [.. expected.EnumerateObject()
                .SelectMany(one => Differences(one.Value, answer.GetProperty(one.Name), tolerance, $"{where}.{one.Name}"))],
            JsonValueKind.Array or JsonValueKind.Object => [$"{where}: {expected} expected, {answer} found"],
            _ => expected.ToString() == answer.ToString() ? [] : [$"{where}: {expected} expected, {answer} found"],
        };
    }

    private static bool Near(JsonElement expected, JsonElement answer, double tolerance) =>
        expected.GetRawText().All(c => char.IsDigit(c) || c == '-')
            ? expected.GetDouble() == answer.GetDouble()
            : Math.Abs(expected.GetDouble() - answer.GetDouble()) <= tolerance;

    private static HashSet<string> Names(JsonElement element) => [.. element.EnumerateObject().Select(one => one.Name)];
}

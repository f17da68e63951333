using System.Text.RegularExpressions;

namespace SplitBatch.Kernel.Host;

/// <summary>Plain words beside the compiler's, for the mistakes that people make who have not programmed before.</summary>
internal static partial class CompilerHints
{
    private static readonly string[] Numbers = ["double", "int", "double?", "int?", "decimal", "long"];

    private static readonly Dictionary<string, string> Units = new()
    {
        ["Mass"] = "Mass.FromGrams(50) or Mass.FromOunces(1.75)",
        ["Volume"] = "Volume.FromLiters(20) or Volume.FromUsGallons(5)",
        ["Temperature"] = "Temperature.FromDegreesCelsius(18) or Temperature.FromDegreesFahrenheit(65)",
        ["Duration"] = "Duration.FromMinutes(60)",
        ["Gravity"] = "Gravity.FromSpecific(1.050) or Gravity.FromPlato(12.4)",
        ["AlphaAcid"] = "AlphaAcid.FromPercent(5.6)",
        ["BitternessUnits"] = "BitternessUnits.From(30)",
    };

    private static readonly Dictionary<string, string> ById = new()
    {
        ["CS1002"] =
            "A semicolon is missing at the end of this statement. Only the last line of a cell may go without one: its value is then "
            + "shown.",
        ["CS1010"] = "A text is opened with a quotation mark and not closed on the same line.",
        ["CS1026"] = "A closing parenthesis ) is missing.",
        ["CS1513"] = "A closing brace } is missing.",
        ["CS1003"] = "Something is missing between two parts, often a comma between two arguments.",
        ["CS1056"] = "This character cannot stand here. Curly quotation marks are often the cause: write straight ones, as \"cones\".",
        ["CS0103"] = "Nothing of this name is known. Look at the spelling, capitals included, and whether the cell that makes it was run.",
        ["CS0246"] = "Nothing of this name is known. Look at the spelling, capitals included.",
        ["CS1061"] = "There is nothing of this name in there. Type the point and press Tab to see what there is.",
        ["CS0117"] = "There is nothing of this name in there. Type the point and press Tab to see what there is.",
        ["CS1739"] = "This call takes no argument of this name. Put the cursor into the parentheses and press Shift+Tab to see the names.",
        ["CS1501"] =
            "This call takes another number of arguments. In code a decimal is written with a point: 5.6 is one number, 5,6 are two.",
        ["CS7036"] = "An argument is missing. Put the cursor into the parentheses and press Shift+Tab to see what is needed.",
        ["CS8917"] = "The value cannot be told from this alone; end the call with its parentheses, as trial.Verdict().",
        ["CS0428"] = "The parentheses are missing at the end of the call, as trial.Verdict().",
        ["CS1012"] = "Single quotation marks hold one letter only: write texts with double ones, as \"cones\".",
        ["CS1525"] =
            "Something is missing before this place, or too much stands there: often a value that was left out, or a comma or "
            + "parenthesis too many.",
        ["CS0019"] =
            "These two cannot be calculated with each other as they stand: a value with a unit needs another with a unit, and a text "
            + "is no number.",
        ["CS1955"] = "This is a value and not a call: leave out the parentheses, as trial.Title.",
        ["CS8852"] = "A result is not changed once it is made: make the change in the trial's files, or build a new value.",
        ["CS0200"] = "A result is not changed once it is made: make the change in the trial's files, or build a new value.",
        ["CS0841"] = "This is used above the line that makes it: move that line up.",
        ["CS0201"] =
            "This line does nothing by itself. The value to be shown stands last in the cell; earlier ones are shown with display(...).",
    };

    /// <summary>A hint for a compiler error, or null when there is none.</summary>
    /// <param name="id">The error's id, as CS1002.</param>
    /// <param name="message">The compiler's message, in English.</param>
    /// <param name="known">Variables of earlier cells.</param>
    public static string? For(string id, string message, IEnumerable<string>? known = null)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (id is "CS0103" or "CS0246" or "CS1061" or "CS0117" && KnownNames.Nearest(message, known ?? []) is { } meant)
            return $"{ById[id]} Did you mean {meant}?";
        if (id is "CS1503" or "CS0029" or "CS0266" && Conversion().Match(message) is { Success: true } types)
            return Convert(Short(types.Groups["from"].Value), Short(types.Groups["to"].Value));
        if (id is "CS1003" or "CS1002" && message.Contains("','", StringComparison.Ordinal)) return ById["CS1003"];
        return ById.GetValueOrDefault(id);
    }

    private static string? Convert(string from, string to) => (from, to) switch
    {
        ("string", _) when Numbers.Contains(to) =>
            "A number belongs here and a text was given: write it without quotation marks, and decimals with a point, as 5.6.",
        (_, "string") when Numbers.Contains(from) =>
            "A text belongs here and a number was given: put it in quotation marks, as \"cones\".",
        ("double" or "decimal", "int" or "int?") => "A whole number belongs here, as 24.",
        _ when Units.TryGetValue(to.TrimEnd('?'), out var example) => $"A value with its unit belongs here, as {example}.",
        _ => null,
    };

    private static string Short(string type) => type[(type.LastIndexOf('.') + 1)..];

    [GeneratedRegex("'(?<from>[^']+)' to (type )?'(?<to>[^']+)'")]
    private static partial Regex Conversion();
}

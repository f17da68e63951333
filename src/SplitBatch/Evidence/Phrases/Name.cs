using System.Globalization;
using System.Text.RegularExpressions;

namespace SplitBatch.Evidence.Phrases;

/// <summary>A name in a sentence: of a half, a panel, a protocol, a quantity. Digits in it, as in 3-AFC, are no numbers.</summary>
/// <param name="Text">The name as it is written.</param>
public readonly record struct Name(string Text);

/// <summary>Words that a person wrote into a file, quoted in a sentence; the numbers in them count as stated.</summary>
/// <param name="Text">The words as they are written.</param>
public readonly partial record struct Quote(string Text)
{
    /// <summary>The numbers that stand alone in it: dates, codes such as T17 and names with digits are none.</summary>
    internal IEnumerable<double> Numbers => Alone().Matches(Text).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"(?<![\w.:-])\d+(?:\.\d+)?(?![\w:-])")]
    private static partial Regex Alone();
}

using System.Globalization;
using System.Text.RegularExpressions;

namespace SplitBatch.Evidence;

/// <summary>
/// One sentence that states numbers, with those numbers, the rows that they come from and the method that gives them.
/// </summary>
/// <remarks>
/// The sentence is an interpolated string, and its fixed part may hold no digit: so a sentence cannot state a number that
/// is not among <see cref="Numbers"/>, and the ledger of claims is complete by construction.
/// </remarks>
public sealed partial record Claim
{
    /// <summary>A claim.</summary>
    /// <param name="id">A short name, unique in a write-up, as <c>lab.difference</c>.</param>
    /// <param name="sentence">The sentence; every number in it is an interpolated value.</param>
    /// <param name="method">How the numbers are made: the test, formula or standard.</param>
    /// <param name="sources">The files (and rows) of the trial folder that the numbers come from.</param>
    /// <exception cref="ArgumentException">The fixed part of the sentence holds a digit, or a text is blank.</exception>
    public Claim(string id, FormattableString sentence, string method, params IEnumerable<string> sources)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        Id = Guard.NotBlank(id);
        Method = Guard.NotBlank(method);
        Sources = [.. sources];
        if (Placeholder().Replace(sentence.Format, "").FirstOrDefault(char.IsAsciiDigit) is not '\0' and var digit)
        {
            throw new ArgumentException($"The claim \"{id}\" writes the digit {digit} into its sentence; give the number as an interpolated value.", nameof(sentence));
        }

        Sentence = sentence.ToString(CultureInfo.InvariantCulture);
        Numbers = [.. sentence.GetArguments().Where(IsNumber).Select(value => Convert.ToDouble(value, CultureInfo.InvariantCulture))];
    }

    /// <summary>
    /// A sentence whose numbers, if any, were written into it before: what follows from the design, what a log says, or what a
    /// person wrote down. Its numbers are read from it again; dates, codes and names with digits are none.
    /// </summary>
    /// <param name="id">A short name, unique in a write-up.</param>
    /// <param name="sentence">The sentence.</param>
    /// <param name="basis">What it follows from.</param>
    /// <param name="sources">The files that it rests on.</param>
    public static Claim InWords(string id, string sentence, string basis = "follows from the design of the trial", params IEnumerable<string> sources) =>
        new(id, $"{Guard.NotBlank(sentence)}", basis, sources) { Numbers = [.. Written().Matches(sentence).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))] };

    /// <summary>A short name, unique in a write-up.</summary>
    public string Id { get; }

    /// <summary>The sentence as a reader sees it.</summary>
    public string Sentence { get; }

    /// <summary>The numbers in the sentence, unrounded, in the sentence's order.</summary>
    public IReadOnlyList<double> Numbers { get; private init; }

    /// <summary>The test, formula or standard behind the numbers.</summary>
    public string Method { get; }

    /// <summary>The files and rows of the trial folder that the numbers come from.</summary>
    public IReadOnlyList<string> Sources { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Sentence;

    private static bool IsNumber(object? value) => value is int or long or double or decimal;

    [GeneratedRegex(@"\{[^{}]*\}")]
    private static partial Regex Placeholder();

    /// <summary>A number that stands alone: not part of a date, a code such as T17, or a name.</summary>
    [GeneratedRegex(@"(?<![\w.:-])\d+(?:\.\d+)?(?![\w:-])")]
    private static partial Regex Written();
}

using System.Globalization;
using System.Text.RegularExpressions;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// The numbers of the three write-ups as a script of its own works them out from the trials' files (Python with SciPy; script, versions
/// and result in tests/reference/write-up), and how a claim is held against them.
/// </summary>
internal static partial class Recomputed
{
    private static readonly Lazy<ILookup<string, (string What, string[] Values)>> Rows =
        new(() => File.ReadLines(ThreeWriteUps.Repository("tests", "reference", "write-up", "recompute.csv"))
            .Where(line => line.Length > 0 && line[0] != '#').Skip(1).Select(line => line.Split(','))
            .ToLookup(cells => cells[0], cells => (cells[1], cells[2].Split(' '))));

    /// <summary>Which of the script's rows a caption's numbers are looked for in, told by words that only it has.</summary>
    private static readonly (string Words, string What)[] Captions =
    [
        ("plant matter", "caption.charges"), ("Rager", "caption.models"), ("largest doubt", "caption.doubt"),
        ("they differ by", "caption.lab"),
        ("d-prime", "caption.forest"), ("estimated", "caption.estimate"), ("By guessing alone", "caption.count"),
        ("fits best", "caption.share"), ("number of tasters", "caption.power"),
    ];

    /// <summary>The SHA-256 of every file that the script read.</summary>
    public static IReadOnlyDictionary<string, string> Files(string trial) =>
        Rows.Value[trial].Where(row => row.What.StartsWith("file ", StringComparison.Ordinal))
            .ToDictionary(row => row.What["file ".Length..], row => row.Values[0]);

    /// <summary>What is wrong with a claim's numbers; null when the script gives the same.</summary>
    public static string? Complaint(string trial, Claim claim)
    {
        if (claim.Numbers.Count == 0) return null;
        var what = claim.Id.StartsWith("limit.panel.main.remark.", StringComparison.Ordinal)
            && claim.Sentence.Contains("not returned", StringComparison.Ordinal) ? "returned" : claim.Id;
        if (claim.Id.Contains(".remark.", StringComparison.Ordinal) && Duplicate().Match(claim.Sentence) is { Success: true } twice)
            what = $"duplicate {claim.Id.Split('.')[2]} {twice.Value}";
        if (Of(trial, what) is not { } expected) return $"{claim.Id} is worked out nowhere else: {claim.Sentence}";
        var whole = claim.Id == "lab.estimate" ? 100 : 0; // What is left over of a ratio near one is as sure as the ratio.
        var same = expected.Count == claim.Numbers.Count
            && expected.Zip(claim.Numbers).All(pair => Math.Abs(pair.First - pair.Second) <= 1e-4 * (Math.Abs(pair.First) + whole) + 1e-9);
        return same ? null : $"{claim.Id} states {Show(claim.Numbers)}; worked out again: {Show(expected)}";
    }

    /// <summary>
    /// What is wrong with the numbers printed in a caption; null when each is one of those worked out for it, rounded as printed.
    /// </summary>
    public static string? CaptionComplaint(string trial, Claim caption)
    {
        var what = Captions.FirstOrDefault(one => caption.Sentence.Contains(one.Words, StringComparison.Ordinal)).What;
        if (what is null || Of(trial, what) is not { } pool) return $"A caption is worked out nowhere else: {caption.Sentence}";
        var slack = what is "caption.doubt" or "caption.estimate" ? 0.006 : 0; // both draw at random
        var strange = Printed(caption.Sentence).Where(number => !pool.Any(value => Rounds(value, number, slack))).ToList();
        return strange.Count == 0 ? null : $"{what} prints {string.Join(", ", strange)}, which is none of {Show(pool)}";
    }

    /// <summary>The numbers that stand alone in a sentence, as printed; codes such as T17 and dates are none.</summary>
    public static IEnumerable<string> Printed(string sentence) => Number().Matches(sentence).Select(match => match.Value);

    /// <summary>
    /// Whether a value, rounded to the decimals of a printed number, gives it; with slack, a relative error of that size is allowed
    /// besides.
    /// </summary>
    public static bool Rounds(double value, string printed, double slack = 0)
    {
        var decimals = printed.Contains('.', StringComparison.Ordinal)
            ? printed.Length - printed.IndexOf('.', StringComparison.Ordinal) - 1
            : 0;
        return Math.Abs(Math.Abs(value) - double.Parse(printed, CultureInfo.InvariantCulture)) <= 0.5 * Math.Pow(10, -decimals) * 1.000001
            + slack * Math.Abs(value);
    }

    private static List<double>? Of(string trial, string what) =>
        Rows.Value[trial]
            .FirstOrDefault(row => row.What == what).Values?.Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToList();

    private static string Show(IEnumerable<double> numbers) =>
        string.Join(" ", numbers.Select(number => number.ToString("G6", CultureInfo.InvariantCulture)));

    /// <summary>The taster of a remark about several ballots for one set.</summary>
    [GeneratedRegex(@"\w+(?= is (not )?counted.*ballots with)")]
    private static partial Regex Duplicate();

    [GeneratedRegex(@"(?<![\w.:-])\d+(?:\.\d+)?(?![\w:-])")]
    private static partial Regex Number();
}

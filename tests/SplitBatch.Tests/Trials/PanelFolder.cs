using System.Globalization;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Reading;

namespace SplitBatch.Trials;

/// <summary>A trial folder with one panel and nothing else, made for a test.</summary>
internal sealed class PanelFolder : IDisposable
{
    private readonly TemporaryFolder folder = new();

    /// <summary>Declares a panel named main and draws its key.</summary>
    /// <param name="protocol">The protocol's name.</param>
    /// <param name="tasters">How many tasters.</param>
    /// <param name="more">More of the panel's section, as <c>"replicates": 3</c>; empty for none.</param>
    /// <param name="options">How the panel is seated.</param>
    public PanelFolder(string protocol, int tasters, string more = "", ServingOptions? options = null)
    {
        folder.Write("trial.json", $$"""
            { "title": "A test", "question": "Is it so?", "variable": "one thing", "beers": { "A": "left", "B": "right" },
              "panels": [ { "name": "main", "protocol": "{{protocol}}", "declared": "2026-04-20", "alpha": 0.05, "power": 0.8, "margin": 0.3, "beta": 0.05,
                            "tasters": {{tasters}}, "seed": 7{{(more.Length == 0 ? "" : ", " + more)}} } ] }
            """);
        Plan = ServingPlan.Balanced(Protocol.Parse(protocol), tasters, 7, options ?? new ServingOptions());
        folder.Write("serving-main.csv", ServingKeyFile.Write(Plan));
    }

    /// <summary>The key.</summary>
    public ServingPlan Plan { get; }

    /// <summary>Writes a file into the folder.</summary>
    public void Write(string file, string text)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(folder.PathOf(file))!);
        folder.Write(file, text);
    }

    /// <summary>Writes ballots: right answers in the first sets, wrong ones in the others.</summary>
    /// <param name="right">How many are right.</param>
    /// <param name="change">Changes single rows, taster and set to the row; null leaves a row out.</param>
    public void Answer(int right, Func<ServedSet, string, string?>? change = null) => Answer(set => set.Number <= right, change);

    /// <summary>Writes ballots.</summary>
    public void Answer(Func<ServedSet, bool> isRight, Func<ServedSet, string, string?>? change = null) => Write("ballots-main.csv",
        "taster,set,answer,when,knew variable,brewer,late,preferred\n" + string.Concat(Plan.Sets
            .Select(set =>
                (set, row: string.Create(CultureInfo.InvariantCulture,
                    $"{set.Taster},{set.Number},{AnswerTo(set, isRight(set))},2026-05-02 19:{set.Number % 60:00},,,,")))
            .Select(pair => change is null ? pair.row : change(pair.set, pair.row)).Where(row => row is not null)
            .Select(row => row + "\n")));

    /// <summary>An answer to a set that is right or wrong.</summary>
    public string AnswerTo(ServedSet set, bool right) => Plan.Design.Answer switch
    {
        AnswerKind.OddCup => set.CodedCups.First(cup => cup.Beer == set.Order.OddBeer == right).Code,
        AnswerKind.StrongerCup => set.CodedCups.First(cup => cup.Beer == Plan.Expected == right).Code,
        AnswerKind.OwnOrNot => set.Order.Beers[0] == Side.A == right ? "A" : "not A",
        AnswerKind.SameOrDifferent => set.Order.IsMixed == right ? "different" : "same",
        _ => throw new NotSupportedException(),
    };

    /// <summary>The trial.</summary>
    public Trial Open() => Trial.Open(folder.Path);

    /// <summary>What is wrong or dubious.</summary>
    public IReadOnlyList<Fault> Check() => Trial.Check(folder.Path, new DateOnly(2026, 6, 1));

    /// <summary>Replaces words in a file.</summary>
    public void Replace(string file, string old, string by)
    {
        var text = File.ReadAllText(folder.PathOf(file));
        Assert.Contains(old, text, StringComparison.Ordinal);
        folder.Write(file, text.Replace(old, by, StringComparison.Ordinal));
    }

    /// <inheritdoc/>
    public void Dispose() => folder.Dispose();
}

using System.Globalization;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch;

/// <summary>What tests start as a program of its own: a writer of rows (<see cref="WriterProgram"/>) or of ballots (<see cref="BallotWriter"/>).</summary>
internal static class Program
{
    public static int Main(string[] args) => args switch
    {
        ["hello"] => 0,
        [BallotWriter.Word, var folder, var from, var many] => BallotWriter.Run(folder, Number(from), Number(many)),
        [WriterProgram.Word, ..] => WriterProgram.Run(args),
        _ => 2,
    };

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}

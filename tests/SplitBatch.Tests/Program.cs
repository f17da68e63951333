using System.Globalization;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;
using SplitBatch.Trials.Seals;

namespace SplitBatch;

/// <summary>
/// What tests start as a program of its own: a writer of rows (<see cref="WriterProgram"/>), of ballots (<see cref="BallotWriter"/>) or
/// of a panel from its seal to its close (<see cref="SealWriter"/>).
/// </summary>
internal static class Program
{
    public static int Main(string[] args) => args switch
    {
        ["hello"] => 0,
        [BallotWriter.Word, var folder, var from, var many] => BallotWriter.Run(folder, Number(from), Number(many)),
        [SealWriter.Word, var trial, var keys, var step] => SealWriter.Run(trial, keys, Number(step)),
        [WriterProgram.Word, ..] => WriterProgram.Run(args),
        _ => 2,
    };

    private static int Number(string text) => int.Parse(text, CultureInfo.InvariantCulture);
}

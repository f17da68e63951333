using System.Diagnostics;
using System.Globalization;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Trials;

/// <summary>The test assembly, started as a program that enters ballots as somebody in a class would.</summary>
internal static class BallotWriter
{
    public const string Word = "ballots";

    /// <summary>
    /// Starts a program that enters the ballots of so many tasters: one for each line it is given, and it says each once it is in.
    /// </summary>
    public static Process Start(string folder, int first, int count)
    {
        string[] arguments = [typeof(BallotWriter).Assembly.Location, Word, folder, Text(first), Text(count)];
        return Process.Start(new ProcessStartInfo("dotnet", arguments)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
    }

    public static int Run(string folder, int first, int count)
    {
        var trial = Trial.Open(folder);
        foreach (var set in trial.Panel("main").Serving!.Sets.Skip(first).Take(count))
        {
            if (Console.In.ReadLine() is null) return 1;
            Console.WriteLine(trial.Enter(set.Taster, AnswerOf(set)).Answered);
        }

        return 0;
    }

    /// <summary>Every third taster is right, by a rule that the reader can follow as well.</summary>
    public static string AnswerOf(ServedSet set)
    {
        var odd = set.CodedCups.Single(cup => cup.Beer == set.Order.OddBeer);
        return set.Number % 3 == 0 ? odd.Code : set.CodedCups.First(cup => cup != odd).Code;
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}

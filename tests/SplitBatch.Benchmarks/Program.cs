using System.Globalization;
using BenchmarkDotNet.Running;
using SplitBatch.Benchmarks.Races;

namespace SplitBatch.Benchmarks;

/// <summary><c>races</c> runs the same work here and in R or Python, in one run; anything else goes to BenchmarkDotNet.</summary>
internal static class Program
{
    public static void Main(string[] args)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        if (args is not ["races"])
        {
            BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
            return;
        }

        Console.WriteLine("| work | here | peers | times faster than the best peer | target |\n| --- | ---: | --- | ---: | ---: |");
        foreach (var race in Race.All) Console.WriteLine(race.Run());
        Console.WriteLine("\n| work | one thread | two threads | times faster |\n| --- | ---: | ---: | ---: |");
        Console.WriteLine(
            Race.Scaling("10 million simulated triangles", () => Work.Triangles(threads: 1), () => Work.Triangles(threads: 2)));
        Console.WriteLine(Race.Scaling("a million draws of two doses", () => Work.Doubt(threads: 1), () => Work.Doubt(threads: 2)));
    }
}

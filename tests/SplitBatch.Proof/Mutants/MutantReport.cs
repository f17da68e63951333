using System.Text;
using static System.FormattableString;

namespace SplitBatch.Proof.Mutants;

/// <summary>What the tests notice of the slips, as a page of Markdown.</summary>
internal static class MutantReport
{
    /// <summary>Builds the library with every slip of a room, runs them, and writes the page.</summary>
    /// <param name="root">The project's top folder.</param>
    /// <param name="room">The room.</param>
    /// <param name="command">How it is made again.</param>
    public static string Of(string root, string room, string command)
    {
        var scratch = Directory.CreateTempSubdirectory("splitbatch-mutants-");
        try
        {
            var build = MutantBuild.Of(root, room, scratch.FullName);
            return Page(room, build, MutantRun.Of(build), command);
        }
        finally
        {
            scratch.Delete(recursive: true);
        }
    }

    private static string Page(string room, MutantBuild build, IReadOnlyList<MutantResult> results, string command)
    {
        var found = results.Count(one => one.FoundBy is not null);
        var text = new StringBuilder();
        text.AppendLine(Invariant($"""
            # Slips in {room}

            Would a test notice a slip in what may be said? Every comparison, condition, choice, number and piece of wording of the room is changed, one at a time: conditions are turned round, `and` becomes `or`, an arm of a switch is passed over, a finding is left out, a word becomes its opposite or another. All are built into one library, each behind a switch; each is switched on in turn, and the approved sentences and the room's own tests that come by it are asked. Made by

            ```bash
            {command}
            ```

            {results.Count:N0} slips, {found:N0} noticed: {100.0 * found / results.Count:0.0} %. By the approved sentences {results.Count(one => one.FoundBy?.StartsWith("sentences", StringComparison.Ordinal) == true):N0}, by the tests of the room {results.Count(one => one.FoundBy?.StartsWith("sentences", StringComparison.Ordinal) == false):N0} more. {build.NotCompiled:N0} places are left out because a slip there does not compile, as where a condition names what a later word uses.

            | kind of slip | how many | noticed | |
            | --- | ---: | ---: | ---: |
            """));
        foreach (var kind in results.GroupBy(one => one.Mutant.Kind).OrderBy(kind => kind.Key, StringComparer.Ordinal))
        {
            text.AppendLine(Invariant($"| {kind.Key} | {kind.Count():N0} | {kind.Count(one => one.FoundBy is not null):N0} | ")
                + Invariant($"{100.0 * kind.Count(one => one.FoundBy is not null) / kind.Count():0.0} % |"));
        }

        text.AppendLine().AppendLine("## Not noticed").AppendLine();
        foreach (var one in results.Where(one => one.FoundBy is null))
            text.AppendLine(Invariant($"- {one.Mutant}{(one.IsReached ? "" : " (nothing comes by)")}").ReplaceLineEndings(" "));
        return text.ToString().ReplaceLineEndings("\n");
    }
}

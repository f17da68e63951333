using System.Text.Encodings.Web;
using System.Text.Json;
using SplitBatch.Display.WriteUp;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Findings;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Proof.Sentences;

/// <summary>Random whole trials, opened from their files and printed: what an independent reader judges.</summary>
internal static class SentenceRun
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Writes one line of JSON for each trial: its number, its files, and what is printed of it, part by part.</summary>
    /// <param name="trials">How many.</param>
    /// <param name="first">The number of the first, which is its seed.</param>
    /// <param name="captionsOfEach">Whose captions are printed as well: of each so-manieth trial, because drawing a whole write-up takes
    /// long.</param>
    /// <param name="output">Takes the lines.</param>
    public static void Write(int trials, int first, int captionsOfEach, TextWriter output)
    {
        var folder = Directory.CreateTempSubdirectory("splitbatch-sentences-");
        try
        {
            for (var seed = first; seed < first + trials; seed++)
            {
                var files = RandomTrial.Of(seed).Files;
                output.Write(
                    JsonSerializer.Serialize(new { trial = seed, files,
                        said = Said(folder.FullName, files, seed % captionsOfEach == 0) }, Plain));
                output.Write('\n');
            }
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>What is printed of a trial: pairs of the part of the write-up and the sentence.</summary>
    private static IReadOnlyList<string[]> Said(string folder, IReadOnlyDictionary<string, string> files, bool captions)
    {
        foreach (var old in Directory.EnumerateFiles(folder)) File.Delete(old);
        foreach (var (name, text) in files) File.WriteAllText(Path.Combine(folder, name), text);
        try
        {
            var trial = Trial.Open(folder);
            var verdict = trial.Verdict();
            return
            [
                ["headline", verdict.Headline],
                .. verdict.Claims.Select(claim => new[] { claim.Finding!.About.ToString(), claim.Sentence }),
                .. verdict.Limitations.Select(claim => new[] { $"limits, {claim.Finding!.About}", claim.Sentence }),
                .. verdict.DoesNotShow.Select(claim => new[] { "not shown", claim.Sentence }),
                .. verdict.Next.Select(claim => new[] { "next", claim.Sentence }),
                .. captions ? TrialReport.Of(trial).Figures.Select(figure => new[] { "caption", figure.Reading }) : [],
            ];
        }
        catch (TrialFolderException refused)
        {
            return [["refused", refused.Message]];
        }
    }
}

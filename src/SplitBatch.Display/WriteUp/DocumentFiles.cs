using System.Security.Cryptography;
using System.Text;
using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.WriteUp;

/// <summary>Puts a document's files into a folder, and keeps what a person changed there.</summary>
internal static class DocumentFiles
{
    private const string Manifest = "write-up.sha256";

    public static IReadOnlyList<string> Save(Document document, string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        var files = Render(document);
        var made = ReadManifest(folder);
        foreach (var (name, content) in files)
        {
            var path = Path.Combine(folder, name);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            KeepChanged(path, made.GetValueOrDefault(name), content);
            File.WriteAllBytes(path, content);
        }

        foreach (var (name, hash) in made.Where(old => files.All(file => file.Name != old.Key))) RemoveUnchanged(
            Path.Combine(folder, name), hash);
        var lines = files.Select(f => $"{Hash(f.Content)}  {f.Name}\n");
        File.WriteAllText(Path.Combine(folder, Manifest), string.Concat(lines), new UTF8Encoding(false));
        return [.. files.Select(f => f.Name), Manifest];
    }

    /// <summary>Every file by name, in a fixed order.</summary>
    public static IReadOnlyList<(string Name, byte[] Content)> Render(Document document)
    {
        var (docx, summaries) = (Task.Run(document.ToDocx), Task.Run(() => Summaries(document.Summary)));
        document.Drawn.PaintAll();
        var files = new List<(string, byte[])>
        {
            ("write-up.html", Bytes(document.ToHtml())),
            ("write-up.md", Bytes(document.ToMarkdown())),
            ("write-up.docx", docx.GetAwaiter().GetResult()),
        };
        for (var i = 0; i < document.Figures.Count; i++)
        {
            LongCall.Look();
            var name = "figures/" + Document.FigureFile(i, document.Figures[i]);
            files.Add((name + ".svg", Bytes(document.Drawn[i].PageSvg)));
            if (document.Drawn[i].Png is { } png) files.Add((name + ".png", png));
            files.Add((name + ".csv", Bytes(CsvWriter.Write(document.Figures[i].Numbers))));
        }

        for (var i = 0; i < document.Tables.Count; i++)
            files.Add(($"tables/{Document.TableFile(i, document.Tables[i])}.csv", Bytes(CsvWriter.Write(document.Tables[i]))));
        if (document.AllClaims.Count > 0) files.Add(("tables/ledger.csv", Bytes(CsvWriter.Write(document.LedgerTable()))));
        files.AddRange(summaries.GetAwaiter().GetResult());
        return files;
    }

    private static List<(string Name, byte[] Content)> Summaries(SummaryPicture? summary)
    {
        var files = new List<(string, byte[])>();
        if (summary is null) return files;
        foreach (var (shape, name) in new[] { (PictureShape.Wide, "summary-16x9"), (PictureShape.Square, "summary-square") })
        {
            LongCall.Look();
            var scene = SummaryLayout.Compose(summary, shape);
            files.Add((name + ".svg", Bytes(SvgWriter.Write(scene))));
            if (PngWriter.TryWrite(scene, 1, out _) is { } png) files.Add((name + ".png", png));
        }

        return files;
    }

    private static void KeepChanged(string path, string? hashWhenMade, byte[] content)
    {
        if (!File.Exists(path)) return;
        var found = File.ReadAllBytes(path);
        if (Hash(found) == hashWhenMade || found.AsSpan().SequenceEqual(content)) return;
        var (stem, ending) = (Path.ChangeExtension(path, null), Path.GetExtension(path));
        var kept = Enumerable.Range(1, int.MaxValue).Select(k => $"{stem}.kept-{k}{ending}").First(name => !File.Exists(name));
        File.Move(path, kept);
    }

    /// <summary>
    /// A file of an earlier write-up that this one does not have, such as a figure under another title; one that a person has changed
    /// stays.
    /// </summary>
    private static void RemoveUnchanged(string path, string hashWhenMade)
    {
        if (File.Exists(path) && Hash(File.ReadAllBytes(path)) == hashWhenMade) File.Delete(path);
    }

    private static Dictionary<string, string> ReadManifest(string folder)
    {
        var path = Path.Combine(folder, Manifest);
        if (!File.Exists(path)) return [];
        return File.ReadAllLines(path).Where(line => line.Length > 66).DistinctBy(line => line[66..])
            .ToDictionary(line => line[66..], line => line[..64]);
    }

    private static byte[] Bytes(string text) => new UTF8Encoding(false).GetBytes(text);

    private static string Hash(byte[] content) => Convert.ToHexStringLower(SHA256.HashData(content));
}

using System.IO.Compression;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// Writes a zip archive again with its entries in order of name and one fixed date, so that the same content gives the same bytes.
/// </summary>
internal static class FixedZip
{
    private static readonly DateTimeOffset Date = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    public static byte[] Rewrite(byte[] archive)
    {
        using var source = new ZipArchive(new MemoryStream(archive), ZipArchiveMode.Read);
        using var target = new MemoryStream();
        using (var zip = new ZipArchive(target, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach (var entry in source.Entries
                .OrderBy(e => e.FullName == "[Content_Types].xml" ? "" : e.FullName, StringComparer.Ordinal))
            {
                var copy = zip.CreateEntry(entry.FullName, CompressionLevel.Optimal);
                copy.LastWriteTime = Date;
                using var from = entry.Open();
                using var to = copy.Open();
                from.CopyTo(to);
            }
        }

        return target.ToArray();
    }
}

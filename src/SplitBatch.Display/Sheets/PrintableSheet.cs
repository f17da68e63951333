using System.Text;
using SplitBatch.Display.Drawing;

namespace SplitBatch.Display.Sheets;

/// <summary>A document for a home printer: one HTML page without script, with its own print style.</summary>
/// <param name="FileName">The file's name; a sealed sheet stands in a folder of its own.</param>
/// <param name="Title">What it is.</param>
/// <param name="IsSealed">Whether it tells which beer is in which cup, so that servers and tasters must not see it.</param>
/// <param name="Html">The whole document.</param>
public sealed record PrintableSheet(string FileName, string Title, bool IsSealed, string Html)
{
    /// <summary>Writes the document into a folder, which is made where it is not there.</summary>
    /// <returns>The path of the file.</returns>
    public string SaveTo(string folder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(folder);
        string path = Path.Combine(folder, FileName);
        Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
        File.WriteAllText(path, Html, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
        return path;
    }

    /// <summary>The sheet in a frame of its own, so that its print style does not reach the page around it.</summary>
    internal string Preview() =>
        $"<iframe title=\"{Xml.Text(Title)}\" sandbox=\"\" style=\"width:100%;max-width:820px;height:420px;border:1px solid "
            + $"{Theme.Grid};background:#fff\" srcdoc=\"{Xml.Text(Html)}\"></iframe>";

    /// <summary>For example <c>sealed/key.html: Sealed key</c>.</summary>
    public override string ToString() => $"{FileName}: {Title}{(IsSealed ? " (not for servers and tasters)" : "")}";
}

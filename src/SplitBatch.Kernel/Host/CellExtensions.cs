using Microsoft.DotNet.Interactive.Formatting;

namespace SplitBatch.Kernel.Host;

/// <summary>What every cell can call on a value.</summary>
public static class CellExtensions
{
    /// <summary>Shows a value now; the answer can show another in its place.</summary>
    /// <param name="value">What to show.</param>
    /// <param name="mimeTypes">The forms to show it in; the usual ones when none is named.</param>
    public static DisplayHandle Display(this object? value, params string[] mimeTypes) => DisplayHandle.Show(value, mimeTypes);

    /// <summary>Shows text as it stands in the given form, for example Markdown.</summary>
    /// <param name="text">The text.</param>
    /// <param name="mimeType">Its form, for example <c>text/markdown</c>.</param>
    public static DisplayHandle DisplayAs(this string text, string mimeType) => DisplayHandle.Show(new FormattedValue(mimeType, text), []);
}

using Microsoft.AspNetCore.Html;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>What every cell can call without a <c>using</c>.</summary>
public static class CellHelpers
{
    /// <summary>Shows a value now; the answer can show another in its place.</summary>
    /// <param name="value">What to show.</param>
    /// <param name="mimeTypes">The forms to show it in; the usual ones when none is named.</param>
    public static DisplayHandle display(object? value, params string[] mimeTypes) => DisplayHandle.Show(value, mimeTypes);

    /// <summary>Text that is shown as HTML.</summary>
    public static IHtmlContent HTML(string content) => new HtmlString(content);

    /// <summary>Text that is shown as Markdown.</summary>
    public static FormattedValue Markdown(string content) => new("text/markdown", content);

    /// <summary>Clears what the cell has shown so far.</summary>
    /// <param name="wait">Whether to wait with it until the next output, so that the page does not flicker.</param>
    public static void ClearOutput(bool wait = false) => Here().Publish(new ClearOutput(wait));

    /// <summary>Asks the person for a line of text.</summary>
    /// <exception cref="InvalidOperationException">Nobody is there to answer, as in a headless run.</exception>
    public static Task<string> GetInputAsync(string prompt = "") => Here().AskAsync(prompt, password: false);

    /// <summary>Asks the person for a text that is not shown.</summary>
    /// <exception cref="InvalidOperationException">Nobody is there to answer, as in a headless run.</exception>
    public static Task<string> GetPasswordAsync(string prompt = "") => Here().AskAsync(prompt, password: true);

    private static RunningCell Here() =>
        RunningCell.Current ?? throw new InvalidOperationException("This works only in code that a cell runs.");
}

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

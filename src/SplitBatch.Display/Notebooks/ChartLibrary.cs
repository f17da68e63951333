using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using Plotly.NET;

namespace SplitBatch.Display.Notebooks;

/// <summary>The chart library plotly.js as text, taken from Plotly.NET's own resources.</summary>
internal static partial class ChartLibrary
{
    private static readonly Lazy<string> Loaded = new(Read);

    /// <summary>
    /// JavaScript that defines <c>window.Plotly</c>, also on a page with a module loader; safe inside a script element.
    /// </summary>
    public static string Script => Loaded.Value;

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static string Read()
    {
        var assembly = typeof(GenericChart).Assembly;
        var name = assembly.GetManifestResourceNames()
            .Single(n => n.Contains("plotly-", StringComparison.Ordinal) && n.EndsWith(".min.js", StringComparison.Ordinal));
        using var reader = new StreamReader(assembly.GetManifestResourceStream(name)!);
        var library = reader.ReadToEnd().Replace("</script", "<\\/script", StringComparison.OrdinalIgnoreCase);
        // HTML forbids control characters; all of them stand in string literals
        library = Control().Replace(library, match => $"\\u{(int)match.Value[0]:x4}");
        return $"(function(define,module,exports){{{library}\n}}).call(window);";
    }

    [GeneratedRegex(@"[\x00-\x08\x0B\x0C\x0E-\x1F\x7F-\x9F]")]
    private static partial Regex Control();
}

using System.Diagnostics;
using System.Text.Json;

namespace SplitBatch.Display.Browser;

/// <summary>The Nu Html Checker, which holds a page against the HTML standard, with its SVG and its styles.</summary>
internal static class HtmlChecker
{
    private static readonly Lazy<string?> Found = new(() =>
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var file = Path.Combine(folder.FullName, "tests", "accessibility", "node_modules", "vnu-jar", "build", "dist", "vnu.jar");
            if (File.Exists(file)) return file;
        }

        return null;
    });

    private static readonly string? Java = Installed.Program("java");

    /// <summary>Why pages cannot be checked here; null when they can.</summary>
    public static string? Missing =>
        Java is null ? "Java is not installed on this machine."
            : Found.Value is null ? "The HTML checker is not installed: run npm ci in tests/accessibility." : null;

    /// <summary>Every error and warning, as <c>file: what is wrong (where)</c>.</summary>
    /// <param name="pages">The files; at least one.</param>
    public static IReadOnlyList<string> Findings(IEnumerable<string> pages)
    {
        if (Missing is { } missing) throw new InvalidOperationException(missing);
        var start = new ProcessStartInfo(Java!)
        {
            RedirectStandardError = true,
            ArgumentList = { "-Xss4m", "-jar", Found.Value!, "--format", "json", "--exit-zero-always" },
        };
        foreach (var page in pages) start.ArgumentList.Add(page);
        using var process = Process.Start(start)!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        using var json = JsonDocument.Parse(said);
        return
        [
            .. json.RootElement.GetProperty("messages").EnumerateArray()
                .Where(message => !IsAllowedPicture(message) && !IsAllowedScript(message)).Select(message =>
                    $"{Path.GetFileName(message.GetProperty("url").GetString())}: {message.GetProperty("message").GetString()} "
                        + $"({(message.TryGetProperty("extract", out var extract) ? extract.GetString() : "")})"),
        ];
    }

    /// <summary>
    /// The checker knows neither hashes nor "file:" in a policy and warns of each script that they allow; here it is seen that every
    /// script within the page has its hash in the policy, and that the one beside it may be loaded from its own place.
    /// </summary>
    private static bool IsAllowedScript(JsonElement message)
    {
        var text = message.GetProperty("message").GetString()!;
        if (!text.StartsWith("Inline script violates Content Security Policy", StringComparison.Ordinal)
            && !text.StartsWith("Resource violates Content Security Policy", StringComparison.Ordinal)) return false;
        var page = File.ReadAllText(Uri.UnescapeDataString(message.GetProperty("url").GetString()!["file:".Length..]));
        var scripts = System.Text.RegularExpressions.Regex
            .Matches(page, "<script>(.*?)</script>", System.Text.RegularExpressions.RegexOptions.Singleline);
        var hashes =
            scripts.Select(
                script => Convert.ToBase64String(
                    System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(script.Groups[1].Value))));
        return hashes.All(hash => page.Contains($"'sha256-{hash}'", StringComparison.Ordinal))
            && page.Contains("'self' file:", StringComparison.Ordinal);
    }

    /// <summary>
    /// The checker warns of a picture in a data address even where the page's policy says "img-src data:", which allows it; browsers show
    /// it.
    /// </summary>
    private static bool IsAllowedPicture(JsonElement message) =>
        message.GetProperty("message").GetString()!.Contains("image “data:image/svg+xml;base64,", StringComparison.Ordinal)
        && File.ReadAllText(Uri.UnescapeDataString(message.GetProperty("url").GetString()!["file:".Length..]))
            .Contains("img-src data: blob:;", StringComparison.Ordinal);
}

/// <summary>
/// A test that needs Java and the HTML checker from npm: skipped, with the reason, on a machine without them; never skipped in continuous
/// integration.
/// </summary>
internal sealed class HtmlCheckerFactAttribute : FactAttribute
{
    public HtmlCheckerFactAttribute() => Skip = Installed.Reason(() => HtmlChecker.Missing);
}

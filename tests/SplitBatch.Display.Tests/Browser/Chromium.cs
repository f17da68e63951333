using System.Diagnostics;

namespace SplitBatch.Display.Browser;

/// <summary>A headless Chromium without a network, for looking at pages as a reader's browser would.</summary>
internal static class Chromium
{
    public static string? Path { get; } = Installed.Program("chromium", "chromium-browser", "google-chrome");

    /// <summary>Why pages cannot be looked at here; null when they can.</summary>
    public static string? Missing => Path is null ? "Chromium is not installed on this machine." : null;

    /// <summary>The page's document after its scripts have run.</summary>
    public static string Dom(string html, int width = 1000, int milliseconds = 5000) =>
        OfPage(html, (page, profile) => DomAt(new Uri(page), profile, width, milliseconds));

    /// <summary>The document of a page that is there, on the disk or on a server of this machine, after its scripts have run.</summary>
    /// <param name="page">Its address.</param>
    /// <param name="profile">A folder for what the browser keeps.</param>
    /// <param name="width">The window's width.</param>
    /// <param name="milliseconds">The time that passes on the page.</param>
    public static string DomAt(Uri page, string profile, int width = 1000, int milliseconds = 5000) => Run(
        page, profile, FormattableString.Invariant($"--window-size={width},1400"),
        FormattableString.Invariant($"--virtual-time-budget={milliseconds}"), "--dump-dom");

    /// <summary>The page as it is printed on paper of the browser's own size.</summary>
    /// <param name="html">The page.</param>
    /// <param name="pdf">The file to write.</param>
    public static void Print(string html, string pdf) =>
        OfPage(html, (page, profile) => Run(new Uri(page), profile, "--no-pdf-header-footer", $"--print-to-pdf={pdf}"));

    private static string OfPage(string html, Func<string, string, string> look)
    {
        var folder = Directory.CreateTempSubdirectory("split-batch-page-");
        try
        {
            var page = System.IO.Path.Combine(folder.FullName, "page.html");
            File.WriteAllText(page, html);
            return look(page, System.IO.Path.Combine(folder.FullName, "profile"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Run(Uri page, string profile, params string[] options)
    {
        var start = new ProcessStartInfo(Path!) { RedirectStandardOutput = true, RedirectStandardError = true };
        string[] always = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--proxy-server=127.0.0.1:9",
            $"--user-data-dir={profile}"];
        foreach (var option in always.Concat(options).Append(page.AbsoluteUri)) start.ArgumentList.Add(option);
        using var process = Process.Start(start)!;
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        var said = process.StandardOutput.ReadToEndAsync();
        if (!process.WaitForExit(120_000))
        {
            process.Kill(entireProcessTree: true);
            throw new TimeoutException("The browser did not finish within two minutes.");
        }

        return said.GetAwaiter().GetResult();
    }
}

/// <summary>
/// A test that needs a browser: skipped, with the reason, on a machine without one; never skipped in continuous integration.
/// </summary>
internal sealed class BrowserFactAttribute : FactAttribute
{
    public BrowserFactAttribute() => Skip = Installed.Reason(() => Chromium.Missing);
}

/// <summary>A test that needs a browser and the accessibility rules from npm.</summary>
internal sealed class AccessibilityFactAttribute : FactAttribute
{
    public AccessibilityFactAttribute() =>
        Skip = Installed.Reason(() => Chromium.Missing
            ?? (Axe.Script is null ? "axe-core is not installed: run npm ci in tests/accessibility." : null));
}

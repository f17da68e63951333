using System.Diagnostics;
using System.Text.RegularExpressions;
using SplitBatch.Display.Sheets;
using SplitBatch.Display.WriteUp;
using SplitBatch.Panel.Protocols;
using SplitBatch.Panel.Serving;

namespace SplitBatch.Display.Browser;

/// <summary>
/// The three write-ups against the HTML standard and the accessibility rules, at two widths, and as a browser prints them.
/// </summary>
public sealed partial class PrintedTests(ThreeWriteUps made) : IClassFixture<ThreeWriteUps>, IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("printed-");

    public void Dispose() => _folder.Delete(recursive: true);

    [HtmlCheckerFact]
    public void The_write_ups_and_the_sheets_are_valid_HTML()
    {
        var sheets =
            PanelSheets.For(PourPlan.For(ServingPlan.Balanced(Protocol.Triangle, 12, seed: 7, sessions: 2, servers: 2, panel: "main"), 5.1,
                5.0, new PourOptions { Allergens = Allergens.Of("barley") })).SaveTo(_folder.FullName);
        var pages = ThreeWriteUps.Names.Select(name => made.PathOf(name, "write-up.html"))
            .Concat(sheets.Where(file => file.EndsWith(".html", StringComparison.Ordinal))
                .Select(file => Path.Combine(_folder.FullName, file))).ToList();
        Assert.True(pages.Count >= 8);
        Assert.Empty(HtmlChecker.Findings(pages));
    }

    [HtmlCheckerFact]
    public void The_checker_finds_what_is_wrong()
    {
        var page = Path.Combine(_folder.FullName, "wrong.html");
        File.WriteAllText(page, "<!DOCTYPE html><html lang=\"en\"><head><title>t</title></head><body><p id=\"x\">one<p "
            + "id=\"x\">two</body></html>");
        Assert.Contains(HtmlChecker.Findings([page]), finding => finding.Contains("Duplicate ID", StringComparison.Ordinal));
    }

    [AccessibilityFact]
    public void The_write_ups_have_no_serious_finding_at_page_and_phone_width()
    {
        foreach (var (name, width) in new[] { ("amber-cone-or-pellet", 1000), ("stout-early-or-late", 500),
            ("lager-one-rest-or-two", 1000) })
            Assert.Empty(Axe.Serious(File.ReadAllText(made.PathOf(name, "write-up.html")), width));
    }

    [PrintFact]
    public void Printed_they_lose_no_word_and_cut_no_chart()
    {
        foreach (var (name, one) in made.All)
        {
            var pdf = Path.Combine(_folder.FullName, name + ".pdf");
            Chromium.Print(File.ReadAllText(made.PathOf(name, "write-up.html")), pdf);
            var pages = Poppler("pdftotext", "-layout", pdf, "-").Split('\f', StringSplitOptions.RemoveEmptyEntries)
                .Select(page => Spaces().Replace(page, "")).ToList();
            Assert.InRange(pages.Count, 6, 25);
            Assert.All(pages, page => Assert.True(page.Length > 200, $"A page of {name} is nearly empty: {page}"));
            var whole = string.Concat(pages);
            Assert.All(one.Document.Blocks.OfType<Heading>(),
                heading => Assert.Contains(Spaces().Replace(heading.Text, ""), whole, StringComparison.Ordinal));
            foreach (var figure in one.Document.Figures)
            {
                var (title, axis) = (Start(figure.Title), Spaces().Replace(figure.X.Title, ""));
                Assert.True(
                    pages.Any(page => page.Contains(title, StringComparison.Ordinal) && page.Contains(axis, StringComparison.Ordinal)),
                    $"{name}: \"{figure.Title}\" is cut by the end of a page.");
            }

            AssertWithinTheirPages(pdf);
        }
    }

    /// <summary>No word sticks out of the paper.</summary>
    private static void AssertWithinTheirPages(string pdf)
    {
        var (width, words) = (0.0, 0);
        foreach (Match match in Box().Matches(Poppler("pdftotext", "-bbox", pdf, "-")))
        {
            double Number(string group) => double.Parse(match.Groups[group].Value, System.Globalization.CultureInfo.InvariantCulture);
            if (match.Groups["page"].Success) width = Number("page");
            else
            {
                words++;
                Assert.True(Number("from") >= 0 && Number("to") <= width, $"\"{match.Groups["word"].Value}\" sticks out of the page.");
            }
        }

        Assert.True(words > 1000);
    }

    private static string Start(string title) => Spaces().Replace(string.Join(' ', title.Split(' ').Take(4)), "");

    private static string Poppler(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return said;
    }

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex("""<page width="(?<page>[\d.]+)"|<word"""
        + """ xMin="(?<from>[-\d.]+)" yMin="[-\d.]+" xMax="(?<to>[-\d.]+)"[^>]*>(?<word>[^<]*)<""")]
    private static partial Regex Box();
}

/// <summary>
/// A test that needs a browser and a reader of PDF files: skipped, with the reason, on a machine without them; never skipped in
/// continuous integration.
/// </summary>
internal sealed class PrintFactAttribute : FactAttribute
{
    public PrintFactAttribute() =>
        Skip = Installed.Reason(() => Chromium.Missing
            ?? (Installed.Program("pdftotext") is null ? "pdftotext (poppler-utils) is not installed on this machine." : null));
}

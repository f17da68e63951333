using System.Globalization;
using SplitBatch.Display.Charts;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;
using SplitBatch.Evidence.Phrases;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// A write-up before it has a format: a title and blocks in order. The same document gives the same bytes in every format,
/// every time.
/// </summary>
/// <example><code>
/// var document = new Document("Cones or pellets?", new Heading("The question"), "Does it matter?", figure, table, new Ledger());
/// document.SaveTo("out/write-up");
/// </code></example>
public sealed record Document
{
    /// <summary>A document.</summary>
    /// <param name="title">Its title, plain text.</param>
    /// <param name="blocks">Its blocks; text, tables, figures and claims may stand as they are.</param>
    /// <exception cref="ArgumentException">The title is blank, or a heading skips a level.</exception>
    public Document(string title, params IEnumerable<Block> blocks)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(title);
        Title = title;
        Blocks = [.. blocks];
        var level = 1;
        foreach (var heading in Blocks.OfType<Heading>())
        {
            if (heading.Level < 2 || heading.Level > Math.Min(5, level + 1))
                throw new ArgumentException($"The heading \"{heading.Text}\" has level {heading.Level} after level {level}; levels go "
                    + $"down one at a time, from 2 to 5.", nameof(blocks));
            level = heading.Level;
        }

        AllClaims = [.. Blocks.SelectMany(ClaimsOf).DistinctBy(claim => claim.Id)];
        Figures = [.. Blocks.OfType<FigureBlock>().Select(b => b.Figure)];
        Tables = [.. Blocks.OfType<TableBlock>().Select(b => b.Table)];
        Drawn = new(Figures);
    }

    /// <summary>The title.</summary>
    public string Title { get; }

    /// <summary>The blocks, in order.</summary>
    public IReadOnlyList<Block> Blocks { get; }

    /// <summary>One picture of the whole trial, saved beside the write-up; null for none.</summary>
    public SummaryPicture? Summary { get; init; }

    /// <summary>A line under the title, such as that the data are invented; may be blank.</summary>
    public string Subtitle { get; init; } = "";

    /// <summary>Every claim, once, in the order of first appearance: its place here is its number in the ledger, from 1.</summary>
    public IReadOnlyList<Claim> AllClaims { get; }

    /// <summary>The figures, in order.</summary>
    public IReadOnlyList<Figures.Figure> Figures { get; }

    /// <summary>The tables, in order.</summary>
    public IReadOnlyList<Table> Tables { get; }

    /// <summary>The document as one self-contained page that needs no script and no network.</summary>
    public string ToHtml() => HtmlWriter.Write(this);

    /// <summary>The document as Markdown.</summary>
    /// <param name="figureFolder">The folder of the figure files, relative to the Markdown file.</param>
    public string ToMarkdown(string figureFolder = "figures") => MarkdownWriter.Write(this, figureFolder);

    /// <summary>The document for a word processor (.docx).</summary>
    public byte[] ToDocx() => DocxWriter.Write(this);

    /// <summary>
    /// Writes the document into a folder in every format, with figures as SVG and PNG and tables as CSV. A file that a person
    /// has changed since the last time is kept beside the new one.
    /// </summary>
    /// <param name="folder">The folder; made where it is missing.</param>
    /// <returns>The files written, relative to the folder.</returns>
    public IReadOnlyList<string> SaveTo(string folder) => DocumentFiles.Save(this, folder);

    /// <summary>For example <c>Write-up "Cones or pellets?": 4 figures, 6 tables, 14 claims.</c></summary>
    public override string ToString() =>
        $"Write-up \"{Title}\": {Words.Counted(Figures.Count, "figure")}, {Words.Counted(Tables.Count, "table")}, "
            + $"{Words.Counted(AllClaims.Count, "claim")}.";

    /// <summary>The figures as pictures.</summary>
    internal DrawnFigures Drawn { get; }

    internal int NumberOf(Claim claim) => AllClaims.Select((c, i) => (c.Id, Number: i + 1)).First(c => c.Id == claim.Id).Number;

    /// <summary>The ledger's number of a figure's caption; null where the caption states no number.</summary>
    /// <param name="index">The figure's place, from 0.</param>
    internal int? NumberOfCaption(int index) => Figures[index].Claims is [var first, ..] ? NumberOf(first)
        : States(Figures[index]) ? AllClaims.Count + 1 + Figures.Take(index).Count(States) : null;

    internal static string FigureFile(int index, Figures.Figure figure) => $"figure-{index + 1}-{Slug(figure.Title)}";

    internal static string TableFile(int index, Table table) => $"table-{index + 1}-{Slug(table.Caption)}";

    /// <summary>A file name of plain letters and digits, at most 40 characters.</summary>
    internal static string Slug(string text)
    {
        var words = new string([.. text.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : ' ')])
            .Split(' ', StringSplitOptions.RemoveEmptyEntries);
        var slug = "";
        foreach (var word in words)
        {
            if (slug.Length + word.Length > 39) break;
            slug += (slug.Length == 0 ? "" : "-") + word;
        }

        return slug.Length == 0 ? "untitled" : slug;
    }

    /// <summary>The ledger as a table.</summary>
    internal Table LedgerTable() =>
        TableOf.Each(AllClaims.Concat(CaptionClaims()), "Every claim, with its numbers, its method and its source")
            .Number("no.",
                claim => claim.Id.StartsWith(Caption, StringComparison.Ordinal)
                    ? NumberOfCaption(int.Parse(claim.Id[Caption.Length..], CultureInfo.InvariantCulture))
                    : NumberOf(claim), decimals: 0)
            .Text("sentence", claim => claim.Sentence)
            .Text("numbers, to ten digits",
                claim => string.Join("; ", claim.Numbers.Select(n => n.ToString("G10", CultureInfo.InvariantCulture))))
            .Text("method", claim => claim.Method)
            .Text("source", claim => string.Join("; ", claim.Sources))
            .ToTable();

    /// <summary>The captions that state numbers, each as a claim on the numbers that its figure was drawn from.</summary>
    internal IEnumerable<Claim> CaptionClaims() => Figures.Index().Where(f => States(f.Item)).Select(f => new Claim(
        Caption + f.Index.ToString(CultureInfo.InvariantCulture), Sentence.Of($"{new Quote(f.Item.Reading)}"),
        $"read from the numbers of figure {f.Index + 1}", $"figures/{FigureFile(f.Index, f.Item)}.csv"));

    private const string Caption = "caption.";

    /// <summary>Whether a caption states numbers of its own, that stand in no claim.</summary>
    private static bool States(Figures.Figure figure) => figure.Claims.Count == 0 && figure.Reading.Any(char.IsAsciiDigit);

    private static IEnumerable<Claim> ClaimsOf(Block block) => block switch
    {
        Claims claims => claims.Items,
        Callout callout => callout.Claims,
        FigureBlock figure => figure.Figure.Claims,
        _ => [],
    };
}

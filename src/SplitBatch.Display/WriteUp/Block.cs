using SplitBatch.Display.Figures;
using SplitBatch.Display.Tables;
using SplitBatch.Evidence;

namespace SplitBatch.Display.WriteUp;

/// <summary>
/// One piece of a <see cref="Document"/>. A text, a table, a figure and a claim each convert to the block that shows them,
/// so they can be given to a document as they are.
/// </summary>
public abstract record Block
{
    /// <summary>A plain paragraph.</summary>
    public static implicit operator Block(string text) => new Paragraph(text);

    /// <summary>A table.</summary>
    public static implicit operator Block(Table table) => new TableBlock(table);

    /// <summary>A figure.</summary>
    public static implicit operator Block(Figure figure) => new FigureBlock(figure);

    /// <summary>A paragraph of one claim.</summary>
    public static implicit operator Block(Claim claim) => new Claims(claim);
}

/// <summary>A heading. The document's title is level 1.</summary>
/// <param name="Text">Its words.</param>
/// <param name="Level">Its level, in [2, 5].</param>
public sealed record Heading(string Text, int Level = 2) : Block;

/// <summary>A paragraph of plain text; every character shows as it stands.</summary>
/// <param name="Text">The text.</param>
public sealed record Paragraph(string Text) : Block;

/// <summary>
/// Paragraphs that a person wrote in Markdown: emphasis, lists, quotations, links to web pages. Anything else shows as text.
/// </summary>
/// <param name="Markdown">What was written.</param>
public sealed record Prose(string Markdown) : Block;

/// <summary>A list of points.</summary>
public sealed record Bullets : Block
{
    /// <summary>A list of points.</summary>
    /// <param name="items">The points, plain text.</param>
    public Bullets(params IEnumerable<string> items) => Items = [.. items];

    /// <summary>The points.</summary>
    public IReadOnlyList<string> Items { get; }
}

/// <summary>A paragraph of claims, each with the number under which the ledger shows where it comes from.</summary>
public sealed record Claims : Block
{
    /// <summary>A paragraph of claims.</summary>
    /// <param name="items">The claims, in the order of their sentences.</param>
    public Claims(params IEnumerable<Claim> items) => Items = [.. items];

    /// <summary>The claims.</summary>
    public IReadOnlyList<Claim> Items { get; }
}

/// <summary>A paragraph set apart: the verdict, or a caution.</summary>
/// <param name="Title">What it is, in a few words.</param>
/// <param name="Text">What it says, plain text; may be blank.</param>
public sealed record Callout(string Title, string Text = "") : Block
{
    /// <summary>Claims that belong into it.</summary>
    public IReadOnlyList<Claim> Claims { get; init; } = [];
}

/// <summary>A table.</summary>
/// <param name="Table">The table.</param>
public sealed record TableBlock(Table Table) : Block;

/// <summary>A figure with its reading as caption.</summary>
/// <param name="Figure">The figure.</param>
public sealed record FigureBlock(Figure Figure) : Block;

/// <summary>The ledger: every claim of the document with its numbers, its method and its sources.</summary>
public sealed record Ledger : Block;

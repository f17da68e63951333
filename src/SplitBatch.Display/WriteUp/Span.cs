namespace SplitBatch.Display.WriteUp;

/// <summary>A stretch of text in one style.</summary>
internal readonly record struct Span(string Text, bool Bold = false, bool Italic = false, bool Code = false, string? Link = null);

/// <summary>What a piece of prose is.</summary>
internal enum PieceKind
{
    Paragraph,
    Bullet,
    Quotation,
}

/// <summary>One paragraph of prose, whatever the writer set around it.</summary>
internal sealed record Piece(PieceKind Kind, IReadOnlyList<Span> Spans);

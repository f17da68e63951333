namespace SplitBatch.Display.Sheets;

/// <summary>The paper in the printer.</summary>
public enum PaperSize
{
    /// <summary>210 by 297 mm.</summary>
    A4,

    /// <summary>8.5 by 11 inches.</summary>
    Letter,
}

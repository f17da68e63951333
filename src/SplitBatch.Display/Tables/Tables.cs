namespace SplitBatch.Display;

/// <summary>One function per table: each takes a result of the library and returns the table that shows it.</summary>
public static partial class Tables
{
}

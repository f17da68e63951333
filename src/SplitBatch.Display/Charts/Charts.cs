namespace SplitBatch.Display;

/// <summary>One function per chart: each takes a result of the library and returns the figure that shows it.</summary>
public static partial class Charts
{
}

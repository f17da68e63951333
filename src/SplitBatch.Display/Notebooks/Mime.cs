namespace SplitBatch.Display.Notebooks;

/// <summary>The names of the forms in which a value shows itself.</summary>
internal static class Mime
{
    public const string Html = "text/html";
    public const string Plain = "text/plain";
    public const string Plotly = "application/vnd.plotly.v1+json";
    public const string Svg = "image/svg+xml";
}

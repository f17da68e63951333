using System.Reflection;
using System.Runtime.CompilerServices;
using Microsoft.DotNet.Interactive.Formatting;
using Plotly.NET;
using SplitBatch.Display.Figures;
using Figure = SplitBatch.Display.Figures.Figure;

namespace SplitBatch.Display.Notebooks;

/// <summary>
/// Everything here needs Plotly.NET and through it FSharp.Core. It is kept apart so that a kernel which cannot load them
/// still shows figures as pictures, tables and results.
/// </summary>
internal static class PlotlyFormatting
{
    private static readonly Lazy<bool> Loaded = new(() =>
    {
        var loads = false;
        WhereItLoads(() => loads = Inside.FindsItsReferences());
        return loads;
    });

    /// <summary>Whether this kernel can load Plotly.NET and what it needs; found out once, cheaply.</summary>
    public static bool Loads => Loaded.Value;

    /// <summary>The interactive form of a figure, or null in a kernel that cannot load Plotly.NET.</summary>
    public static string? JsonOf(Figure figure)
    {
        string? json = null;
        if (Loads) WhereItLoads(() => json = Interactive(figure));
        return json;
    }

    /// <summary>The interactive form of an explorer, or null in a kernel that cannot load Plotly.NET.</summary>
    public static string? JsonOf(Explorer explorer)
    {
        string? json = null;
        if (Loads) WhereItLoads(() => json = Interactive(explorer));
        return json;
    }

    /// <summary>Registers the formatters of charts made directly with Plotly.NET, in a kernel that can load it.</summary>
    public static void Register(NotebookDisplayOptions options)
    {
        if (Loads) WhereItLoads(() => RegisterCharts(options));
    }

    private static void WhereItLoads(Action action)
    {
        try
        {
            action();
        }
        catch (Exception e) when (e is FileNotFoundException or FileLoadException or TypeLoadException or TypeInitializationException)
        {
            // A stock .NET kernel has loaded another FSharp.Core: figures are shown as pictures, with a word about it.
        }
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static string Interactive(Figure figure) => Inside.JsonOf(figure.ToPlotly());

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static string Interactive(Explorer explorer) => Inside.JsonOf(explorer.ToPlotly());

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static void RegisterCharts(NotebookDisplayOptions options) => Inside.Register(options);

    private static class Inside
    {
        public static bool FindsItsReferences()
        {
            foreach (var name in typeof(GenericChart).Assembly.GetReferencedAssemblies()
                .Where(n => n.Name is "FSharp.Core" or "DynamicObj")) Assembly.Load(name);
            return true;
        }

        public static string JsonOf(GenericChart chart) => GenericChart.toFigureJson(chart);

        public static void Register(NotebookDisplayOptions options)
        {
            Formatter.Register<GenericChart>((chart, writer) => writer.Write(ChartFragment.Of(JsonOf(chart), options)), Mime.Html);
            Formatter.Register<GenericChart>((chart, writer) => writer.Write(JsonOf(chart)), Mime.Plotly);
            Formatter.Register<GenericChart>((_, writer) => writer.Write("A chart made with Plotly.NET."), Mime.Plain);
            Formatter.SetPreferredMimeTypesFor(typeof(GenericChart), Mime.Html, Mime.Plotly, Mime.Plain);
        }
    }
}

using System.Reflection;
using System.Runtime.Loader;

namespace SplitBatch.Display.Notebooks;

/// <summary>
/// A kernel that brings another FSharp.Core cannot load Plotly.NET; here that is played by a context that refuses to load it.
/// </summary>
public class StockKernelTests
{
    [Fact]
    public void Where_Plotly_does_not_load_figures_show_as_pictures_with_a_word_about_it_and_tables_work()
    {
        var context = new WithoutFSharp();
        try
        {
            var display = context.LoadFromAssemblyName(new AssemblyName("SplitBatch.Display"));
            display.GetType("SplitBatch.Display.NotebookDisplay")!.GetMethod("Register")!.Invoke(null, [null]);
            var formatting = context.LoadFromAssemblyName(new AssemblyName("Microsoft.DotNet.Interactive.Formatting"));
            var show = formatting.GetType("Microsoft.DotNet.Interactive.Formatting.Formatter")!
                .GetMethod("ToDisplayString", [typeof(object), typeof(string)])!;
            var types = formatting.GetType("Microsoft.DotNet.Interactive.Formatting.Formatter")!.GetMethod("GetPreferredMimeTypesFor")!;

            var figure = Build(context, display);
            var html = (string)show.Invoke(null, [figure, "text/html"])!;
            Assert.Contains("<img style=\"max-width:100%;height:auto\" alt=\"", html, StringComparison.Ordinal);
            Assert.Contains("which this kernel cannot load", html, StringComparison.Ordinal);
            Assert.Contains("splitbatch kernel install", html, StringComparison.Ordinal);
            Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
            Assert.DoesNotContain("application/vnd.plotly.v1+json", (IReadOnlyCollection<string>)types.Invoke(null, [figure.GetType()])!);

            var numbers = figure.GetType().GetProperty("Numbers")!.GetValue(figure)!;
            Assert.Contains("<table", (string)show.Invoke(null, [numbers, "text/html"])!, StringComparison.Ordinal);
        }
        finally
        {
            context.Unload();
        }
    }

    private static object Build(AssemblyLoadContext context, Assembly display)
    {
        var library = context.LoadFromAssemblyName(new AssemblyName("SplitBatch"));
        var protocol = library.GetType("SplitBatch.Panel.Protocols.Protocol")!.GetProperty("Triangle")!.GetValue(null);
        var test = library.GetType("SplitBatch.Panel.Counting.DifferenceTest")!.GetMethod("Of")!
            .Invoke(null, [protocol, 24, 11, 0.05, 0.95]);
        return display.GetType("SplitBatch.Display.Charts.CountCharts")!.GetMethod("Chart")!.Invoke(null, [test])!;
    }

    private sealed class WithoutFSharp() : AssemblyLoadContext(isCollectible: true)
    {
        protected override Assembly? Load(AssemblyName assemblyName)
        {
            if (assemblyName.Name == "FSharp.Core")
                throw new FileNotFoundException("Could not load file or assembly 'FSharp.Core, Version=10.1.0.0'.");
            var file = Path.Combine(AppContext.BaseDirectory, assemblyName.Name + ".dll");
            return File.Exists(file) ? LoadFromAssemblyPath(file) : null;
        }
    }
}

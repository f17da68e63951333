using System.Runtime.CompilerServices;
using Microsoft.Data.Analysis;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Display.Figures;
using SplitBatch.Display.Notebooks;
using SplitBatch.Display.Sheets;
using SplitBatch.Display.Tables;
using SplitBatch.Display.WriteUp;
using SplitBatch.Numbers;

namespace SplitBatch.Display;

/// <summary>Tells a .NET notebook how figures, charts, tables and the library's results show themselves.</summary>
public static class NotebookDisplay
{
    /// <summary>
    /// The chart library as JavaScript that defines <c>window.Plotly</c>: put it once in the head of a page, inside a
    /// script element, and every chart on the page finds it. About 3.6 MB, from Plotly.NET's own resources.
    /// </summary>
    public static string ChartScript => ChartLibrary.Script;

    /// <summary>
    /// The script that draws the charts of a page whose HTML has gone through <see cref="ForPage"/>: one file beside any number of pages,
    /// named at the end of each. About 3.6 MB.
    /// </summary>
    public static string PageScript => PageCharts.Script;

    /// <summary>
    /// What a value shows itself as, for a page that allows no script of its own: a chart keeps its pictures and becomes data for
    /// <see cref="PageScript"/>.
    /// </summary>
    /// <param name="html">The value's HTML.</param>
    public static string ForPage(string html)
    {
        ArgumentNullException.ThrowIfNull(html);
        return PageCharts.WithoutScripts(html);
    }

    /// <summary>Registers the formatters, in place of any earlier ones for the same types.</summary>
    /// <param name="options">Where the chart library is and how long tables may be; null for the defaults.</param>
    /// <exception cref="ArgumentOutOfRangeException">The row limit is below 1.</exception>
    public static void Register(NotebookDisplayOptions? options = null)
    {
        var chosen = options ?? new NotebookDisplayOptions();
        ArgumentOutOfRangeException.ThrowIfLessThan(chosen.TableRows, 1, nameof(options));
        RegisterFigures(chosen);
        RegisterTables(chosen);
        RegisterResults();
        RegisterWriteUps();
        PlotlyFormatting.Register(chosen);
    }

    private static void RegisterFigures(NotebookDisplayOptions options)
    {
        Formatter.Register<Figure>((figure, writer) => writer.Write(ChartFragment.Of(figure, PlotlyFormatting.JsonOf(figure), options)),
            Mime.Html);
        Formatter.Register<Figure>((figure, writer) => writer.Write(PlotlyFormatting.JsonOf(figure) ?? "null"), Mime.Plotly);
        Formatter.Register<Figure>((figure, writer) => writer.Write(figure.ToSvg()), Mime.Svg);
        Formatter.Register<Figure>((figure, writer) => writer.Write(figure.AltText), Mime.Plain);
        var types = !PlotlyFormatting.Loads ? new[] { Mime.Html, Mime.Svg, Mime.Plain } : [Mime.Html, Mime.Plotly, Mime.Svg, Mime.Plain];
        Formatter.SetPreferredMimeTypesFor(typeof(Figure), types);
        Formatter.Register<Explorer>(
            (explorer, writer) => writer.Write(ChartFragment.Of(explorer.Still, PlotlyFormatting.JsonOf(explorer), options)), Mime.Html);
        Formatter.Register<Explorer>((explorer, writer) => writer.Write(PlotlyFormatting.JsonOf(explorer) ?? "null"), Mime.Plotly);
        Formatter.Register<Explorer>((explorer, writer) => writer.Write(explorer.Still.ToSvg()), Mime.Svg);
        Formatter.Register<Explorer>((explorer, writer) => writer.Write(explorer.AltText), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Explorer), types);
    }

    private static void RegisterWriteUps()
    {
        Formatter.Register<SummaryPicture>((picture, writer) => writer.Write(ChartFragment.Of(picture)), Mime.Html);
        Formatter.Register<SummaryPicture>((picture, writer) => writer.Write(picture.ToSvg()), Mime.Svg);
        Formatter.Register<SummaryPicture>((picture, writer) => writer.Write(picture.AltText), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(SummaryPicture), Mime.Html, Mime.Svg, Mime.Plain);
        Formatter.Register<Document>((document, writer) => writer.Write(SentenceCard.Html(document)), Mime.Html);
        Formatter.Register<Document>((document, writer) => writer.Write(document.ToString()), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Document), Mime.Html, Mime.Plain);
        Formatter.Register<SavedSheets>((saved, writer) => writer.Write(HtmlTable.Write(saved.ToTable(), 20)), Mime.Html);
        Formatter.Register<SavedSheets>((saved, writer) => writer.Write(HtmlTable.PlainText(saved.ToTable(), 20)), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(SavedSheets), Mime.Html, Mime.Plain);
        Formatter.Register<PrintableSheet>((sheet, writer) => writer.Write(sheet.Preview()), Mime.Html);
        Formatter.Register<PrintableSheet>((sheet, writer) => writer.Write(sheet.ToString()), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(PrintableSheet), Mime.Html, Mime.Plain);
    }

    private static void RegisterTables(NotebookDisplayOptions options)
    {
        Formatter.Register<Table>((table, writer) => writer.Write(HtmlTable.Write(table, options.TableRows)), Mime.Html);
        Formatter.Register<Table>((table, writer) => writer.Write(HtmlTable.PlainText(table, options.TableRows)), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(Table), Mime.Html, Mime.Plain);
        Formatter.Register<DataFrame>((frame, writer) => writer.Write(HtmlTable.Write(frame, options.TableRows)), Mime.Html);
        Formatter.Register<DataFrame>((frame, writer) => writer.Write(HtmlTable.PlainText(frame, options.TableRows)), Mime.Plain);
        Formatter.SetPreferredMimeTypesFor(typeof(DataFrame), Mime.Html, Mime.Plain);
    }

    /// <summary>Every public type of the library that says itself in a sentence shows as that sentence.</summary>
    private static void RegisterResults()
    {
        foreach (var type in typeof(Interval).Assembly.GetExportedTypes().Where(SaysItself))
        {
            Formatter.Register(type, (value, writer) => writer.Write(SentenceCard.Html(value)), Mime.Html);
            Formatter.Register(type, (value, writer) => writer.Write(value?.ToString()), Mime.Plain);
            Formatter.SetPreferredMimeTypesFor(type, Mime.Html, Mime.Plain);
        }
    }

    private static bool SaysItself(Type type) =>
        !type.IsEnum && !type.ContainsGenericParameters && !(type.IsAbstract && type.IsSealed) && !typeof(Exception).IsAssignableFrom(type)
        && !typeof(Delegate).IsAssignableFrom(type)
        && type.GetMethod(nameof(ToString), Type.EmptyTypes) is { DeclaringType: var by } && by != typeof(object)
        && by != typeof(ValueType)
        && !type.GetMethod(nameof(ToString), Type.EmptyTypes)!.IsDefined(typeof(CompilerGeneratedAttribute), false);
}

using System.Globalization;
using Microsoft.DotNet.Interactive.Formatting;
using SplitBatch.Display.Notebooks;
using SplitBatch.Display;
using SplitBatch.Kernel.Cells;

namespace SplitBatch.Kernel.Engine;

/// <summary>Turns a value into the forms that are sent for it.</summary>
internal static class ValueFormat
{
    private static readonly Lock Gate = new();
    private static bool registered;

    /// <summary>Registers the forms of simple values and of the display room's types. Process-wide; works once.</summary>
    /// <param name="afresh">Whether to drop what cells have registered meanwhile and start again.</param>
    public static void Register(bool afresh = false)
    {
        lock (Gate)
        {
            if (registered && !afresh) return;
            if (registered) Formatter.ResetToDefault();
            registered = true;
            Formatter.DefaultMimeType = HtmlFormatter.MimeType;
            Formatter.SetPreferredMimeTypesFor(typeof(object), HtmlFormatter.MimeType, PlainTextFormatter.MimeType);
            Type[] plain =
            [
                typeof(string), typeof(bool), typeof(char), typeof(sbyte), typeof(byte), typeof(short), typeof(ushort), typeof(int),
                typeof(uint), typeof(long), typeof(ulong), typeof(float), typeof(double), typeof(decimal), typeof(DateTime),
                typeof(DateTimeOffset), typeof(DateOnly), typeof(TimeOnly), typeof(TimeSpan), typeof(Guid), typeof(Enum), typeof(Type),
                typeof(Uri),
            ];
            NotebookDisplay.Register(new NotebookDisplayOptions { KernelName = ICellHost.KernelName });
            Formatter.Register<UnitsNet.IQuantity>((value, writer) =>
                writer.Write(value.ToString(null, CultureInfo.InvariantCulture)), PlainTextFormatter.MimeType);
            Formatter.SetPreferredMimeTypesFor(typeof(UnitsNet.IQuantity), PlainTextFormatter.MimeType);
            Formatter.Register<DateOnly>((value, writer) =>
                writer.Write(value.ToString("O", CultureInfo.InvariantCulture)), PlainTextFormatter.MimeType);
            Formatter.Register<TimeOnly>((value, writer) =>
                writer.Write(value.ToString("HH:mm:ss", CultureInfo.InvariantCulture)), PlainTextFormatter.MimeType);
            foreach (var type in plain) Formatter.SetPreferredMimeTypesFor(type, PlainTextFormatter.MimeType);
        }
    }

    /// <summary>The forms of a value: the named ones, or those preferred for its type.</summary>
    public static MimeBundle Bundle(object? value, params string[] mimeTypes) => value switch
    {
        FormattedValue one => Bundle([one]),
        IEnumerable<FormattedValue> many => Bundle(many),
        _ => Bundle(FormattedValue.CreateManyFromObject(value, mimeTypes)),
    };

    /// <summary>The forms as one bundle; of two of the same kind the first is kept.</summary>
    public static MimeBundle Bundle(IEnumerable<FormattedValue> forms) =>
        new(forms.Where(f => !f.SuppressDisplay).DistinctBy(f => f.MimeType).ToDictionary(f => f.MimeType, f => f.Value));
}

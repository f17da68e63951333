using System.Reflection;

namespace SplitBatch.Kernel.Engine;

/// <summary>What a cell finds when the kernel starts: assemblies and namespaces.</summary>
internal static class StartSetting
{
    private static readonly Assembly[] Ours = [typeof(Fault).Assembly, typeof(Display.NotebookDisplay).Assembly];

    private static readonly Assembly[] Theirs =
    [
        typeof(UnitsNet.Mass).Assembly,
        typeof(MathNet.Numerics.Constants).Assembly,
        typeof(Microsoft.Data.Analysis.DataFrame).Assembly,
        typeof(Plotly.NET.GenericChart).Assembly,
        typeof(Plotly.NET.CSharp.Chart).Assembly,
        typeof(Microsoft.FSharp.Core.FSharpOption<>).Assembly,
        typeof(DynamicObj.DynamicObj).Assembly,
        typeof(Microsoft.AspNetCore.Html.IHtmlContent).Assembly,
        typeof(CellHelpers).Assembly,
    ];

    /// <summary>The files that cells are compiled against, beside the framework's own.</summary>
    public static IReadOnlyList<string> References { get; } = [.. Ours.Concat(Theirs).Select(a => a.Location)];

    /// <summary>Every public type of the library and its display.</summary>
    public static IEnumerable<Type> Library => Ours.SelectMany(assembly => assembly.GetExportedTypes());

    /// <summary>The first, silent cell: every room of the library, units, tables and the cell helpers.</summary>
    public static string Usings { get; } = string.Concat(
        Library.Select(t => t.Namespace).Distinct().OrderBy(n => n, StringComparer.Ordinal)
            .Concat(["System.IO", "System.Globalization", "System.Threading", "UnitsNet", "UnitsNet.Units", "Microsoft.Data.Analysis"])
            .Select(n => $"using {n};\n"))
        + string.Concat(ClashingTypes().Select(t => $"using {t.Name} = {t.FullName};\n"))
        + $"using static {typeof(CellHelpers).FullName};\nusing static {typeof(CellExtensions).FullName};\n";

    /// <summary>The library's types whose names the units also use, such as Power: in a cell the library's is meant.</summary>
    private static IEnumerable<Type> ClashingTypes() =>
        Library.Where(t => !t.IsNested && typeof(UnitsNet.Mass).Assembly.GetType($"UnitsNet.{t.Name}") is not null);
}

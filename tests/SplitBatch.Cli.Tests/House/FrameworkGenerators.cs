using System.Reflection;
using System.Runtime.InteropServices;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Diagnostics;

namespace SplitBatch.Cli.House;

/// <summary>
/// The generators of source that the framework brings with it, for JSON and for regular expressions, as a build runs them.
/// </summary>
internal static class FrameworkGenerators
{
    private static readonly string[] Names = ["System.Text.Json.SourceGeneration.dll", "System.Text.RegularExpressions.Generator.dll"];

    /// <summary>Each generator, made from the newest reference pack of the SDK.</summary>
    public static IEnumerable<ISourceGenerator> All =>
        Names.SelectMany(name => new AnalyzerFileReference(Path.Combine(Pack, name), new FromFile()).GetGenerators(LanguageNames.CSharp));

    private static string Pack
    {
        get
        {
            var packs = Path.Combine(RuntimeEnvironment.GetRuntimeDirectory(), "..", "..", "..", "packs", "Microsoft.NETCore.App.Ref");
            var newest = Directory.GetDirectories(packs).MaxBy(folder => Version.Parse(Path.GetFileName(folder)))!;
            return Path.GetFullPath(Path.Combine(newest, "analyzers", "dotnet", "cs"));
        }
    }

    private sealed class FromFile : IAnalyzerAssemblyLoader
    {
        public void AddDependencyLocation(string fullPath)
        {
        }

        public Assembly LoadFromPath(string fullPath) => Assembly.LoadFrom(fullPath);
    }
}

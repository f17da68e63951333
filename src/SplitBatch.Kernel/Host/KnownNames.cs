using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using SplitBatch.Display;
using SplitBatch.Trials;

namespace SplitBatch.Kernel.Host;

/// <summary>The names that a cell can use of the library, to offer the one that was probably meant.</summary>
internal static partial class KnownNames
{
    private static readonly Lazy<ILookup<string, Type>> Types =
        new(() => new[] { typeof(Trial).Assembly, typeof(NotebookDisplay).Assembly }
            .SelectMany(assembly => assembly.GetExportedTypes()).Where(type => !type.IsNested && !type.IsGenericType)
                .ToLookup(type => type.Name, StringComparer.Ordinal));

    private static readonly Lazy<IReadOnlyList<MethodInfo>> Extensions = new(() => [.. Types.Value.SelectMany(types => types)
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Static))
        .Where(method => method.IsDefined(typeof(ExtensionAttribute)))]);

    /// <summary>The name that a compiler's message about an unknown one probably means; null when none is near.</summary>
    /// <param name="message">For example <c>'Protocol' does not contain a definition for 'Triangel'</c>.</param>
    /// <param name="variables">Variables of earlier cells.</param>
    public static string? Nearest(string message, IEnumerable<string> variables)
    {
        var quoted = Quoted().Matches(message).Select(match => match.Groups[1].Value).ToList();
        if (quoted.Count == 0) return null;
        if (!message.Contains("does not contain a definition", StringComparison.Ordinal))
            return SplitBatch.Nearest.Name(quoted[0], variables.Concat(Types.Value.Select(types => types.Key)));
        return quoted.Count < 2 || Types.Value[quoted[0]].FirstOrDefault() is not { } type ? null
            : SplitBatch.Nearest.Name(quoted[1], Members(type));
    }

    private static IEnumerable<string> Members(Type type) =>
        type.GetMembers(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.FlattenHierarchy)
            .Where(member => member is PropertyInfo or FieldInfo or MethodInfo { IsSpecialName: false }).Select(member => member.Name)
            .Concat(Extensions.Value.Where(method => method.GetParameters()[0].ParameterType.IsAssignableFrom(type))
                .Select(method => method.Name))
            .Distinct();

    [GeneratedRegex("'([^']+)'")]
    private static partial Regex Quoted();
}

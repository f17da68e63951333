namespace SplitBatch.Kernel.Engine;

/// <summary>Names of types as one writes them in C#.</summary>
internal static class TypeName
{
    private static readonly Dictionary<Type, string> Words = new()
    {
        [typeof(bool)] = "bool", [typeof(byte)] = "byte", [typeof(sbyte)] = "sbyte", [typeof(short)] = "short",
        [typeof(ushort)] = "ushort",
        [typeof(int)] = "int", [typeof(uint)] = "uint", [typeof(long)] = "long", [typeof(ulong)] = "ulong", [typeof(float)] = "float",
        [typeof(double)] = "double", [typeof(decimal)] = "decimal", [typeof(char)] = "char", [typeof(string)] = "string",
        [typeof(object)] = "object", [typeof(void)] = "void",
    };

    /// <summary>For example <c>Dictionary&lt;string, List&lt;int&gt;&gt;</c>.</summary>
    public static string Of(Type type)
    {
        if (Words.TryGetValue(type, out var word)) return word;
        if (type.IsArray) return $"{Of(type.GetElementType()!)}[{new string(',', type.GetArrayRank() - 1)}]";
        if (Nullable.GetUnderlyingType(type) is { } some) return Of(some) + "?";
        if (type.Name.StartsWith("<>f__AnonymousType", StringComparison.Ordinal))
            return $"{{ {string.Join(", ", type.GetProperties().Select(p => $"{Of(p.PropertyType)} {p.Name}"))} }}";
        if (type.FullName?.StartsWith("System.ValueTuple`", StringComparison.Ordinal) == true)
            return $"({string.Join(", ", type.GetGenericArguments().Select(Of))})";
        var name = type.Name.Split('`')[0];
        var outer = type.DeclaringType is { } owner && !type.IsGenericParameter
            && !owner.Name.StartsWith("Submission#", StringComparison.Ordinal)
            ? Of(owner) + "." : "";
        return outer + (type.IsGenericType ? $"{name}<{string.Join(", ", type.GetGenericArguments().Select(Of))}>" : name);
    }
}

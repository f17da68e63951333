using System.Text.RegularExpressions;

namespace SplitBatch.Panel.Planning;

/// <summary>Whether a property that tasters are asked about is one of liking and not of the beer.</summary>
internal static partial class Liking
{
    /// <summary>What a plan says that names a paired preference and no property.</summary>
    public const string Preferred = "preferred";

    /// <summary>Whether a property is one of liking: preferred, liked, better, pleasant ...</summary>
    public static bool IsNamed(string attribute) => Words().IsMatch(attribute);

    /// <summary>Whether a protocol is named as one that asks for a preference.</summary>
    public static bool IsAskedBy(string protocol) => Words().IsMatch(protocol);

    [GeneratedRegex(@"\b(?:prefer\w*|lik(?:e[ds]?|ing|able)|better|best|nicer|tast(?:y|ier)|pleas(?:ant|ing)\w*|enjoy\w*|favou?rite)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex Words();
}

using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace SplitBatch.Cli.House;

/// <summary>How many digits a number gets is decided in Printed. Only what a program reads again may write digits of its own.</summary>
public partial class NumberStyleTests
{
    private const string Rule = "SplitBatch/Printed.cs";

    /// <summary>The writers whose readers are programs, and identifiers that only look like numbers.</summary>
    private static readonly HashSet<string> ForPrograms =
    [
        // CSV logs, to the last digit
        "SplitBatch/BrewDay/BatchEntry.cs", "SplitBatch/Trials/Files/LogRow.cs", "SplitBatch/Trials/Files/NumberText.cs",
        "SplitBatch/Trials/Reading/LabReturnLog.cs",
        "SplitBatch.Display/WriteUp/CsvWriter.cs", "SplitBatch.Display/WriteUp/Document.cs", // tables as CSV, and the ledger's ten digits
        "SplitBatch.Display/Drawing/SvgWriter.cs", // coordinates
        "SplitBatch.Display/Notebooks/HtmlTable.cs", // counts the digits that a column needs
        // names made at random
        "SplitBatch/Trials/Scaffold/TrialScaffold.cs", "SplitBatch.Kernel/Engine/DisplayHandle.cs",
        "SplitBatch.Kernel/Jupyter/Wire/JupyterSession.cs",
    ];

    [Fact]
    public void No_number_is_printed_past_the_rule_of_digits() => Assert.Empty(
        from source in SourceTexts.Sources()
        where source.Path != Rule && !ForPrograms.Contains(source.Path)
        from format in Formats(source.Root)
        where Numeric().IsMatch(format.Text)
        select $"{source.Path}, line {format.Line}: {format.Text}");

    [Fact]
    public void Each_exception_is_still_needed() => Assert.Equal(
        ForPrograms.Order(StringComparer.Ordinal),
        SourceTexts.Sources()
            .Where(source => ForPrograms.Contains(source.Path) && Formats(source.Root).Any(format => Numeric().IsMatch(format.Text)))
            .Select(source => source.Path).Order(StringComparer.Ordinal));

    private static IEnumerable<(string Text, int Line)> Formats(SyntaxNode root)
    {
        foreach (var node in root.DescendantNodes())
        {
            var text = node switch
            {
                InterpolationFormatClauseSyntax clause => clause.FormatStringToken.ValueText,
                InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "ToString" } } call
                    when call.ArgumentList.Arguments is [{ Expression: var first }, ..]
                        && first.IsKind(SyntaxKind.StringLiteralExpression) => ((LiteralExpressionSyntax)first).Token.ValueText,
                InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax { Name.Identifier.Text: "ToString" } } call
                    when call.ArgumentList.Arguments is [{ Expression: BinaryExpressionSyntax }, ..] => "F",
                _ => null,
            };
            if (text is not null) yield return (text, node.GetLocation().GetLineSpan().StartLinePosition.Line + 1);
        }
    }

    [GeneratedRegex(@"^[NFGRPEC]\d*$|[0#]")]
    private static partial Regex Numeric();
}

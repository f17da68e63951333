using System.Collections.Immutable;
using System.Text;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Scripting;

namespace SplitBatch.Kernel.Engine;

/// <summary>What one cell made, as text that declares it.</summary>
/// <param name="References">The files that it brought.</param>
/// <param name="Usings">Its usings, each with what makes two of them the same.</param>
/// <param name="Members">What it made.</param>
/// <param name="Cell">The name of what it was compiled to.</param>
internal sealed record CellDeclarations(
    ImmutableArray<MetadataReference> References,
    ImmutableArray<(string Key, string Text)> Usings,
    ImmutableArray<DeclaredMember> Members,
    string Cell)
{
    /// <summary>Reads it off a cell that ran.</summary>
    public static CellDeclarations Of(Script script)
    {
        var compilation = script.GetCompilation();
        var usings = compilation.SyntaxTrees.SelectMany(tree => ((CompilationUnitSyntax)tree.GetRoot()).Usings)
            .Select(u => (Key: u.Alias?.Name.ToString() ?? u.ToString(), Text: u.ToString()));
        var members = compilation.ScriptClass!.GetMembers().Where(m => !m.IsImplicitlyDeclared && m.CanBeReferencedByName);
        var files = compilation.ExternalReferences.Concat(compilation.DirectiveReferences)
            .Where(file => file.Display?.Contains("Microsoft.NETCore.App", StringComparison.Ordinal) != true);
        return new([.. files], [.. usings], [.. members.Select(DeclaredMember.Of).OfType<DeclaredMember>()], compilation.AssemblyName!);
    }

    /// <summary>The cells in as few texts as their types allow: mostly one.</summary>
    public static IReadOnlyList<string> Join(IReadOnlyList<CellDeclarations> cells)
    {
        var (kept, hidden) = Newest(cells);

        // A type made anew hides the earlier one. What is still of the earlier must see that one, so it lies in a text of its own below.
        var used = kept.SelectMany(k => k.Member.Uses).ToHashSet();
        var cuts = new SortedSet<int> { cells.Count };
        foreach (var (cell, member, newer) in hidden.Where(h => used.Contains((cells[h.Cell].Cell, h.Member.Name))))
        {
            kept.Add((cell, member));
            cuts.Add(newer);
        }

        var texts = new List<string>();
        foreach (var (start, end) in cuts.Prepend(0).Zip(cuts)) texts.Add(Text(cells, kept, start, end));
        return texts;
    }

    /// <summary>
    /// Of each name the last that was made, and of functions of one name each signature; and the types that another hides.
    /// </summary>
    private static (List<(int Cell, DeclaredMember Member)> Kept, List<(int Cell, DeclaredMember Member, int Newer)> Hidden) Newest(
        IReadOnlyList<CellDeclarations> cells)
    {
        var kept = new List<(int, DeclaredMember)>();
        var hidden = new List<(int, DeclaredMember, int)>();
        var taken = new Dictionary<string, HashSet<string>?>(StringComparer.Ordinal);
        var newest = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = cells.Count - 1; i >= 0; i--)
        {
            foreach (var member in cells[i].Members)
            {
                if (!taken.TryGetValue(member.Name, out var signatures))
                {
                    taken[member.Name] = member.Signature is null ? null : [member.Signature];
                }
                else if (member.IsType && newest.TryGetValue(member.Name, out var newer))
                {
                    hidden.Add((i, member, newer));
                    newest[member.Name] = i;
                    continue;
                }
                else if (signatures is null || member.Signature is null || !signatures.Add(member.Signature)) continue;

                if (member.IsType) newest[member.Name] = i;
                kept.Add((i, member));
            }
        }

        return (kept, hidden);
    }

    private static string Text(IReadOnlyList<CellDeclarations> cells, List<(int Cell, DeclaredMember Member)> kept, int start, int end)
    {
        var text = new StringBuilder();
        var usings = cells.Skip(start).Take(end - start).SelectMany(cell => cell.Usings);
        foreach (var (_, line) in usings.Reverse().DistinctBy(u => u.Key).Reverse()) text.Append(line).Append('\n');
        var members = kept.Where(k => k.Cell >= start && k.Cell < end).OrderByDescending(k => k.Cell);
        foreach (var (_, member) in members) text.Append(member.Text).Append('\n');
        return text.ToString();
    }
}

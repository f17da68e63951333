using System.Reflection;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive.CSharp;

namespace SplitBatch.Kernel.Engine;

/// <summary>
/// The cells once more, as the engine keeps them for completions and the like: a project of its own for each. They are added here when such
/// a question is asked, and taken away again when the cell is let go.
/// </summary>
internal sealed class HelpWorkspace : IDisposable
{
    private const BindingFlags Hidden = BindingFlags.Instance | BindingFlags.NonPublic | BindingFlags.Public;

    private static readonly FieldInfo Field = typeof(CSharpKernel).GetField("_workspace", Hidden)!;
    private static readonly MethodInfo Update = Field.FieldType.GetMethod("UpdateWorkspaceAsync", Hidden, [typeof(ScriptState)])!;
    private static readonly MethodInfo Set = typeof(Workspace).GetMethod("SetCurrentSolution", Hidden, [typeof(Solution)])!;
    private static readonly ConstructorInfo State = typeof(ScriptState<object>).GetConstructors(Hidden).Single();
    private static readonly FieldInfo[] Places =
        [.. Field.FieldType.GetFields(Hidden | BindingFlags.DeclaredOnly).Where(f => !f.IsInitOnly)];

    private readonly Workspace workspace;
    private readonly SemaphoreSlim turn = new(1, 1);
    private readonly List<Script> added = [];
    private readonly Mark empty;
    private Mark beforeLast;
    private Mark now;

    /// <summary>That of an engine which has run nothing yet.</summary>
    public HelpWorkspace(CSharpKernel kernel)
    {
        workspace = (Workspace)Field.GetValue(kernel)!;
        empty = beforeLast = now = new Mark(workspace.CurrentSolution, Values());
    }

    /// <summary>Takes away the cells that are not among these, and adds those that are missing.</summary>
    /// <param name="last">The last cell, on which the question is asked.</param>
    public async Task CatchUpAsync(Script? last)
    {
        await turn.WaitAsync().ConfigureAwait(false);
        try
        {
            var chain = new List<Script>();
            for (var script = last; script is not null; script = script.Previous) chain.Insert(0, script);
            var same = added.Zip(chain).TakeWhile(p => ReferenceEquals(p.First, p.Second)).Count();
            if (same < added.Count - 1) same = 0;
            Return(same == added.Count ? now : same == 0 ? empty : beforeLast);
            added.RemoveRange(same, added.Count - same);
            foreach (var script in chain.Skip(same))
            {
                beforeLast = now;
                await ((Task)Update.Invoke(workspace, [State.Invoke([null, script, null, null])])!).ConfigureAwait(false);
                added.Add(script);
                now = new Mark(workspace.CurrentSolution, Values());
            }
        }
        finally
        {
            turn.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose() => turn.Dispose();

    private void Return(Mark mark)
    {
        now = mark;
        if (ReferenceEquals(workspace.CurrentSolution, mark.Solution)) return;
        Set.Invoke(workspace, [mark.Solution]);
        foreach (var (place, value) in Places.Zip(mark.Values)) place.SetValue(workspace, value);
        now = mark with { Solution = workspace.CurrentSolution };
    }

    private object?[] Values() => [.. Places.Select(p => p.GetValue(workspace))];

    /// <summary>How far the workspace has come.</summary>
    private sealed record Mark(Solution Solution, object?[] Values);
}

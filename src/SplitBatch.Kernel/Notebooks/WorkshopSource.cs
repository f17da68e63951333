using SplitBatch.Kernel.Pages;

namespace SplitBatch.Kernel.Notebooks;

/// <summary>
/// The source of one workshop notebook: Markdown, in which code between fences is a cell. A fence's words say who gets the cell:
/// <c>csharp</c> everybody, <c>csharp learner</c> the learners (a blank), <c>csharp solution</c> the instructor,
/// <c>csharp parameters</c> everybody, as the parameters cell. Prose between <c>::: instructor</c> and <c>:::</c> is the instructor's.
/// <c>{up}</c> before a path becomes the way from the reader's folder up to the workshop's.
/// </summary>
internal sealed class WorkshopSource
{
    private const string Fence = "```", NoteStart = "::: instructor", NoteEnd = ":::";

    private readonly string file;
    private readonly List<SourceCell> cells = [];
    private readonly List<string> lines = [];

    private WorkshopSource(string file) => this.file = file;

    public IReadOnlyList<SourceCell> Cells => cells;

    /// <summary>Reads a source.</summary>
    /// <exception cref="NotebookException">A fence is not closed or has words that are not known; the message says on which
    /// line.</exception>
    public static WorkshopSource Parse(string file, string text)
    {
        var source = new WorkshopSource(file);
        source.Read(text.ReplaceLineEndings("\n").Split('\n'));
        return source;
    }

    private void Read(string[] all)
    {
        string? open = null;
        var openedAt = 0;
        for (var i = 0; i < all.Length; i++)
        {
            var line = all[i];
            if (open is null && (line.StartsWith(Fence, StringComparison.Ordinal) || line == NoteStart))
            {
                Close(Prose(Audience.Everybody));
                (open, openedAt) = (line, i);
                if (line != NoteStart) Code(line, i, "");
            }
            else if (open is not null && line == (open == NoteStart ? NoteEnd : Fence))
            {
                Close(open == NoteStart ? Prose(Audience.Instructor) : Code(open, openedAt, Text()));
                open = null;
            }
            else if (open is null && line == NoteEnd) throw Refusal(i, "An instructor's note ends here and was never begun.");
            else lines.Add(line);
        }

        if (open is not null) throw Refusal(openedAt, $"\"{open}\" is not closed.");
        Close(Prose(Audience.Everybody));
    }

    private SourceCell Prose(Audience audience) => new(false, audience, Text());

    private SourceCell Code(string fence, int line, string text) => fence switch
    {
        "```csharp" => new(true, Audience.Everybody, text),
        "```csharp learner" => new(true, Audience.Learner, text, "exercise"),
        "```csharp solution" => new(true, Audience.Instructor, text, "solution"),
        "```csharp parameters" => new(true, Audience.Everybody, text, "parameters"),
        _ => throw Refusal(line,
            $"\"{fence}\" is not known. Accepted: ```csharp alone, or with one of the words learner, solution, parameters."),
    };

    private string Text() => string.Join('\n', lines).Trim('\n', ' ');

    private void Close(SourceCell cell)
    {
        if (cell.Text.Length > 0) cells.Add(cell);
        lines.Clear();
    }

    private NotebookException Refusal(int line, string problem) => new($"{file}, line {line + 1}: {problem}");
}

/// <summary>Who gets a cell of a workshop's source.</summary>
internal enum Audience
{
    /// <summary>Learners and the instructor.</summary>
    Everybody,

    /// <summary>Learners: a cell with a blank.</summary>
    Learner,

    /// <summary>The instructor: a solution, or a note.</summary>
    Instructor,
}

/// <summary>One cell of a workshop's source.</summary>
/// <param name="IsCode">Code, or else prose.</param>
/// <param name="Audience">Who gets it.</param>
/// <param name="Text">The cell's text.</param>
/// <param name="Tag">The cell's tag in the notebook; null for none.</param>
internal sealed record SourceCell(bool IsCode, Audience Audience, string Text, string? Tag = null);

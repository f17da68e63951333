using SplitBatch.Kernel.Pages;

namespace SplitBatch.Kernel.Notebooks;

public class WorkshopSourceTests
{
    private const string Text = """
        # Title

        Prose for all, [up]({up}README.md).

        ::: instructor
        A note.
        :::

        ```csharp parameters
        var trialFolder = "{up}../demo";
        ```

        ```csharp learner
        int? answer = null;
        ```

        ```csharp solution
        int? answer = 42;
        ```

        ```csharp
        answer + 1
        ```

        The end.
        """;

    [Fact]
    public void The_learner_gets_the_blank_and_no_note_and_no_solution()
    {
        var cells = For(Audience.Learner).Cells;
        Assert.Equal(
            ["# Title\n\nProse for all, [up](README.md).", "var trialFolder = \"../demo\";", "int? answer = null;", "answer + 1",
            "The end."], cells.Select(cell => cell.Source));
        Assert.Equal([CellKind.Markdown, CellKind.Code, CellKind.Code, CellKind.Code, CellKind.Markdown], cells.Select(cell => cell.Kind));
        Assert.Equal(["exercise"], cells[2].Tags);
    }

    [Fact]
    public void The_instructor_gets_the_note_and_the_solution_and_no_blank()
    {
        var cells = For(Audience.Instructor).Cells;
        Assert.Equal(
            ["# Title\n\nProse for all, [up](../README.md).", "A note.", "var trialFolder = \"../../demo\";", "int? answer = 42;",
            "answer + 1", "The end."], cells.Select(cell => cell.Source));
        Assert.Equal(["solution"], cells[3].Tags);
        Assert.Equal(["parameters"], cells[2].Tags);
    }

    [Fact]
    public void The_same_source_gives_the_same_bytes_and_each_cell_an_id_of_its_own()
    {
        var twice = WorkshopSource.Parse("t.md", Text + "\n\n```csharp\nanswer + 1\n```\n");
        var notebook = WorkshopNotebook.For(twice, Audience.Learner);
        Assert.Equal(notebook.ToString(), WorkshopNotebook.For(twice, Audience.Learner).ToString());
        Assert.Equal(notebook.Cells.Count, notebook.Cells.Select(cell => cell.Id).Distinct().Count());
        Assert.Equal("c#", notebook.Language);
    }

    [Theory]
    [InlineData("a\n\n```csharp\n1 + 1\n", "t.md, line 3: \"```csharp\" is not closed")]
    [InlineData("```csharp lerner\n1\n```\n", "t.md, line 1: \"```csharp lerner\" is not known")]
    [InlineData("::: instructor\na\n", "t.md, line 1: \"::: instructor\" is not closed")]
    [InlineData("a\n:::\n", "t.md, line 2: An instructor's note ends here and was never begun")]
    public void A_fault_in_a_source_is_told_with_its_line(string text, string message) =>
        Assert.StartsWith(message, Assert.Throws<NotebookException>(() => WorkshopSource.Parse("t.md", text)).Message,
            StringComparison.Ordinal);

    [Fact]
    public void A_folder_without_sources_is_refused()
    {
        var folder = Directory.CreateTempSubdirectory("workshop-");
        try
        {
            Assert.Contains("holds no source", Assert.Throws<NotebookException>(() => WorkshopFolder.Write(folder.FullName)).Message,
                StringComparison.Ordinal);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static Notebook For(Audience reader) => WorkshopNotebook.For(WorkshopSource.Parse("t.md", Text), reader);
}

using SplitBatch.Kernel.Headless;

namespace SplitBatch.Kernel.Notebooks;

public class NotebookTests
{
    public static TheoryData<string, string> Broken => new()
    {
        { "", "The file is empty." },
        { "  \n", "The file is empty." },
        { "{\n \"cells\": [\n", "not valid JSON at line 3" },
        { "<<<<<<< HEAD\n{}", "not valid JSON at line 1" },
        { "[]", "not a notebook: it must be an object" },
        { "{}", "has no nbformat number" },
        { """{"nbformat": "4", "cells": []}""", "has no nbformat number" },
        { """{"nbformat": 3, "worksheets": []}""", "in the old format 3" },
        { """{"nbformat": 5, "cells": []}""", "newer than this program" },
        { """{"nbformat": 4, "metadata": {}}""", "the list \"cells\" is missing" },
        { """{"nbformat": 4, "cells": {}}""", "\"cells\" is not a list" },
        { """{"nbformat": 4, "cells": [1]}""", "Cell 1 is not an object" },
        { """{"nbformat": 4, "cells": [{"cell_type": "heading", "source": ""}]}""",
            "Cell 1 has the cell_type \"heading\"; accepted: \"code\", \"markdown\" or \"raw\"" },
        { """{"nbformat": 4, "cells": [{"cell_type": "code"}]}""", "Cell 1 has no source" },
        { """{"nbformat": 4, "cells": [{"cell_type": "code", "source": [1]}]}""", "Cell 1 has no source, or one that is neither" },
        { """{"nbformat": 4, "cells": [{"cell_type": "code", "source": "", "outputs": 3}]}""", "outputs that are not a list" },
        { """{"nbformat": 4, "nbformat": 4, "cells": []}""", "not valid JSON" },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public void A_broken_notebook_is_refused_with_the_reason(string text, string reason) =>
        Assert.Contains(reason, Assert.Throws<NotebookException>(() => Notebook.Parse(text)).Message, StringComparison.Ordinal);

    [Fact]
    public void A_notebook_that_is_not_changed_is_written_byte_for_byte() =>
        Assert.Equal(NotebookText.Tiny, Notebook.Parse(NotebookText.Tiny).ToString());

    [Fact]
    public void Ids_metadata_raw_cells_and_foreign_fields_survive()
    {
        const string text = """
            {
             "cells": [
              {
               "attachments": {
                "a.png": {
                 "image/png": "AAAA"
                }
               },
               "cell_type": "markdown",
               "id": "über",
               "metadata": {
                "my.program": [
                 1.50,
                 1e3,
                 null
                ]
               },
               "source": "one line, not a list"
              },
              {
               "cell_type": "raw",
               "id": "r",
               "metadata": {},
               "source": []
              }
             ],
             "foreign": true,
             "metadata": {},
             "nbformat": 4,
             "nbformat_minor": 5
            }

            """;
        Assert.Equal(text.ReplaceLineEndings("\n"), Notebook.Parse(text).ToString());
    }

    [Fact]
    public void The_title_is_the_first_heading_of_the_prose() => Assert.Equal("A tiny notebook", Notebook.Parse(NotebookText.Tiny).Title);

    [Theory]
    [InlineData("python")]
    [InlineData("F#")]
    public void A_notebook_in_another_language_is_refused_by_name(string language)
    {
        var notebook =
            Notebook.Parse(NotebookText.Tiny.Replace("\"language\": \"C#\"", $"\"language\": \"{language}\"", StringComparison.Ordinal));
        var error = Assert.Throws<NotebookException>(() => NotebookRunner.CheckLanguage(notebook));
        Assert.Contains(language.ToLowerInvariant(), error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_missing_file_and_a_file_of_other_bytes_are_told_apart()
    {
        var file = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(file, [0x7B, 0xFF, 0xFE, 0x00]);
            Assert.Contains("not UTF-8", Assert.Throws<NotebookException>(() => Notebook.Load(file)).Message, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }

        Assert.Equal("There is no such file.", Assert.Throws<NotebookException>(() => Notebook.Load(file)).Message);
    }
}

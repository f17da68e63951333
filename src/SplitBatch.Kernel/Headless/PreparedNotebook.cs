using SplitBatch.Kernel.Notebooks;
using SplitBatch.Trials;
using SplitBatch.Trials.Files;

namespace SplitBatch.Kernel.Headless;

/// <summary>A notebook of a batch, read and given its parameters; or the reason why it cannot be run.</summary>
internal sealed class PreparedNotebook
{
    /// <summary>The parameter that names the trial folder.</summary>
    public const string TrialParameter = "trialFolder";

    private PreparedNotebook(string path) => Path = path;

    public string Path { get; }

    public string Name => System.IO.Path.GetFileNameWithoutExtension(Path);

    public string Folder => System.IO.Path.GetDirectoryName(System.IO.Path.GetFullPath(Path))!;

    public Notebook? Notebook { get; private init; }

    public ParameterCell? Parameters { get; private init; }

    public string? Problem { get; private set; }

    public static PreparedNotebook Read(string path)
    {
        try
        {
            var notebook = Notebook.Load(path);
            NotebookRunner.CheckLanguage(notebook);
            return new PreparedNotebook(path) { Notebook = notebook, Parameters = ParameterCell.Find(notebook) };
        }
        catch (NotebookException error)
        {
            return new PreparedNotebook(path) { Problem = error.Message };
        }
    }

    /// <summary>Sets the parameters that this notebook has, and points it to a working copy of its trial.</summary>
    /// <exception cref="NotebookException">A value is not of the parameter's kind.</exception>
    public void Inject(BatchRequest request, WorkingCopies copies)
    {
        if (Parameters is null) return;
        var values = request.Set.Where(v => Parameters.Names.Contains(v.Key)).ToDictionary();
        var trial = values.GetValueOrDefault(TrialParameter) ?? request.Trial;
        if (Parameters.Names.Contains(TrialParameter) && (trial ?? OwnTrial()) is { } source)
        {
            var folder = new TrialFolder(source);
            if (folder.HoldsTrial) values[TrialParameter] = copies.Of(folder).Path;
            else if (trial is not null)
                throw new NotebookException($"The folder {source} holds no {TrialFolder.DescriptionFile}, so it is not a trial folder.");
            else Problem =
                $"The parameters cell names the trial folder \"{Parameters.TextOf(TrialParameter)}\", which holds no "
                + $"{TrialFolder.DescriptionFile}. Name another there, or give one with --trial.";
        }

        try
        {
            Parameters.Inject(values);
        }
        catch (NotebookException error)
        {
            throw new NotebookException($"{Path}: {error.Message}", error);
        }
    }

    private string? OwnTrial() => Parameters?.TextOf(TrialParameter) is { } own ? System.IO.Path.Combine(Folder, own) : null;
}

using System.Text;
using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Headless;
using SplitBatch.Kernel.Notebooks;
using SplitBatch.Kernel.Pages;

namespace SplitBatch.Proof.Fuzz;

/// <summary>The notebook runner: spoilt notebooks, read, run on a host that answers at once, saved, and made into a page.</summary>
internal sealed class NotebookTarget : Target
{
    private readonly string file;
    private readonly byte[][] notebooks;

    /// <param name="folder">A folder of good notebooks.</param>
    /// <param name="scratch">A folder to work in; it must exist.</param>
    public NotebookTarget(string folder, string scratch)
    {
        file = Path.Combine(scratch, "spoilt.ipynb");
        notebooks = [.. Directory.GetFiles(folder, "*.ipynb").Order(StringComparer.Ordinal).Select(File.ReadAllBytes),
            Encoding.UTF8.GetBytes(Small)];
    }

    public override string Name => "notebook runner";

    /// <summary>A notebook with an output of every kind, so that spoiling it hits each of them often.</summary>
    private const string Small = """
        {"nbformat":4,"nbformat_minor":5,"metadata":{"kernelspec":{"name":"splitbatch","display_name":"SplitBatch","language":"C#"}},"cells":[
        {"cell_type":"markdown","id":"a","metadata":{},"source":["# Title\n","text [link](x.md) ![p](attachment:p.png)"],"attachments":{"p.png":{"image/png":"iVBORw0KGgo="}}},
        {"cell_type":"code","id":"b","metadata":{"tags":["parameters"]},"source":"var trialFolder = \"x\"; var n = 3;","execution_count":1,"outputs":[]},
        {"cell_type":"code","id":"c","metadata":{},"source":["say 1\n","say 2"],"execution_count":2,"outputs":[
        {"output_type":"stream","name":"stdout","text":["a\n"]},{"output_type":"display_data","metadata":{},"data":{"text/html":"<b>x</b>","text/plain":"x","image/svg+xml":"<svg/>","application/json":{"a":1}}},
        {"output_type":"execute_result","execution_count":2,"metadata":{},"data":{"text/plain":["1"]}},{"output_type":"error","ename":"E","evalue":"v","traceback":["t"]}]},
        {"cell_type":"raw","id":"d","metadata":{},"source":"raw"}]}
        """;

    protected override string? Try(int seed)
    {
        var mutator = new Mutator(seed);
        File.WriteAllBytes(file,
            mutator.Spoil(mutator.Below(2) == 0 ? notebooks[^1] : mutator.Of(notebooks), () => mutator.Of(notebooks)));
        try
        {
            var notebook = Notebook.Load(file);
            string before = NotebookPage.Html(notebook, "before");
            NotebookRunner.CheckLanguage(notebook);
            ParameterCell.Find(notebook)?.Inject(new Dictionary<string, string>());
            var host = new EchoHost();
            var failure = NotebookRunner.RunAsync(notebook, host).GetAwaiter().GetResult();
            notebook.Save(file);
            Notebook.Load(file);
            string page = NotebookPage.Html(notebook, "after", failure);
            return before.Length > 0 && page.EndsWith("</html>\n", StringComparison.Ordinal) ? null : "a page that does not end";
        }
        catch (NotebookException error)
        {
            return Find.RuntimeWordsIn(error.Message) is { } words
                ? $"a refusal in the runtime's words (\"{words}\"): {error.Message}"
                : null;
        }
    }

    /// <summary>Shows each cell its own text, and fails where the text says so.</summary>
    private sealed class EchoHost : ICellHost
    {
        public Task StartAsync(CancellationToken cancellation = default) => Task.CompletedTask;

        public Task<CellResult> ExecuteAsync(string code, ICellSink sink, CancellationToken cancellation = default)
        {
            sink.Publish(new TextOutput(code));
            sink.Publish(new DisplayOutput(MimeBundle.Plain(code), "shown"));
            sink.Publish(new DisplayUpdate(MimeBundle.Plain("again"), "shown"));
            sink.Publish(
                new ValueOutput(
                    new MimeBundle(new Dictionary<string, string>
                    {
                        ["application/json"] = code,
                        ["text/html"] = code,
                        ["text/plain"] = code,
                    })));
            return Task.FromResult(code.Contains("throw", StringComparison.Ordinal)
                ? new CellResult(new CellError("E", code, [code]))
                : CellResult.Success);
        }

        public Task<Completions> CompleteAsync(string code, int cursor, CancellationToken cancellation = default) =>
            throw new NotSupportedException();

        public Task<MimeBundle?> InspectAsync(string code, int cursor, CancellationToken cancellation = default) =>
            throw new NotSupportedException();

        public Completeness IsComplete(string code) => Completeness.Complete;

        public Task<bool> InterruptAsync() => Task.FromResult(true);

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}

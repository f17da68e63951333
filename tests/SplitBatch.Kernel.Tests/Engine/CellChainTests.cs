using SplitBatch.Kernel.Cells;
using SplitBatch.Kernel.Host;

namespace SplitBatch.Kernel.Engine;

public sealed class CellChainTests(HostFixture kernel) : IClassFixture<HostFixture>
{
    private static int keys;

    [Theory]
    [InlineData("1 + 1", "2", "2")]
    [InlineData("var note = 1;", "var note = 2;", "note", "2")]
    [InlineData("var note = 1;", "var note = \"text\"; var more = note + note;", "more", "texttext")]
    [InlineData("record Jar(int Litres); double Twice(double x) => 2 * x; var jar = new Jar(3);",
        "record Jar(string Name); double Twice(double x) => 20 * x; var jar = new Jar(\"new\");", "jar.Name + Twice(1)", "new20")]
    [InlineData("foreach (var i in Enumerable.Range(0, 3)) { int Local() => i; Local(); }", "3", "3")]
    public async Task A_cell_to_which_no_later_one_can_refer_is_let_go(string cell, params string[] later)
    {
        var assembly = await Watched(cell);
        foreach (var code in later[..^2]) await Run(code);
        Assert.Equal(later[^1], await kernel.Value(later[^2]));
        Assert.False(await IsHeld(assembly));
    }

    [Theory]
    [InlineData("var kept = 1;", "var other = 2;", "kept", "1")]
    [InlineData("int.TryParse(\"3\", out var parsed);", "parsed", "3")]
    [InlineData("Func<int> call = () => 7;", "var call = 2;", "call()", "7")]
    [InlineData("class both { public int Seven => 7; }", "var both = 2;", "new both().Seven", "7")]
    [InlineData("int Count(int a, int b = 6) => a + b;", "string Count(int a) => \"one\";", "Count(1, 6)", "7")]
    [InlineData("using System.Net;", "IPAddress.Loopback.ToString()", "127.0.0.1")]
    public async Task A_cell_to_which_a_later_one_can_refer_is_kept(string cell, params string[] later)
    {
        var assembly = await Watched(cell);
        foreach (var code in later[..^2]) await Run(code);
        Assert.True(await IsHeld(assembly));
        Assert.Equal(later[^1], await kernel.Value(later[^2]));
    }

    [Fact]
    public async Task A_function_that_is_held_runs_though_its_cell_and_the_type_it_uses_are_made_again()
    {
        await Run("var held = new List<Func<string>>();");
        await Run("class Label { public static string Text = \"old\"; }");
        var assembly = await Watched("held.Add(() => Label.Text);");
        await Run("class Label { public static string Text = \"new\"; }");
        Assert.True(await IsHeld(assembly));
        Assert.Equal("old new", await kernel.Value("held[0]() + \" \" + Label.Text"));
    }

    [Fact]
    public async Task Types_without_a_name_are_the_same_in_every_cell()
    {
        await Run("var seen = new HashSet<object>();");
        await Run("seen.Add(new { Lot = 1 });");
        Assert.Equal("True", await kernel.Value("seen.Contains(new { Lot = 1 })"));
    }

    [Fact]
    public async Task A_variable_that_is_made_again_in_vain_keeps_its_value()
    {
        await Run("var weighed = 1;");
        Assert.Equal("CompilationError", (await kernel.Run("var weighed = nothing;")).Result.Error!.Name);
        Assert.Equal("1", await kernel.Value("weighed"));
        Assert.True((await kernel.Run("var weighed = 2; while (true) { }", TimeSpan.FromSeconds(1))).Result.Interrupted);
        Assert.Equal("1", await kernel.Value("weighed"));
        Assert.Equal("Exception", (await kernel.Run("var weighed = 3; throw new Exception();")).Result.Error!.Name);
        Assert.Equal("3", await kernel.Value("weighed"));
    }

    [Fact]
    public async Task Variables_are_listed_in_the_order_in_which_they_were_first_made()
    {
        await using var own = new KernelHost();
        var sink = new ListSink();
        foreach (
            var code in new[] { "var b = 1; var a = 2;", "var b = 3; var a = 4;", "var a = 5; var b = 6;", "var c = 7;", "var a = 8;",
            "var a = 9;", "#!who" }) await own.ExecuteAsync(code, sink);
        var list = HostFixture.Text(Assert.IsType<DisplayOutput>(Assert.Single(sink.Outputs)));
        Assert.Equal(["b", "a", "c"], System.Text.RegularExpressions.Regex.Matches(list, @"\b[abc]\b").Select(m => m.Value).Distinct());
    }

    [Fact]
    public async Task Completions_know_every_cell_as_it_is_now()
    {
        await using var own = new KernelHost();
        foreach (var (cell, asked, offered) in new[]
        {
            ("var pot = 1;", "pot.ToS", "ToString"),
            ("var pot = \"text\";", "pot.Subs", "Substring"),
            ("Console.Write(pot);", "pot.Subs", "Substring"),
            ("var pot = new List<int>();", "pot.AddR", "AddRange"),
            ("var lid = 1; var rim = 2;", "pot.AddR", "AddRange"),
            ("var lid = pot; var rim = lid;", "rim.AddR", "AddRange"),
            ("throw new Exception();", "lid.AddR", "AddRange"),
        })
        {
            await own.ExecuteAsync(cell, new ListSink());
            Assert.Contains(offered, (await own.CompleteAsync(asked, asked.Length)).Items.Select(i => i.Text));
        }
    }

    private async Task Run(string code) => Assert.Null((await kernel.Run(code)).Result.Error);

    /// <summary>Runs a cell; gives a weak reference to its assembly.</summary>
    private async Task<WeakReference> Watched(string code)
    {
        var key = $"watched cell {Interlocked.Increment(ref keys)}";
        var watch = $"AppDomain.CurrentDomain.SetData(\"{key}\", new WeakReference(System.Reflection.Assembly.GetExecutingAssembly()));";
        await Run(code.EndsWith(';') || code.EndsWith('}') ? $"{code}\n{watch}" : $"{watch}\n{code}");
        return (WeakReference)AppDomain.CurrentDomain.GetData(key)!;
    }

    /// <summary>Whether it still is, once another cell ran and the garbage was collected.</summary>
    private async Task<bool> IsHeld(WeakReference assembly)
    {
        await Run("0");
        for (var turn = 0; turn < 20 && assembly.IsAlive; turn++)
        {
            GC.Collect();
            GC.WaitForPendingFinalizers();
        }

        return assembly.IsAlive;
    }
}

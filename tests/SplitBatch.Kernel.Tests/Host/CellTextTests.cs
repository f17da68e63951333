namespace SplitBatch.Kernel.Host;

public class CellTextTests
{
    [Theory]
    [InlineData("using var a = New();", "      var a = New();", "a")]
    [InlineData("using Stream a = New();\na.Read();", "      Stream a = New();\na.Read();", "a")]
    [InlineData("var x = 1; await using var b = New();", "var x = 1;             var b = New();", "b")]
    public void A_using_declaration_becomes_a_variable_that_the_cell_owns(string code, string text, string owned)
    {
        var read = CellText.Of(code);
        Assert.Equal(text, read.Code);
        Assert.Equal([owned], read.Owned);
    }

    [Theory]
    [InlineData("using System.Net;")]
    [InlineData("using static System.Math;")]
    [InlineData("using Text = System.Text.StringBuilder;")]
    [InlineData("using (var a = New()) { }")]
    [InlineData("void F() { using var a = New(); }")]
    [InlineData("class C { int x = this is null ? 1 : 2; static class D { } }")]
    [InlineData("static class Plain { public static int Two(int x) => 2; }")]
    public void All_else_stays(string code)
    {
        var read = CellText.Of(code);
        Assert.Equal(code, read.Code);
        Assert.Empty(read.Owned);
    }

    [Fact]
    public void The_frame_around_extension_methods_is_left_blank()
    {
        var read = CellText.Of("public static class More\n{\n    public static int Twice(this int x) => 2 * x;\n}\n3.Twice()");
        Assert.Equal("                        \n \n    public static int Twice(this int x) => 2 * x;\n \n3.Twice()", read.Code);
    }

    [Fact]
    public void A_cell_can_ask_how_long_it_takes()
    {
        var read = CellText.Of("#!time\n1 + 1");
        Assert.True(read.IsTimed);
        Assert.Equal("      \n1 + 1", read.Code);
    }
}

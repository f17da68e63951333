using Microsoft.DotNet.Interactive.CSharp;
using SplitBatch.Brewing;
using SplitBatch.Kernel.Host;
using Xunit;

namespace SplitBatch.Kernel.Tests.Host;

public class MappedReferencesTests
{
    [Fact]
    public void The_engine_still_keeps_its_options_where_they_are_set()
    {
        using var engine = new CSharpKernel();
        Assert.True(MappedReferences.Attach(engine, [typeof(Gravity).Assembly.Location]));
    }
}

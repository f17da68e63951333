using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SplitBatch.Numbers;

/// <summary>Arithmetic on whole spans, whose lengths are alike and multiples of 4.</summary>
/// <remarks>
/// Loops over vectors are compiled in full at once, here and wherever draws are made: ahead of time they cannot be, because the width of
/// vectors is the machine's, and a first quick version would be most of what a write-up's draws take.
/// </remarks>
internal static class VectorMath
{
    /// <summary>Multiplies in place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void Multiply(Span<double> target, ReadOnlySpan<double> by)
    {
        var t = Vectors(target);
        var f = Vectors(by);
        for (var i = 0; i < t.Length; i++) t[i] *= f[i];
    }

    /// <summary>Divides in place.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void Divide(Span<double> target, ReadOnlySpan<double> by)
    {
        var t = Vectors(target);
        var f = Vectors(by);
        for (var i = 0; i < t.Length; i++) t[i] /= f[i];
    }

    /// <summary>Adds into the target.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void Add(ReadOnlySpan<double> what, Span<double> target)
    {
        var t = Vectors(target);
        var f = Vectors(what);
        for (var i = 0; i < t.Length; i++) t[i] += f[i];
    }

    /// <summary>Adds a product into the target.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void MultiplyAdd(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> target)
    {
        var t = Vectors(target);
        var f = Vectors(x);
        var g = Vectors(y);
        for (var i = 0; i < t.Length; i++) t[i] += f[i] * g[i];
    }

    /// <summary>The span as vectors; a remainder shorter than a vector is left out.</summary>
    internal static Span<Vector256<double>> Vectors(Span<double> span) => MemoryMarshal.Cast<double, Vector256<double>>(span);

    /// <inheritdoc cref="Vectors(Span{double})"/>
    internal static ReadOnlySpan<Vector256<double>> Vectors(ReadOnlySpan<double> span) =>
        MemoryMarshal.Cast<double, Vector256<double>>(span);
}

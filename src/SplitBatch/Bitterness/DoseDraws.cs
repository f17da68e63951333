using System.Buffers;
using SplitBatch.Numbers;

namespace SplitBatch.Bitterness;

/// <summary>Draws both halves many times, in blocks that do not depend on each other.</summary>
internal static class DoseDraws
{
    /// <summary>Draws in a block: small enough that a block's columns stay in the processor's cache.</summary>
    private const int Block = 1024;

    internal static (double[] A, double[] B, double[] Difference) Make(DoseSampler sampler, int seed, int draws, int threads)
    {
        var (a, b, difference) = (new double[draws], new double[draws], new double[draws]);
        var blocks = (draws + Block - 1) / Block;
        Parallel.For(0, threads, new ParallelOptions { MaxDegreeOfParallelism = threads }, worker =>
        {
            var columns = ArrayPool<double>.Shared.Rent(sampler.Variables.Length * Block);
            var scratch = ArrayPool<double>.Shared.Rent(6 * Block);
            for (var block = worker; block < blocks; block += threads)
            {
                var (from, count) = (block * Block, Math.Min(Block, draws - block * Block));
                Draw(sampler, seed, block, columns, scratch);
                scratch.AsSpan(4 * Block, count).CopyTo(a.AsSpan(from));
                scratch.AsSpan(5 * Block, count).CopyTo(b.AsSpan(from));
                for (var i = 0; i < count; i++) difference[from + i] = b[from + i] - a[from + i];
            }

            ArrayPool<double>.Shared.Return(columns);
            ArrayPool<double>.Shared.Return(scratch);
        });
        return (a, b, difference);
    }

    /// <summary>One block: errors into the columns, then A and B into the fifth and sixth part of the scratch.</summary>
    private static void Draw(DoseSampler sampler, int seed, int block, double[] columns, double[] scratch)
    {
        var random = new VectorRandom((ulong)seed, (ulong)block);
        for (var v = 0; v < sampler.Variables.Length; v++)
        {
            var column = columns.AsSpan(v * Block, Block);
            if (sampler.Variables[v].Term.Shape == ErrorShape.Rectangular) random.FillRectangular(column);
            else random.FillNormal(column);
        }

        var errors = columns.AsSpan(0, sampler.Variables.Length * Block);
        sampler.Evaluate(Side.A, errors, scratch.AsSpan(0, 4 * Block), scratch.AsSpan(4 * Block, Block));
        sampler.Evaluate(Side.B, errors, scratch.AsSpan(0, 4 * Block), scratch.AsSpan(5 * Block, Block));
    }
}

using System.Numerics;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace SplitBatch.Numbers;

/// <summary>Four streams of random numbers side by side, for filling arrays. A seed and a stream number settle all of them.</summary>
/// <remarks>
/// Generator xoshiro256++ (Blackman, D. and Vigna, S. (2021), ACM Trans. Math. Softw. 47, 36), seeded by SplitMix64. Normal numbers
/// by the Box-Muller transform, both of each pair used.
/// </remarks>
internal sealed class VectorRandom
{
    private Vector256<ulong> s0, s1, s2, s3;

    internal VectorRandom(ulong seed, ulong stream)
    {
        var state = Mix(seed) ^ Mix(stream * 0x9E3779B97F4A7C15UL + 0x632BE59BD9B4E019UL);
        Vector256<ulong> Next()
        {
            Span<ulong> words = stackalloc ulong[4];
            foreach (ref var word in words)
            {
                state += 0x9E3779B97F4A7C15UL;
                word = Mix(state);
            }

            return Vector256.Create<ulong>(words);
        }

        (s0, s1, s2, s3) = (Next(), Next(), Next(), Next());
    }

    /// <summary>Fills a span, whose length is a multiple of 8, with standard normal numbers.</summary>
    internal void FillNormal(Span<double> target)
    {
        var vectors = MemoryMarshal.Cast<double, Vector256<double>>(target);
        for (var i = 0; i + 1 < vectors.Length; i += 2)
        {
            var radius = Vector256.Sqrt(-2.0 * Vector256.Log(Vector256.Create(2.0) - OneToTwo()));
            var (sin, cos) = Vector256.SinCos(2 * Math.PI * (OneToTwo() - Vector256.Create(1.5)));
            vectors[i] = radius * cos;
            vectors[i + 1] = radius * sin;
        }
    }

    /// <summary>Fills a span, whose length is a multiple of 4, with rectangular numbers of mean 0 and standard deviation 1.</summary>
    internal void FillRectangular(Span<double> target)
    {
        var width = 2 * Math.Sqrt(3);
        foreach (ref var vector in MemoryMarshal.Cast<double, Vector256<double>>(target))
        {
            vector = width * (OneToTwo() - Vector256.Create(1.5));
        }
    }

    /// <summary>Numbers in [1, 2): 52 random bits as the fraction of a double.</summary>
    private Vector256<double> OneToTwo() =>
        ((Next() >> 12) | Vector256.Create(0x3FF0000000000000UL)).AsDouble();

    private Vector256<ulong> Next()
    {
        var result = Turn(s0 + s3, 23) + s0;
        var t = s1 << 17;
        s2 ^= s0;
        s3 ^= s1;
        s1 ^= s2;
        s0 ^= s3;
        s2 ^= t;
        s3 = Turn(s3, 45);
        return result;
    }

    private static Vector256<ulong> Turn(Vector256<ulong> x, int bits) => (x << bits) | (x >> (64 - bits));

    private static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}

using System.Numerics;
using System.Runtime.CompilerServices;

namespace SplitBatch.Numbers;

/// <summary>
/// The source of chance behind serving plans and simulated panels: Chris Doty-Humphrey's SFC64 (four 64-bit words, the last a counter, so
/// the shortest cycle is 2^64). The same seed and stream give the same numbers on every machine and in every release;
/// <see cref="Random"/> with a seed makes no such promise.
/// </summary>
/// <remarks>
/// Ref. C. Doty-Humphrey, PractRand 0.92 (2013), generator sfc64, output function as published; the same generator is NumPy's
/// <c>SFC64</c>. Seeded here with a = seed, b = stream, c = 0x9E3779B97F4A7C15, counter 1, and 18 outputs thrown away.
/// A mutable value: pass it by <c>ref</c>. <c>default</c> is a valid but unseeded generator; use the constructor.
/// </remarks>
public struct SeededRandom
{
    private ulong a, b, c, counter;

    /// <summary>A generator for a seed and a stream; streams of one seed are independent for every practical use.</summary>
    /// <param name="seed">Any whole number.</param>
    /// <param name="stream">Any whole number: which of the seed's streams.</param>
    public SeededRandom(long seed, long stream = 0)
    {
        (a, b, c, counter) = ((ulong)seed, (ulong)stream, 0x9E37_79B9_7F4A_7C15, 1);
        for (int i = 0; i < 18; i++) NextBits();
    }

    internal SeededRandom(ulong first, ulong second, ulong third, ulong count) => (a, b, c, counter) = (first, second, third, count);

    /// <summary>The next 64 random bits.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public ulong NextBits()
    {
        ulong result = a + b + counter++;
        a = b ^ (b >> 11);
        b = c + (c << 3);
        c = BitOperations.RotateLeft(c, 24) + result;
        return result;
    }

    /// <summary>A number in [0, 1), in steps of 2^-53.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public double NextShare() => (NextBits() >> 11) * (1.0 / (1UL << 53));

    /// <summary>A whole number in [0, <paramref name="below"/>), each equally likely.</summary>
    /// <remarks>Ref. D. Lemire, Fast random integer generation in an interval, ACM TOMACS 29 (2019), article 3.</remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="below"/> is not above zero.</exception>
    public int NextBelow(int below)
    {
        Guard.Positive(below);
        ulong high = Math.BigMul(NextBits(), (ulong)below, out ulong low);
        if (low < (ulong)below)
        {
            ulong threshold = (0UL - (ulong)below) % (ulong)below;
            while (low < threshold) high = Math.BigMul(NextBits(), (ulong)below, out low);
        }
        return (int)high;
    }

    /// <summary>Puts the items in a random order, each order equally likely (Fisher and Yates).</summary>
    public void Shuffle<T>(Span<T> items)
    {
        for (int i = items.Length - 1; i > 0; i--)
        {
            int j = NextBelow(i + 1);
            (items[i], items[j]) = (items[j], items[i]);
        }
    }
}

using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace SplitBatch.Numbers;

/// <summary>Standard normal numbers by the ziggurat of 256 layers: fast, and exact to the last bits of a double.</summary>
/// <remarks>
/// Ref. G. Marsaglia and W. W. Tsang, The ziggurat method for generating random variables, J. Stat. Softw. 5 (2000), issue 8; layer and
/// value taken from separate bits, after J. A. Doornik, An improved ziggurat method to generate normal random samples (2005).
/// </remarks>
internal static class Ziggurat
{
    // The start of the tail and the area of a layer, for 256 layers.
    private const double Tail = 3.6541528853610088, Area = 0.00492867323399;
    private const double Steps = 1L << 52;

    private static readonly Layer[] Layers = MakeLayers();

    /// <summary>The next normal number. Written so that a caller's own copy of the generator can stay in registers.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    internal static double Next(ref SeededRandom random)
    {
        ulong bits = random.NextBits();
        ref readonly var layer = ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Layers), (nint)(bits & 255));
        long mantissa = (long)(bits >> 12);
        // Bit 11 is the sign: neither the layer nor the mantissa uses it.
        double value = BitConverter.Int64BitsToDouble(
            BitConverter.DoubleToInt64Bits(mantissa * layer.Width) | (long)((bits & 2048) << 52));
        if (mantissa < layer.Inside) return value;
        var copy = random;
        value = Slow(ref copy, (int)(bits & 255), mantissa, (bits & 2048) != 0);
        random = copy;
        return value;
    }

    [MethodImpl(MethodImplOptions.NoInlining)]
    private static double Slow(ref SeededRandom random, int i, long mantissa, bool negative)
    {
        while (true)
        {
            double x = mantissa * Layers[i].Width;
            if (i == 0)
            {
                // Marsaglia's tail.
                double far, y;
                do
                {
                    far = -Math.Log(1 - random.NextShare()) / Tail;
                    y = -Math.Log(1 - random.NextShare());
                }
                while (y + y < far * far);
                return negative ? -(Tail + far) : Tail + far;
            }
            if (((Layers[i - 1].Density - Layers[i].Density) * random.NextShare()) + Layers[i].Density < Math.Exp(-0.5 * x * x))
                return negative ? -x : x;

            ulong bits = random.NextBits();
            i = (int)(bits & 255);
            mantissa = (long)(bits >> 12);
            negative = (bits & 2048) != 0;
            if (mantissa < Layers[i].Inside) return negative ? -(mantissa * Layers[i].Width) : mantissa * Layers[i].Width;
        }
    }

    /// <summary>Layer i reaches out to x[i]; below it lies x[i-1] with the layers further in. Layer 0 is the base with the tail.</summary>
    private static Layer[] MakeLayers()
    {
        const int n = 256;
        var x = new double[n + 1];
        x[n] = Area / Math.Exp(-0.5 * Tail * Tail);
        x[n - 1] = Tail;
        for (int i = n - 2; i >= 1; i--) x[i] = Math.Sqrt(-2 * Math.Log((Area / x[i + 1]) + Math.Exp(-0.5 * x[i + 1] * x[i + 1])));
        x[0] = 0;

        // Base: width x[n] (a box of the layer's area), inside as far as the tail. Layer i >= 1: width x[i], inside as far as x[i - 1].
        var layers = new Layer[n];
        layers[0] = new Layer(x[n] / Steps, (long)(Tail / x[n] * Steps), 0);
        for (int i = 1; i < n; i++) layers[i] = new Layer(x[i] / Steps, (long)(x[i - 1] / x[i] * Steps), Math.Exp(-0.5 * x[i] * x[i]));
        layers[0] = layers[0] with { Density = 1 };
        return layers;
    }

    private readonly record struct Layer(double Width, long Inside, double Density);
}

using System.Numerics;
using System.Runtime.CompilerServices;
using static System.FormattableString;

namespace SplitBatch;

/// <summary>Checks at the door: every public member that takes a number asks here first.</summary>
internal static class Guard
{
    /// <summary>
    /// Returns <paramref name="value"/> if it lies in [<paramref name="low"/>, <paramref name="high"/>]; NaN never does.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside, or is not a number.</exception>
    public static T InRange<T>(T value, T low, T high, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : INumber<T> =>
        value >= low && value <= high ? value : throw OutOfRange(value, Invariant($"between {low} and {high}"), name);

    /// <summary>Returns <paramref name="value"/> if it is finite and above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is zero, negative, infinite or not a number.</exception>
    public static T Positive<T>(T value, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : INumber<T> =>
        T.IsFinite(value) && value > T.Zero ? value : throw OutOfRange(value, "above zero", name);

    /// <summary>Returns <paramref name="value"/> if it is finite and zero or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative, infinite or not a number.</exception>
    public static T NotNegative<T>(T value, [CallerArgumentExpression(nameof(value))] string? name = null)
        where T : INumber<T> =>
        T.IsFinite(value) && value >= T.Zero ? value : throw OutOfRange(value, "zero or more", name);

    /// <summary>Returns <paramref name="value"/> if it is a probability: a share in [0, 1].</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside, or is not a number.</exception>
    public static double Share(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is >= 0 and <= 1 ? value : throw OutOfRange(value, "a share between 0 and 1 (30 % is 0.30)", name);

    /// <summary>Returns <paramref name="value"/> if it is a share strictly between 0 and 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside, or is not a number.</exception>
    public static double OpenShare(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is > 0 and < 1 ? value : throw OutOfRange(value, "a share above 0 and below 1 (5 % is 0.05)", name);

    /// <summary>Returns <paramref name="value"/> if it holds more than white space.</summary>
    /// <exception cref="ArgumentException">The text is missing or blank.</exception>
    public static string NotBlank(string? value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        !string.IsNullOrWhiteSpace(value) ? value : throw new ArgumentException($"{name} must not be blank.", name);

    private static ArgumentOutOfRangeException OutOfRange<T>(T value, string accepted, string? name) =>
        new(name, Invariant($"{name} is {value}; it must be {accepted}."));
}

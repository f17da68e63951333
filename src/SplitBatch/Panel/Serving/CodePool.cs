namespace SplitBatch.Panel.Serving;

/// <summary>
/// The three-digit codes a cup may carry. A code must not be remembered, must not hint, and must survive a spreadsheet and a
/// cup turned round, so these are left out: a leading zero; any digit twice (111, 122, 121); round numbers (ending in 0); runs
/// and equal steps (123, 321, 135, 852); 13, 69 or 42 anywhere (luck, jokes); numbers made only of 0, 1, 6, 8, 9, which read as another
/// number upside down; and the well-known ones listed below.
/// </summary>
/// <remarks>Common practice, no source beyond "three-digit random codes" (ISO 4120); the list of exclusions is the house's own.</remarks>
public static class CodePool
{
    // Emergency and directory lines, circle and calendar, powers of two, aircraft, pi and e, pack sizes in mL and fl oz, films and songs.
    private static readonly HashSet<int> WellKnown =
    [
        911, 411, 511, 711, 747, 737, 707, 727, 360, 180, 365, 366, 247, 128, 256, 512, 314, 271, 273, 187, 101, 404, 501, 502,
        420, 666, 777, 473, 568, 341, 375, 355, 330, 500, 750, 650, 867, 205, 316, 451, 786, 143, 305, 212, 310, 415, 718, 702, 925,
    ];

    /// <summary>Every code that may be used, in rising order.</summary>
    public static IReadOnlyList<string> All { get; } =
        [.. Enumerable.Range(100, 900).Where(IsPlain).Select(code => code.ToString(System.Globalization.CultureInfo.InvariantCulture))];

    /// <summary>Why a code is not fit for a blind cup, or null where it is.</summary>
    public static string? Objection(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        if (code.Length != 3 || !code.All(char.IsAsciiDigit)) return "a code has three digits";
        int n = int.Parse(code, System.Globalization.CultureInfo.InvariantCulture);
        int a = n / 100, b = n / 10 % 10, c = n % 10;
        return a == 0 ? "a leading zero is lost in a spreadsheet"
            : a == b || b == c || a == c ? "a repeated digit is easy to remember"
            : c == 0 ? "a round number is easy to remember"
            : b - a == c - b ? "a run or equal steps are easy to remember"
            : code.Contains("13", StringComparison.Ordinal) || code.Contains("69", StringComparison.Ordinal)
                || code.Contains("42", StringComparison.Ordinal) ? "it holds a number that means something to people"
            : code.All(digit => digit is '0' or '1' or '6' or '8' or '9') ? "it reads as another number upside down"
            : WellKnown.Contains(n) ? "it is a well-known number"
            : null;
    }

    private static bool IsPlain(int code) => Objection(code.ToString(System.Globalization.CultureInfo.InvariantCulture)) is null;
}

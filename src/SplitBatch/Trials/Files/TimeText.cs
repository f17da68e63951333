using System.Globalization;

namespace SplitBatch.Trials.Files;

/// <summary>Moments as people and web forms write them.</summary>
internal static class TimeText
{
    private static readonly string[] Formats =
    [
        "yyyy-MM-dd HH:mm", "yyyy-MM-dd HH:mm:ss", "yyyy-MM-ddTHH:mm", "yyyy-MM-ddTHH:mm:ss", "yyyy-MM-ddTHH:mmzzz",
        "yyyy-MM-ddTHH:mm:sszzz",
        "yyyy-MM-dd HH:mm:sszzz", "yyyy-MM-dd HH:mm zzz", "yyyy-MM-ddTHH:mm:ss.fffZ", "yyyy/MM/dd HH:mm", "yyyy/MM/dd HH:mm:ss",
        "yyyy-MM-dd",
        "yyyy/MM/dd h:mm:ss tt", "yyyy/MM/dd h:mm:ss tt 'GMT'z", "yyyy-MM-dd h:mm tt",
    ];

    /// <summary>A time that can be read without guessing the order of day and month; without a zone it is taken as UTC.</summary>
    public static bool TryRead(string text, out DateTimeOffset? time)
    {
        var read = DateTimeOffset.TryParseExact(text.Trim(), Formats, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal,
            out var found);
        time = read ? found : null;
        return read;
    }
}

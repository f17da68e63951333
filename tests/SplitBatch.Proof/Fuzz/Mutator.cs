using System.Text;
using SplitBatch.Numbers;

namespace SplitBatch.Proof.Fuzz;

/// <summary>Spoils bytes and texts in the ways in which files get spoilt: by hands, spreadsheets, editors, disks and malice.</summary>
internal sealed class Mutator(int seed)
{
    private static readonly string[] Nasty =
    [
        "\0", "\uFEFF", "\u202E", "\r", "\n\n\n", "\t", "\"", "\"\"\"", "'", ";", ",", ",,,,", ";;", "|", "=1+1", "@SUM(A1)", "+1", "-1",
        "-0", "0", "1e400", "-1e400", "1e-400",
        "NaN", "Infinity", "∞", "1,5", "1.234,5", "1,234.5", "1'234", "1 234", "٣", "½", "99999999999999999999", "0.056", "5.6 %", "1050",
        "2026-02-30", "30.02.2026", "02/03/2026",
        "9999-12-31", "0001-01-01", "24:00", "null", "true", "[]", "{}", "[[[[[[[[", "}}}}", "{\"a\":", "\\u0000", "\\",
        "../../etc/passwd", "/dev/zero", "C:\\x", "<script>alert(1)</script>",
        "a\u0301", "🍺", "\uD800", "A", "B", "a", "AB", "°F", "lb", "oz", "kg", "%", "g", "min", "triangle", "tetrad",
    ];

    private SeededRandom random = new(seed, stream: 5);

    public int Below(int count) => random.NextBelow(count);

    public T Of<T>(IReadOnlyList<T> items) => items[Below(items.Count)];

    /// <summary>A few changes, one after another.</summary>
    public byte[] Spoil(byte[] file, Func<byte[]> other)
    {
        byte[] spoilt = file;
        int changes = 1 + Below(3);
        for (int i = 0; i < changes; i++) spoilt = Below(4) == 0 ? SpoilBytes(spoilt, other) : SpoilText(spoilt);
        return spoilt;
    }

    private byte[] SpoilBytes(byte[] file, Func<byte[]> other)
    {
        int at = file.Length == 0 ? 0 : Below(file.Length), length = file.Length == 0 ? 0 : Math.Min(file.Length - at, 1 + Below(40));
        switch (Below(9))
        {
            case 0: return file[..at];
            case 1: return [.. file[..at], .. file[(at + length)..]];
            case 2: return [.. file[..at], .. file[at..(at + length)], .. file[at..]];
            case 3: return [.. file[..at], (byte)Below(256), .. file[at..]];
            case 4:
                if (file.Length == 0) return [0xFF];
                byte[] flipped = [.. file];
                flipped[at] ^= (byte)(1 << Below(8));
                return flipped;
            case 5: return other();
            case 6: return [.. file[..at], .. other()];
            case 7: return Encoding.Unicode.GetPreamble().Concat(Encoding.Unicode.GetBytes(Encoding.UTF8.GetString(file))).ToArray();
            default: return Encoding.Latin1.GetBytes(Encoding.UTF8.GetString(file));
        }
    }

    private byte[] SpoilText(byte[] file)
    {
        string text = Encoding.UTF8.GetString(file);
        string[] lines = text.Split('\n');
        int line = Below(lines.Length);
        switch (Below(12))
        {
            case 0: return Joined([.. lines[..line], .. lines[(line + 1)..]]);
            case 1: return Joined([.. lines[..line], lines[line], .. lines[line..]]);
            case 2:
                int with = Below(lines.Length);
                (lines[line], lines[with]) = (lines[with], lines[line]);
                return Joined(lines);
            case 3: return Bytes(text.Replace(',', ';'));
            case 4: return Bytes(text.Replace('.', ','));
            case 5: return Bytes("\uFEFF" + text);
            case 6: return Bytes(text.ReplaceLineEndings(Of(["\r\n", "\r", "\n\n"])));
            case 7:
                lines[line] = new string(Of(["x", "\"", "[", "9", ","])[0], 1 + Below(3000));
                return Joined(lines);
            default:
                // One value for another: the commonest of all.
                string[] tokens = [.. text.Split([' ', ',', ';', ':', '"', '\n', '[', ']'], StringSplitOptions.RemoveEmptyEntries)
                    .Distinct()];
                if (tokens.Length == 0) return Bytes(Of(Nasty));
                string old = Of(tokens), now = Below(3) == 0 ? Of(tokens) : Of(Nasty);
                int found = text.IndexOf(old, Below(Math.Max(1, text.Length - old.Length)), StringComparison.Ordinal);
                if (found < 0) found = text.IndexOf(old, StringComparison.Ordinal);
                return Bytes(string.Concat(text.AsSpan(0, found), now, text.AsSpan(found + old.Length)));
        }

        static byte[] Joined(string[] lines) => Bytes(string.Join('\n', lines));
    }

    private static byte[] Bytes(string text) => Encoding.UTF8.GetBytes(text);
}

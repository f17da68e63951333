using System.Buffers.Binary;
using System.Reflection;

namespace SplitBatch.Display.Drawing;

/// <summary>
/// One of the two embedded faces (DejaVu Sans, regular and bold), read only as far as widths go, so that text is laid
/// out the same on every machine.
/// </summary>
/// <remarks>Ref. OpenType specification 1.9: tables head, hhea, hmtx and cmap format 4.</remarks>
internal sealed class Face
{
    /// <summary>The family as a style names it: the embedded face first, then faces of nearly the same width.</summary>
    public const string Family = "'DejaVu Sans', Verdana, Geneva, 'Bitstream Vera Sans', sans-serif";

    private readonly byte[] _file;
    private readonly int _unitsPerEm;
    private readonly int _longWidths;
    private readonly int _widths;
    private readonly int _segments;
    private readonly int _segmentCount;

    private Face(string resource)
    {
        _file = ReadResource(resource);
        _unitsPerEm = U16(Table("head") + 18);
        _longWidths = U16(Table("hhea") + 34);
        _widths = Table("hmtx");
        _segments = FormatFour(Table("cmap"));
        _segmentCount = U16(_segments + 6) / 2;
    }

    public static Face Regular { get; } = new("DejaVuSans.ttf");

    public static Face Bold { get; } = new("DejaVuSans-Bold.ttf");

    /// <summary>The font file itself.</summary>
    public ReadOnlyMemory<byte> File => _file;

    public static Face For(bool bold) => bold ? Bold : Regular;

    /// <summary>The width of a line of text in pixels.</summary>
    public double Width(string text, double size) => text.EnumerateRunes().Sum(rune => Advance(rune.Value)) * size / _unitsPerEm;

    /// <summary>Breaks text at spaces into lines no wider than <paramref name="width"/>; a longer word is cut.</summary>
    public IReadOnlyList<string> Wrap(string text, double size, double width)
    {
        var lines = new List<string>();
        var line = "";
        foreach (var word in text.Split([' ', '\n', '\t', '\r'], StringSplitOptions.RemoveEmptyEntries)
            .SelectMany(w => Cut(w, size, width)))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (line.Length == 0 || Width(longer, size) <= width)
            {
                line = longer;
                continue;
            }

            lines.Add(line);
            line = word;
        }

        if (line.Length > 0) lines.Add(line);
        return lines;
    }

    private IEnumerable<string> Cut(string word, double size, double width)
    {
        while (word.Length > 1 && Width(word, size) > width)
        {
            var keep = word.Length - 1;
            while (keep > 1 && Width(word[..keep], size) > width) keep--;
            if (char.IsHighSurrogate(word[keep - 1])) keep = keep > 1 ? keep - 1 : 2;
            yield return word[..keep];
            word = word[keep..];
        }

        if (word.Length > 0) yield return word;
    }

    private int Advance(int rune)
    {
        var glyph = rune <= 0xFFFF ? Glyph(rune) : 0;
        return U16(_widths + 4 * Math.Min(glyph, _longWidths - 1));
    }

    private int Glyph(int code)
    {
        var ends = _segments + 14;
        var starts = ends + 2 * _segmentCount + 2;
        for (var i = 0; i < _segmentCount; i++)
        {
            if (U16(ends + 2 * i) < code) continue;
            var start = U16(starts + 2 * i);
            if (start > code) return 0;
            var delta = U16(starts + 2 * (_segmentCount + i));
            var at = starts + 2 * (2 * _segmentCount + i);
            var offset = U16(at);
            if (offset == 0) return (code + delta) & 0xFFFF;
            var glyph = U16(at + offset + 2 * (code - start));
            return glyph == 0 ? 0 : (glyph + delta) & 0xFFFF;
        }

        return 0;
    }

    private int FormatFour(int cmap)
    {
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var table = cmap + U32(cmap + 4 + 8 * i + 4);
            if (U16(table) == 4) return table;
        }

        throw new InvalidDataException("The embedded font has no character table of format 4.");
    }

    private int Table(string tag)
    {
        for (var i = 0; i < U16(4); i++)
        {
            var record = 12 + 16 * i;
            if (Enumerable.Range(0, 4).All(k => _file[record + k] == tag[k])) return U32(record + 8);
        }

        throw new InvalidDataException($"The embedded font has no table '{tag}'.");
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(_file.AsSpan(at));

    private int U32(int at) => (int)BinaryPrimitives.ReadUInt32BigEndian(_file.AsSpan(at));

    private static byte[] ReadResource(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The resource {name} is missing from the assembly.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}

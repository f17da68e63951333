using System.ComponentModel;
using System.Runtime.CompilerServices;
using System.Text;

namespace SplitBatch.Evidence.Phrases;

/// <summary>
/// What the compiler makes of an interpolated text that becomes a <see cref="Sentence"/>. A hole of any other kind does not compile.
/// </summary>
[InterpolatedStringHandler]
[EditorBrowsable(EditorBrowsableState.Never)]
public sealed class SentenceText
{
    private readonly StringBuilder text;
    private readonly List<double> numbers = [];

    /// <summary>Made by the compiler.</summary>
    /// <param name="fixedLength">Characters of the fixed part.</param>
    /// <param name="holes">How many holes there are.</param>
    public SentenceText(int fixedLength, int holes) => text = new(fixedLength + (8 * holes));

    /// <summary>A piece of the fixed part.</summary>
    /// <exception cref="ArgumentException">It holds a digit.</exception>
    public void AppendLiteral(string words) => text.Append(WithoutDigits(words));

    /// <summary>A number, as it is printed.</summary>
    public void AppendFormatted(Printed number)
    {
        text.Append(number.ToString());
        numbers.Add(number.Value);
    }

    /// <summary>One of several wordings; it may hold no digit.</summary>
    /// <exception cref="ArgumentException">It holds a digit.</exception>
    public void AppendFormatted(string words) => text.Append(WithoutDigits(words));

    /// <summary>A half.</summary>
    public void AppendFormatted(Side half) => text.Append(half);

    /// <summary>A name, whose digits are no numbers.</summary>
    public void AppendFormatted(Name name) => text.Append(name.Text);

    /// <summary>Words that a person wrote, with the numbers in them.</summary>
    public void AppendFormatted(Quote quote)
    {
        text.Append(quote.Text);
        numbers.AddRange(quote.Numbers);
    }

    /// <summary>A clause made before.</summary>
    public void AppendFormatted(Sentence clause)
    {
        ArgumentNullException.ThrowIfNull(clause);
        text.Append(clause.Text);
        numbers.AddRange(clause.Numbers);
    }

    internal Sentence ToSentence() => new(text.ToString(), numbers);

    private static string WithoutDigits(string words) => words.FirstOrDefault(char.IsAsciiDigit) is not '\0' and var digit
        ? throw new ArgumentException($"The digit {digit} stands in the words \"{words}\"; give the number as a printed quantity, or wrap "
            + $"a name in Name or a quotation in Quote.", nameof(words))
        : words;
}

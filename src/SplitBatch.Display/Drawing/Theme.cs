namespace SplitBatch.Display.Drawing;

/// <summary>
/// The one look of every chart, table and page. Dark blue and burnt orange differ for every common kind of colour
/// vision and in grey (one is much darker), and each beer keeps its own shape and dash besides.
/// </summary>
internal static class Theme
{
    public const string Paper = "#ffffff";
    public const string Text = "#1f1f1f";
    public const string Quiet = "#595959";
    public const string Grid = "#e3e0da";
    public const string LinkColour = "#0b3c6f";
    public const string Shade = "#efeae0";

    public static string Colour(Ink ink) => ink switch
    {
        Ink.BeerA => "#0b3c6f",
        Ink.BeerB => "#b8590a",
        Ink.Faint => "#8a8780",
        Ink.Limit => "#7a1f5c",
        _ => "#3a3a3a",
    };

    /// <summary>The colour of words that go with a mark: dark enough to be read on white.</summary>
    public static string WordColour(Ink ink) => ink switch
    {
        Ink.Faint => Quiet,
        Ink.BeerB => "#8f4303",
        _ => Colour(ink),
    };

    /// <summary>The same colour thinned for areas.</summary>
    public static string Wash(Ink ink) => ink switch
    {
        Ink.BeerA => "#d5dfea",
        Ink.BeerB => "#f3e1d0",
        Ink.Limit => "#ecdde6",
        _ => Shade,
    };

    public static bool IsDashed(Ink ink) => ink is Ink.BeerB or Ink.Limit;

    public static Ink Of(Side side) => side == Side.A ? Ink.BeerA : Ink.BeerB;
}

/// <summary>What a mark stands for; the theme gives it colour, shape and dash.</summary>
public enum Ink
{
    /// <summary>Anything that belongs to neither beer.</summary>
    Main,

    /// <summary>The reference half: dark blue, round marks, unbroken lines.</summary>
    BeerA,

    /// <summary>The changed half: burnt orange, square marks, broken lines.</summary>
    BeerB,

    /// <summary>Background to something else: grey.</summary>
    Faint,

    /// <summary>A limit that decides something: plum, broken lines.</summary>
    Limit,
}

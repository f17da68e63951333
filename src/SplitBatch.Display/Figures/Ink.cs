namespace SplitBatch.Display.Figures;

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

namespace SplitBatch.Brewing;

/// <summary>The forms in which hops are sold.</summary>
public enum HopForm
{
    /// <summary>Whole dried cones, loose or pressed.</summary>
    WholeCone,

    /// <summary>Standard pellets of the whole cone (the trade's type 90).</summary>
    Pellet,

    /// <summary>Pellets enriched in lupulin (the trade's type 45): fewer leaves for the same resin.</summary>
    LupulinPellet,

    /// <summary>Pellets whose alpha acid was turned to iso-alpha acid before sale.</summary>
    IsomerisedPellet,

    /// <summary>Resin drawn with carbon dioxide; must boil to bitter.</summary>
    Co2Extract,

    /// <summary>Iso-alpha acid for dosing after the boil.</summary>
    IsoExtract,

    /// <summary>Hop oil: aroma, no bitterness.</summary>
    Oil,
}

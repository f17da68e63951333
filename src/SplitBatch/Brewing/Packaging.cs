namespace SplitBatch.Brewing;

/// <summary>How a hop lot is kept from air.</summary>
public enum Packaging
{
    /// <summary>Open or loose, air all round.</summary>
    Open,

    /// <summary>Sealed, with air inside or through a bag that lets oxygen pass.</summary>
    SealedWithAir,

    /// <summary>Oxygen barrier, under vacuum or inert gas.</summary>
    Barrier,
}

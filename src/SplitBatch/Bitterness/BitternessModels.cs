namespace SplitBatch.Bitterness;

/// <summary>The models that come with the library.</summary>
public static class BitternessModels
{
    /// <summary>Tinseth's formula, the default.</summary>
    public static IBitternessModel Tinseth { get; } = new Tinseth();

    /// <summary>Rager's formula with the smooth curve.</summary>
    public static IBitternessModel Rager { get; } = new Rager();

    /// <summary>Garetz's formula with the smooth curve.</summary>
    public static IBitternessModel Garetz { get; } = new Garetz();

    /// <summary>Isomerisation kinetics with the default yield.</summary>
    public static IBitternessModel Kinetics { get; } = new IsomerisationKinetics();

    /// <summary>All of them, in the order of a comparison.</summary>
    public static IReadOnlyList<IBitternessModel> All { get; } = [Tinseth, Rager, Garetz, Kinetics];
}

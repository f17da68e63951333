namespace SplitBatch.Brewing;

/// <summary>What a person reads instead of a name in the code: the words that trial files use too.</summary>
public static class PlainWords
{
    /// <summary>For example <c>whole cones</c>.</summary>
    public static string InWords(this HopForm form) => form switch
    {
        HopForm.WholeCone => "whole cones",
        HopForm.Pellet => "pellets",
        HopForm.LupulinPellet => "lupulin pellets",
        HopForm.IsomerisedPellet => "isomerised pellets",
        HopForm.Co2Extract => "CO2 extract",
        HopForm.IsoExtract => "iso extract",
        HopForm.Oil => "oil",
        _ => throw new ArgumentOutOfRangeException(nameof(form), $"{form} is not a hop form."),
    };

    /// <summary>For example <c>sealed with air</c>.</summary>
    public static string InWords(this Packaging packaging) => packaging switch
    {
        Packaging.Open => "open",
        Packaging.SealedWithAir => "sealed with air",
        Packaging.Barrier => "barrier",
        _ => throw new ArgumentOutOfRangeException(nameof(packaging), $"{packaging} is not a way to pack hops."),
    };

    /// <summary>For example <c>first wort</c>.</summary>
    public static string InWords(this AdditionStage stage) => stage switch
    {
        AdditionStage.FirstWort => "first wort",
        AdditionStage.Boil => "boil",
        AdditionStage.Whirlpool => "whirlpool",
        AdditionStage.Cooling => "cooling",
        AdditionStage.Fermenter => "fermenter",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), $"{stage} is not a stage of the brew."),
    };

    /// <summary>For example <c>crop year</c>.</summary>
    public static string InWords(this HopDifference difference) => difference switch
    {
        HopDifference.CropYear => "crop year",
        HopDifference.Form => "form",
        HopDifference.Storage => "storage",
        HopDifference.Packaging => "packaging",
        HopDifference.AssayDate => "age",
        HopDifference.StorageIndex => "storage index",
        _ => throw new ArgumentOutOfRangeException(nameof(difference), $"{difference} is not a difference between lots."),
    };

    /// <summary>All values of one of these kinds by their words, as files spell them.</summary>
    internal static Dictionary<string, T> Dictionary<T>(Func<T, string> words)
        where T : struct, Enum => Enum.GetValues<T>().ToDictionary(words, StringComparer.OrdinalIgnoreCase);
}

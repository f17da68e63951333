using SplitBatch.Brewing;

namespace SplitBatch.Bitterness.Models;

/// <summary>
/// A way to estimate bitterness from a kettle and its hop charges. Five members make a model of one's own; matching, comparison,
/// warnings and uncertainty then use it like the published ones.
/// </summary>
public interface IBitternessModel
{
    /// <summary>The author's name, as brewers call the formula.</summary>
    string Name { get; }

    /// <summary>Author, year, title.</summary>
    string Citation { get; }

    /// <summary>Where the formula was made to hold.</summary>
    ValidRange Range { get; }

    /// <summary>Why this formula differs from the others, in a sentence or two.</summary>
    string Character { get; }

    /// <summary>
    /// The share of a charge's alpha acid that counts as bitterness in the beer, for whole cones, in [0, 1]; before any
    /// correction of the beer as a whole.
    /// </summary>
    double Utilisation(in Exposure exposure);

    /// <summary>
    /// <see cref="Utilisation(in Exposure)"/> for many draws at once: gravity and boil minutes vary, all else is as in
    /// <paramref name="exposure"/>. The four spans are of one length. A model overrides this only to be quicker.
    /// </summary>
    /// <param name="exposure">What all draws share.</param>
    /// <param name="gravity">Mean specific gravity over the boil, one for each draw.</param>
    /// <param name="minutes">Boil minutes, one for each draw; an error may make one slightly negative.</param>
    /// <param name="result">Receives the utilisations.</param>
    void Utilisation(in Exposure exposure, ReadOnlySpan<double> gravity, ReadOnlySpan<double> minutes, Span<double> result)
    {
        var one = exposure;
        for (var i = 0; i < result.Length; i++)
        {
            one = one with { MeanGravity = gravity[i], BoilMinutes = minutes[i] };
            result[i] = Utilisation(one);
        }
    }

    /// <summary>
    /// What a reader should know before trusting this model on a dose; by default what follows from <see cref="Range"/>.
    /// </summary>
    /// <param name="kettle">The kettle.</param>
    /// <param name="charges">The charges whose bitterness is the model's to say: those that boil, steep or stand in hot wort.</param>
    IEnumerable<string> Warnings(Kettle kettle, IReadOnlyList<HopCharge> charges) => ModelWarnings.OfRange(this, kettle, charges);

    /// <summary>
    /// Bitterness of the beer from the plain sum over its charges; the same unless the model corrects the beer as a whole. Rises with
    /// <paramref name="sum"/>.
    /// </summary>
    double Settle(double sum, in WortState wort) => sum;
}

/// <summary>The wort as a whole, for models that correct the beer's bitterness and not each charge's.</summary>
/// <param name="FinalLiters">Cold wort that the kettle gave, in litres.</param>
/// <param name="BoilLiters">Mean volume during the boil, as at 20 °C, in litres.</param>
/// <param name="AltitudeMeters">Height above the sea, in metres.</param>
public readonly record struct WortState(double FinalLiters, double BoilLiters, double AltitudeMeters)
{
    /// <summary>The state of a kettle's wort.</summary>
    public static WortState Of(Kettle kettle)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        return new(kettle.FinalVolume.Liters, kettle.MeanVolume.Liters, kettle.Altitude.Meters);
    }
}

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

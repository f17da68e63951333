using System.Globalization;
using UnitsNet;
using static System.FormattableString;

namespace SplitBatch.Lab;

/// <summary>Bitterness units from an absorbance that the user measured: acidified beer, shaken with iso-octane, read at 275 nm.</summary>
/// <remarks>
/// <para>
/// BU = 50 × absorbance in a 10 mm cell, from 10 mL of beer and 20 mL of iso-octane. Ref. EBC Analytica 9.8 and ASBC Beer-23 A; an
/// absorbance of 0.500 is 25 BU in a hop merchant's account of the method. The factor takes 5/7 of what absorbs as iso-alpha acids.
/// </para>
/// <para>
/// The result is not milligrams of iso-alpha acids per litre. Two beers of one brew read 34 BU with 25 mg/L, and with badly aged hops
/// 78 BU with 17 mg/L.
/// </para>
/// </remarks>
public sealed record AbsorbanceReading
{
    /// <summary>What the method of an own reading is called where nothing else is said.</summary>
    internal const string OwnMethod = "own reading, iso-octane extraction, 275 nm";

    private const double Factor = 50;

    /// <summary>From a reading.</summary>
    /// <param name="absorbance">Absorbance of the extract at 275 nm, in [0, 4].</param>
    /// <param name="blank">Absorbance of the iso-octane blank on the same scale, in [-0.05, 1]; zero if the instrument was set to zero on
    /// it.</param>
    /// <param name="dilution">How many times the beer was thinned with water: 2 for 5 mL of beer and 5 mL of water; in [1, 100].</param>
    /// <param name="path">The cell's path; 10 mm if null.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside, or the blank absorbs more than the sample.</exception>
    public AbsorbanceReading(double absorbance, double blank = 0, double dilution = 1, Length? path = null)
    {
        Absorbance = Guard.InRange(absorbance, 0.0, 4.0);
        Blank = Guard.InRange(blank, -0.05, 1.0);
        Dilution = Guard.InRange(dilution, 1.0, 100.0);
        PathMillimetres = Guard.InRange((path ?? Length.FromMillimeters(10)).Millimeters, 1.0, 100.0, nameof(path));
        if (blank > absorbance)
        {
            throw new ArgumentOutOfRangeException(nameof(blank), string.Create(
                CultureInfo.InvariantCulture, $"The blank ({blank}) absorbs more than the sample ({absorbance}); were the two readings "
                    + $"swapped?"));
        }
    }

    /// <summary>Absorbance of the extract.</summary>
    public double Absorbance { get; }

    /// <summary>Absorbance of the blank.</summary>
    public double Blank { get; }

    /// <summary>How many times the beer was thinned.</summary>
    public double Dilution { get; }

    /// <summary>The cell's path.</summary>
    public double PathMillimetres { get; }

    /// <summary>Absorbance less blank, for a 10 mm cell and unthinned beer.</summary>
    public double NetAbsorbance => (Absorbance - Blank) * (10 / PathMillimetres) * Dilution;

    /// <summary>Bitterness units, unrounded; report them to the nearest whole or half.</summary>
    public double Units => Factor * NetAbsorbance;

    /// <summary>What a reader should know before trusting the number.</summary>
    public IReadOnlyList<string> Warnings => [.. ListWarnings()];

    /// <summary>What never goes away: what the method cannot be used for, and what it does not mean.</summary>
    public static IReadOnlyList<string> Limits { get; } =
    [
        "The method does not hold for beer with saccharin, sorbate, benzoate esters or salicylate (MEBAK B-400.17.110).",
        "Beer bittered with isomerised products needs a factor of its own, between 58 and 73 in place of 50 (hop trade text).",
        "Dry-hopped, late-hopped or aged hops absorb without being iso-alpha acids: the number is then not mg/L, and two beers with equal "
            + "numbers can taste differently bitter.",
    ];

    /// <summary>The reading as one row of a return.</summary>
    /// <param name="id">The result's own name.</param>
    /// <param name="sample">The sample id.</param>
    /// <param name="replicate">Which replicate, from 1.</param>
    public LabResult AsResult(string id, string sample, int replicate = 1) =>
        new(id, sample, Analyte.Bitterness, Math.Round(Units, 2), replicate: replicate) { Method = OwnMethod, Reading = this };

    /// <summary>For example <c>25.0 BU from an absorbance of 0.500 (blank 0.000)</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Printed.Bitterness(Units)} BU from an absorbance of {Printed.Statistic(Absorbance)} (blank "
            + $"{Printed.Statistic(Blank)}){(Dilution == 1 ? "" : $", beer thinned {Printed.Chosen(Dilution)} times")}"
            + $"{(Warnings.Count == 0 ? "" : ". " + string.Join(" ", Warnings))}");

    private IEnumerable<string> ListWarnings()
    {
        if (Blank > 0.010 && Blank * 10 / PathMillimetres > 0.010)
            yield return Invariant($"The blank absorbs {Printed.Statistic(Blank)}; iso-octane for this method absorbs below 0.010 ")
                + Invariant($"against water. Use a purer solvent, or clean the cell.");
        if (Absorbance > 1.2)
            yield return Invariant($"An absorbance of {Printed.Statistic(Absorbance)} lies where many instruments no longer read in ")
                + Invariant($"proportion (common practice, no source): thin the beer with water and read again.");
        switch (Units)
        {
            case < 5:
                yield return "Beer without hops reads a few BU by this method, and more with dark malt (1 to 4 BU is a judgement, no "
                    + "source), so a number this small says little about hops. Both halves share that, so their difference hardly "
                    + "feels it.";
                break;
            case < 10 or > 40:
                yield return "The published range of the method is 10 to 40 BU for beer; outside it the precision is not stated.";
                break;
            case < 15 or > 35:
                yield return "The factor of 50 fits beers of about 15 to 35 BU best.";
                break;
        }
    }
}

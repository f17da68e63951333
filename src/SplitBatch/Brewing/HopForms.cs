using System.Collections.Immutable;

namespace SplitBatch.Brewing;

/// <summary>The table of form factors in use: explicit, sourced, and open to change.</summary>
/// <example><code>HopForms.Default.With(HopForm.Pellet, factor: 1.20, "own trials")</code></example>
public sealed class HopForms
{
    private readonly ImmutableDictionary<HopForm, HopFormProperties> table;

    private HopForms(ImmutableDictionary<HopForm, HopFormProperties> table) => this.table = table;

    /// <summary>
    /// The table used unless another is given. Cones and pellets: the trade text "Hops and Hop Products" puts 25-30 % of the alpha
    /// acid of whole cones into beer and 27-32 % of that of pellets, a ratio of 1.07 at the middles; other authors print 1.00 to 1.27,
    /// hence the standard uncertainty. Isomerised pellets: 50-60 %, same text. Other figures from memory of the trade's habits, and marked so.
    /// </summary>
    public static HopForms Default { get; } = new(new HopFormProperties[]
    {
        new(HopForm.WholeCone, 1.00, 0, 7.5, "reference form; wort held 5-10 L/kg from memory"),
        new(HopForm.Pellet, 1.07, 0.06, 6.5, "Hops and Hop Products, 27-32 % against 25-30 % for cones; wort held 5-8 L/kg from memory"),
        new(HopForm.LupulinPellet, 1.10, 0.06, 4.0, "as pellets, 0-5 % better, from memory; wort held 3-5 L/kg from memory"),
        new(HopForm.IsomerisedPellet, 2.00, 0.05, 6.5, "Hops and Hop Products, 50-60 % into beer") { DirectYield = 0.55 },
        new(HopForm.Co2Extract, 1.27, 0.10, 0, "30-40 % into beer against 25-30 % for cones, from memory"),
        new(HopForm.IsoExtract, 3.00, 0.09, 0, "70-95 % into beer when dosed after fermentation, from memory") { DirectYield = 0.825 },
        new(HopForm.Oil, 0, 0, 0, "holds no alpha acid, by definition"),
    }.ToImmutableDictionary(row => row.Form));

    /// <summary>The figures of one form.</summary>
    public HopFormProperties this[HopForm form] => table.TryGetValue(form, out var row)
        ? row
        : throw new ArgumentOutOfRangeException(nameof(form), $"{form} is not a hop form.");

    /// <summary>All forms in use, in the order of <see cref="HopForm"/>: the rows of a table.</summary>
    public IReadOnlyList<HopFormProperties> Rows => [.. table.Values.OrderBy(row => row.Form)];

    /// <summary>The same table with another factor for one form.</summary>
    /// <param name="form">The form to change.</param>
    /// <param name="factor">Bitterness per gram of alpha acid against cones, in [0, 5].</param>
    /// <param name="source">Where the new figure comes from; not blank.</param>
    /// <param name="uncertainty">Relative standard uncertainty of the factor, in [0, 1]; the old one when null.</param>
    /// <exception cref="ArgumentException">A value lies outside, or the source is blank.</exception>
    public HopForms With(HopForm form, double factor, string source, double? uncertainty = null) => this[form].DirectYield is null
        ? With(this[form] with { Factor = factor, FactorUncertainty = uncertainty ?? this[form].FactorUncertainty, Source = source })
        : throw new ArgumentException($"{form.InWords()}: this form needs no boil and has a yield, not a factor against cones: use WithYield.", nameof(form));

    /// <summary>The same table with another yield for a form that needs no boil.</summary>
    /// <param name="form">The form to change: isomerised pellets or isomerised extract.</param>
    /// <param name="yield">Share of its (iso-)alpha acid that reaches the beer, in [0, 1].</param>
    /// <param name="source">Where the new figure comes from; not blank.</param>
    /// <param name="uncertainty">Relative standard uncertainty of the yield, in [0, 1]; the old one when null.</param>
    /// <exception cref="ArgumentException">A value lies outside, the source is blank, or the form must boil.</exception>
    public HopForms WithYield(HopForm form, double yield, string source, double? uncertainty = null) => this[form].DirectYield is { } old
        ? With(this[form] with { DirectYield = yield, Factor = Math.Min(5, this[form].Factor * yield / old), FactorUncertainty = uncertainty ?? this[form].FactorUncertainty, Source = source })
        : throw new ArgumentException($"{form.InWords()}: this form must boil, and has a factor against cones, not a yield: use With.", nameof(form));

    /// <summary>The same table with one row replaced.</summary>
    public HopForms With(HopFormProperties row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new(table.SetItem(row.Form, row));
    }
}

using System.Collections.Immutable;

namespace SplitBatch.Brewing;

/// <summary>The table of form factors in use: explicit, sourced, and open to change.</summary>
/// <example><code>HopForms.Default.With(HopForm.Pellet, factor: 1.20, "own trials")</code></example>
public sealed class HopForms
{
    private readonly ImmutableDictionary<HopForm, HopFormProperties> table;

    private HopForms(ImmutableDictionary<HopForm, HopFormProperties> table) => this.table = table;

    /// <summary>
    /// The table used unless another is given. The trade text "Hops and Hop Products" puts 25 to 30 % of the alpha acid of whole cones
    /// into the beer and 27 to 32 % of that of pellets: a ratio of 1.07 at the middles. Its standard uncertainty of 7 % is what both
    /// ranges give when all values in them are alike, so 95 % of ratios lie between 0.93 and 1.22. Extract is dealt with in the same
    /// way. A factor that is 7 % off puts a half that is dosed by it 7 % off: two BU in thirty.
    /// </summary>
    public static HopForms Default { get; } = new(new HopFormProperties[]
    {
        new(HopForm.WholeCone, 1.00, 0, 7.5, $"reference form; {Held("5 to 10")}"),
        new(HopForm.Pellet, 1.07, 0.07, 6.5, $"{HopsAndHopProducts}: 27 to 32 % into the beer, 25 to 30 % for cones; {Held("5 to 8")}"),
        new(HopForm.LupulinPellet, 1.10, 0.07, 4.0, $"a judgement: as pellets or a little better; {Held("3 to 5")}"),
        new(HopForm.IsomerisedPellet, 2.00, 0.05, 6.5, $"{HopsAndHopProducts}: 50 to 60 % into the beer; {Held("5 to 8")}")
        {
            DirectYield = 0.55,
        },
        new(HopForm.Co2Extract, 1.27, 0.10, 0,
            "a judgement: 30 to 40 % into the beer, from memory, against 25 to 30 % for cones; 10 % off is 3 BU in thirty"),
        new(HopForm.IsoExtract, 3.00, 0.09, 0, "a judgement: 70 to 95 % into the beer when dosed after fermentation, from memory")
        {
            DirectYield = 0.825,
        },
        new(HopForm.Oil, 0, 0, 0, "holds no alpha acid, by definition"),
    }.ToImmutableDictionary(row => row.Form));

    private const string HopsAndHopProducts =
        "O'Rourke (2003), Hops and hop products, The Brewer International 3 (author, year and journal from memory)";

    private static string Held(string litres) => $"wort held, {litres} L/kg, is a judgement";

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
        : throw new ArgumentException(
            $"{form.InWords()}: this form needs no boil and has a yield, not a factor against cones: use WithYield.", nameof(form));

    /// <summary>The same table with another yield for a form that needs no boil.</summary>
    /// <param name="form">The form to change: isomerised pellets or isomerised extract.</param>
    /// <param name="yield">Share of its (iso-)alpha acid that reaches the beer, in [0, 1].</param>
    /// <param name="source">Where the new figure comes from; not blank.</param>
    /// <param name="uncertainty">Relative standard uncertainty of the yield, in [0, 1]; the old one when null.</param>
    /// <exception cref="ArgumentException">A value lies outside, the source is blank, or the form must boil.</exception>
    public HopForms WithYield(HopForm form, double yield, string source, double? uncertainty = null) => this[form].DirectYield is { } old
        ? With(this[form] with { DirectYield = yield, Factor = Math.Min(5, this[form].Factor * yield / old),
            FactorUncertainty = uncertainty ?? this[form].FactorUncertainty, Source = source })
        : throw new ArgumentException($"{form.InWords()}: this form must boil, and has a factor against cones, not a yield: use With.",
            nameof(form));

    /// <summary>The same table with one row replaced.</summary>
    public HopForms With(HopFormProperties row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return new(table.SetItem(row.Form, row));
    }
}

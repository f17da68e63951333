using System.Collections.Immutable;
using System.Globalization;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;

namespace SplitBatch.Bitterness;

/// <summary>An estimated bitterness with the model, the inputs and the doubts that belong to it.</summary>
public sealed record BitternessEstimate
{
    internal BitternessEstimate(BitternessUnits value, IBitternessModel model, Kettle kettle, HopForms forms,
        ImmutableArray<ChargeEstimate> charges, ImmutableArray<string> warnings)
    {
        Value = value;
        Model = model;
        Kettle = kettle;
        Forms = forms;
        Charges = charges;
        Warnings = warnings;
    }

    /// <summary>The estimate, uncorrected for the house.</summary>
    public BitternessUnits Value { get; }

    /// <summary>The model that made it.</summary>
    public IBitternessModel Model { get; }

    /// <summary>The kettle it is for.</summary>
    public Kettle Kettle { get; }

    /// <summary>The form factors it used.</summary>
    public HopForms Forms { get; }

    /// <summary>What each charge gives: the rows of a table.</summary>
    public ImmutableArray<ChargeEstimate> Charges { get; }

    /// <summary>Where inputs leave the model's range, and what else a reader should know.</summary>
    public ImmutableArray<string> Warnings { get; }

    /// <summary>Hop charges of a kettle, estimated by a model.</summary>
    /// <param name="kettle">The kettle of one half.</param>
    /// <param name="charges">Its charges; none is a beer without hops.</param>
    /// <param name="model">Tinseth unless given.</param>
    /// <param name="forms">Form factors; <see cref="HopForms.Default"/> unless given.</param>
    /// <exception cref="ArgumentException">A charge cannot belong to this kettle; the message says what is accepted.</exception>
    public static BitternessEstimate Of(Kettle kettle, IEnumerable<HopCharge> charges, IBitternessModel? model = null,
        HopForms? forms = null)
    {
        ArgumentNullException.ThrowIfNull(kettle);
        ArgumentNullException.ThrowIfNull(charges);
        var dose = new Dose(kettle, [.. charges], model ?? new Tinseth(), forms ?? HopForms.Default);
        return dose.Estimate();
    }

    /// <summary>For example <c>31.9 IBU by Tinseth, in 20.0 L of 1.050 (12.4 °P) at the end of a 60 min boil</c>.</summary>
    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Value} by {Model.Name}, in "
            + $"{Kettle}{(Warnings.IsEmpty ? "" : $"; {Warnings.Length} warning{(Warnings.Length == 1 ? "" : "s")}")}");
}

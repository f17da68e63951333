using System.Collections.Immutable;
using SplitBatch.Bitterness.Models;
using SplitBatch.Brewing;
using UnitsNet;

namespace SplitBatch.Bitterness;

/// <summary>A kettle with its charges, seen by one model: the arithmetic behind estimates, matching and uncertainty.</summary>
internal sealed class Dose
{
    private readonly ImmutableArray<HopCharge> charges;
    private readonly ImmutableArray<double> bitterPerGram;

    internal Dose(Kettle kettle, ImmutableArray<HopCharge> charges, IBitternessModel model, HopForms forms)
    {
        foreach (var charge in charges) ChargeChecks.Check(kettle, charge);
        (Kettle, this.charges, Model, Forms) = (kettle, charges, model, forms);
        Wort = WortState.Of(kettle);
        Exposures = [.. charges.Select(charge => Exposure.Of(kettle, charge))];
        bitterPerGram = [.. charges.Select((charge, i) => Used(i) * charge.Lot.Alpha.Fraction * 1000 / Liters(charge))];
    }

    internal Kettle Kettle { get; }

    internal ImmutableArray<HopCharge> Charges => charges;

    internal IBitternessModel Model { get; }

    internal HopForms Forms { get; }

    internal WortState Wort { get; }

    internal ImmutableArray<Exposure> Exposures { get; }

    /// <summary>
    /// Whether a charge's bitterness is the model's business: no for forms with a yield of their own and after the kettle.
    /// </summary>
    internal bool IsModelled(int i) => Forms[charges[i].Lot.Form].DirectYield is null && charges[i].Stage != AdditionStage.Fermenter;

    /// <summary>The charges whose bitterness is the model's business.</summary>
    internal IReadOnlyList<HopCharge> Modelled => [.. charges.Where((_, i) => IsModelled(i))];

    /// <summary>Litres over which a charge's bitterness is spread.</summary>
    internal double Liters(HopCharge charge) =>
        charge.Stage == AdditionStage.Fermenter ? IntoFermenter.Liters : Wort.FinalLiters;

    /// <summary>Wort that the hops of the kettle keep back.</summary>
    internal Volume WortHeld => Volume.FromLiters(charges
        .Where(charge => charge.Stage != AdditionStage.Fermenter)
        .Sum(charge => charge.Mass.Kilograms * Forms[charge.Lot.Form].WortHeld)).ToUnit(Kettle.Volume.Unit);

    /// <summary>Wort that reaches the fermenter.</summary>
    internal Volume IntoFermenter
    {
        get
        {
            var left = Kettle.FinalVolume - Kettle.TrubLoss - WortHeld;
            return left.Liters > 0
                ? left
                : throw new ArgumentException(FormattableString.Invariant(
                    $"Hops and trub would keep back {Spoken.Of((Kettle.TrubLoss + WortHeld).ToUnit(Kettle.Volume.Unit))} of ")
                        + FormattableString.Invariant($"{Spoken.Of(Kettle.FinalVolume)}: nothing would reach the fermenter."));
        }
    }

    /// <summary>Bitterness when the charges that are not fixed are scaled by a factor.</summary>
    internal double Bitterness(double scale = 1)
    {
        double modelled = 0, direct = 0;
        for (var i = 0; i < charges.Length; i++)
        {
            var part = charges[i].Mass.Grams * (charges[i].IsFixed ? 1 : scale) * bitterPerGram[i];
            if (IsModelled(i)) modelled += part;
            else direct += part;
        }

        return Model.Settle(modelled, Wort) + direct;
    }

    /// <summary>The same kettle, model and forms with other masses.</summary>
    internal Dose With(ImmutableArray<HopCharge> changed) => new(Kettle, changed, Model, Forms);

    internal BitternessEstimate Estimate()
    {
        double modelled = 0;
        for (var i = 0; i < charges.Length; i++)
        {
            if (IsModelled(i)) modelled += charges[i].Mass.Grams * bitterPerGram[i];
        }

        var settled = modelled > 0 ? Model.Settle(modelled, Wort) / modelled : 1;
        var rows = charges.Select((charge, i) => new ChargeEstimate(
            charge,
            GravityAt(charge),
            Exposures[i].EquivalentMinutes,
            Used(i) * (IsModelled(i) ? settled : 1),
            Forms[charge.Lot.Form].Factor,
            BitternessUnits.From(charge.Mass.Grams * bitterPerGram[i] * (IsModelled(i) ? settled : 1))));
        return new(BitternessUnits.From(Bitterness()), Model, Kettle, Forms, [.. rows], [.. DoseWarnings.Of(this)]);
    }

    /// <summary>Share of a charge's alpha acid that counts as bitterness, before the beer as a whole is corrected.</summary>
    private double Used(int i)
    {
        var form = Forms[charges[i].Lot.Form];
        if (form.DirectYield is { } yield) return yield;
        if (charges[i].Stage == AdditionStage.Fermenter) return 0;
        return Model.Utilisation(Exposures[i]) * form.Factor;
    }

    private Gravity GravityAt(HopCharge charge) => charge.Stage switch
    {
        AdditionStage.FirstWort => Kettle.GravityAtStart,
        AdditionStage.Boil => Kettle.GravityAt(charge.Time),
        AdditionStage.Fermenter => Kettle.FinalGravity,
        _ => Kettle.Gravity,
    };
}

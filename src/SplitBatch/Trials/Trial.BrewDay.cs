using SplitBatch.Bitterness;
using SplitBatch.Brewing;
using UnitsNet;
using UnitsNet.Units;

namespace SplitBatch.Trials;

/// <content>What was read, as it stands on brew day and in the units of the trial.</content>
public sealed partial class Trial
{
    private bool IsUs => Description.Units == UnitSystem.Us;

    private Kettle? KettleInUnits => content.Kettle is not { } kettle ? null : kettle with
    {
        Volume = InUnits(kettle.Volume),
        TopUp = InUnits(kettle.TopUp),
        TrubLoss = InUnits(kettle.TrubLoss),
        Altitude = kettle.Altitude.ToUnit(IsUs ? LengthUnit.Foot : LengthUnit.Meter),
    };

    private IReadOnlyList<StorageLoss> Aged() =>
        [.. Lots.Select(lot => lot.AssayDate is { } assay && BrewDay < assay && lot.StorageIndex is null
            ? StorageLoss.AsAssayed(lot, BrewDay,
                FormattableString.Invariant($"the assay of {assay:yyyy-MM-dd} is later than brew day, and the models only age forward"))
            : StorageLoss.Of(lot, BrewDay))];

    private Dictionary<Side, IReadOnlyList<HopCharge>> ChargesOnBrewDay() => content.Charges.ToDictionary(
        pair => pair.Key,
        pair => (IReadOnlyList<HopCharge>)
        [
            .. pair.Value.Select(charge => charge with { Lot = OnBrewDay(charge.Lot), Mass = InUnits(charge.Mass) }),
        ]);

    private HopLot OnBrewDay(HopLot lot) => LotsOnBrewDay.First(loss => loss.Lot == lot).OnBrewDay;

    private ChargeMatch? Dosed() => KettleInUnits is { } kettle && Charges[Side.A].Count > 0 && Charges[Side.B].Count > 0
        ? ChargeMatch.AsGiven(kettle, Charges[Side.A], Charges[Side.B], scale: Scale)
        : null;

    private Mass InUnits(Mass mass) => mass.ToUnit(IsUs ? MassUnit.Ounce : MassUnit.Gram);

    private Volume InUnits(Volume volume) => volume.ToUnit(IsUs ? VolumeUnit.UsGallon : VolumeUnit.Liter);
}

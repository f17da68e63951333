using System.ComponentModel;
using System.Globalization;
using SplitBatch.Trials;
using SplitBatch.Trials.Reading;
using UnitsNet;

namespace SplitBatch.Display.Tables;

/// <summary>The table of how the beers were brewed.</summary>
[EditorBrowsable(EditorBrowsableState.Never)]
public static class ProcessTables
{
    /// <summary>Wort, boil and target of either half, in the trial's units.</summary>
    /// <param name="trial">The trial.</param>
    /// <exception cref="TrialIncompleteException">trial.json describes no kettle yet.</exception>
    public static Table TableOfProcess(this Trial trial)
    {
        ArgumentNullException.ThrowIfNull(trial);
        var (kettle, us) = (trial.Kettle, trial.Description.Units == UnitSystem.Us);
        List<(string What, string Value)> rows =
        [
            ("wort at the end of the boil, measured cool", Amount(kettle.Volume, us)),
            ("its gravity", kettle.Gravity.ToString()),
            ("boil", string.Create(CultureInfo.InvariantCulture, $"{Printed.Chosen(kettle.Boil.Minutes)} min")),
            ("boiled off in an hour", kettle.Evaporation.CubicMetersPerSecond > 0
                ? Amount(kettle.Evaporation * Duration.FromHours(1), us)
                : "not stated"),
        ];
        if (kettle.TopUp > Volume.Zero) rows.Add(("water added after the boil", Amount(kettle.TopUp, us)));
        if (kettle.TrubLoss > Volume.Zero) rows.Add(("wort left with the trub", Amount(kettle.TrubLoss, us)));
        if (kettle.Altitude > Length.Zero)
        {
            rows.Add(("altitude", us
                ? string.Create(CultureInfo.InvariantCulture, $"{Printed.Fixed(kettle.Altitude.Feet, 0)} ft")
                : string.Create(CultureInfo.InvariantCulture, $"{Printed.Fixed(kettle.Altitude.Meters, 0)} m")));
        }

        if (trial.Description.Target is { } target) rows.Add(("bitterness aimed at", target.ToString()));
        return TableOf.Each(rows, "Wort and boil of each half").Text("step", row => row.What).Text("value", row => row.Value).ToTable();
    }

    private static string Amount(Volume volume, bool us) => Printed.Volume(volume, us ? UnitSystem.Us : UnitSystem.Metric);
}

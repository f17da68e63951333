using System.Globalization;

namespace SplitBatch.Display.Figures;

/// <summary>Maps an axis to pixels and chooses its ticks.</summary>
internal sealed class Scale
{
    private readonly Axis _axis;
    private readonly double _from;
    private readonly double _to;

    public Scale(Axis axis, IEnumerable<double> values, double from, double to)
    {
        (_axis, _from, _to) = (axis, from, to);
        if (axis.IsCategorical)
        {
            (Low, High) = (-0.5, axis.Categories.Count - 0.5);
            return;
        }

        var finite = values.Where(double.IsFinite).ToList();
        var low = axis.Min ?? (finite.Count > 0 ? finite.Min() : 0);
        var high = axis.Max ?? (finite.Count > 0 ? finite.Max() : 1);
        if (high <= low) (low, high) = (low - 0.5, high + 0.5);
        var room = (high - low) * 0.06;
        Low = axis.Min ?? (low >= 0 && low - room < 0 ? 0 : low - room);
        High = axis.Max ?? high + room;
        if (High <= Low) High = Low + 1;
    }

    public double Low { get; }

    public double High { get; }

    /// <summary>The pixel of a value; values outside are drawn at the edge.</summary>
    public double Pixel(double value) => _from + (Math.Clamp(value, Low, High) - Low) / (High - Low) * (_to - _from);

    /// <summary>Ticks at round values, about one per 70 pixels across or 45 down.</summary>
    public IReadOnlyList<(double Value, string Label)> Ticks(double spacing)
    {
        if (_axis.IsCategorical) return [.. _axis.Categories.Select((name, i) => ((double)i, name))];
        var wanted = Math.Max(2, Math.Abs(_to - _from) / spacing);
        var step = RoundStep((High - Low) / wanted);
        if (_axis.Whole) step = Math.Max(1, Math.Round(step));
        var ticks = new List<(double, string)>();
        for (var k = Math.Ceiling(Low / step - 1e-9); k * step <= High + step * 1e-9; k++) ticks.Add((k * step, Label(k * step, step)));
        return ticks;
    }

    private string Label(double value, double step)
    {
        if (_axis.Percent) (value, step) = (value * 100, step * 100);
        var decimals = Math.Max(0, -(int)Math.Floor(Math.Log10(step) + 1e-9));
        if (Math.Abs(value) < step * 1e-6) value = 0;
        return Printed.Fixed(value, decimals);
    }

    private static double RoundStep(double rough)
    {
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        return (rough / power) switch { <= 1 => 1, <= 2 => 2, <= 5 => 5, _ => 10 } * power;
    }
}

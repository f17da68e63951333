using System.Collections.Immutable;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;
using SplitBatch.Brewing;
using static SplitBatch.Numbers.VectorMath;

namespace SplitBatch.Bitterness;

/// <summary>Bitterness of both halves as a function of standardised errors, for many draws at once.</summary>
/// <remarks>
/// Errors are columns of one array: column v holds the draws of variable v, of mean 0 and standard deviation 1. A shared term is one
/// column that both halves read; an independent one is a column for each half, and readings and times one for each charge.
/// </remarks>
internal sealed class DoseSampler
{
    private readonly Half a;
    private readonly Half b;

    internal DoseSampler(Dose doseA, Dose doseB, ErrorBudget budget)
    {
        var variables = new List<Variable>();
        (a, b) = (new(doseA), new(doseB));
        foreach (var term in budget.Terms.Where(term => term.Standard > 0)) Lay(term, variables);
        Variables = [.. variables];
    }

    /// <summary>One column of errors.</summary>
    internal readonly record struct Variable(ErrorTerm Term);

    internal ImmutableArray<Variable> Variables { get; }

    /// <summary>Bitterness of one half for each draw. The length of <paramref name="result"/> is a multiple of 4.</summary>
    /// <param name="side">The half.</param>
    /// <param name="errors">The columns, each of the length of <paramref name="result"/>.</param>
    /// <param name="scratch">Working space of four times the length of <paramref name="result"/>.</param>
    /// <param name="result">Receives the draws, in IBU.</param>
    internal void Evaluate(Side side, ReadOnlySpan<double> errors, Span<double> scratch, Span<double> result)
    {
        var (half, n) = (side == Side.A ? a : b, result.Length);
        var part = scratch[..n];
        var gravity = scratch[n..(2 * n)];
        var minutes = scratch[(2 * n)..(3 * n)];
        var used = scratch[(3 * n)..(4 * n)];
        var dose = half.Dose;
        result.Clear();
        Span<double> direct = [];
        if (half.HasDirect) direct = new double[n];

        Sum(half.Gravity, errors, n, dose.Kettle.MeanGravity.Specific, gravity);
        for (var i = 0; i < dose.Charges.Length; i++)
        {
            var charge = dose.Charges[i];
            if (charge.Mass.Grams == 0) continue;
            var perUse = charge.Mass.Grams * charge.Lot.Alpha.Fraction * 1000 / dose.Liters(charge);
            var form = dose.Forms[charge.Lot.Form];
            if (dose.IsModelled(i))
            {
                Sum(half.Minutes[i], errors, n, dose.Exposures[i].BoilMinutes, minutes);
                dose.Model.Utilisation(dose.Exposures[i], gravity, minutes, used);
                Product(half.Relative[i], errors, n, perUse * form.Factor, part);
                MultiplyAdd(part, used, result);
            }
            else if (form.DirectYield is { } yield)
            {
                Product(half.Relative[i], errors, n, perUse * yield, part);
                Add(part, direct);
            }
        }

        Finish(half, errors, n, part, used, result, direct);
    }

    /// <summary>Divides by volume, corrects the beer as a whole, and applies the errors of the estimate.</summary>
    private static void Finish(Half half, ReadOnlySpan<double> errors, int n, Span<double> amount, Span<double> volume,
        Span<double> result, Span<double> direct)
    {
        Product(half.Amount, errors, n, 1, amount);
        Product(half.Volume, errors, n, 1, volume);
        Divide(amount, volume);
        Multiply(result, amount);
        var (model, wort) = (half.Dose.Model, half.Dose.Wort);
        if (half.Settles)
        {
            foreach (ref var value in result) value = model.Settle(Math.Max(0, value), wort);
        }

        Product(half.Formula, errors, n, 1, volume);
        Multiply(result, volume);
        if (half.HasDirect)
        {
            Multiply(direct, amount);
            Add(direct, result);
        }

        Product(half.Estimate, errors, n, 1, amount);
        Multiply(result, amount);
    }

    private void Lay(ErrorTerm term, List<Variable> variables)
    {
        int Column()
        {
            variables.Add(new(term));
            return variables.Count - 1;
        }

        int? common = null;
        foreach (var half in (Half[])[a, b])
        {
            // One column for a shared term; one for each half otherwise, and for readings and times one for each charge.
            int? own = null;
            int Of() => term.Sharing == Sharing.Shared ? common ??= Column() : own ??= Column();
            switch (term.Kind)
            {
                case ErrorKind.Calibration: half.Amount.Add(new(Of(), term.Standard)); break;
                case ErrorKind.Volume: half.Volume.Add(new(Of(), term.Standard)); break;
                case ErrorKind.Estimate: half.Estimate.Add(new(Of(), term.Standard)); break;
                case ErrorKind.Formula: half.Formula.Add(new(Of(), term.Standard)); break;
                case ErrorKind.Gravity: half.Gravity.Add(new(Of(), term.Standard / 1000)); break;
                default:
                    for (var i = 0; i < half.Dose.Charges.Length; i++)
                    {
                        var charge = half.Dose.Charges[i];
                        if (charge.Mass.Grams == 0 || !Touches(term, charge)) continue;
                        if (term is { Kind: ErrorKind.Reading or ErrorKind.Minutes, Sharing: Sharing.Independent }) own = null;
                        switch (term.Kind)
                        {
                            case ErrorKind.Reading: half.Relative[i].Add(new(Of(), term.Standard / charge.Mass.Grams)); break;
                            case ErrorKind.Minutes: half.Minutes[i]
                                .Add(new(Of(), term.Standard * half.Dose.Exposures[i].TimeWeight)); break;
                            default: half.Relative[i].Add(new(Of(), term.Standard)); break;
                        }
                    }

                    break;
            }
        }
    }

    private static bool Touches(ErrorTerm term, HopCharge charge) => term.Target is not { } target
        || (term.Kind == ErrorKind.Alpha && string.Equals(target, charge.Lot.Name, StringComparison.OrdinalIgnoreCase))
        || (term.Kind == ErrorKind.Form && string.Equals(target, charge.Lot.Form.InWords(), StringComparison.OrdinalIgnoreCase));

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Sum(List<Effect> effects, ReadOnlySpan<double> errors, int n, double centre, Span<double> result)
    {
        result.Fill(centre);
        foreach (var (column, scale) in effects)
        {
            var z = Vectors(errors.Slice(column * n, n));
            var r = Vectors(result);
            for (var i = 0; i < r.Length; i++) r[i] += scale * z[i];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Product(List<Effect> effects, ReadOnlySpan<double> errors, int n, double centre, Span<double> result)
    {
        result.Fill(centre);
        foreach (var (column, scale) in effects)
        {
            var z = Vectors(errors.Slice(column * n, n));
            var r = Vectors(result);
            for (var i = 0; i < r.Length; i++) r[i] *= Vector256<double>.One + scale * z[i];
        }
    }

    /// <summary>A column and what one standard deviation of it does.</summary>
    private readonly record struct Effect(int Column, double Scale);

    /// <summary>Which columns act where in one half.</summary>
    private sealed class Half(Dose dose)
    {
        internal Dose Dose { get; } = dose;

        internal bool HasDirect { get; } = Enumerable.Range(0, dose.Charges.Length).Any(i => !dose.IsModelled(i));

        /// <summary>Whether the model corrects the beer as a whole; most return the sum.</summary>
        internal bool Settles { get; } = dose.Model.Settle(1, dose.Wort) != 1 || dose.Model.Settle(50, dose.Wort) != 50;

        internal List<Effect>[] Relative { get; } = [.. dose.Charges.Select(_ => new List<Effect>())];

        internal List<Effect>[] Minutes { get; } = [.. dose.Charges.Select(_ => new List<Effect>())];

        internal List<Effect> Gravity { get; } = [];

        internal List<Effect> Amount { get; } = [];

        internal List<Effect> Volume { get; } = [];

        internal List<Effect> Formula { get; } = [];

        internal List<Effect> Estimate { get; } = [];
    }
}

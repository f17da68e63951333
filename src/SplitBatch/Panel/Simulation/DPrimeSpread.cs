using SplitBatch.Numbers;
using static System.FormattableString;

namespace SplitBatch.Panel.Simulation;

/// <summary>How the tasters of a simulated panel differ in what they can tell: the stated distribution of d-prime.</summary>
public abstract record DPrimeSpread
{
    private DPrimeSpread()
    {
    }

    /// <summary>Nobody can tell the beers apart.</summary>
    public static DPrimeSpread Nobody { get; } = new All(0);

    /// <summary>Every taster alike.</summary>
    /// <param name="dPrime">Zero or more.</param>
    public static DPrimeSpread Same(double dPrime) => new All(Guard.NotNegative(dPrime));

    /// <summary>Some can tell, the others cannot at all: the picture behind the share of discriminators.</summary>
    /// <param name="share">The share who can, in [0, 1].</param>
    /// <param name="dPrime">How well they can, zero or more; 10 is practically always.</param>
    public static DPrimeSpread Discriminators(double share, double dPrime = 10) => new Some(Guard.Share(share), Guard.NotNegative(dPrime));

    /// <summary>A normal distribution; draws below zero become zero.</summary>
    /// <param name="mean">Zero or more, before draws below zero are moved up.</param>
    /// <param name="sd">Zero or more.</param>
    public static DPrimeSpread Normal(double mean, double sd) => new Bell(Guard.NotNegative(mean), Guard.NotNegative(sd));

    /// <summary>A log-normal distribution: many who notice little, a few who notice much.</summary>
    /// <param name="median">Above zero.</param>
    /// <param name="logSd">The standard deviation of the natural logarithm, zero or more.</param>
    public static DPrimeSpread LogNormal(double median, double logSd) => new Skewed(Guard.Positive(median), Guard.NotNegative(logSd));

    /// <summary>One taster's d-prime.</summary>
    public abstract double Draw(ref SeededRandom random);

    /// <summary>The mean of a smooth function of d-prime over the distribution, by quadrature.</summary>
    internal abstract double Mean(Func<double, double> f);

    internal sealed record All(double DPrime) : DPrimeSpread
    {
        public override double Draw(ref SeededRandom random) => DPrime;

        internal override double Mean(Func<double, double> f) => f(DPrime);

        public override string ToString() => DPrime == 0 ? "nobody can tell" : Invariant($"everyone has d-prime {Printed.Chosen(DPrime)}");
    }

    private sealed record Some(double Share, double DPrime) : DPrimeSpread
    {
        public override double Draw(ref SeededRandom random) => random.NextShare() < Share ? DPrime : 0;

        internal override double Mean(Func<double, double> f) => (Share * f(DPrime)) + ((1 - Share) * f(0));

        public override string ToString() => DPrime >= 10
            ? Invariant($"{Printed.ChosenPercent(Share)} can tell, the others guess")
            : Invariant($"{Printed.ChosenPercent(Share)} have d-prime {Printed.Chosen(DPrime)}, the others cannot tell");
    }

    private sealed record Bell(double Middle, double Sd) : DPrimeSpread
    {
        public override double Draw(ref SeededRandom random) => Math.Max(0, Middle + (Sd * Ziggurat.Next(ref random)));

        internal override double Mean(Func<double, double> f)
        {
            if (Sd == 0) return f(Middle);
            double edge = -Middle / Sd;
            double below = Gauss.Below(edge) * f(0);
            return below + Gauss.Integral(z => Gauss.Density(z) * f(Math.Max(0, Middle + (Sd * z))), Math.Clamp(edge, -9, 9), 9);
        }

        public override string ToString() =>
            Invariant($"d-prime varies about {Printed.Chosen(Middle)} with standard deviation {Printed.Chosen(Sd)}");
    }

    private sealed record Skewed(double Median, double LogSd) : DPrimeSpread
    {
        public override double Draw(ref SeededRandom random) => Median * Math.Exp(LogSd * Ziggurat.Next(ref random));

        internal override double Mean(Func<double, double> f) => Gauss.Mean(z => f(Median * Math.Exp(LogSd * z)));

        public override string ToString() =>
            Invariant($"d-prime varies about a median of {Printed.Chosen(Median)} (log-normal, {Printed.Chosen(LogSd)})");
    }
}

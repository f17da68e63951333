namespace SplitBatch.Lab;

/// <summary>One analyte whose difference was foretold by something other than the laboratory.</summary>
/// <param name="Analyte">What was measured.</param>
/// <param name="Foretold">A less B as foretold.</param>
/// <param name="Measured">A less B as the laboratory measured it under the labels.</param>
/// <param name="Tolerance">How far the two may lie apart at 95 %; null where it is not known.</param>
/// <param name="Grounds">What foretold it.</param>
public sealed record SwapLine(Analyte Analyte, double Foretold, double Measured, double? Tolerance, string Grounds)
{
    /// <summary>What it says about the labels.</summary>
    public SwapSign Sign => Tolerance is not { } most
        ? SwapSign.CannotTell
        : (Math.Abs(Measured - Foretold) <= most, Math.Abs(Measured + Foretold) <= most) switch
        {
            (true, false) => SwapSign.FitsLabels,
            (false, true) => SwapSign.FitsSwapped,
            (false, false) => SwapSign.FitsNeither,
            _ => SwapSign.CannotTell,
        };

    /// <summary>The line in a sentence.</summary>
    public override string ToString()
    {
        var says = Sign switch
        {
            SwapSign.FitsLabels => "this fits the labels",
            SwapSign.FitsSwapped => "this fits only if the labels were swapped",
            SwapSign.FitsNeither => "this fits neither the labels nor the labels swapped",
            _ => Tolerance is null ? "the precision is not known, so this tells nothing" : "the halves are too alike in this to tell",
        };
        return $"{Analyte.Name}: {Grounds} puts B minus A at {Signed(-Foretold)}; the laboratory found {Signed(-Measured)}; {says}.";
    }

    private string Signed(double value) =>
        Printed.Fixed(value, Analyte.Decimals, Analyte.Unit == Analyte.Name ? "" : Analyte.Unit).WithSign;
}

/// <summary>What one analyte says about whether the sample labels are right.</summary>
public enum SwapSign
{
    /// <summary>The measured difference fits the labels and would not fit them swapped.</summary>
    FitsLabels,

    /// <summary>The measured difference would fit the labels swapped and does not fit them as they are.</summary>
    FitsSwapped,

    /// <summary>It fits neither way: something else is wrong.</summary>
    FitsNeither,

    /// <summary>The halves are too alike, or too little is known, to tell.</summary>
    CannotTell,
}

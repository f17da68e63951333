using System.Security.Cryptography;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>Where seals are made: one at a time, each in a file of its own that is written once.</summary>
/// <param name="folder">The trial folder.</param>
/// <param name="clock">The clock.</param>
internal sealed class SealDesk(TrialFolder folder, TimeProvider clock)
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    /// <summary>The program's name and version, as the seal will have it.</summary>
    public string MadeBy { get; init; } = $"SplitBatch {typeof(Seal).Assembly.GetName().Version?.ToString(3) ?? "of an unknown version"}";

    /// <summary>The random digits of a seal; a test or an example may give its own.</summary>
    public Func<string> Salt { get; init; } = () => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    /// <summary>Puts the next seal into the folder.</summary>
    /// <param name="title">The trial's title.</param>
    /// <param name="plan">What is sealed.</param>
    /// <param name="ballots">How many ballots of each panel are in, asked while nobody can add one.</param>
    /// <param name="because">Why the plan is amended; null for the first seal.</param>
    /// <returns>The seal, or the newest one where it says the same already.</returns>
    /// <exception cref="InvalidOperationException">A first seal is there already and says something else, or there is none to amend.</exception>
    /// <exception cref="LogException">Another program keeps the folder, or it cannot be written to.</exception>
    public Seal Add(string title, TrialPlan plan, Func<IReadOnlyDictionary<string, int>> ballots, string? because)
    {
        using var turn = LogLock.Take(folder.Path, Patience);
        var faults = new FaultList();
        var chain = SealChain.Read(folder, faults);
        if (faults.HasErrors) throw new TrialFolderException(folder.Name, faults);
        if (chain.Latest is { } latest && PlanDifference.Between(latest.Plan, plan) is var changes)
        {
            if (changes.Count == 0) return latest;
            if (because is null) throw new InvalidOperationException($"The plan is sealed already ({latest}), and trial.json says something else now: {string.Join("; ", changes)}. Put it back, or amend the plan and say why (splitbatch amend, or trial.Amend).");
        }
        else if (because is not null)
        {
            throw new InvalidOperationException("The plan is not sealed yet, so there is nothing to amend; seal it first (splitbatch declare, or trial.Seal).");
        }

        var seal = new Seal
        {
            Number = chain.Seals.Count + 1,
            Title = title,
            At = Seconds(clock.GetLocalNow()),
            MadeBy = MadeBy,
            Before = chain.Latest?.Fingerprint,
            Because = because,
            BallotsThen = ballots(),
            Salt = Salt(),
            Plan = plan,
        };
        var bytes = SealText.Write(seal);
        try
        {
            if (!NewFile.TryMake(folder.PathOf(seal.File), bytes)) throw new LogException($"{seal.File} was made by somebody else a moment ago; look at it, and try again.");
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{seal.File} cannot be written: {error.Message} Nothing was sealed.", error);
        }

        return seal with { Fingerprint = Fingerprint.Of(bytes) };
    }

    private static DateTimeOffset Seconds(DateTimeOffset at) => new(at.Ticks - (at.Ticks % TimeSpan.TicksPerSecond), at.Offset);
}

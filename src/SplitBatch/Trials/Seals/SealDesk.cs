using System.Security.Cryptography;
using SplitBatch.Trials.Files;

namespace SplitBatch.Trials.Seals;

/// <summary>Where seals are made: one at a time, each in a file of its own that is written once.</summary>
/// <param name="folder">The trial folder.</param>
/// <param name="clock">The clock.</param>
internal sealed class SealDesk(TrialFolder folder, TimeProvider clock)
{
    /// <summary>The program's name and version, as the seal will have it.</summary>
    public string MadeBy { get; init; } = $"SplitBatch {typeof(Seal).Assembly.GetName().Version?.ToString(3) ?? "of an unknown version"}";

    /// <summary>The random digits of a seal; a test or an example may give its own.</summary>
    public Func<string> Salt { get; init; } = () => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    /// <summary>Puts the next seal into the folder.</summary>
    /// <param name="title">The trial's title.</param>
    /// <param name="plan">What is sealed.</param>
    /// <param name="ballots">How many ballots of each panel are in.</param>
    /// <param name="because">Why the plan is amended; null for the first seal.</param>
    /// <returns>The seal, or the newest one where it says the same already.</returns>
    /// <exception cref="InvalidOperationException">A first seal is there already and says something else, or there is none to
    /// amend.</exception>
    /// <exception cref="LogException">The folder cannot be written to.</exception>
    public Seal Add(string title, TrialPlan plan, Func<IReadOnlyDictionary<string, int>> ballots, string? because)
    {
        while (true)
        {
            var chain = Chain();
            if (SaysTheSame(chain.Latest, plan, because)) return chain.Latest!;

            // Ballots are counted after the moment is taken, so that none that was in by then is missed.
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
            if (IsMade(seal.File, bytes)) return seal with { Fingerprint = Fingerprint.Of(bytes) };
        }
    }

    private SealChain Chain()
    {
        var faults = new FaultList();
        var chain = SealChain.Read(folder, faults);
        return faults.HasErrors ? throw new TrialFolderException(folder.Name, faults) : chain;
    }

    /// <summary>Whether nothing is to be done; refuses what neither declares nor amends.</summary>
    private static bool SaysTheSame(Seal? latest, TrialPlan plan, string? because)
    {
        if (latest is null)
        {
            return because is null ? false : throw new InvalidOperationException(
                "The plan is not sealed yet, so there is nothing to amend; seal it first (splitbatch declare, or trial.Seal).");
        }

        var changes = PlanDifference.Between(latest.Plan, plan);
        if (changes.Count == 0) return true;
        return because is not null ? false : throw new InvalidOperationException(
            $"The plan is sealed already ({latest}), and trial.json says something else now: {string.Join("; ", changes)}. "
            + "Put it back, or amend the plan and say why (splitbatch amend, or trial.Amend).");
    }

    /// <summary>Writes the file; false where somebody else made one of that name a moment ago, which is then looked at first.</summary>
    private bool IsMade(string file, byte[] bytes)
    {
        try
        {
            return NewFile.TryMake(folder.PathOf(file), bytes);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new LogException($"{file} cannot be written: {error.Message} Nothing was sealed.", error);
        }
    }

    private static DateTimeOffset Seconds(DateTimeOffset at) => new(at.Ticks - (at.Ticks % TimeSpan.TicksPerSecond), at.Offset);
}

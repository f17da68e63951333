using SplitBatch.Evidence.Findings;
using SplitBatch.Evidence.Phrases;

namespace SplitBatch.Evidence;

/// <summary>
/// One sentence of a write-up with the numbers that it states, the rows that they come from and the method that gives them.
/// </summary>
public sealed record Claim
{
    private readonly Sentence said;

    /// <summary>A claim from words of one's own.</summary>
    /// <param name="id">A short name, unique in a write-up, as <c>lab.difference</c>.</param>
    /// <param name="sentence">The sentence; every number in it is a printed quantity in a hole.</param>
    /// <param name="method">How the numbers are made: the test, formula or standard.</param>
    /// <param name="sources">The files (and rows) of the trial folder that the numbers come from.</param>
    /// <exception cref="ArgumentException">A digit stands in the fixed part of the sentence, or a text is blank.</exception>
    public Claim(string id, SentenceText sentence, string method, params IEnumerable<string> sources)
        : this(id, Phrases.Sentence.Of(sentence), method, sources)
    {
    }

    /// <summary>A claim from a sentence made before.</summary>
    /// <inheritdoc cref="Claim(string, SentenceText, string, IEnumerable{string})"/>
    public Claim(string id, Sentence sentence, string method, params IEnumerable<string> sources)
    {
        ArgumentNullException.ThrowIfNull(sentence);
        Id = Guard.NotBlank(id);
        Guard.NotBlank(sentence.Text, nameof(sentence));
        said = sentence;
        Method = Guard.NotBlank(method);
        Sources = [.. sources];
    }

    /// <summary>What the phrasebook makes of a finding.</summary>
    /// <param name="finding">The finding.</param>
    public static Claim Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return new(finding.Id.Text, Phrasebook.Say(finding), finding.Method, finding.Sources) { Finding = finding };
    }

    /// <summary>A short name, unique in a write-up.</summary>
    public string Id { get; }

    /// <summary>The finding that the sentence is made from; null for a sentence of one's own.</summary>
    public Finding? Finding { get; private init; }

    /// <summary>The sentence as a reader sees it.</summary>
    public string Sentence => said.Text;

    /// <summary>The numbers in the sentence, unrounded, in the unit that is printed and in the sentence's order.</summary>
    public IReadOnlyList<double> Numbers => said.Numbers;

    /// <summary>The test, formula or standard behind the numbers.</summary>
    public string Method { get; }

    /// <summary>The files and rows of the trial folder that the numbers come from.</summary>
    public IReadOnlyList<string> Sources { get; }

    /// <summary>The sentence.</summary>
    public override string ToString() => Sentence;
}

using System.Text.RegularExpressions;

namespace SplitBatch.Teaching;

/// <summary>
/// A sentence as far as its words tell: which claims it makes, clause by clause, where a clause that denies makes none.
/// </summary>
internal sealed partial class ReadSentence
{
    private readonly string text;
    private readonly string[] clauses;

    public ReadSentence(string sentence)
    {
        text = sentence.Replace('’', '\'').Trim().ToLowerInvariant();
        clauses = Joints().Split(text);
        Words = Word().Count(text);
        Stops = Stop().Count(text);
    }

    public int Words { get; }

    public int Stops { get; }

    /// <summary>"The same" and its relatives; "no difference was shown" is not among them.</summary>
    public bool SaysTheSame => Claimed(Same())
        || clauses.Any(clause => NoDifference().IsMatch(clause) && !Seen().IsMatch(clause) && !Denial().IsMatch(clause));

    public bool SaysProven => Claimed(Proven());

    public bool SaysBetter => Claimed(Better());

    public bool SaysEverybody => Claimed(Everybody());

    /// <summary>That a difference is there; "may" and "up to" claim none.</summary>
    public bool ClaimsADifference =>
        clauses.Any(clause => Difference().IsMatch(clause) && !Denial().IsMatch(clause) && !NoDifference().IsMatch(clause)
            && !Possible().IsMatch(clause));

    public bool NamesALimit => Limit().IsMatch(text);

    public bool Has(string word) =>
        Regex.IsMatch(text, $@"(?<![\w.,]){Regex.Escape(word)}(?![\w%]|[.,]\d|\s*%)", RegexOptions.None, TimeSpan.FromSeconds(1));

    /// <summary>Whether a clause holds the words and nothing before them denies them.</summary>
    private bool Claimed(Regex words) =>
        clauses.Any(clause => words.Match(clause) is { Success: true } found && !Denial().IsMatch(clause[..found.Index]));

    [GeneratedRegex(@"[,;:.?!](?!\d)|\b(?:so|therefore|thus|hence|and|but|because|which means|meaning|although|though|yet)\b")]
    private static partial Regex Joints();

    [GeneratedRegex(@"[\w%']+")]
    private static partial Regex Word();

    [GeneratedRegex(@"[.?!](?=\s|$)")]
    private static partial Regex Stop();

    [GeneratedRegex(@"\b(?:not|never|nor|cannot|neither|without)\b|n't\b|\bno (?:proof|sign|evidence|claim)\b")]
    private static partial Regex Denial();

    [GeneratedRegex(@"\bthe same\b|\bidentical\b|\bindistinguishable\b|\bequal(?:ly)?\b|\balike\b|\bonly guess|\bjust guess")]
    private static partial Regex Same();

    [GeneratedRegex(@"\bno (?:\w+ )?differences?\b")]
    private static partial Regex NoDifference();

    [GeneratedRegex(@"\b(?:shown?|showed|shows|found|finds?|detect\w*|see|seen|saw|appear\w*)\b")]
    private static partial Regex Seen();

    [GeneratedRegex(@"\bpro(?:ve[sdn]?|of|ven)\b|\bcertain(?:ly)?\b|\bdefinite(?:ly)?\b|\bconfirm\w*\b|\bwithout doubt\b")]
    private static partial Regex Proven();

    [GeneratedRegex(@"\b(?:better|worse|best|worst|prefer\w*|nicer|tastier|superior|inferior|lik(?:e|es|ed) more)\b")]
    private static partial Regex Better();

    [GeneratedRegex(@"\b(?:everybody|everyone|nobody|no one|no-one|anybody|anyone|all (?:people|tasters|drinkers|of them)|every "
        + @"(?:taster|drinker|person))\b")]
    private static partial Regex Everybody();

    [GeneratedRegex(@"\bdiffer(?:s|ed|ence|ent|ently)?\b|\b(?:tell|told)\b.*\bapart\b|\b(?:tell|told)\b.*\bfrom\b|\bdistinguish\w*\b|"
        + @"\bnoticed?\b")]
    private static partial Regex Difference();

    [GeneratedRegex(@"\b(?:may|might|could still|can still|up to|as large as|allow\w*|whether|if|ruled? out|rules out|open|possible|"
        + @"possibly|perhaps|would)\b")]
    private static partial Regex Possible();

    [GeneratedRegex(@"\bopen\b|\brule[sd]? out\b|\bup to\b|\bstill\b|\bsettle[sd]?\b|\bmay\b|\bmight\b|\btoo (?:small|few)\b|\bfewer "
        + @"than\b|\bless than\b|\bor more\b|\binconclusive\b|\bcannot say\b|\bunanswered\b")]
    private static partial Regex Limit();
}

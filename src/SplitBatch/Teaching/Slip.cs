namespace SplitBatch.Teaching;

/// <summary>What is the matter with a learner's answer: each kind gets a hint of its own.</summary>
public enum Slip
{
    /// <summary>Nothing: the answer is right.</summary>
    None,

    /// <summary>Nothing was answered yet.</summary>
    Unanswered,

    /// <summary>The number is none, or infinite.</summary>
    NotANumber,

    /// <summary>A percentage where a share was asked.</summary>
    PercentForShare,

    /// <summary>A share where a count was asked.</summary>
    ShareForCount,

    /// <summary>A part of a person or of a cup.</summary>
    NotWhole,

    /// <summary>One below the right count.</summary>
    OneTooFew,

    /// <summary>One above the right count.</summary>
    OneTooMany,

    /// <summary>The error divided between two sides where only one side can show a difference.</summary>
    TwoSided,

    /// <summary>The chance of exactly so many, where so many or more were asked.</summary>
    ExactlyForAtLeast,

    /// <summary>The chance of more than so many, where so many or more were asked.</summary>
    MoreThanForAtLeast,

    /// <summary>The other tail: so many or fewer.</summary>
    WrongTail,

    /// <summary>One minus the answer.</summary>
    Complement,

    /// <summary>The number for people who all guess.</summary>
    GuessersOnly,

    /// <summary>Those who cannot tell are left out, although a third of them are right by luck.</summary>
    LuckForgotten,

    /// <summary>Luck is given to those who can tell, too.</summary>
    LuckForAll,

    /// <summary>A chance of one half per guess, where a guess is right less often.</summary>
    CoinFlip,

    /// <summary>As if one number grew in proportion to the other.</summary>
    Proportional,

    /// <summary>A size that reaches the power only by a tooth of the saw, or fails by one.</summary>
    ToothOfTheSaw,

    /// <summary>Repeats counted as if each were another taster.</summary>
    PooledRepeats,

    /// <summary>One person's or one half's number where the others count too.</summary>
    OneForBoth,

    /// <summary>A ratio upside down, or a difference with the beers exchanged.</summary>
    UpsideDown,

    /// <summary>A factor of ten, a hundred or a thousand lost on the way.</summary>
    PowerOfTen,

    /// <summary>Ounces where grams were asked.</summary>
    OuncesForGrams,

    /// <summary>The utilisation left out, as if all alpha acid dissolved.</summary>
    NoUtilisation,

    /// <summary>As if both forms gave the same share of their alpha acid to the beer.</summary>
    SameUtilisation,

    /// <summary>A root left out: limits of means shrink with the root of the replicates.</summary>
    NoRoot,

    /// <summary>The limit for single results taken for means.</summary>
    SinglesForMeans,

    /// <summary>A standard deviation taken for a limit.</summary>
    DeviationForLimit,

    /// <summary>A limit taken for a standard deviation.</summary>
    LimitForDeviation,

    /// <summary>Below the right number, for no reason that is known here.</summary>
    TooLow,

    /// <summary>Above the right number, for no reason that is known here.</summary>
    TooHigh,

    /// <summary>A letter that is not among the choices.</summary>
    NoSuchChoice,

    /// <summary>One of the other choices.</summary>
    OtherChoice,

    /// <summary>The sentence says that the beers are the same.</summary>
    SaysTheSame,

    /// <summary>The sentence says that something is proven.</summary>
    SaysProven,

    /// <summary>The sentence speaks of everybody or nobody.</summary>
    SaysEverybody,

    /// <summary>The sentence speaks of better and worse, which nobody was asked.</summary>
    SaysBetter,

    /// <summary>The sentence claims a difference that was not shown.</summary>
    ClaimsADifference,

    /// <summary>The sentence does not say that a difference was shown.</summary>
    HidesTheDifference,

    /// <summary>The sentence does not say how many of how many.</summary>
    NoCount,

    /// <summary>The sentence does not say what the count leaves open, or rules out.</summary>
    NoLimit,

    /// <summary>Several sentences, or only a few words.</summary>
    NotOneSentence,
}

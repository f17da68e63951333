namespace SplitBatch.Evidence.Findings;

/// <summary>How a panel's plan stands to its ballots: whether its limits may be called fixed beforehand.</summary>
public enum PlanStanding
{
    /// <summary>Nobody wrote down on which day the plan was fixed.</summary>
    NotDeclared,

    /// <summary>The plan is dated after the first ballot.</summary>
    DeclaredAfterServing,

    /// <summary>The plan is dated before the first ballot, by its author's word.</summary>
    Declared,

    /// <summary>The plan was sealed before the first ballot.</summary>
    Sealed,
}

using System.Globalization;

namespace SplitBatch.Panel.Planning;

/// <summary>One entry of a plan that was changed after the plan was sealed.</summary>
/// <param name="What">The entry, as <c>margin of panel main</c>.</param>
/// <param name="From">What was sealed.</param>
/// <param name="To">What was put in its place.</param>
/// <param name="When">When, where somebody recorded it; else null.</param>
/// <param name="Because">Why, in the words of whoever changed it; null where nobody said.</param>
public sealed record PlanChange(string What, string From, string To, DateTimeOffset? When, string? Because)
{
    /// <summary>
    /// For example <c>on 2026-05-02 19:40 UTC, because the flight was late</c>, or <c>at a time that nobody recorded</c>.
    /// </summary>
    public string WhenAndWhy => When is { } when
        ? $"on {when.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture)}"
            + $"{(Because is { } reason ? $", because: {reason}" : "")}"
        : "at a time that nobody recorded";

    /// <summary>For example <c>margin of panel main: 0.25 was changed to 0.3 at a time that nobody recorded</c>.</summary>
    public override string ToString() => $"{What}: {From} was changed to {To} {WhenAndWhy}";
}

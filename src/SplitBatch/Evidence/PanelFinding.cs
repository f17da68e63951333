using SplitBatch.Panel;

namespace SplitBatch.Evidence;

/// <summary>What one panel found: its plan, its count, and where practice departed from the plan.</summary>
/// <param name="Plan">The plan, declared before serving.</param>
/// <param name="Reading">Both tests of the count.</param>
/// <param name="Departures">Where practice departed from the plan.</param>
/// <param name="Remarks">What else a reader should know of the count, as sentences: ballots left out, repeats, biases.</param>
public sealed record PanelFinding(PanelPlan Plan, PanelReading Reading, IReadOnlyList<Departure> Departures, IReadOnlyList<string> Remarks);

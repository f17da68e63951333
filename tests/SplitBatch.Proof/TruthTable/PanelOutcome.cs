using SplitBatch.Panel.Counting;
using SplitBatch.Panel.Deciding;

namespace SplitBatch.Proof.TruthTable;

/// <summary>What one simulated trial said.</summary>
/// <param name="Answer">What the verdict answers.</param>
/// <param name="Reading">The reading of the count.</param>
/// <param name="IsQualified">Whether the verdict names something about the panel that limits it.</param>
/// <param name="KeptToPlan">Whether the headline stands as a test and not as a lead.</param>
/// <param name="Counted">Sets counted.</param>
internal sealed record PanelOutcome(PanelAnswer Answer, PanelReading Reading, bool IsQualified, bool KeptToPlan, int Counted);

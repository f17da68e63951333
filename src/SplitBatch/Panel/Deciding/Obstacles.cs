using SplitBatch.Panel.Counting;

namespace SplitBatch.Panel.Deciding;

/// <summary>What stood in the way of a statement. Several may.</summary>
[Flags]
public enum Obstacles
{
    /// <summary>Nothing: the statement is made.</summary>
    None = 0,

    /// <summary>The count: another count of the same panel would have done.</summary>
    Count = 1,

    /// <summary>The size: no count of so few sets would have done.</summary>
    Size = 2,

    /// <summary>The people: too few, or with too many sets each, to speak of others.</summary>
    People = 4,

    /// <summary>The protocol, which cannot answer the question.</summary>
    Protocol = 8,

    /// <summary>Looks before the end: the count would have done for a panel that was read once.</summary>
    Looks = 16,

    /// <summary>The control: it was declared or served, and not told.</summary>
    Control = 32,

    /// <summary>The alarm over a count far below chance.</summary>
    Alarm = 64,
}

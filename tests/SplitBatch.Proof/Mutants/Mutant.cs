namespace SplitBatch.Proof.Mutants;

/// <summary>One slip in the library's text: what stood there, and what stands there while it is switched on.</summary>
/// <param name="Id">Its number, by which it is switched on.</param>
/// <param name="File">The file within the room.</param>
/// <param name="Line">The line, from 1.</param>
/// <param name="At">Where it begins in the file's text.</param>
/// <param name="Kind">What sort of slip: a comparison, a condition, a word ...</param>
/// <param name="From">What stood there.</param>
/// <param name="To">What stands there instead.</param>
internal sealed record Mutant(int Id, string File, int Line, int At, string Kind, string From, string To)
{
    /// <summary>The switch that is compiled into the library with all slips: one is on, and it tells which were reached.</summary>
    public const string Switch = """
        namespace SplitBatch.Evidence;

        /// <summary>The slip that is switched on, and those that were reached.</summary>
        public static class Mutant
        {
            /// <summary>Which slip is on; 0 for none.</summary>
            public static int Active;

            /// <summary>Which were reached since this was cleared.</summary>
            public static readonly bool[] Seen = new bool[10000];

            /// <summary>Whether a slip is on.</summary>
            public static bool Is(int id)
            {
                Seen[id] = true;
                return Active == id;
            }

            /// <summary>The words, or while the slip is on the others.</summary>
            public static string Words(int id, string words, string others) => Is(id) ? others : words;
        }
        """;

    public override string ToString() => $"{File}, line {Line}: {Kind}, `{From}` to `{To}`";
}

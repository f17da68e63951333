namespace SplitBatch.Panel;

/// <summary>One cup of the sealed key, as a row of a file: with all rows the whole plan can be rebuilt.</summary>
/// <param name="Panel">The panel's name.</param>
/// <param name="Protocol">The protocol's name.</param>
/// <param name="Session">The sitting, from 1.</param>
/// <param name="Server">Who carries the tray.</param>
/// <param name="Taster">Who tastes.</param>
/// <param name="Replicate">Which of the taster's sets, from 1.</param>
/// <param name="Set">The set's number in the panel, from 1.</param>
/// <param name="Position">The place in the tasting order, from 1; 0 is a named reference.</param>
/// <param name="Code">The code on the cup.</param>
/// <param name="Beer">What is in it.</param>
public sealed record ServingKeyRow(
    string Panel, string Protocol, int Session, string Server, string Taster, int Replicate, int Set, int Position, string Code, Side Beer);

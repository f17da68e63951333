namespace SplitBatch.Bitterness;

/// <summary>A point on a model's curve of utilisation against boil time.</summary>
/// <param name="Model">The model's name.</param>
/// <param name="Minutes">Minutes in the boil.</param>
/// <param name="Utilisation">Share of the alpha acid of whole cones that counts as bitterness in the beer.</param>
public readonly record struct UtilisationPoint(string Model, double Minutes, double Utilisation);

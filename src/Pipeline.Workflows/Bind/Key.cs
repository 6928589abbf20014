namespace Pipeline.Workflows;

/// <summary>A key of the file, for messages and for the workflow reference.</summary>
/// <param name="Name">As written.</param>
/// <param name="Means">What it says, as the end of a sentence.</param>
/// <param name="Needed">True if it must be there.</param>
/// <param name="Example">A value.</param>
/// <param name="Otherwise">What holds if it is not there; null if nothing does or it must be there.</param>
internal sealed record Key(string Name, string Means, bool Needed, string Example, string? Otherwise = null);

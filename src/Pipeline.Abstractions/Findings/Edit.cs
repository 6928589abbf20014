namespace Pipeline.Abstractions;

/// <summary>A change to the text of a file: what stands from one place up to another gives way to a new text.</summary>
/// <param name="From">The first character that goes; the place of insertion if nothing goes.</param>
/// <param name="To">The character after the last one that goes; in the same file, not before <paramref name="From"/>.</param>
/// <param name="Text">What stands there instead, with the line ends of the file.</param>
public sealed record Edit(Place From, Place To, string Text);

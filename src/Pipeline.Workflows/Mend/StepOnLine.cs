using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>The entry of a route that stands on a line of a file.</summary>
/// <param name="Keys">Where its keys stand; one of them is its verb.</param>
public sealed record StepOnLine(Sequence<Place> Keys)
{
    /// <summary>The entry on a line, from 1; null if none stands there or the file cannot be read.</summary>
    public static StepOnLine? Find(SourceText source, int line)
    {
        ArgumentNullException.ThrowIfNull(source);
        if (Reader.Read(source).Tree is not { } tree)
            return null;
        var lines = new TextLines(source.Text.StartsWith('\uFEFF') ? source.Text[1..] : source.Text);
        var on = new RoutePlaces(tree.Root).Steps.LastOrDefault(step => step.Mapping.Line <= line && LastLine(step, lines) >= line);
        return on is null ? null : new StepOnLine(on.Mapping.Entries.Select(entry => entry.Key.Place).ToSequence());
    }

    private static int LastLine(StepNode step, TextLines lines) =>
        StepLines.Of(step, lines)?.Last ?? Math.Max(step.Mapping.IsFlow ? step.Mapping.End.Line : 0, step.Mapping.Entries.Max(entry => Math.Max(entry.Key.Line, entry.Value.Line)));
}

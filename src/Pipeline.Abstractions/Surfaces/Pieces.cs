namespace Pipeline.Abstractions;

/// <summary>
/// Which parts of a model hang together as one piece, step by step: a join holds them together from its step on, and for good. What is
/// sprayed on one area of a piece drifts over the others.
/// </summary>
public sealed class Pieces
{
    private readonly Dictionary<string, string> partOfArea = new(StringComparer.Ordinal);
    private readonly Dictionary<string, Link> joinedTo = new(StringComparer.Ordinal);

    /// <summary>The pieces of a model along its route.</summary>
    public Pieces(Model model, Sequence<Step> route)
    {
        ArgumentNullException.ThrowIfNull(model);
        foreach (var area in model.Areas)
            partOfArea[area.Name] = area.Part;
        foreach (var step in route)
        {
            foreach (var deed in step.Deeds)
            {
                if (deed is Deed.Join join)
                    Join(join.Parts, step.Index);
            }
        }
    }

    /// <summary>
    /// The piece an area belongs to when a step begins, named after one of its parts: the same name for all areas of a piece, another
    /// for every other piece.
    /// </summary>
    /// <param name="area">An area of the model.</param>
    /// <param name="step">Index in the route; the joins of earlier steps count.</param>
    public string PieceOf(string area, int step) => partOfArea.TryGetValue(area, out var part) ? Root(part, step) : "";

    /// <summary>True if any of some areas is of one piece with an area when a step begins.</summary>
    /// <param name="area">An area of the model.</param>
    /// <param name="others">Areas of the model.</param>
    /// <param name="step">Index in the route; the joins of earlier steps count.</param>
    public bool IsBeside(string area, Sequence<string> others, int step)
    {
        var piece = PieceOf(area, step);
        foreach (var other in others)
        {
            if (PieceOf(other, step) == piece)
                return true;
        }

        return false;
    }

    // The smaller piece is hung under the larger, with the step: so the way up stays short, and the piece at any earlier step is where
    // the way up stops if later joins are not walked.
    private void Join(Sequence<string> parts, int step)
    {
        for (var i = 1; i < parts.Count; i++)
        {
            var one = Root(parts[0], int.MaxValue);
            var other = Root(parts[i], int.MaxValue);
            if (one == other)
                continue;
            var (upper, lower) = HeightOf(one) >= HeightOf(other) ? (one, other) : (other, one);
            joinedTo[lower] = new Link(upper, step, HeightOf(lower));
            joinedTo[upper] = new Link(null, int.MaxValue, Math.Max(HeightOf(upper), HeightOf(lower) + 1));
        }
    }

    private string Root(string part, int step)
    {
        while (joinedTo.TryGetValue(part, out var link) && link.Upper is { } upper && link.Step < step)
            part = upper;
        return part;
    }

    private int HeightOf(string part) => joinedTo.TryGetValue(part, out var link) ? link.Height : 0;

    private readonly record struct Link(string? Upper, int Step, int Height);
}

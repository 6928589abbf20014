using Pipeline.Abstractions;

namespace Pipeline.Plugins.Masking;

/// <summary>What the rules about masks go by.</summary>
public sealed class RuleFigures : Catalogue<Figure>
{
    /// <summary>From how many coats on a hard edge chips.</summary>
    public const string ThickEdge = "thick edge";

    /// <inheritdoc/>
    public override IEnumerable<Figure> Entries =>
    [
        new() { Name = ThickEdge, Value = 3, Unit = FigureUnit.Count, Means = "so many coats over the edge of a mask chip once they are hard", Source = "common practice" },
    ];
}

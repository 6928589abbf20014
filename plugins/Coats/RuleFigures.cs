using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>What the rules about mixes go by.</summary>
public sealed class RuleFigures : Catalogue<Figure>
{
    /// <summary>How much more than needed is mixed.</summary>
    public const string MixToSpare = "mix to spare";

    /// <summary>The fewest drops of a part.</summary>
    public const string FewestDrops = "fewest drops";

    /// <inheritdoc/>
    public override IEnumerable<Figure> Entries =>
    [
        new() { Name = MixToSpare, Value = 20, Unit = FigureUnit.Percent, Means = "how much more than the batch takes is mixed at once", Source = "common practice" },
        new() { Name = FewestDrops, Value = 5, Unit = FigureUnit.Count, Means = "the fewest drops of a part that can be counted on", Source = "common practice" },
    ];
}

using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>What the rules about effects go by.</summary>
public sealed class RuleFigures : Catalogue<Figure>
{
    /// <summary>When an effect has set for good.</summary>
    public const string EffectSet = "effect set for good";

    /// <summary>Until when a coat over a medium chips.</summary>
    public const string Chips = "chips within";

    /// <inheritdoc/>
    public override IEnumerable<Figure> Entries =>
    [
        new() { Name = EffectSet, Value = 24 * 60, Unit = FigureUnit.Minutes, Means = "after so long not even fresh thinner moves an enamel effect", Source = "common practice" },
        new() { Name = Chips, Value = 24 * 60, Unit = FigureUnit.Minutes, Means = "after so long a waterborne coat over a chipping medium lets no water through", Source = "common practice" },
    ];
}

using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A wet hot coat straight on enamel, water-based paint or stain.</summary>
public sealed class WetHotCoat : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "The first hot coat over a softer one is only misted on.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) =>
        coat.IsWet() && !coat.IsDabbed();

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { } top || top.Technique == Technique.ChippingMedium || moment.Pair(coat, top) is not { } pair || !IsCrazed(coat, top, pair))
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"A wet coat of {coat.Name} can craze {top.Name} on {{areas}}, however well it has cured.",
            $"Mist {coat.Name} on twice first ('body: mist', 'coats: 2'), then lay the wet coat; try it on a card.",
            new Pointer(top.Step, $"{top.Name} was laid here"))
            .MendedBy(moment.MistFirst(coat))
            .GivingWay();
    }

    // bare alcohol metal, and alcohol on what it dissolves, have rules of their own; what only a barrier parts is as bad wet
    private static bool IsCrazed(Layer coat, Layer top, CoatOver pair) =>
        (pair.WhenCured == Bearing.Mist || (pair.WhenCured == Bearing.Barrier && (coat.IsHot() || coat.IsAlcohol())))
        && !(top.IsAlcohol() && top.IsMetallic) && !(coat.IsAlcohol() && top.IsWaterborne());
}

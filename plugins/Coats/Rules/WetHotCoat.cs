using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A wet hot coat straight on enamel, water-based paint or stain.</summary>
public sealed class WetHotCoat : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "The first hot coat over a softer one is only misted on.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) =>
        // a sponge that is dabbed almost dry lays no wet coat
        (coat.IsHot() || coat.IsAlcohol()) && coat.IsWet() && coat.Technique != Technique.Sponge;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { } top || !(top.IsSpirit() || (coat.IsHot() && top.IsWaterborne())))
            return null;
        return moment.Says(
            Level.Warning,
            area,
            $"A wet coat of {coat.Name} can craze {top.Name} on {{areas}}, however well it has cured.",
            $"Mist {coat.Name} on twice first ('body: mist', 'coats: 2'), then lay the wet coat; try it on a card.",
            new Pointer(top.Step, $"{top.Name} was laid here"))
            .MendedBy(moment.MistFirst(coat));
    }
}

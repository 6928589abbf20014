using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering.Rules;

/// <summary>An enamel or oil effect run into another that is still wet with the same kind of thinner.</summary>
public sealed class EffectBlooms : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A wash, filter or line waits until the enamel or oil effect it would run into has dried.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.IsSpiritEffect() && !coat.IsWetInWet && (IsAllOver(coat) || IsLedIntoRecesses(coat));

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        for (var i = surface.Layers.Count - 1; i >= 0 && surface.Layers[i].IsSpiritEffect(); i--)
        {
            if (Meets(coat, surface.Layers[i]))
                return Wait(moment, coat, surface.Layers[i], area);
        }

        return null;
    }

    // streaks and dots are worked into what is wet on purpose; two lines on one area lie side by side
    private static bool Meets(Layer coat, Layer under) => !under.IsDabbed() && (IsAllOver(coat) || IsAllOver(under));

    private static bool IsAllOver(Layer effect) => effect.Technique is Technique.Wash or Technique.Filter;

    private static bool IsLedIntoRecesses(Layer effect) => effect.Technique is Technique.PinWash or Technique.PanelLine;

    private static Verdict? Wait(Moment moment, Layer coat, Layer under, string area) => moment.WaitsFor(
        under, DryingState.Recoatable, area,
        IsAllOver(coat)
            ? $"{under.Name} is still wet with thinner, and {coat.Name} goes all over it: it washes {under.Name} away or mixes with it."
            : $"{under.Name} is still wet with thinner: {coat.Name} does not stay in its recess and blooms out into it.",
        "Let it dry, or say 'wet-in-wet: yes' if they are meant to run together.") is { } wait
        ? wait with { Gravest = Level.Warning }
        : null;
}

using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>A decal on ground that is too young.</summary>
public sealed class DecalTooSoon : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "A decal waits until its ground can bear water and softener.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => coat.Role == LayerRole.Decal;

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.Top is not { } top || moment.ConcernOf(coat, top) != Concern.DecalOnYoung)
            return null;
        // enamel that has cured at all bears water; there is no middle zone
        if (top.IsSpirit() && top.TimeTo(DryingState.Cured) is { } cures)
            return moment.WaitsSince(top, DryingRange.Exactly(cures.Low), "cured", area, $"Water and softener attack {top.Name} until it has cured.", "Wait, or take another ground for the decals.");
        return moment.WaitsFor(top, DryingState.WashSafe, area, $"Water and softener attack {top.Name} while it is young.", "Leave the ground overnight before the decals.");
    }
}

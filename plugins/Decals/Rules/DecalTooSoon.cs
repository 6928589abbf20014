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
        var state = top.IsSpirit() ? DryingState.Cured : DryingState.WashSafe;
        return moment.WaitsFor(top, state, area, $"Water and softener attack {top.Name} while it is young.", "Leave the ground overnight before the decals.");
    }
}

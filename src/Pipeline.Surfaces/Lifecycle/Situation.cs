using Pipeline.Abstractions;

namespace Pipeline.Surfaces.Lifecycle;

/// <summary>What the lifecycle's guards ask about: a step and the surfaces before and after it.</summary>
internal sealed record Situation(Step Step, SurfaceMap Before, SurfaceMap After, bool IsLast)
{
    /// <summary>Where the surfaces after the step leave the model.</summary>
    public LifecycleState Standing { get; } = StandingOf(After, IsLast);

    /// <summary>Why the surface does not permit the step, or null.</summary>
    public string? Obstacle { get; } = ObstacleTo(Step, Before);

    private static LifecycleState StandingOf(SurfaceMap surfaces, bool isLast)
    {
        Layer? latest = null;
        var isPrepared = false;
        foreach (var area in surfaces.Areas)
        {
            var surface = surfaces[area];
            if (surface.IsMasked)
                return LifecycleState.Masked;
            isPrepared |= !surface.Preparations.IsEmpty;
            if (surface.Top is { } top && (latest is null || top.Step > latest.Step))
                latest = top;
        }

        if (isLast)
            return LifecycleState.Finished;
        if (latest is not null)
            return latest.Role == LayerRole.Varnish ? LifecycleState.Sealed : LifecycleState.Coated;
        return isPrepared ? LifecycleState.Prepared : LifecycleState.Bare;
    }

    private static string? ObstacleTo(Step step, SurfaceMap before)
    {
        if (step.Kind == StepKind.Removal && step.Deeds.IsEmpty)
            return "there is nothing on it to take off";
        foreach (var deed in step.Deeds)
        {
            var obstacle = deed switch
            {
                Deed.Lay => NothingInReach(step, before),
                Deed.TakeMaskOff off when Deeds.Masking.AreasUnder(before, off.Mask).IsEmpty => $"the mask '{off.Mask}' is not on",
                Deed.CleanBack when !AnyLayer(step, before, null) => "there is nothing on it to clean back",
                Deed.SoftenDecal when !AnyLayer(step, before, LayerRole.Decal) => "there is no decal on it to soften",
                _ => null,
            };
            if (obstacle is not null)
                return obstacle;
        }

        return null;
    }

    private static string? NothingInReach(Step step, SurfaceMap before)
    {
        string? obstacle = null;
        foreach (var area in step.Areas)
        {
            if (before[area].IsHidden)
                obstacle ??= "a join has hidden what it names";
            else if (before[area].IsMasked)
                obstacle ??= "everything it names lies under a mask";
            else
                return null;
        }

        return obstacle;
    }

    private static bool AnyLayer(Step step, SurfaceMap before, LayerRole? role)
    {
        foreach (var area in step.Areas)
        {
            if (role is { } wanted ? before[area].Has(wanted) : before[area].Top is not null)
                return true;
        }

        return false;
    }
}

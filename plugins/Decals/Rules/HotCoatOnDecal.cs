using Pipeline.Abstractions;

namespace Pipeline.Plugins.Decals.Rules;

/// <summary>The first coat over a bare decal is a wet one with strong solvent.</summary>
public sealed class HotCoatOnDecal : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The first lacquer over a decal is only misted on.";

    /// <inheritdoc/>
    public override StepKind? OnlyKind => StepKind.Coat;

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        if (moment.Step.Kind != StepKind.Coat || moment.Step.Coat() is not { } coat)
            yield break;
        if (!coat.IsHot() || !coat.IsWet())
            yield break;
        foreach (var area in moment.Reached())
        {
            if (moment.Before[area].Top is not { Role: LayerRole.Decal } decal)
                continue;
            yield return moment.Says(
                Level.Warning,
                area,
                $"{coat.Name} goes wet on the bare decal of {{areas}}: the strong solvent can craze its film.",
                "Mist it on twice first ('body: mist', 'coats: 2'), then lay the wet coat.",
                new Pointer(decal.Step, "the decal was put on here"))
                .MendedBy(moment.MistFirst(coat));
        }
    }
}

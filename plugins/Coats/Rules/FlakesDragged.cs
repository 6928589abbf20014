using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A wet coat of alcohol or strong solvent on an alcohol-thinned metallic that nothing seals.</summary>
public sealed class FlakesDragged : CoatRule
{
    /// <inheritdoc/>
    public override string Summary => "Bare alcohol metal is only misted over.";

    /// <inheritdoc/>
    protected override bool LooksAt(Layer coat) => !coat.IsSpirit() && !coat.IsDabbed(); // their thinner is another rule's

    /// <inheritdoc/>
    protected override Verdict? Judge(Moment moment, Layer coat, string area, Surface surface)
    {
        if (surface.TopCoat() is not { } top || !top.IsAlcohol() || !top.IsMetallic || moment.Pair(coat, top) is not { } pair)
            return null;
        if (pair.WhenDry != Bearing.Barrier && (pair.WhenDry != Bearing.Mist || !coat.IsWet()))
            return null;
        return moment.Says(
            pair.WhenDry == Bearing.Barrier ? Level.Warning : Level.Error,
            area,
            $"{coat.Name} laid wet on the bare {top.Name} of {{areas}} floats its flakes: the metal blotches.",
            pair.WhenDry == Bearing.Barrier ? $"Seal {top.Name} with a varnish first, misted on." : $"Seal {top.Name} with two mist coats first ('body: mist').",
            new Pointer(top.Step, $"{top.Name} was laid here"))
            .MendedBy(pair.WhenDry == Bearing.Barrier || coat.IsAlcohol() ? null : moment.MistFirst(coat));
    }
}

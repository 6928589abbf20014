using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>Particulars of <see cref="Seal"/>.</summary>
public sealed record Sealing(
    [Says("The sealer.")] Paint With,
    [Says("How it is put on.")] Method By = Method.Brush,
    [Says("How many coats; board wants two, sanded between.")] int Coats = 1,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null);

/// <summary>Seals porous material.</summary>
public sealed class Seal : Verb<Sealing>
{
    private static readonly Effort PerCoat = new(0.4, 0.03, 40, 0.0127);

    /// <inheritdoc/>
    public override string Name => "seal";

    /// <inheritdoc/>
    public override string Summary => "Closes porous material so that it stops drinking paint.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Sealing particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Sealer, particulars.By, coats: particulars.Coats);
        return Laying.Lay(job, layer, PerCoat, particulars.Overspray, putAway: 5);
    }
}

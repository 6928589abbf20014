using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="Undercoat"/>.</summary>
public sealed record Undercoating(
    [Says("The undercoat.")] Paint With,
    [Says("How it is put on.")] Method By,
    [Says("How many coats.")] int Coats = 1,
    [Says("How thick each coat is; an airbrush lays it thin, brush and rattle can heavy.")] Body? Body = null,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null);

/// <summary>Lays the ground that colour holds on to.</summary>
public sealed class Undercoat : Verb<Undercoating>
{
    private static readonly Effort Sprayed = new(0.5, 0.035, 40, 0.008);

    /// <inheritdoc/>
    public override string Name => "undercoat";

    /// <inheritdoc/>
    public override string Summary => "Lays an undercoat: key for the colour and one even tone.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Undercoating particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Undercoat, particulars.By, particulars.Body, particulars.Coats);
        return Laying.Lay(job, layer, particulars.By is Method.Airbrush or Method.Aerosol ? Sprayed : Coat.Brushed, particulars.Overspray);
    }
}

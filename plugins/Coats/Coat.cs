using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats;

/// <summary>Particulars of <see cref="Coat"/>.</summary>
public sealed record Coating(
    [Says("The paint or mix.")] Paint With,
    [Says("How it is put on.")] Method By,
    [Says("How many coats.")] int Coats = 1,
    [Says("How thick each coat is; an airbrush lays it thin, brush and rattle can heavy.")] Body? Body = null,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null,
    [Says("Worked into the coat below while that is still open.")] bool WetInWet = false);

/// <summary>Lays colour.</summary>
public sealed class Coat : Verb<Coating>
{
    private static readonly Effort Sprayed = new(0.5, 0.05, 40, 0.01);

    // flakes go on in light, quick passes
    private static readonly Effort SprayedMetallic = new(0.5, 0.03, 40, 0.006);

    internal static Effort Brushed { get; } = new(2, 0.2, 40, 0.005);

    /// <inheritdoc/>
    public override string Name => "coat";

    /// <inheritdoc/>
    public override string Summary => "Lays a coat of colour or metallic paint.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Coating particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Colour, particulars.By, particulars.Body, particulars.Coats) with
        {
            IsWetInWet = particulars.WetInWet,
        };
        var effort = particulars.By is Method.Airbrush or Method.Aerosol ? layer.IsMetallic ? SprayedMetallic : Sprayed : Brushed;
        return Laying.Lay(job, layer, effort, particulars.Overspray);
    }
}

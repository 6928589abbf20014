using Pipeline.Abstractions;

namespace Pipeline.Plugins.Varnish;

/// <summary>Particulars of <see cref="Varnish"/>.</summary>
public sealed record Varnishing(
    [Says("The varnish, or a mix of varnishes whose sheen the file says.")] Paint With,
    [Says("How it is put on.")] Method By,
    [Says("How many coats.")] int Coats = 1,
    [Says("How thick each coat is; an airbrush lays it thin, brush and rattle can heavy.")] Body? Body = null,
    [Says("Areas that overspray may reach because it is meant, or all.")] AreaNames? Overspray = null);

/// <summary>Lays clear varnish.</summary>
public sealed class Varnish : Verb<Varnishing>
{
    private static readonly Effort Sprayed = new(0.5, 0.035, 40, 0.0075);

    private static readonly Effort Brushed = new(1.5, 0.12, 40, 0.004);

    /// <inheritdoc/>
    public override string Name => "varnish";

    /// <inheritdoc/>
    public override string Summary => "Lays clear varnish: protection, barrier and the final sheen, which is that of the varnish or mix.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Varnishing particulars)
    {
        var layer = Laying.LayerOf(particulars.With, LayerRole.Varnish, particulars.By, particulars.Body, particulars.Coats);
        return Laying.Lay(job, layer, particulars.By is Method.Airbrush or Method.Aerosol ? Sprayed : Brushed, particulars.Overspray);
    }
}

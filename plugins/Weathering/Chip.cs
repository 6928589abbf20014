using Pipeline.Abstractions;

namespace Pipeline.Plugins.Weathering;

/// <summary>Chips a coat.</summary>
public sealed class Chip : Verb<NoParticulars>
{
    private static readonly Effort PerUnit = new(1, 0.035, 40, 0.0119);

    /// <inheritdoc/>
    public override string Name => "chip";

    /// <inheritdoc/>
    public override string Summary => "Wets the coat over a chipping medium and works chips out of it.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Removal;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, NoParticulars particulars)
    {
        return new Intent(
            [
                new Deed.CleanBack(Liquid.Water.Spoken(), Carrier.Water) { Liquid = Liquid.Water, Of = Technique.ChippingMedium },
            ],
            new Work { PerUnit = PerUnit.For(job.Size), SetUp = new Attended(1), PutAway = new Attended(2) });
    }
}

using Pipeline.Abstractions;

namespace Tidewater.Patina;

/// <summary>A patina asks for metal paint under it, and nothing between.</summary>
public sealed class PatinaNeedsMetal : Rule
{
    /// <inheritdoc/>
    public override string Name => "patina-needs-metal";

    /// <inheritdoc/>
    public override string Summary => "A patina fluid goes on bare metal paint.";

    /// <inheritdoc/>
    public override string Source => "invented for this example";

    /// <inheritdoc/>
    public override bool LooksAt(Step step) => step.Verb == "patina";

    /// <inheritdoc/>
    public override IEnumerable<Verdict> Judge(Moment moment)
    {
        var without = moment.Step.Areas.Where(area => moment.Before[area].Top is not { IsMetallic: true }).ToSequence();
        if (without.IsEmpty)
            yield break;
        yield return new Verdict.Says
        {
            Step = moment.Step.Index,
            Areas = without,
            Level = Level.Error,
            Message = "There is no bare metal paint on {areas}, so the fluid has nothing to turn green.",
            Remedy = "Lay a metallic coat right before the patina, and varnish afterwards.",
        };
    }
}

using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Finishing;

/// <summary>Particulars of <see cref="TestMix"/>.</summary>
public sealed record Testing(
    [Says("The mix.")] Paint With);

/// <summary>Tries a mix on a card.</summary>
public sealed class TestMix : Verb<Testing>
{
    /// <inheritdoc/>
    public override string Name => "test";

    /// <inheritdoc/>
    public override string Summary => "Tries a mix on a card with the same undercoat and judges it dry.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Testing particulars)
    {
        // the card is painted, the pieces are not touched; wet colour is darker or lighter than dry
        return new Intent([], new Work { PerUnit = new Attended(7.5), Together = true, Unattended = new Drying(30), Aids = [particulars.With.Name, "test card"] })
        {
            Cautions = [.. Cautions.Of(particulars.With.Family, Method.Brush)],
        };
    }
}

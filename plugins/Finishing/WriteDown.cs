using Pipeline.Abstractions;

namespace Pipeline.Plugins.Finishing;

/// <summary>Particulars of <see cref="WriteDown"/>.</summary>
public sealed record RecipeCard(
    [Says("How many mixes are written down.")] int Mixes = 1);

/// <summary>Writes a recipe down.</summary>
public sealed class WriteDown : Verb<RecipeCard>
{
    /// <inheritdoc/>
    public override string Name => "record";

    /// <inheritdoc/>
    public override string Summary => "Writes the recipe down while the mix is still on the bench.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Preparation;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, RecipeCard particulars)
    {
        if (particulars.Mixes is < 1 or > 500)
            throw new ParticularException("mixes", FormattableString.Invariant($"{particulars.Mixes} mixes make no sense; say 1 to 500."));
        // a card is written, the pieces are not touched
        return new Intent([], new Work { PerUnit = new Attended(5) * particulars.Mixes, Together = true, Aids = ["recipe cards"] });
    }
}

using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Basing;

/// <summary>What holds pigment on the piece.</summary>
public enum Fixer
{
    /// <summary>Nothing: it lies loose.</summary>
    None,

    /// <summary>White spirit, flowed in.</summary>
    Spirit,

    /// <summary>Thin acrylic resin, flowed in.</summary>
    AcrylicResin,
}

/// <summary>Particulars of <see cref="Pigment"/>.</summary>
public sealed record Pigmenting(
    [Says("The pigment.")] string With = "pigment",
    [Says("What holds it; loose by default.")] Fixer Fix = Fixer.None);

/// <summary>Dusts pigment on.</summary>
public sealed class Pigment : Verb<Pigmenting>
{
    private static readonly Effort PerUnit = new(1, 0.035, 40, 0.0072);

    /// <inheritdoc/>
    public override string Name => "pigment";

    /// <inheritdoc/>
    public override string Summary => "Dusts dry pigment on, last of all; with a fixer if it must bear handling.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Pigmenting particulars)
    {
        Family? fixer = particulars.Fix == Fixer.None ? null : Families.For(job, Families.PigmentFixer);
        var layer = new Layer
        {
            Step = -1,
            Name = particulars.With,
            Family = fixer,
            Role = LayerRole.Powder,
            Method = Method.Brush,
            Sheen = Sheen.Matt,
            Drying = fixer?.Thin ?? Families.AtOnce,
        };
        return new Intent(
            [new Deed.Lay(layer)],
            new Work
            {
                PerUnit = PerUnit.For(job.Size),
                SetUp = new Attended(3),
                PutAway = new Attended(5),
                NeedsDryingPlace = fixer is not null,
                Aids = particulars.Fix switch
                {
                    Fixer.Spirit => [Liquid.WhiteSpirit.Spoken()],
                    Fixer.AcrylicResin => ["acrylic resin to fix with"],
                    _ => [],
                },
            })
        {
            Cautions = particulars.Fix == Fixer.Spirit ? [Cautions.SolventVapour] : [],
        };
    }
}

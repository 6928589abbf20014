using Pipeline.Abstractions;

namespace Tidewater.Patina;

/// <summary>The keys of a patina step besides its areas.</summary>
public sealed record Patinating(
    [Says("The patina fluid.")] Paint With,
    [Says("How many times it is flooded on; it dries overnight between.")] int Coats = 1);

/// <summary>Floods metal paint with a fluid that turns its flakes green.</summary>
public sealed class Patina : Verb<Patinating>
{
    // two minutes to flood and tilt a figure, a quarter of an hour for a roof
    private static readonly Effort PerCoat = new(
        FixedMinutes: 1, MinutesPerSquareCentimetre: 0.03, KneeSquareCentimetres: 40, MinutesPerSquareCentimetreBeyond: 0.012);

    /// <inheritdoc/>
    public override string Name => "patina";

    /// <inheritdoc/>
    public override string Summary => "Floods bare metal paint with a fluid that turns it green.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Patinating particulars)
    {
        if (particulars.Coats is < 1 or > 5)
            throw new ParticularException("coats", $"{particulars.Coats} coats make no sense; say 1 to 5.");
        var layer = Layer.Of(particulars.With, LayerRole.Effect, Method.Brush, Body.Thin, particulars.Coats);
        return new Intent(
            [new Deed.Lay(layer)],
            new Work
            {
                PerUnit = PerCoat.For(job.Size),
                Passes = particulars.Coats,
                SetUp = new Attended(3),
                PutAway = new Attended(5),
                NeedsDryingPlace = true,
            })
        {
            Cautions = [new Caution("patina-fluid", "Acid or salty: gloves and eye protection. Label and safety data sheet come first.")],
        };
    }
}

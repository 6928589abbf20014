using Pipeline.Abstractions;
using Pipeline.Plugins.Safety;

namespace Pipeline.Plugins.Decals;

/// <summary>Particulars of <see cref="Decal"/>.</summary>
public sealed record Decaling(
    [Says("How many decals on one unit.")] int Count = 1,
    [Says("With decal setter under each.")] bool Setter = true);

/// <summary>Puts decals on.</summary>
public sealed class Decal : Verb<Decaling>
{
    /// <inheritdoc/>
    public override string Name => "decal";

    /// <inheritdoc/>
    public override string Summary => "Puts waterslide decals on a gloss ground.";

    /// <inheritdoc/>
    public override StepKind Kind => StepKind.Coat;

    /// <inheritdoc/>
    protected override Intent Intend(Job job, Decaling particulars)
    {
        if (particulars.Count is < 1 or > 500)
            throw new ParticularException("count", FormattableString.Invariant($"{particulars.Count} decals make no sense; say 1 to 500."));
        var film = Families.For(job);
        var layer = new Layer
        {
            Step = -1,
            Name = "decal",
            Family = film,
            Role = LayerRole.Decal,
            Method = Method.Hand,
            Sheen = Sheen.Satin,
            Drying = film.Thin,
        };
        var minutesEach = particulars.Setter ? 6 : 5;
        return new Intent(
            [new Deed.Lay(layer)],
            new Work
            {
                PerUnit = new Attended(minutesEach) * particulars.Count,
                SetUp = new Attended(5),
                PutAway = new Attended(3),
                NeedsDryingPlace = true,
                Aids = particulars.Setter ? [Liquid.DecalSetter.Spoken()] : [],
            })
        {
            Cautions = [Cautions.Blades],
        };
    }
}

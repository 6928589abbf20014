using Pipeline.Abstractions;
using static Pipeline.Abstractions.DryingRange;

namespace Pipeline.Plugins.Preparing;

/// <summary>How a glue sets.</summary>
/// <param name="Glue">Which.</param>
/// <param name="Spoken">As a person says it.</param>
/// <param name="Works">How long until the joint can be worked on.</param>
/// <param name="Sandable">How long until its seam can be sanded, where that is later.</param>
/// <param name="Carrier">How climate changes the times.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record GlueSetting(Glue Glue, string Spoken, DryingRange Works, DryingRange? Sandable, Carrier Carrier, string Source);

/// <summary>How glues set, and which one suits what.</summary>
public static class Glues
{
    private const string CommonPractice = "common practice";

    /// <summary>One row per glue.</summary>
    public static Sequence<GlueSetting> All { get; } =
    [
        new(Glue.Superglue, "superglue", Minutes(5, 5), null, Carrier.Reaction, CommonPractice),
        new(Glue.FoamSafeSuperglue, "foam-safe superglue", Minutes(5, 5), null, Carrier.Reaction, CommonPractice),
        new(Glue.Pva, "PVA", Hours(2, 4), null, Carrier.Water, CommonPractice),
        new(Glue.Epoxy, "epoxy", Hours(3, 6), Hours(12, 24), Carrier.Reaction, CommonPractice),
        new(Glue.StyreneCement, "styrene cement", Hours(1, 2), Hours(24, 24), Carrier.Solvent, CommonPractice),
    ];

    /// <summary>The row of a glue.</summary>
    public static GlueSetting Of(Glue glue) => All.First(row => row.Glue == glue);

    /// <summary>
    /// What a painter would reach for: styrene cement where all is styrene, white glue where something is porous, superglue for the rest.
    /// </summary>
    internal static Glue Suiting(Job job) =>
        !job.IsAnywhere(material => material.Name != "styrene") ? Glue.StyreneCement
        : job.IsAnywhere(material => material.IsPorous) ? Glue.Pva
        : Glue.Superglue;
}

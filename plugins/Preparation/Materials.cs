using Pipeline.Abstractions;

namespace Pipeline.Plugins.Preparing;

/// <summary>What pieces are made of.</summary>
public sealed class Materials : Catalogue<Material>
{
    private const string CommonPractice = "common practice";

    // common practice: resin and styrene give way in air warmer than this
    private static readonly Temperature Warps = new(45);

    private const string WoodDust =
        "common practice; that the dust harms is published in the EU directives on hardwood dust "
        + "(2 mg/m³ inhalable, mixtures included, since 2023)";

    /// <inheritdoc/>
    public override IEnumerable<Material> Entries =>
    [
        new()
        {
            Name = "resin",
            AlsoCalled = ["cast resin", "polyurethane resin"],
            NeedsWashing = true,
            BareColour = Level.Error,
            HarmfulDust = true,
            WarpsAbove = Warps,
            Source = CommonPractice,
        },
        new()
        {
            Name = "printed resin",
            AlsoCalled = ["UV resin", "3D printed resin"],
            NeedsWashing = true,
            NeedsPostCure = true,
            BareColour = Level.Error,
            SoftensInSolvent = true,
            HarmfulDust = true,
            WarpsAbove = Warps,
            Source = CommonPractice,
        },
        new()
        {
            Name = "styrene",
            AlsoCalled = ["polystyrene", "plastic", "sprue plastic"],
            BareColour = Level.Warning,
            SoftensInSolvent = true,
            WarpsAbove = Warps,
            Source = CommonPractice,
        },
        new()
        {
            Name = "metal",
            AlsoCalled = ["cast metal", "white metal", "pewter"],
            NeedsWashing = true,
            BareColour = Level.Error,
            Source = CommonPractice,
        },
        new()
        {
            Name = "brass",
            AlsoCalled = ["photo-etched brass", "etched metal"],
            NeedsWashing = true,
            BareColour = Level.Error,
            Source = CommonPractice,
        },
        new()
        {
            Name = "pvc",
            AlsoCalled = ["soft plastic", "vinyl"],
            NeedsWashing = true,
            BareColour = Level.Warning,
            SoftensInSolvent = true,
            WarpsAbove = Warps,
            Source = CommonPractice,
        },
        new()
        {
            Name = "fibreboard",
            AlsoCalled = ["mdf", "hardboard"],
            IsPorous = true,
            HarmfulDust = true,
            Source = WoodDust,
        },
        new()
        {
            Name = "wood",
            AlsoCalled = ["timber", "plywood", "balsa"],
            IsPorous = true,
            HarmfulDust = true,
            Source = WoodDust,
        },
        new() { Name = "plaster", AlsoCalled = ["gypsum", "dental plaster"], IsPorous = true, HarmfulDust = true, Source = CommonPractice },
        new() { Name = "cork", IsPorous = true, Source = CommonPractice },
        new() { Name = "card", AlsoCalled = ["cardboard", "greyboard", "paper"], IsPorous = true, Source = CommonPractice },
        new()
        {
            Name = "foam",
            AlsoCalled = ["expanded foam", "expanded polystyrene", "EPS"],
            IsPorous = true,
            SoftensInSolvent = true,
            DissolvesInSolvent = true,
            WarpsAbove = Warps,
            Source = CommonPractice,
        },
    ];
}

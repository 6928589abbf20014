using Pipeline.Abstractions;

namespace Tidewater.Patina;

/// <summary>What a patina is made with: a family of its own, since its film grows overnight.</summary>
public sealed class PatinaFluids : Catalogue<Family>
{
    /// <inheritdoc/>
    public override IEnumerable<Family> Entries =>
    [
        new Family
        {
            Name = "patina fluid",
            Like = "waterborne acrylic",
            Carrier = Carrier.Water,
            Thin = Times,
            Heavy = Times,
            Thinners = ["water"],
            Cleaners = ["water"],
            Source = "invented for this example",
        },
    ];

    private static DryingTable Times => new(
        TouchDry: DryingRange.Hours(1, 2),
        Recoatable: DryingRange.Hours(6, 9),
        Handleable: DryingRange.Hours(6, 9),
        MaskSafe: DryingRange.Hours(24, 48),
        WashSafe: DryingRange.Hours(24, 48),
        Cured: DryingRange.Days(2, 3));
}

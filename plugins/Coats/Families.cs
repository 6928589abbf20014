using Pipeline.Abstractions;
using static Pipeline.Abstractions.DryingRange;

namespace Pipeline.Plugins.Coats;

/// <summary>
/// The coating chemistries, with their times at 20–23 °C and 45–55 % relative humidity. Thin is an airbrushed coat of 10–20 µm dry,
/// Heavy a brushed one of 20–40 µm. A product's label, written in the file, overrides every figure here.
/// </summary>
public sealed class Families : Catalogue<Family>
{
    private const string CommonPractice = "common practice";

    /// <inheritdoc/>
    public override IEnumerable<Family> Entries =>
    [
        WaterborneAcrylic, AcrylicLacquer, CelluloseLacquer, Enamel, Oil, AlcoholMetallic, Stain, WaterborneVarnish, LacquerVarnish,
    ];

    /// <summary>Acrylic dispersed in water, primers of that kind included. A young film lifts under a wet brush.</summary>
    public static Family WaterborneAcrylic { get; } = new()
    {
        Name = "waterborne acrylic",
        AlsoCalled = ["water-based acrylic", "acrylic", "waterborne primer"],
        Carrier = Carrier.Water,
        Thin = new(
            TouchDry: Minutes(5, 15), Recoatable: Minutes(15, 30), Handleable: Hours(1, 2),
            MaskSafe: Hours(12, 24), WashSafe: Hours(24, 48), Cured: Days(3, 7)),
        Heavy = new(
            TouchDry: Minutes(10, 30), Recoatable: Minutes(20, 60), Handleable: Hours(2, 4),
            MaskSafe: Hours(24, 48), WashSafe: Hours(24, 48), Cured: Days(7, 14)),
        // a waterborne wash pools and takes about an hour before anything goes over it
        Effect = new(
            TouchDry: Minutes(10, 30), Recoatable: Minutes(45, 60), Handleable: Hours(2, 4),
            MaskSafe: Hours(24, 48), WashSafe: Hours(24, 48), Cured: Days(7, 14)),
        OpenTime = new Drying(10),
        PotLife = Drying.Days(2),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.8),
        // beyond these it dries on the tip and lands as dust
        DriestSprayed = new(0.3),
        WarmestSprayed = new(28),
        Thinners = ["water", "acrylic thinner"],
        Cleaners = ["water", "isopropyl", "alkaline cleaner"],
        Source = CommonPractice,
    };

    /// <summary>Acrylic in strong solvent: lacquer primers and clear colours too. Bites into the layer below.</summary>
    public static Family AcrylicLacquer { get; } = new()
    {
        Name = "acrylic lacquer",
        AlsoCalled = ["solvent acrylic", "lacquer", "lacquer primer"],
        Carrier = Carrier.Solvent,
        Thin = new(
            TouchDry: Minutes(2, 10), Recoatable: Minutes(10, 20), Handleable: Minutes(30, 60),
            MaskSafe: Hours(2, 6), WashSafe: Hours(12, 24), Cured: Days(1, 3)),
        Heavy = new(
            TouchDry: Minutes(5, 15), Recoatable: Minutes(30, 60), Handleable: Hours(2, 3),
            MaskSafe: Hours(8, 24), WashSafe: Hours(12, 24), Cured: Days(3, 7)),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.75),
        DampestSprayedMatt = new(0.65),
        Thinners = ["lacquer thinner", "levelling thinner"],
        Cleaners = ["lacquer thinner"],
        Source = CommonPractice,
    };

    /// <summary>Nitrocellulose lacquer. Quick, biting, and prone to blush in damp air.</summary>
    public static Family CelluloseLacquer { get; } = new()
    {
        Name = "cellulose lacquer",
        AlsoCalled = ["nitro lacquer", "nitrocellulose lacquer"],
        Carrier = Carrier.Solvent,
        Thin = new(
            TouchDry: Minutes(2, 5), Recoatable: Minutes(10, 20), Handleable: Minutes(30, 60),
            MaskSafe: Hours(2, 4), WashSafe: Hours(12, 24), Cured: Days(1, 3)),
        Heavy = new(
            TouchDry: Minutes(5, 15), Recoatable: Minutes(30, 60), Handleable: Hours(2, 3),
            MaskSafe: Hours(8, 24), WashSafe: Hours(12, 24), Cured: Days(3, 7)),
        Coldest = new(12),
        Warmest = new(30),
        Dampest = new(0.65),
        Thinners = ["lacquer thinner"],
        Cleaners = ["lacquer thinner"],
        Source = "common practice; 65 % relative humidity published as the limit for blush in wood-finishing advice",
    };

    /// <summary>
    /// Alkyd enamel. Recoat it within the hour, while it is still soluble, or when it has dried through; in between it wrinkles.
    /// Never ready for enamel or oil effects without a barrier.
    /// </summary>
    public static Family Enamel { get; } = new()
    {
        Name = "enamel",
        AlsoCalled = ["alkyd", "alkyd enamel"],
        Carrier = Carrier.Spirit,
        Thin = new(
            TouchDry: Hours(1, 4), Recoatable: Hours(24, 48), Handleable: Hours(12, 24),
            MaskSafe: Hours(48, 72), WashSafe: null, Cured: Days(7, 14)),
        Heavy = new(
            TouchDry: Hours(4, 8), Recoatable: Hours(24, 72), Handleable: Hours(24, 48),
            MaskSafe: Days(3, 5), WashSafe: null, Cured: Days(14, 28)),
        // a very thin wash or streak; it is sealed after 12–24 h and then counts as cured
        Effect = new(
            TouchDry: Hours(1, 4), Recoatable: Hours(12, 24), Handleable: Hours(4, 12),
            MaskSafe: null, WashSafe: null, Cured: Hours(12, 24)),
        RecoatOpen = Drying.Hours(1),
        OpenTime = Drying.Hours(1),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.8),
        Thinners = ["white spirit", "enamel thinner"],
        Cleaners = ["white spirit"],
        Source = "common practice; the recoat window published in a refinishing guide on lifting",
    };

    /// <summary>Artists' oil. Workable for hours; tape only once cured; an opaque film takes months.</summary>
    public static Family Oil { get; } = new()
    {
        Name = "oil",
        AlsoCalled = ["artists' oil", "oil paint"],
        Carrier = Carrier.Spirit,
        Thin = new(
            TouchDry: Hours(12, 48), Recoatable: Hours(24, 72), Handleable: Days(2, 3),
            MaskSafe: Days(7, 28), WashSafe: null, Cured: Days(7, 28)),
        Heavy = new(
            TouchDry: Days(1, 3), Recoatable: Days(3, 7), Handleable: Days(3, 7),
            MaskSafe: Days(60, 180), WashSafe: null, Cured: Days(60, 180)),
        // a very thin wash; it is sealed after 24–72 h and then counts as cured
        Effect = new(
            TouchDry: Hours(12, 48), Recoatable: Hours(24, 72), Handleable: Days(2, 3),
            MaskSafe: null, WashSafe: null, Cured: Hours(24, 72)),
        OpenTime = Drying.Days(1),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.8),
        Thinners = ["white spirit", "odourless thinner"],
        Cleaners = ["white spirit", "soap"],
        Source = CommonPractice,
    };

    /// <summary>Metal flakes in alcohol. A wet second pass drags the flakes; it stays soluble in alcohol, so seal it.</summary>
    public static Family AlcoholMetallic { get; } = new()
    {
        Name = "alcohol metallic",
        AlsoCalled = ["alcohol-based metallic"],
        Carrier = Carrier.Alcohol,
        Thin = new(
            TouchDry: Minutes(1, 5), Recoatable: Minutes(10, 15), Handleable: Minutes(30, 60),
            MaskSafe: Hours(12, 24), WashSafe: null, Cured: Days(1, 2)),
        Heavy = new(
            TouchDry: Minutes(2, 5), Recoatable: Minutes(15, 30), Handleable: Minutes(30, 60),
            MaskSafe: Hours(12, 24), WashSafe: null, Cured: Days(1, 2)),
        Coldest = new(12),
        Warmest = new(28),
        Dampest = new(0.65),
        Thinners = ["isopropyl", "alcohol thinner"],
        Cleaners = ["isopropyl"],
        Source = CommonPractice,
    };

    /// <summary>Ink or staining paint that colours and shades in one go.</summary>
    public static Family Stain { get; } = new()
    {
        Name = "stain",
        AlsoCalled = ["ink", "staining paint"],
        Carrier = Carrier.Water,
        Thin = new(
            TouchDry: Minutes(10, 20), Recoatable: Minutes(30, 60), Handleable: Hours(1, 2),
            MaskSafe: Hours(24, 48), WashSafe: Hours(24, 48), Cured: Days(5, 7)),
        Heavy = new(
            TouchDry: Minutes(20, 60), Recoatable: Hours(1, 2), Handleable: Hours(2, 4),
            MaskSafe: Hours(24, 48), WashSafe: Hours(24, 48), Cured: Days(5, 7)),
        OpenTime = new Drying(10),
        PotLife = Drying.Days(2),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.8),
        Thinners = ["water", "stain medium"],
        Cleaners = ["water", "isopropyl", "alkaline cleaner"],
        Source = CommonPractice,
    };

    /// <summary>Clear acrylic dispersed in water.</summary>
    public static Family WaterborneVarnish { get; } = new()
    {
        Name = "waterborne varnish",
        AlsoCalled = ["water-based varnish", "acrylic varnish"],
        Carrier = Carrier.Water,
        Thin = new(
            TouchDry: Minutes(10, 20), Recoatable: Minutes(30, 60), Handleable: Hours(2, 4),
            MaskSafe: Hours(24, 48), WashSafe: Hours(12, 24), Cured: Days(3, 7)),
        Heavy = new(
            TouchDry: Minutes(20, 40), Recoatable: Hours(1, 2), Handleable: Hours(4, 6),
            MaskSafe: Hours(24, 48), WashSafe: Hours(12, 24), Cured: Days(3, 7)),
        OpenTime = new Drying(10),
        PotLife = Drying.Days(2),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.8),
        IsVarnish = true,
        Thinners = ["water", "acrylic thinner"],
        Cleaners = ["water", "isopropyl", "alkaline cleaner"],
        Source = CommonPractice,
    };

    /// <summary>Clear acrylic in strong solvent.</summary>
    public static Family LacquerVarnish { get; } = new()
    {
        Name = "lacquer varnish",
        AlsoCalled = ["solvent varnish", "clear lacquer"],
        Carrier = Carrier.Solvent,
        Thin = new(
            TouchDry: Minutes(5, 15), Recoatable: Minutes(15, 30), Handleable: Hours(1, 2),
            MaskSafe: Hours(6, 12), WashSafe: Hours(4, 12), Cured: Days(1, 3)),
        Heavy = new(
            TouchDry: Minutes(10, 20), Recoatable: Minutes(30, 60), Handleable: Hours(2, 3),
            MaskSafe: Hours(6, 12), WashSafe: Hours(4, 12), Cured: Days(1, 3)),
        Coldest = new(10),
        Warmest = new(30),
        Dampest = new(0.75),
        DampestSprayedMatt = new(0.65),
        IsVarnish = true,
        Thinners = ["lacquer thinner", "levelling thinner"],
        Cleaners = ["lacquer thinner"],
        Source = CommonPractice,
    };
}

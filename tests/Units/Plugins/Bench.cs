using Pipeline.Abstractions;
using Pipeline.Plugins.Coats;

namespace Pipeline.Tests.Units.Plugins;

/// <summary>Pots, masks and pieces for the cases of verbs.</summary>
internal static class Bench
{
    private static readonly Place Nowhere = new("case", 1, 1);

    public static Paint Slate { get; } = Pot("slate", Families.AcrylicLacquer);

    public static Paint Yellow { get; } = Pot("yellow", Families.WaterborneAcrylic);

    public static Paint Brass { get; } = Pot("brass", Families.AlcoholMetallic) with { IsMetallic = true };

    public static Paint Amber { get; } = Pot("amber", Families.AcrylicLacquer) with { IsClear = true };

    public static Paint Bilge { get; } = Pot("bilge", Families.Enamel);

    public static Paint Umber { get; } = Pot("umber", Families.Oil);

    public static Paint Shade { get; } = Pot("shade", Families.Stain);

    public static Paint Sealer { get; } = Pot("sealer", Families.CelluloseLacquer);

    public static Paint Clear { get; } = Pot("clear", Families.WaterborneVarnish);

    /// <summary>Six resin figures.</summary>
    public static Job Figures { get; } = Six("resin");

    /// <summary>Six pieces of fibreboard.</summary>
    public static Job Boards { get; } = Six("fibreboard");

    /// <summary>A paint straight from its pot, with its family's times.</summary>
    public static Paint Pot(string name, Family family) => new()
    {
        Name = name,
        Place = Nowhere,
        Family = family,
        Thin = family.Thin,
        Heavy = family.Heavy,
        Effect = family.Effect ?? family.Thin,
        PotLife = family.PotLife,
    };

    public static MaskMaterial MaskOf(string name) => AllPlugins.MaskMaterials.Single(row => row.Name == name);

    /// <summary>A step on one area of six units.</summary>
    public static Job Six(string material, double squareCentimetres = 30) => Of(6, material, squareCentimetres);

    public static Job Of(int count, string material, double squareCentimetres)
    {
        Area[] areas = [new("all of it", "body", new SurfaceSize(squareCentimetres))];
        var model = new Model
        {
            Name = "piece",
            Kit = "box",
            Place = Nowhere,
            Count = count,
            Material = AllPlugins.Materials.Single(row => row.Name == material),
            Areas = [.. areas],
            Parts = ["body"],
        };
        return new Job(model, [.. areas], [.. areas.Select(area => area.Name)], "all of it") { Tables = AllPlugins.Tables };
    }

    public static Job Parts(this Job job, params string[] parts) => job with { Named = [.. parts] };

    public static Job Named(this Job job, string name) => job with { As = name };

    public static AreaNames Only(params string[] areas) => new([.. areas]);
}

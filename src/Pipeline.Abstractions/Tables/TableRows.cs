namespace Pipeline.Abstractions;

/// <summary>The rows of the trade's tables as they hold for a batch: those of the plugins in their order, then those of the file.</summary>
public sealed record TableRows
{
    /// <summary>The coating chemistries, each once.</summary>
    public Sequence<Family> Families { get; init; }

    /// <summary>What pieces are made of, each once.</summary>
    public Sequence<Material> Materials { get; init; }

    /// <summary>What there is to mask with, each once.</summary>
    public Sequence<MaskMaterial> MaskMaterials { get; init; }

    /// <summary>New coat over existing.</summary>
    public Sequence<CoatOver> Compatibility { get; init; }

    /// <summary>What re-wets what.</summary>
    public Sequence<Rewets> Rewetting { get; init; }

    /// <summary>Minutes to clean a spraying tool out.</summary>
    public Sequence<CleanOutTime> CleanOuts { get; init; }

    /// <summary>What thinners are made of.</summary>
    public Sequence<Thinner> Thinners { get; init; }

    /// <summary>How long glues, fillers and wet pieces take.</summary>
    public Sequence<Setting> Settings { get; init; }

    /// <summary>Numbers that rules go by and no other table holds.</summary>
    public Sequence<Figure> Figures { get; init; }
}

using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Something a plugin brought, with the plugin's name so that its mistakes can be laid at its door.</summary>
public sealed record Brought<T>(string Plugin, T Item);

/// <summary>All that the plugins brought: verbs, rules, and the rows of the trade's tables. What has a name of its own is sorted by it.</summary>
public sealed record Trade
{
    /// <summary>The verbs in use.</summary>
    public Sequence<Brought<Verb>> Verbs { get; init; }

    /// <summary>The rules in use.</summary>
    public Sequence<Brought<Rule>> Rules { get; init; }

    /// <summary>The coating chemistries.</summary>
    public Sequence<Brought<Family>> Families { get; init; }

    /// <summary>What pieces are made of.</summary>
    public Sequence<Brought<Material>> Materials { get; init; }

    /// <summary>What there is to mask with.</summary>
    public Sequence<Brought<MaskMaterial>> MaskMaterials { get; init; }

    /// <summary>New coat over existing, in the order of the plugins; of two rows about the same pair the later counts.</summary>
    public Sequence<Brought<CoatOver>> Compatibility { get; init; }

    /// <summary>What re-wets what, likewise.</summary>
    public Sequence<Brought<Rewets>> Rewetting { get; init; }

    /// <summary>Minutes to clean a spraying tool out, likewise.</summary>
    public Sequence<Brought<CleanOutTime>> CleanOuts { get; init; }

    /// <summary>What thinners are made of, likewise.</summary>
    public Sequence<Brought<Thinner>> Thinners { get; init; }

    /// <summary>How long glues, fillers and wet pieces take, likewise.</summary>
    public Sequence<Brought<Setting>> Settings { get; init; }

    /// <summary>Numbers that rules go by, likewise.</summary>
    public Sequence<Brought<Figure>> Figures { get; init; }
}

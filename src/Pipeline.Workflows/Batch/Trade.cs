using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Something a plugin brought, with the plugin's name so that its mistakes can be laid at its door.</summary>
public sealed record Brought<T>(string Plugin, T Item);

/// <summary>All that the plugins brought: verbs, rules, and the rows of the trade's tables. Each list is sorted by name.</summary>
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

    /// <summary>Minutes to clean a spraying tool out; the first row counts. Empty if no plugin says.</summary>
    public Sequence<Brought<CleanOutTimes>> CleanOuts { get; init; }
}

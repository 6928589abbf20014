namespace Pipeline.Abstractions;

/// <summary>Work on the bare piece.</summary>
public enum Preparation
{
    /// <summary>Washed free of release agent and grease.</summary>
    Washed,

    /// <summary>Post-cured in ultraviolet light.</summary>
    PostCured,

    /// <summary>Cut from its frame.</summary>
    Cut,

    /// <summary>Mould lines and gates cleaned up.</summary>
    Trimmed,

    /// <summary>Drilled.</summary>
    Drilled,

    /// <summary>Pinned.</summary>
    Pinned,

    /// <summary>Fitted dry.</summary>
    DryFitted,

    /// <summary>Glued together.</summary>
    Glued,

    /// <summary>Gaps filled.</summary>
    Filled,

    /// <summary>Sanded smooth.</summary>
    Sanded,

    /// <summary>Stripped of a failed coat.</summary>
    Stripped,

    /// <summary>Joined to another part.</summary>
    Joined,
}

/// <summary>A preparation done to one area.</summary>
/// <param name="What">Which.</param>
/// <param name="Step">Index in the route of the step that did it.</param>
/// <param name="Settles">How long until it is dry or set; null if at once.</param>
/// <param name="Carrier">How climate changes that time.</param>
public sealed record PreparationDone(Preparation What, int Step, DryingRange? Settles, Carrier Carrier)
{
    /// <summary>True if the file, not the trade, gives the time.</summary>
    public bool IsFromFile { get; init; }
}

/// <summary>A mask lying on an area.</summary>
public sealed record MaskOn
{
    /// <summary>The mask's name in the file.</summary>
    public required string Name { get; init; }

    /// <summary>Index in the route of the step that put it on.</summary>
    public required int Step { get; init; }

    /// <summary>What it is made of.</summary>
    public required MaskMaterial Material { get; init; }

    /// <summary>What was laid on it while it was on.</summary>
    public Sequence<Layer> Layers { get; init; }
}

/// <summary>The state of one area: material, preparation, layers from the ground up, masks from the lowest up.</summary>
public sealed record Surface
{
    /// <summary>What the piece is made of there.</summary>
    public required Material Material { get; init; }

    /// <summary>What preparation has been done, in order.</summary>
    public Sequence<PreparationDone> Preparations { get; init; }

    /// <summary>The layers, lowest first.</summary>
    public Sequence<Layer> Layers { get; init; }

    /// <summary>The masks on it, lowest first.</summary>
    public Sequence<MaskOn> Masks { get; init; }

    /// <summary>Steps whose overspray reached it, by index in the route.</summary>
    public Sequence<int> Overspray { get; init; }

    /// <summary>True once a join has hidden it from brush and spray.</summary>
    public bool IsHidden { get; init; }

    /// <summary>The layer on top, or null on a bare surface.</summary>
    public Layer? Top => Layers.IsEmpty ? null : Layers[^1];

    /// <summary>True while a mask lies on it.</summary>
    public bool IsMasked => !Masks.IsEmpty;

    /// <summary>True if the preparation has been done since the last strip.</summary>
    public bool Has(Preparation what)
    {
        foreach (var done in Preparations)
        {
            if (done.What == what)
                return true;
        }

        return false;
    }

    /// <summary>True if any layer has the role.</summary>
    public bool Has(LayerRole role)
    {
        foreach (var layer in Layers)
        {
            if (layer.Role == role)
                return true;
        }

        return false;
    }

    /// <summary>
    /// How the top shines; bare material counts as matt. Decals, effects and paint only dabbed or dry-brushed on show the sheen of what
    /// lies under them.
    /// </summary>
    public Sheen Sheen
    {
        get
        {
            for (var i = Layers.Count - 1; i >= 0; i--)
            {
                if (Layers[i] is { Role: not (LayerRole.Effect or LayerRole.Decal), Technique: not (Technique.Sponge or Technique.DryBrush) })
                    return Layers[i].Sheen;
            }

            return Sheen.Matt;
        }
    }
}

/// <summary>The surfaces of all areas of a model, by area name. Immutable; equal when every area's surface is equal.</summary>
public sealed class SurfaceMap : IEquatable<SurfaceMap>
{
    // two arrays side by side: changing a few surfaces copies one array and shares the names
    private readonly string[] areas;
    private readonly Surface[] surfaces;

    /// <summary>A surface for each area.</summary>
    /// <exception cref="ArgumentException">Two surfaces for one area.</exception>
    public SurfaceMap(IEnumerable<KeyValuePair<string, Surface>> surfaces)
    {
        var sorted = new SortedList<string, Surface>(StringComparer.Ordinal);
        foreach (var (area, surface) in surfaces)
            sorted.Add(area, surface);
        areas = [.. sorted.Keys];
        this.surfaces = [.. sorted.Values];
    }

    private SurfaceMap(string[] areas, Surface[] surfaces) => (this.areas, this.surfaces) = (areas, surfaces);

    /// <summary>The surface of an area.</summary>
    /// <exception cref="KeyNotFoundException">The model has no such area.</exception>
    public Surface this[string area] => surfaces[IndexOf(area)];

    /// <summary>The areas' names in ordinal order.</summary>
    public IReadOnlyList<string> Areas => areas;

    /// <summary>This map with some surfaces replaced.</summary>
    /// <exception cref="KeyNotFoundException">The model has no such area.</exception>
    public SurfaceMap With(IEnumerable<KeyValuePair<string, Surface>> changed)
    {
        var copy = (Surface[])surfaces.Clone();
        foreach (var (area, surface) in changed)
            copy[IndexOf(area)] = surface;
        return new SurfaceMap(areas, copy);
    }

    /// <summary>This map with the surfaces of some areas changed.</summary>
    /// <exception cref="KeyNotFoundException">The model has no such area.</exception>
    public SurfaceMap With(Sequence<string> changed, Func<Surface, Surface> change)
    {
        if (changed.IsEmpty)
            return this;
        var copy = (Surface[])surfaces.Clone();
        foreach (var area in changed)
        {
            var index = IndexOf(area);
            copy[index] = change(copy[index]);
        }

        return new SurfaceMap(areas, copy);
    }

    private int IndexOf(string area)
    {
        // asked for many times a step, nearly always by the very text the model names its area with
        for (var i = 0; i < areas.Length; i++)
        {
            if (ReferenceEquals(areas[i], area))
                return i;
        }

        var index = Array.BinarySearch(areas, area, StringComparer.Ordinal);
        return index >= 0 ? index : throw new KeyNotFoundException($"The model has no area '{area}'.");
    }

    /// <inheritdoc/>
    public bool Equals(SurfaceMap? other) =>
        other is not null && areas.AsSpan().SequenceEqual(other.areas) && surfaces.AsSpan().SequenceEqual(other.surfaces);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as SurfaceMap);

    /// <inheritdoc/>
    public override int GetHashCode() => surfaces.Length;
}

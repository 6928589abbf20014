using Pipeline.Abstractions;

namespace Pipeline.Workflows;

/// <summary>Which masks a route has put on so far, and where. Only for finding what a name means; the rules judge.</summary>
internal sealed class MaskBook
{
    private readonly Dictionary<string, Sequence<Area>> areas = new(StringComparer.Ordinal);
    private readonly List<string> on = [];

    /// <summary>The masks on, in the order they were put on.</summary>
    public Sequence<string> On => on.ToSequence();

    public bool IsOn(string mask) => on.Contains(mask);

    /// <summary>Where a mask was last put on; null if it never was.</summary>
    public Sequence<Area>? AreasOf(string mask) => areas.TryGetValue(mask, out var found) ? found : null;

    /// <summary>Notes what a step does.</summary>
    public void Take(Sequence<Deed> deeds, Sequence<Area> where)
    {
        foreach (var deed in deeds)
        {
            if (deed is Deed.PutMaskOn put)
            {
                areas[put.Mask] = where;
                on.Remove(put.Mask);
                on.Add(put.Mask);
            }
            else if (deed is Deed.TakeMaskOff take)
            {
                on.Remove(take.Mask);
            }
        }
    }
}

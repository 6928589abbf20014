using Pipeline.Abstractions;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What the whole batch takes of each product, against stock.</summary>
internal static class Shopping
{
    // A second mix never matches the first, so a fifth is kept over (common practice).
    private const double Spare = 1.2;

    /// <summary>Paints in the order of the file, then thinners; mixes taken apart into what stands on the shelf.</summary>
    public static Sequence<ShoppingItem> Of(Batch batch, IEnumerable<PlannedTask> tasks, IEnumerable<MixOrder> mixes, IReadOnlyDictionary<string, Paint> paints)
    {
        var needs = new Dictionary<string, (double Millilitres, Volume? Stock, SortedSet<string> UsedIn)>(StringComparer.Ordinal);
        foreach (var task in tasks)
        {
            if (task.Paint is { FromMix: null } use && paints.TryGetValue(use.Name, out var paint))
                Add(use.Name, use.Millilitres, paint.Stock, task.Verb);
        }

        foreach (var mix in mixes)
        {
            foreach (var (name, millilitres, stock) in Mixing.Products(paints[mix.Name], mix.Millilitres))
                Add(name, millilitres, stock, mix.Name);
        }

        var order = batch.Paints.Select((paint, i) => (paint.Name, i)).ToDictionary(p => p.Name, p => p.i, StringComparer.Ordinal);
        return needs.OrderBy(n => order.GetValueOrDefault(n.Key, int.MaxValue)).ThenBy(n => n.Key, StringComparer.Ordinal)
            .Select(n => new ShoppingItem(n.Key, Math.Round(n.Value.Millilitres * Spare, 1), n.Value.Stock?.Millilitres, n.Value.UsedIn.ToSequence()))
            .ToSequence();

        void Add(string name, double millilitres, Volume? stock, string usedIn)
        {
            var known = needs.GetValueOrDefault(name, (0, stock, new SortedSet<string>(StringComparer.Ordinal)));
            known.UsedIn.Add(usedIn);
            needs[name] = (known.Millilitres + millilitres, known.Stock ?? stock, known.UsedIn);
        }
    }
}

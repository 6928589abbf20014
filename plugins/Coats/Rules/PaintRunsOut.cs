using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>The batch takes more of a paint than there is.</summary>
public sealed class PaintRunsOut : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "There is enough of each paint on the shelf for the batch.";

    /// <inheritdoc/>
    public override string Source => "common practice; the spreading rate is that of coating data sheets";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        if (!batch.Paints.Any(paint => paint.Stock is not null))
            yield break;
        var pots = new Dictionary<string, double>(StringComparer.Ordinal);
        foreach (var (_, (paint, onAndPast, _)) in batch.Needed())
        {
            // of a pot that is mixed once, all of it is taken, used or not
            var millilitres = Math.Max(onAndPast, paint.Recipe?.Makes?.Millilitres ?? 0);
            foreach (var (pot, share) in paint.Pots(millilitres))
                pots[pot.Name] = pots.GetValueOrDefault(pot.Name) + share;
        }

        foreach (var paint in batch.Paints)
        {
            if (paint.Stock is not { } stock || !pots.TryGetValue(paint.Name, out var need) || need <= stock.Millilitres)
                continue;
            yield return new BatchVerdict
            {
                Level = Level.Error,
                Place = paint.Place,
                Message = $"The batch takes about {new Volume(Math.Round(need, 1))} of {paint.Name}, losses in cup and brush left out, and there are {stock}: it runs out.",
                Remedy = "Get more of it first, or correct its 'stock'.",
            };
        }
    }
}

using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>Paints, or a paint and a thinner, that curdle in one cup.</summary>
public sealed class MixOfFamilies : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A mix holds paints of one kind and a thinner that belongs to them.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        foreach (var mix in batch.Paints)
        {
            if (mix.Recipe is not { } recipe || Curdles(recipe, batch.Tables) is not var (one, other))
                continue;
            yield return new BatchVerdict
            {
                Level = Level.Error,
                Place = mix.Place,
                Message = $"{mix.Name} brings {one} and {other} into one cup: it curdles.",
                Remedy = "Keep to one family and its own thinner; lay the other as a coat of its own.",
            };
        }
    }

    private static (string One, string Other)? Curdles(Recipe recipe, Tables tables)
    {
        for (var i = 0; i < recipe.Parts.Count; i++)
        {
            var one = recipe.Parts[i].Paint;
            for (var j = i + 1; j < recipe.Parts.Count; j++)
            {
                var other = recipe.Parts[j].Paint;
                if (Strangers(one.Family.Carrier, other.Family.Carrier))
                    return ($"{one.Name} ({one.Family.Name})", $"{other.Name} ({other.Family.Name})");
            }

            if (recipe.Thinner is { } thinner && IsCurdledBy(one.Family, thinner.With, tables))
                return ($"{one.Name} ({one.Family.Name})", thinner.With);
        }

        return null;
    }

    // what a family is usually thinned with is its own, whatever its name holds
    private static bool IsCurdledBy(Family family, string thinner, Tables tables) =>
        !family.Thinners.Contains(thinner, StringComparer.OrdinalIgnoreCase) && tables.Thinner(thinner)?.Curdles.Contains(family.Carrier) == true;

    // one cup takes what one thinner thins; what sets by reaction is not known from here
    private static bool Strangers(Carrier one, Carrier other) => one != other && IsThinned(one) && IsThinned(other);

    private static bool IsThinned(Carrier carrier) => carrier is not (Carrier.None or Carrier.Reaction);
}

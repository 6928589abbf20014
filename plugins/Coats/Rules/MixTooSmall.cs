using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>One mix does not last for the batch, or is too small to measure.</summary>
public sealed class MixTooSmall : TradeRule
{
    // the 20 % to spare and the least number of drops are common practice
    private const double ToSpare = 1.2;
    private const double LeastDrops = 5;

    // USP general chapter 1101: 20 drops of water to the mL
    private const double DropsPerMillilitre = 20;

    /// <inheritdoc/>
    public override string Summary => "A mix made once lasts for the batch with a fifth to spare, and no part of it is less than five drops.";

    /// <inheritdoc/>
    public override string Source => "common practice; 20 drops to the mL published in USP general chapter 1101";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        if (!batch.Paints.Any(paint => paint.Recipe?.Makes is not null))
            yield break;
        var needs = batch.Needed();
        foreach (var mix in batch.Paints)
        {
            if (mix.Recipe is not { Makes: { } makes } recipe)
                continue;
            var all = recipe.Parts.Sum(part => part.Parts) + recipe.ThinnerParts();
            var least = recipe.Parts.MinBy(part => part.Parts)!;
            var drops = makes.Millilitres * least.Parts / all * DropsPerMillilitre;
            if (needs.TryGetValue(mix.Name, out var need) && need.WithLosses * ToSpare > makes.Millilitres + 1e-9)
            {
                yield return Says(
                    mix,
                    $"{mix.Name} makes {makes}; the batch takes about {new Volume(Math.Round(need.WithLosses, 1))}, and {new Volume(Math.Round(need.WithLosses * ToSpare, 1))} with a fifth to spare. A second mix will not match.",
                    "Mix more at once, and weigh it.");
            }
            else if (drops < LeastDrops)
            {
                yield return Says(
                    mix,
                    FormattableString.Invariant($"In {makes} of {mix.Name} there are {drops:0.#} drops of {least.Paint.Name}: one drop more or less is another colour."),
                    "Mix more at once, or weigh it to a hundredth of a gram.");
            }
        }
    }

    private static BatchVerdict Says(Paint mix, string message, string remedy) =>
        new() { Level = Level.Warning, Place = mix.Place, Message = message, Remedy = remedy };
}

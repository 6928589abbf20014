using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>One mix does not last for the batch, or is too small to measure.</summary>
public sealed class MixTooSmall : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A mix made once lasts for the batch with some to spare, and no part of it is fewer drops than can be counted on.";

    /// <inheritdoc/>
    public override string Source => "common practice; 20 drops to the mL published in USP general chapter 1101";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        if (!batch.Paints.Any(paint => paint.Recipe?.Makes is not null))
            yield break;
        var needs = batch.Needed();
        var toSpare = batch.Tables.Figure(RuleFigures.MixToSpare);
        var withSpare = 1 + (toSpare.Value / 100);
        foreach (var mix in batch.Paints)
        {
            if (mix.Recipe is not { Makes: { } makes } recipe)
                continue;
            var all = recipe.Parts.Sum(part => part.Parts) + recipe.ThinnerParts();
            var least = recipe.Parts.MinBy(part => part.Parts)!;
            var drops = makes.Millilitres * least.Parts / all * PaintNeed.DropsPerMillilitre;
            if (needs.TryGetValue(mix.Name, out var need) && need.WithLosses * withSpare > makes.Millilitres + 1e-9)
            {
                yield return Says(
                    mix,
                    $"{mix.Name} makes {makes}; the batch takes about {new Volume(Math.Round(need.WithLosses, 1))}, and {new Volume(Math.Round(need.WithLosses * withSpare, 1))} with {toSpare.Spoken} to spare. A second mix will not match.",
                    "Mix more at once, and weigh it.");
            }
            else if (drops < batch.Tables.Figure(RuleFigures.FewestDrops).Value)
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

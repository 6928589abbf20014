using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety.Rules;

/// <summary>Oily rags on a heap, or solvent and resin rinse down the drain, because the file says so.</summary>
public sealed class WasteAndRags : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Oily rags are spread or drowned in water, and no solvent or resin rinse goes down the drain.";

    /// <inheritdoc/>
    public override string Source => "that drying-oil rags heat up by themselves is published in university and fire-protection advice; waste common practice";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(Heaped).Concat(batch.OncePerCause(Poured));

    private static Cause? Heaped(Moment moment) =>
        moment.Protection.Rags == Rags.Heaped && LeavesRags(moment.Step) is { } what
            ? new Cause(
                "rags",
                Level.Error,
                $"Rags with {what} are heaped: drying oil heats up by itself and sets them alight.",
                "Spread them flat to dry, or drown them in a closed metal tin of water.")
            : null;

    private static Cause? Poured(Moment moment) =>
        moment.Protection.Waste == Waste.Drain && LeavesWaste(moment) is { } what
            ? new Cause(
                "waste",
                Level.Error,
                $"{char.ToUpperInvariant(what[0])}{what[1..]} goes down the drain: it poisons water.",
                "Collect it in a closed, labelled can and take it to the local collection point; let resin rinse cure in light first.")
            : null;

    private static string? LeavesRags(Step step)
    {
        foreach (var deed in step.Deeds)
        {
            if (deed is Deed.CleanBack { Dissolves: Carrier.Spirit } back)
                return back.With;
            if (deed is Deed.Lay { Layer: var coat } && coat.IsSpirit())
                return coat.Name;
        }

        return null;
    }

    private static string? LeavesWaste(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            var liquid = deed switch
            {
                Deed.CleanBack back when IsSolvent(back.Dissolves) => back.With,
                Deed.Strip strip when IsSolvent(strip.Dissolves) => strip.With,
                Deed.Prepare { What: Preparation.Washed } wash when IsUncured(moment) => $"the rinse of uncured resin{(wash.With is null ? "" : " (" + wash.With + ")")}",
                Deed.Prepare { Liquid: { } wet } when wet.IsFlammable() => wet.Spoken(),
                Deed.Lay { Layer.Family: { } family } when IsSolvent(family.Carrier) => $"what cleans {family.Name} off the tools",
                _ => null,
            };
            if (liquid is not null)
                return liquid;
        }

        return null;
    }

    private static bool IsSolvent(Carrier carrier) => carrier is Carrier.Solvent or Carrier.Spirit or Carrier.Alcohol;

    private static bool IsUncured(Moment moment)
    {
        foreach (var area in moment.Step.Areas)
        {
            if (moment.Before[area] is { Material.NeedsPostCure: true } surface && !surface.Has(Preparation.PostCured))
                return true;
        }

        return false;
    }
}

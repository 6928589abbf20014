using Pipeline.Abstractions;

namespace Pipeline.Plugins.Safety.Rules;

/// <summary>Uncured resin, epoxy or superglue where the file says that gloves or fresh air are missing.</summary>
public sealed class NoGlovesOrAir : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Uncured resin, epoxy and superglue are worked with gloves and fresh air.";

    /// <inheritdoc/>
    public override string Source => "common practice; skin sensitisation (H317) published in a safety data sheet for ultraviolet-curing resin";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if ((moment.Protection.Gloves != false && moment.Protection.FreshAir != false) || Irritant(moment) is not { } what)
            return null;
        var missing = (moment.Protection.Gloves, moment.Protection.FreshAir) switch
        {
            (false, false) => "gloves and fresh air",
            (false, _) => "gloves",
            _ => "fresh air",
        };
        return new Cause(
            what,
            Level.Warning,
            $"{char.ToUpperInvariant(what[0])}{what[1..]} is worked with here without {missing}: it irritates, and can cause a lasting allergy.",
            "Wear nitrile gloves, changed when wet, protect the eyes and open a window. See the safety data sheet.");
    });

    private static string? Irritant(Moment moment)
    {
        foreach (var deed in moment.Step.Deeds)
        {
            switch (deed)
            {
                case Deed.Prepare { Glue: Glue.Epoxy } or Deed.Join { Glue: Glue.Epoxy }:
                    return "epoxy";
                case Deed.Prepare { Glue: Glue.Superglue or Glue.FoamSafeSuperglue } or Deed.Join { Glue: Glue.Superglue or Glue.FoamSafeSuperglue }:
                    return "superglue";
                case Deed.Prepare { What: Preparation.Filled, Carrier: Carrier.Reaction } fill:
                    return fill.With ?? "epoxy putty";
                case Deed.Prepare { What: Preparation.Washed or Preparation.PostCured } when IsUncured(moment):
                    return "uncured resin";
            }
        }

        return null;
    }

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

using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>Air so dry or warm that waterborne acrylic dries on the airbrush's tip.</summary>
public sealed class DriesOnTheTip : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "Waterborne acrylic is not sprayed in very dry or very warm air.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Film() is not { Family: { } family } coat || !coat.IsSprayed())
            return null;
        var air = moment.Air;
        var isDry = family.DriestSprayed is { } driest && air.Humidity.CompareTo(driest) < 0;
        // beyond what the family bears at all, that rule speaks
        var isWarm = family.WarmestSprayed is { } warmest && air.Air.CompareTo(warmest) > 0 && (family.Warmest is not { } limit || air.Air.CompareTo(limit) <= 0);
        if (!isDry && !isWarm)
            return null;
        var state = isDry && isWarm ? $"{air.Humidity} and {air.Air}" : isDry ? $"{air.Humidity}" : $"{air.Air}";
        return new Cause(
            $"{moment.Where()} {family.Name}",
            Level.Warning,
            $"At {state} {moment.Place()} sprayed {family.Name} ({coat.Name}) dries on the tip and lands like sandpaper.",
            "Add a retarder, lower the pressure, wipe the tip often; or spray at a cooler, damper hour.");
    });
}

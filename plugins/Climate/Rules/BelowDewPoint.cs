using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>The pieces are so cold that water may condense on them.</summary>
public sealed class BelowDewPoint : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The pieces are clearly warmer than the dew point when a coat goes on.";

    /// <inheritdoc/>
    public override string Source =>
        "the margin of 3 °C that coating inspection attaches to ISO 8502-4 (standard text not seen); dew point by the Magnus form recommended by the WMO";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Film() is null)
            return null;
        var air = moment.Air;
        var surface = air.Surface ?? air.Air;
        var dewPoint = HumidAir.DewPoint(air.Air, air.Humidity);
        if (surface.DegreesCelsius >= dewPoint.DegreesCelsius + batch.Tables.Figure(RuleFigures.DewPointMargin).Value)
            return null;
        return new Cause(
            moment.Where(),
            Level.Error,
            $"The pieces are at {surface} and the dew point is {dewPoint} ({air.Air}, {air.Humidity}) {moment.Place()}: water nobody sees settles under the paint.",
            $"Warm the pieces or the room, or dry the air, until the pieces are above {new Temperature(dewPoint.DegreesCelsius + batch.Tables.Figure(RuleFigures.DewPointMargin).Value)}.");
    });
}

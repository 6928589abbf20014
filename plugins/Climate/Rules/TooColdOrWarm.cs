using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>The bench is too cold for a film to form, or too warm to lay one.</summary>
public sealed class TooColdOrWarm : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A coat goes on within the temperatures its family works at.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Film() is not { Family: { } family } coat)
            return null;
        var air = moment.Air;
        var coldest = air.Surface is { } surface && surface.DegreesCelsius < air.Air.DegreesCelsius ? surface : air.Air;
        if (coldest.DegreesCelsius < family.Coldest?.DegreesCelsius)
        {
            return new Cause(
                $"cold {moment.Where()} {family.Name}",
                Level.Error,
                $"It is {coldest} {moment.Place()}; {family.Name} ({coat.Name}) forms no film below {family.Coldest}.",
                "Warm the room and the pieces, or move the session.");
        }

        return air.Air.DegreesCelsius > family.Warmest?.DegreesCelsius
            ? new Cause(
                $"warm {moment.Where()} {family.Name}",
                Level.Warning,
                $"It is {air.Air} {moment.Place()}; {family.Name} ({coat.Name}) dries before it lies above {family.Warmest}.",
                "Work in a cooler room or at a cooler hour.")
            : null;
    });
}

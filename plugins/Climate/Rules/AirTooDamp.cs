using Pipeline.Abstractions;

namespace Pipeline.Plugins.Climate.Rules;

/// <summary>The air is damper than a family of paint bears.</summary>
public sealed class AirTooDamp : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "The air is no damper than the paint bears.";

    /// <inheritdoc/>
    public override string Source => "common practice; 65 % for cellulose lacquer published in wood-finishing advice on blush";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch) => batch.OncePerCause(moment =>
    {
        if (moment.Film() is not { Family: { } family } coat)
            return null;
        var isSprayedMatt = coat.IsSprayed() && coat.Sheen == Sheen.Matt && family.DampestSprayedMatt is not null;
        var dampest = isSprayedMatt ? family.DampestSprayedMatt!.Value : family.Dampest;
        var beyond = moment.Air.Humidity.Fraction - dampest.Fraction;
        if (beyond <= 1e-9)
            return null;
        return new Cause(
            $"{moment.Where()} {family.Name} {isSprayedMatt}",
            beyond > (batch.Tables.Figure(RuleFigures.FarTooDamp).Value / 100) + 1e-9 ? Level.Error : Level.Warning,
            $"The air is at {moment.Air.Humidity} {moment.Place()}; {family.Name}{(isSprayedMatt ? " sprayed matt" : "")} bears {dampest}: it blushes or stays soft.",
            "Dry the air, wait for a drier day, or add a retarder the maker allows.");
    });
}

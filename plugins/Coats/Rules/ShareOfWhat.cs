using System.Globalization;
using Pipeline.Abstractions;

namespace Pipeline.Plugins.Coats.Rules;

/// <summary>A percentage of thinner that can be read in two ways.</summary>
public sealed class ShareOfWhat : TradeRule
{
    /// <inheritdoc/>
    public override string Summary => "A share of thinner says what it is a share of.";

    /// <inheritdoc/>
    public override IEnumerable<BatchVerdict> JudgeBatch(BatchView batch)
    {
        foreach (var paint in batch.Paints)
        {
            if (paint.Recipe?.Thinner is not { Of: null } thinner)
                continue;
            yield return new BatchVerdict
            {
                Level = Level.Warning,
                Place = thinner.Place ?? paint.Place,
                Message = $"{thinner.Share} of what? {Readings(thinner.Share)}",
                Remedy = "Add 'of: mix' or 'of: paint' beside it; no plan is made before you do.",
            };
        }
    }

    // both are worked out for 10 mL of paint
    private static string Readings(Share share)
    {
        var ofPaint = string.Create(CultureInfo.InvariantCulture, $"{10 * share.Fraction:0.0#} mL");
        return share.Fraction < 1
            ? string.Create(CultureInfo.InvariantCulture, $"To 10 mL of paint, {share} means {10 * share.Fraction / (1 - share.Fraction):0.0#} mL of thinner if it is of the mix, and {ofPaint} if it is of the paint.")
            : $"To 10 mL of paint, {share} means {ofPaint} of thinner if it is of the paint; of the mix it cannot be.";
    }
}

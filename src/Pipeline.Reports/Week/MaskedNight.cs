using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>Nights in a row during which the same masks are on.</summary>
/// <param name="First">The evening of the first night.</param>
/// <param name="Last">The evening of the last.</param>
/// <param name="Masks">What is on.</param>
internal sealed record MaskedNight(LocalDate First, LocalDate Last, Sequence<PlannedMask> Masks)
{
    /// <summary>All nights of a plan during which a mask is on, in order.</summary>
    public static IReadOnlyList<MaskedNight> Of(Plan plan)
    {
        var nights = new List<MaskedNight>();
        if (plan.Masks.IsEmpty)
            return nights;
        var end = plan.Masks.Max(mask => mask.Off.Date);
        for (var day = plan.Masks.Min(mask => mask.On.Date).PlusDays(-1); day <= end; day = day.PlusDays(1))
        {
            var on = WeekChart.MasksOn(plan, day).ToSequence();
            if (on.IsEmpty)
                continue;
            if (nights.Count > 0 && nights[^1].Last.PlusDays(1) == day && nights[^1].Masks == on)
                nights[^1] = nights[^1] with { Last = day };
            else
                nights.Add(new MaskedNight(day, day, on));
        }

        return nights;
    }
}

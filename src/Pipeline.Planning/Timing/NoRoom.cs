using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Steps that no plan has room for, whenever it begins: nobody at the bench does them, they take longer than any sitting or than a day may have, they need more places
/// than there are. Seen without a search, and said only where it is sure.
/// </summary>
public static class NoRoom
{
    // All nights on which clocks are set are among them, so that no sitting lasts longer than the longest looked at.
    private const int MoreThanAYearDays = 371;

    /// <summary>What stands in the way, of level error, at the steps.</summary>
    /// <param name="walked">The batch.</param>
    public static Sequence<Finding> Of(Walked walked)
    {
        ArgumentNullException.ThrowIfNull(walked);
        var bench = walked.Batch.Bench;
        var (from, until) = AnyTime.Around(bench, MoreThanAYearDays);
        var longest = OpenSittings.Between(bench, from, until).Select(sitting => sitting.Minutes).DefaultIfEmpty(double.MaxValue).Max();
        longest = Math.Min(longest, bench.MostPerDay?.Minutes ?? double.MaxValue);
        var right = AnyTime.Right(walked, route => route.Route.Steps.Any(step => MayBeTight(bench, route.Route.Model.Count, step, longest)));
        if (right.Routes.IsEmpty)
            return [];
        var posing = new Posing(right, from, new Pacing(right, Pace.Brisk), slack: 0);
        var posed = posing.Until(until);
        if (posing.Findings.Count > 0)
            return posing.Findings.ToSequence();
        var obstacles = Contradictions.OfRoom(posed.Problem).Where(obstacle => until > from || obstacle is not Obstacle.FitsNoInterval);
        return Hindrances.Of(right, posed, obstacles);
    }

    // What surely has room need not be looked at: that is nearly everything.
    private static bool MayBeTight(Bench bench, int count, Step step, double longestMinutes) =>
        bench.Painters.Any(painter => !painter.Does.IsEmpty)
        || step.Work.PassOver(step.Work.Together ? count : 1).Minutes > longestMinutes / 2
        || (Posing.PlaceOf(step.Work) is { } name && bench.Tools.Any(tool => tool.Count < count && string.Equals(tool.Name, name, StringComparison.OrdinalIgnoreCase)));
}

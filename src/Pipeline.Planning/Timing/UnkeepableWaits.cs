using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Waits that no plan can keep, whenever it begins: least and greatest times that contradict each other, and greatest times that the bench's
/// sittings leave no room for. Seen without a search, and said only where it is sure.
/// </summary>
public static class UnkeepableWaits
{
    // Clocks are set back and forth; the nights on which they are may be longer or shorter by this much than those looked at.
    private const double ClockChangeMinutes = 60;

    /// <summary>
    /// What stands in the way of every plan. Of level error where even the low figures do, of level warning where a brisk pace leaves room and
    /// the pace of the file does not. Decided times are left out of it: others judge them.
    /// </summary>
    /// <param name="walked">The batch.</param>
    public static Sequence<Finding> Of(Walked walked)
    {
        ArgumentNullException.ThrowIfNull(walked);
        var right = AnyTime.Right(walked, HasGreatest);
        var never = At(right, new Pacing(right, Pace.Brisk));
        // beside decided times the planner goes to the low figures by itself
        var decided = Enumerable.Range(0, right.Routes.Count).Where(r => !right.Routes[r].Route.Pins.IsEmpty);
        var asItIs = At(right, new Pacing(right, walked.Batch.Pace).WithRoutes(decided))
            .Where(finding => never.All(other => other.Place != finding.Place))
            .Select(finding => finding with
            {
                Level = Level.Warning,
                Message = $"At the comfortable pace no plan can be made of this. {finding.Message}",
                Remedy = $"Plan a step of it to the low figures ('pace: brisk'), and try it on a card first. Or: {finding.Remedy}",
            });
        return never.Concat(asItIs).OrderBy(finding => finding.Place).ToSequence();
    }

    /// <summary>What stands in the way at a pace.</summary>
    internal static Sequence<Finding> At(Walked walked, Pacing pacing)
    {
        // only greatest waits can be out of reach
        if (!walked.Routes.Any(HasGreatest))
            return [];
        var tied = walked.Routes.Max(route => route.Waits.Select(wait => wait.Needs.Span).OfType<Span.AtMost>().Sum(most => most.Time.Minutes));
        var (from, until) = AnyTime.Around(walked.Batch.Bench, 21 + (int)Math.Min(100_000, Math.Ceiling(2 * tied / 1440)));
        var posing = new Posing(walked, from, pacing, slack: 0);
        var posed = posing.Until(until);
        if (posing.Findings.Count > 0)
            return [];
        var problem = posed.Problem with { Activities = [.. posed.Problem.Activities.Select(activity => activity with { PinnedStart = null })] };
        var rings = Contradictions.Rings(problem);
        // what the sittings leave no room for is seen clearly only once the waits agree with each other
        IEnumerable<Obstacle> obstacles = rings.IsEmpty && until > from ? Contradictions.OfHours(problem, Clock.AtLeast(ClockChangeMinutes)) : rings;
        return Hindrances.Of(walked, posed, obstacles);
    }

    private static bool HasGreatest(WalkedRoute route) => route.Waits.Any(wait => wait.Needs.Span is Span.AtMost);
}

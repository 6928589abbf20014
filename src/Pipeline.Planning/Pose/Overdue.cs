using System.Collections.Immutable;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>
/// Greatest waits since work that has been done, such as a mask that should have been off by now. Nothing undoes that work: a wait that cannot
/// be kept any more is lengthened, by no more than it takes, and the judge of times says what that risks.
/// </summary>
internal static class Overdue
{
    // After the sitting in which it could be kept at the earliest so many more are tried, as hands and tools may be busy; then any time.
    private static readonly int[] MoreSittings = [0, 1, 3];

    /// <summary>The batch as it is, but for what nobody can keep any more; then with ever more time for what began before.</summary>
    public static IEnumerable<Posed> Longer(Posed posed)
    {
        var open = Open(posed.Problem);
        if (open.IsEmpty)
            return [posed];
        var earliest = Contradictions.EarliestStarts(Without(posed.Problem, open));
        var late = open.Where(w => Over(posed.Problem, w, earliest) > 0).ToList();
        var first = late.Count == 0 ? posed : With(posed, late, earliest, more: 0);
        return MoreSittings.Select(more => With(posed, open, earliest, more)).Prepend(first)
            .Append(posed with { Problem = Without(posed.Problem, open), Overdue = [.. open] });
    }

    // Greatest waits of which some piece has begun and not ended.
    private static ImmutableArray<int> Open(Problem problem) =>
        [.. Enumerable.Range(0, problem.Waits.Length).Where(w => problem.Waits[w] is { Greatest: not null } wait && Done(problem, wait.From) > Done(problem, wait.To))];

    private static int Done(Problem problem, int activity) => problem.Activities[activity].Past.Sum(run => run.Units);

    private static Problem Without(Problem problem, IEnumerable<int> waits) => problem with
    {
        Waits = [.. problem.Waits.Select((wait, w) => waits.Contains(w) ? wait with { Greatest = null, Least = wait.Least ?? Never } : wait)],
    };

    // A wait has one side at least; this one asks for nothing.
    private const long Never = -(1L << 40);

    private static Posed With(Posed posed, IEnumerable<int> waits, ImmutableArray<ImmutableArray<long>> earliest, int more)
    {
        var longer = posed.Problem.Waits.ToBuilder();
        var overdue = posed.Overdue;
        foreach (var w in waits)
        {
            var wait = longer[w];
            var by = Pieces(posed.Problem, wait).Max(k => EndOfSitting(posed, To(posed.Problem, wait, k, earliest), more) - From(posed.Problem, wait, k));
            if (by <= wait.Greatest)
                continue;
            longer[w] = wait with { Greatest = by };
            overdue = overdue.Add(w);
        }

        return posed with { Problem = posed.Problem with { Waits = longer.ToImmutable() }, Overdue = overdue };
    }

    private static IEnumerable<int> Pieces(Problem problem, Wait wait) => Enumerable.Range(Done(problem, wait.To), Done(problem, wait.From) - Done(problem, wait.To));

    private static long Over(Problem problem, int w, ImmutableArray<ImmutableArray<long>> earliest) =>
        Pieces(problem, problem.Waits[w]).Max(k => To(problem, problem.Waits[w], k, earliest) - From(problem, problem.Waits[w], k)) - problem.Waits[w].Greatest!.Value;

    private static long From(Problem problem, Wait wait, int unit)
    {
        var activity = problem.Activities[wait.From];
        var run = activity.Past.First(run => unit < run.FirstUnit + run.Units);
        return activity.StartIn(run, unit) + (wait.FromEdge == Edge.Finish ? activity.PerUnit + activity.Unattended : 0);
    }

    private static long To(Problem problem, Wait wait, int unit, ImmutableArray<ImmutableArray<long>> earliest) =>
        earliest[wait.To][unit] + (wait.ToEdge == Edge.Finish ? problem.Activities[wait.To].PerUnit + problem.Activities[wait.To].Unattended : 0);

    private static long EndOfSitting(Posed posed, long tick, int more)
    {
        var ends = posed.Sittings.Select(sitting => posed.Clock.TickAt(sitting.End)).ToList();
        var at = ends.FindIndex(end => end >= tick);
        return at < 0 ? tick : ends[Math.Min(at + more, ends.Count - 1)];
    }
}

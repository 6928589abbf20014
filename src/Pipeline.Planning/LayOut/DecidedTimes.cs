using NodaTime;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>Why a decided time cannot be kept, as far as the bench's hours and the other decided times tell.</summary>
/// <param name="walked">The batch.</param>
/// <param name="posed">What the scheduler was given.</param>
internal sealed class DecidedTimes(Walked walked, Posed posed)
{
    private DateTimeZone Zone => walked.Batch.Bench.Zone;

    /// <summary>What a clock and the file show, in a clause; null where it is something else.</summary>
    /// <param name="activity">What is decided.</param>
    public string? Why(int activity)
    {
        var mine = posed.Problem.Activities[activity];
        if (mine.PinnedStart is not { } pin)
            return null;
        var at = posed.Clock.InstantAt(pin);
        if (!posed.Sittings.Any(sitting => sitting.Start <= at && at < sitting.End))
            return $"no sitting is open then{Around(at)}";
        var may = Enumerable.Range(0, posed.Problem.Workers.Length).Where(w => mine.Workers.IsEmpty || mine.Workers.Contains(w)).ToList();
        var open = may.SelectMany(w => posed.Problem.Workers[w].Open.Open).Where(interval => interval.Start <= pin && pin < interval.End).ToList();
        if (open.Count == 0)
            return $"{Phrases.Listed([.. may.Select(w => posed.Problem.Workers[w].Name)])} {(may.Count == 1 ? "does" : "do")} not sit at the bench then";
        if (open.Max(interval => interval.End) is var end && end - pin < Hands(mine))
            return $"it needs {Length(Hands(mine))}, and that sitting has only {Length(end - pin)} left then";
        return Other(activity, pin, mine, may.Count) is { } other
            ? $"{other.Name} is set for {Phrases.Moment(posed.Clock.InstantAt(posed.Problem.Activities[other.Activity].PinnedStart!.Value), at, Zone)} and takes until {Phrases.Moment(posed.Clock.InstantAt(other.Until), at, Zone)}"
            : null;
    }

    /// <summary>
    /// The first start at which a decided step was found to fit if it alone is moved, everything else that is decided kept; null if none was
    /// found.
    /// </summary>
    public Instant? First(int activity, CancellationToken cancel)
    {
        // as soon as can be, whatever else that delays
        var sooner = With(activity, pin: null) with { Dues = [new Scheduling.Due(activity, By: 0)] };
        if (Solver.Solve(sooner, Scheduling.Effort.Quick, cancel: cancel) is not Outcome.Planned planned)
            return null;
        var minute = posed.Clock.MinuteAt(planned.Schedule.Runs.Where(run => run.Activity == activity).Min(run => run.Start) + 1);
        return Solver.Solve(With(activity, posed.Clock.TickAt(minute)), Scheduling.Effort.Quick, cancel: cancel) is Outcome.Planned ? minute : null;
    }

    private Problem With(int activity, long? pin) => posed.Problem with
    {
        Activities = posed.Problem.Activities.SetItem(activity, posed.Problem.Activities[activity] with { PinnedStart = pin, MayBeParted = false }),
    };

    private string Around(Instant at)
    {
        var before = posed.Sittings.LastOrDefault(sitting => sitting.End <= at);
        var after = posed.Sittings.FirstOrDefault(sitting => sitting.Start > at);
        var said = new[] { before is null ? null : $"the one before ends {Phrases.Moment(before.End, at, Zone)}", after is null ? null : $"the next begins {Phrases.Moment(after.Start, at, Zone)}" };
        return said.OfType<string>().ToList() is { Count: > 0 } some ? $"; {string.Join(", ", some)}" : "";
    }

    // Something else that is decided and needs the only hands, or the only tool, at the same time.
    private (int Activity, string Name, long Until)? Other(int activity, long pin, Activity mine, int hands)
    {
        for (var a = 0; a < posed.Activities.Length; a++)
        {
            var other = posed.Problem.Activities[a];
            if (a == activity || other.PinnedStart is not { } start || start >= pin + Hands(mine) || pin >= start + Hands(other))
                continue;
            var sameTool = mine.Tool is { } tool && other.Tool?.Tool == tool.Tool && posed.Problem.Tools[tool.Tool].Count == 1;
            if (hands != 1 && !sameTool)
                continue;
            var (name, route, _, _) = Hindrances.Named(walked, posed, a);
            var on = route == posed.Activities[activity].Route ? "" : $" on {walked.Routes[route].Route.Model.Name}";
            return (a, $"{name}{on}", start + Hands(other));
        }

        return null;
    }

    private static long Hands(Activity activity) => activity.SetUp + (activity.Together ? activity.PerUnit : activity.Units * activity.PerUnit) + activity.PutAway;

    private static string Length(long ticks) => Phrases.Duration(Clock.Minutes(ticks));
}

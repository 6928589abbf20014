using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Steps whose start the painter has decided.</summary>
internal static class Pinned
{
    /// <summary>
    /// When units go through the pinned steps: one after another from the pinned time, after the set-up;
    /// of several coats that dry between, the later ones as soon as they may.
    /// What a clean-out may add is not known yet and left out.
    /// </summary>
    public static KnownTimes Times(Walked walked)
    {
        var times = new List<KnownTime>();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            foreach (var pin in route.Pins)
            {
                var step = route.Steps[pin.Step];
                var work = step.Work;
                var last = Passing.UntilLast(step, route.Model.Count, walked.Batch.Bench);
                var start = At(pin, walked.Batch.Bench.Zone) + Minutes(work.SetUp.Minutes);
                for (var unit = 0; unit < route.Model.Count; unit++)
                {
                    var mine = start + Minutes(work.Together ? 0 : unit * work.PerUnit.Minutes);
                    times.Add(new KnownTime(r, pin.Step, unit, mine, mine + Minutes(last + work.PerUnit.Minutes + work.Unattended.Minutes)));
                }
            }
        }

        return new KnownTimes(times);
    }

    /// <summary>The moment a pin means. An hour that the clocks skip or repeat is taken leniently.</summary>
    public static Instant At(Pin pin, DateTimeZone zone) => pin.At.InZoneLeniently(zone).ToInstant();

    /// <summary>Pins that work and shortest waits after an earlier pin leave no time for, where no single wait has said so already.</summary>
    public static IEnumerable<Finding> OutOfReach(Walked walked, KnownTimes times, Sequence<Finding> said)
    {
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            foreach (var pin in route.Pins.Where(_ => route.Pins.Count > 1))
            {
                var step = route.Steps[pin.Step];
                if (said.Any(f => f.Place == step.Place && f.Level == Level.Error))
                    continue;
                if (Earliest(walked, r, pin.Step, times) is var (earliest, because, wait) && earliest - At(pin, walked.Batch.Bench.Zone) >= Duration.FromMinutes(1))
                    yield return Say(walked, route, pin, earliest, because, wait);
            }
        }
    }

    // The longest path at the low figures from any other pinned step, for the first unit and for the last.
    // With the wait that ends at the pinned step, if it is one that makes it late.
    public static (Instant Earliest, int Because, RuledWait? Wait)? Earliest(Walked walked, int r, int target, KnownTimes times)
    {
        var route = walked.Routes[r];
        var steps = route.Route.Steps;
        (Instant, int, RuledWait?)? latest = null;
        foreach (var unit in new[] { 0, route.Route.Model.Count - 1 }.Distinct())
        {
            var start = new (Instant At, int Because, RuledWait? Wait)?[steps.Count];
            for (var s = 0; s <= target; s++)
            {
                var known = s == target ? null : times.Of(r, s).GetValueOrDefault(unit);
                if (known is not null)
                    start[s] = (known.Start, s, null);
                else
                    Reach(s);
            }

            if (start[target] is not var (at, because, last))
                continue;
            var lead = steps[target].Work.SetUp.Minutes + (steps[target].Work.Together ? 0 : unit * steps[target].Work.PerUnit.Minutes);
            var begin = at - Minutes(lead);
            if (latest is not { } best || begin > best.Item1)
                latest = (begin, because, last);

            void Reach(int s)
            {
                foreach (var order in route.Order.Where(o => o.Later == s))
                    Push(order.Earlier, s, 0, false, false, null);
                foreach (var wait in route.Waits.Where(w => w.Needs.Step == s))
                    Push(wait.Needs.Since, s, Least(wait.Needs), wait.Needs.SinceStart, wait.Needs.ToFinish, wait);
            }

            void Push(int from, int to, double least, bool sinceStart, bool toFinish, RuledWait? wait)
            {
                if (from >= to || start[from] is not var (since, cause, _))
                    return;
                var edge = sinceStart ? since : since + Length(steps[from], walked.Batch.Bench);
                var reached = edge + Minutes(least) - (toFinish ? Length(steps[to], walked.Batch.Bench) : Duration.Zero);
                if (start[to] is not { } before || reached > before.At)
                    start[to] = (reached, cause, wait);
            }
        }

        return latest;

        // A layer that is still open may be worked at once, so such a wait asks for nothing here.
        // What is only risky keeps no step from being done.
        double Least(Verdict.Needs needs)
        {
            if (needs.Gravest < Level.Error)
                return 0;
            var waiting = Waiting.Of(needs, walked.Batch.Bench.Climate);
            return waiting.WithinMinutes is null ? waiting.LowMinutes ?? 0 : 0;
        }
    }

    private static Finding Say(Walked walked, Route route, Pin pin, Instant earliest, int because, RuledWait? wait)
    {
        var zone = walked.Batch.Bench.Zone;
        var step = route.Steps[pin.Step];
        return new Finding
        {
            Rule = wait?.Rule,
            Level = Level.Error,
            Place = wait is null ? pin.Place : step.Place,
            Model = route.Model.Name,
            Areas = step.Areas,
            Message = $"'{Phrases.Step(route.Model, step)}' is set for {Phrases.Moment(At(pin, zone), zone)}, "
                + $"but what comes after '{Phrases.Step(route.Model, route.Steps[because])}' takes until {Phrases.Moment(earliest, zone)} even with the shortest waits.{(wait is null ? "" : $" {wait.Needs.Message}")}",
            Remedy = "Move one of the two, or let the planner choose.",
            Related = [new Related(route.Steps[because].Place, "the other decided time")],
        };
    }

    private static Duration Length(Step step, Bench bench) => Minutes(Passing.Minutes(step, bench, Pace.Brisk));

    private static Duration Minutes(double minutes) => Duration.FromMinutes(minutes);
}

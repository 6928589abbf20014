using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>What the painter has decided with <c>at</c>, as rules of plans see it before there is a plan.</summary>
internal static class DecidedSeen
{
    public static PlanView Of(Walked walked, BatchView batch) => new()
    {
        Batch = batch,
        IsWhole = false,
        Slack = walked.Batch.Bench.Slack,
        Sittings = Sittings(walked),
        Ready = Ready(walked),
    };

    // Only for a painter who sits alone is it known whose hands are busy.
    private static Sequence<SittingView> Sittings(Walked walked)
    {
        var bench = walked.Batch.Bench;
        if (bench.Painters.Count > 1)
            return [];
        var starts = (from r in Enumerable.Range(0, walked.Routes.Count)
                      from pin in walked.Routes[r].Route.Pins
                      let step = walked.Routes[r].Route.Steps[pin.Step]
                      where Attended(walked.Routes[r].Route, step) > 0
                      orderby pin.At
                      select (Route: r, Step: step, Start: Pinned.At(pin, bench.Zone))).ToList();
        if (starts.Count == 0)
            return [];
        return OpenSittings.Between(bench, starts[0].Start - Duration.FromDays(1), starts[^1].Start + Duration.FromDays(1))
            .Select(sitting => new SittingView(
                bench.Painters[0].Name,
                Local(sitting.Start, bench),
                Local(sitting.End, bench),
                sitting.Minutes,
                starts.Where(at => at.Start >= sitting.Start && at.Start < sitting.End).Select(at => Work(walked, at.Route, at.Step, at.Start)).ToSequence()))
            .Where(sitting => !sitting.Work.IsEmpty)
            .ToSequence();
    }

    private static WorkView Work(Walked walked, int route, Step step, Instant start)
    {
        var minutes = Attended(walked.Routes[route].Route, step);
        return new WorkView(new StepInBatch(route, step.Index), Local(start, walked.Batch.Bench), Local(start + Duration.FromMinutes(minutes), walked.Batch.Bench), minutes);
    }

    // Of several coats that dry between, only the first has a decided time.
    private static double Attended(Route route, Step step) => step.Work.PassOver(route.Model.Count).Minutes;

    private static Sequence<ReadyView> Ready(Walked walked)
    {
        var bench = walked.Batch.Bench;
        var times = Pinned.Times(walked);
        var views = new List<ReadyView>();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r].Route;
            if (route.Pins.IsEmpty)
                continue;
            var last = Settling.Last(walked.Routes[r]).ToHashSet();
            var decided = route.Pins.Select(pin => (pin.Step, Done: times.Of(r, pin.Step).Values.Max(time => time.Finish))).ToList();
            decided.AddRange(Following(walked, r, last, times));
            var latest = decided.MaxBy(at => At(at, Pace.Brisk));
            var ready = decided.Max(at => At(at, Pace.Brisk));
            views.Add(new ReadyView
            {
                Last = new StepInBatch(r, latest.Step),
                WorkDone = Local(decided.Max(at => at.Done), bench),
                Ready = Local(ready, bench),
                Comfortable = Local(Instant.Max(ready, decided.Where(at => times.Knows(r, at.Step)).Max(at => At(at, Pace.Comfortable))), bench),
                Due = route.Due is { } due ? new DueTime(due.By.ToDateTimeUnspecified(), due.Place) : null,
                LateMinutes = route.Due is null ? 0 : Math.Max(0, (int)Math.Ceiling((ready - route.Due.By.InZoneLeniently(bench.Zone).ToInstant()).TotalMinutes)),
            });

            Instant At((int Step, Instant Done) at, Pace pace) =>
                last.Contains(at.Step) ? at.Done + Duration.FromMinutes(Settling.UntilReady(route.Steps[at.Step], route.Model, bench.Climate, pace)) : at.Done;
        }

        return views.ToSequence();
    }

    // The last steps that are not decided themselves, at the earliest that work and shortest waits after a decided one leave them.
    private static IEnumerable<(int Step, Instant Done)> Following(Walked walked, int r, HashSet<int> last, KnownTimes times)
    {
        var route = walked.Routes[r].Route;
        foreach (var step in last.Where(step => !times.Knows(r, step)).Select(step => route.Steps[step]))
        {
            if (Pinned.Earliest(walked, r, step.Index, times) is var (begin, _, _))
            {
                var lastPass = Attended(route, step) - step.Work.PutAway.Minutes + step.Work.Unattended.Minutes;
                yield return (step.Index, begin + Duration.FromMinutes(Passing.UntilLast(step, route.Model.Count, walked.Batch.Bench) + lastPass));
            }
        }
    }

    private static DateTime Local(Instant instant, Bench bench) => instant.InZone(bench.Zone).LocalDateTime.ToDateTimeUnspecified();
}

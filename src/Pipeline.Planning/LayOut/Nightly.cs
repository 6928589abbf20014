using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;

namespace Pipeline.Planning;

/// <summary>What is drying and which masks are on at a moment, and every mask from on to off.</summary>
internal sealed class Nightly
{
    private readonly Timetable table;
    private readonly List<Stand> stands = [];
    private readonly List<(int Route, MaskSpan Mask, long? Limit)> masks = [];
    private readonly List<Stand> standing = [];
    private int begun;
    private long lastTick = long.MinValue;

    // A unit's layer on its way to a state that a later step waits for.
    private sealed record Stand(string Model, string What, string For, long From, long Until, long Needed);

    public Nightly(Timetable table)
    {
        this.table = table;
        for (var r = 0; r < table.Walked.Routes.Count; r++)
        {
            var route = table.Walked.Routes[r];
            foreach (var mask in route.Masks.Where(mask => mask.OffStep is not null))
                masks.Add((r, mask, Limit(route, mask)));
            foreach (var wait in route.Waits)
                Drying(r, route, wait.Needs);
        }

        Rest();
        stands = [.. stands.OrderBy(stand => stand.From)];
    }

    /// <summary>Every mask that is not off yet, in the order of the routes; over all units from the first on to the last off.</summary>
    public Sequence<PlannedMask> Masks => masks.Select(at => (at.Route, at.Mask, at.Limit, Is: Activities(at.Route, at.Mask))).Where(at => !table.IsDone(at.Is.Off, table.LastUnit(at.Is.Off))).Select(at =>
    {
        var (on, off) = at.Is;
        return new PlannedMask(
            table.Walked.Routes[at.Route].Route.Model.Name,
            at.Mask.Name,
            at.Mask.Material.Name,
            table.Shown(table.Start(on, 0)),
            table.ShownUntil(table.Finish(off)),
            MustBeOffBy(on, off, at.Limit, [.. Enumerable.Range(0, table.LastUnit(on) + 1)]));
    }).ToSequence();

    /// <summary>
    /// What is on its way to a state that something later waits for, or not yet handleable, when a sitting is left. Of several states the same
    /// layer is on its way to, the last is told: from then on nothing more has to be waited for.
    /// </summary>
    /// <param name="left">When the last hands are done.</param>
    /// <param name="closes">When the sitting closes: what begins to run by itself until then is told, too.</param>
    public Sequence<LeftDrying> DryingAt(long left, long closes) => StandingAt(left, closes)
        .GroupBy(stand => (stand.Model, stand.What))
        .Select(group => group.MaxBy(stand => stand.Until)!)
        .Select(stand => new LeftDrying(stand.Model, stand.What, stand.For, table.ShownUntil(stand.Until)))
        .ToSequence();

    /// <summary>Masks that lie on some unit when a sitting closes.</summary>
    public Sequence<MaskLeft> MasksAt(long tick)
    {
        var left = new List<MaskLeft>();
        foreach (var (route, mask, limit) in masks)
        {
            var (on, off) = Activities(route, mask);
            var covered = Enumerable.Range(0, table.LastUnit(on) + 1).Where(k => table.Start(on, k) < tick && table.Start(off, k) >= tick).ToList();
            if (covered.Count == 0)
                continue;
            left.Add(new MaskLeft(
                table.Walked.Routes[route].Route.Model.Name,
                mask.Name,
                table.ShownUntil(table.Finish(off, covered[^1])),
                MustBeOffBy(on, off, limit, covered)));
        }

        return left.ToSequence();
    }

    // The limit holds unit by unit, the times told are the last unit's: it may come off later by what the tightest unit has to spare.
    // Rounded like the time it comes off, or half a minute could put the limit before it.
    private ZonedDateTime? MustBeOffBy(int on, int off, long? limit, IReadOnlyList<int> units) => limit is { } most
        ? table.ShownUntil(table.Finish(off, units[^1]) + units.Min(k => Math.Max(0, table.Finish(on, k) + most - table.Start(off, k))))
        : null;

    // Sittings are laid out in order of time, so what is over is not looked at again.
    private List<Stand> StandingAt(long left, long closes)
    {
        if (left < lastTick)
        {
            begun = 0;
            standing.Clear();
        }

        lastTick = left;
        for (; begun < stands.Count && stands[begun].From <= closes; begun++)
            standing.Add(stands[begun]);
        standing.RemoveAll(stand => stand.Needed <= left);
        return standing;
    }

    private (int On, int Off) Activities(int route, MaskSpan mask) =>
        (table.Posed.Routes[route].Last(mask.OnStep), table.Posed.Routes[route].First(mask.OffStep!.Value));

    private static long? Limit(WalkedRoute route, MaskSpan mask) => route.Waits
        .Where(wait => wait.Needs.Since == mask.OnStep && wait.Needs.Step == mask.OffStep)
        .Select(wait => wait.Needs.Span).OfType<Span.AtMost>()
        .Select(most => (long?)Clock.AtMost(most.Time.Minutes)).Min();

    private void Drying(int r, WalkedRoute route, Verdict.Needs needs)
    {
        var waiting = Waiting.Of(needs, table.Batch.Bench.Climate);
        if ((table.Pace == Workflows.Pace.Brisk ? waiting.LowMinutes : waiting.ComfortableMinutes) is not > 0)
            return;
        var length = Clock.AtLeast(waiting.ComfortableMinutes ?? 0);
        var (sinceEdge, untilEdge) = (needs.SinceStart ? Edge.Start : Edge.Finish, needs.ToFinish ? Edge.Finish : Edge.Start);
        var since = table.Posed.Routes[r].At(needs.Since, sinceEdge);
        var until = table.Posed.Routes[r].At(needs.Step, untilEdge);
        Drying(route.Route.Model, (since, sinceEdge), (until, untilEdge), length, needs.For);
    }

    private void Drying(Model model, (int Activity, Edge Edge) since, (int Activity, Edge Edge) until, long length, string @for)
    {
        for (var k = 0; k <= table.LastUnit(since.Activity); k++)
        {
            var from = table.At(since.Activity, k, since.Edge);
            var needed = Math.Min(from + length, Math.Max(from, table.At(until.Activity, k, until.Edge)));
            stands.Add(new Stand(model.Name, What(model, since.Activity), @for, table.Start(since.Activity, k), from + length, needed));
        }
    }

    // What runs by itself after the hands are done, and the last layers until they can be handled.
    private void Rest()
    {
        for (var a = 0; a < table.Posed.Activities.Length; a++)
        {
            if (table.StepOf(a) is null)
                continue;
            var model = table.RouteOf(a).Route.Model;
            var activity = table.Posed.Problem.Activities[a];
            for (var k = 0; k <= table.LastUnit(a) && activity.Unattended > 0; k++)
                stands.Add(new Stand(model.Name, What(model, a), "done", table.Start(a, k), table.Finish(a, k), table.Finish(a, k)));
        }

        foreach (var wait in table.Posed.Problem.Waits)
        {
            if (wait.Least is not > 0)
                continue;
            var route = table.RouteOf(wait.From).Route;
            if (table.Posed.Causes[wait.Reason] is Cause.NextCoat coat)
                Drying(route.Model, (wait.From, wait.FromEdge), (wait.To, wait.ToEdge), Clock.AtLeast(Passing.Between(route.Steps[coat.Step], table.Batch.Bench, Workflows.Pace.Comfortable)), "recoatable");
            if (table.Posed.Causes[wait.Reason] is not Cause.Ready)
                continue;
            var from = table.Finish(wait.From);
            var until = from + wait.Least.Value;
            stands.Add(new Stand(route.Model.Name, What(route.Model, wait.From), route.Model.ReadyAt == DryingState.Cured ? "cured" : "handleable", from, until, until));
        }
    }

    private string What(Model model, int activity)
    {
        var (step, pass) = (table.StepOf(activity)!, table.Posed.Activities[activity].Pass);
        if (step.Lays.FirstOrDefault()?.Layer.Name is not { } layer)
            return Phrases.Step(model, step);
        // what dries after the last coat is all of them
        var coat = pass == step.Work.Passes - 1 ? "" : $", {Phrases.Coat(step, pass)}";
        return $"{layer} on {(step.Areas.IsEmpty ? model.Name : Phrases.Areas(model, step.Areas))}{coat}";
    }
}

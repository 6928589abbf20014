using System.Collections.Immutable;
using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Turns a walked batch into a scheduling problem. One activity for each step, and for each of its coats
/// where they must dry between, with as many units as the model has; one more for each
/// model, without work, at which it is ready: all its steps done and its last layers handleable, or cured where it is wanted for play
/// or packing. Due times hang on that one.
/// Of each sitting the share of slack at its end stays free, and no painter works more in a day than the bench and the caller allow.
/// What has been done is the past of its activities.
/// </summary>
internal sealed class Posing(Walked walked, Instant from, Pacing pacing, double slack, long? mostPerDay = null, DoneWork? done = null)
{
    private const string Rack = "drying rack";

    private readonly Batch batch = walked.Batch;
    private readonly Clock clock = new(from);
    private readonly ToolLoads tools = new();
    private readonly List<Finding> findings = [];
    private readonly HashSet<string> undone = new(StringComparer.Ordinal);

    /// <summary>What stands in the way before any search: a step nobody may do, a bench too damp for any figure.</summary>
    public IReadOnlyList<Finding> Findings => findings;

    private long? PerDay => batch.Bench.MostPerDay is { } said ? Clock.AtMost(said.Minutes) : null;

    /// <summary>The problem with the sittings up to a moment.</summary>
    public Posed Until(Instant until)
    {
        var sittings = SittingsUntil(until);
        var routes = ImmutableArray.CreateBuilder<PosedRoute>();
        var posed = ImmutableArray.CreateBuilder<PosedActivity>();
        var activities = ImmutableArray.CreateBuilder<Activity>();
        var dues = ImmutableArray.CreateBuilder<Scheduling.Due>();
        var waits = new WaitPosing(batch.Bench);
        var places = Places();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var route = walked.Routes[r];
            var firsts = ImmutableArray.CreateBuilder<int>(route.Route.Steps.Count);
            foreach (var step in route.Route.Steps)
            {
                firsts.Add(activities.Count);
                for (var pass = 0; pass < step.Work.Passes; pass++)
                {
                    posed.Add(new PosedActivity(r, step, pass));
                    activities.Add(OfPass(route.Route, step, pass, places, pacing.Of(r)) with { Lot = r });
                }
            }

            var ready = activities.Count;
            routes.Add(new PosedRoute(firsts.MoveToImmutable(), ready));
            if (route.Route.Steps.IsEmpty)
                continue;
            waits.Add(r, route, routes[r], step => pacing.Of(r, step));
            posed.Add(new PosedActivity(r, null));
            activities.Add(new Activity { Name = $"{route.Route.Model.Name} ready" });
            AddReady(r, route, routes[r], pacing.Of(r), waits);
            if (route.Route.Due is { } due)
                dues.Add(new Scheduling.Due(ready, clock.TickAt(due.By.InZoneLeniently(batch.Bench.Zone).ToInstant()), route.Route.DueWeight));
        }

        if (waits.IsTooDamp && findings.Count == 0)
            findings.Add(TooDamp());
        var all = new Posed
        {
            Problem = new Problem
            {
                Workers = Workers(sittings),
                Tools = tools.ForScheduler(batch.Bench, batch.Tables),
                Places = [.. places.Select(place => new Scheduling.Place(place.Name, place.Count))],
                Activities = activities.ToImmutable(),
                Waits = waits.ForScheduler(),
                Dues = dues.ToImmutable(),
                Aims = [.. batch.Aims.Select(AimOf)],
            },
            Clock = clock,
            Activities = posed.ToImmutable(),
            Causes = waits.Causes,
            Sittings = sittings,
            IsEvened = mostPerDay < (PerDay ?? long.MaxValue),
            Tools = tools,
            Routes = routes.ToImmutable(),
        };
        if (done is null)
            return all;
        var left = PastWork.In(done, walked, all);
        if (findings.Count == 0)
            findings.AddRange(BeforeDone.In(walked, left, done));
        return left;
    }

    // Where something has been done on the first day, that day is there from its first sitting on: for what a tool still holds, and what a day may have.
    private ImmutableArray<OpenSitting> SittingsUntil(Instant until)
    {
        var ahead = OpenSittings.Between(batch.Bench, clock.Origin, until);
        if (done is null || ahead.IsEmpty)
            return ahead;
        var ofDay = OpenSittings.Between(batch.Bench, clock.Origin - Duration.FromDays(2), until).Where(sitting => sitting.Date >= ahead[0].Date).ToImmutableArray();
        return !ofDay.IsEmpty && ofDay[0].Start < clock.Origin && done.Tasks.Any(task => task.Start >= ofDay[0].Start) ? ofDay : ahead;
    }

    private ImmutableArray<Worker> Workers(ImmutableArray<OpenSitting> sittings)
    {
        var most = PerDay is { } said && mostPerDay is { } asked ? Math.Min(said, asked) : PerDay ?? mostPerDay;
        return [.. batch.Bench.Painters.Select(painter => new Worker(painter.Name, Hours(sittings.Where(s => painter.Comes(s.Date)), painter.Name), most))];
    }

    private Scheduling.Calendar Hours(IEnumerable<OpenSitting> sittings, string painter) => Scheduling.Calendar.OfDays(sittings
        .GroupBy(s => s.Date, s => Parted(new Scheduling.Interval(clock.TickAt(s.Start), clock.TickAt(s.Start + ((s.End - s.Start) * (1 - slack)))), painter))
        .Select(day => day.SelectMany(parts => parts).Where(i => i.Length > 0)));

    // A tool that was put away in a sitting under way holds nothing any more: the sitting goes on from there.
    private IEnumerable<Scheduling.Interval> Parted(Scheduling.Interval open, string painter)
    {
        var put = (done?.CloseDowns ?? []).Where(close => close.Painter == painter).Select(close => clock.TickAt(close.End)).Where(at => at > open.Start && at <= 0).DefaultIfEmpty(long.MinValue).Max();
        return put == long.MinValue || put >= open.End ? [open] : [open with { End = put }, open with { Start = put }];
    }

    // The drying rack, and what steps stand in by name.
    private List<BenchTool> Places()
    {
        var named = batch.Routes.SelectMany(route => route.Steps).Select(step => step.Work.StandsIn).OfType<string>().Append(Rack).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return [.. batch.Bench.Tools.Where(tool => named.Contains(tool.Name))];
    }

    /// <summary>The place or machine a step's pieces stand in, if the bench lists it; null for none.</summary>
    public static string? PlaceOf(Work work) => work.StandsIn ?? (work.NeedsDryingPlace ? Rack : null);

    private static ImmutableArray<PlaceUse> PlacesOf(Work work, List<BenchTool> places, long untilDry)
    {
        var place = places.FindIndex(known => string.Equals(known.Name, PlaceOf(work), StringComparison.OrdinalIgnoreCase));
        return place < 0 ? [] : [new PlaceUse(place, 1, work.NeedsDryingPlace ? untilDry : 0)];
    }

    private Activity OfPass(Route route, Step step, int pass, List<BenchTool> places, Pace routePace)
    {
        var work = step.Work;
        // a decided time is when the first coat is begun
        var pin = pass == 0 ? route.Pins.FirstOrDefault(p => p.Step == step.Index) : null;
        return new Activity
        {
            Name = $"{route.Model.Name}: {Phrases.Task(route.Model, step, pass)}",
            Units = route.Model.Count,
            PerUnit = Clock.Of(work.PerUnit),
            SetUp = Clock.Of(work.SetUp),
            PutAway = Clock.Of(work.PutAway),
            Unattended = Clock.AtLeast(work.Unattended.Minutes),
            Together = work.Together,
            Workers = WhoMay(route, step),
            Tool = tools.Use(work),
            Places = PlacesOf(work, places, Clock.AtLeast(Settling.Minutes(step, DryingState.TouchDry, batch.Bench.Climate, routePace))),
            PinnedStart = pin is null ? null : clock.TickAt(Pinned.At(pin, batch.Bench.Zone)),
        };
    }

    private ImmutableArray<int> WhoMay(Route route, Step step)
    {
        var painters = batch.Bench.Painters;
        if (painters.All(painter => painter.Does.IsEmpty))
            return [];
        ImmutableArray<int> may = [.. Enumerable.Range(0, painters.Count).Where(i => painters[i].Does.IsEmpty || painters[i].Does.Contains(step.Verb))];
        if (may.Length == painters.Count)
            return [];
        if (may.IsEmpty && undone.Add(step.Verb))
        {
            findings.Add(new Finding
            {
                Level = Level.Error,
                Place = step.Place,
                Model = route.Model.Name,
                Areas = step.Areas,
                Message = $"Nobody at the bench does '{step.Verb}': {Phrases.Listed([.. painters.Select(p => p.Name)])} {(painters.Count == 1 ? "is" : "are each")} kept to other work.",
                Remedy = $"Add '{step.Verb}' to what one of the painters does.",
                Related = [new Related(batch.Bench.Place, "the bench and its painters")],
            });
        }

        return may;
    }

    private void AddReady(int index, WalkedRoute route, PosedRoute passes, Pace routePace, WaitPosing waits)
    {
        foreach (var step in Settling.Last(route))
            waits.AddReady(index, passes.Last(step), passes.Ready, Settling.UntilReady(route.Route.Steps[step], route.Route.Model, batch.Bench.Climate, routePace), step);
    }

    private Finding TooDamp()
    {
        var climate = batch.Bench.Climate;
        var damp = climate.Day.Humidity.CompareTo(climate.Night.Humidity) >= 0 ? climate.Day : climate.Night;
        return new Finding
        {
            Level = Level.Error,
            Place = batch.Bench.Place,
            Message = $"At {damp.Humidity} humidity water hardly leaves a film: no drying time can be given for the waterborne coats, and no plan made.",
            Remedy = "Dry the room to 90 % or less, better to 80 %, and say so under 'climate'.",
        };
    }

    private static Aim AimOf(BatchAim aim) => aim switch
    {
        BatchAim.FinishSoon => Aim.FinishSoon,
        BatchAim.FewChanges => Aim.FewChanges,
        BatchAim.ShortMasks => Aim.ShortHolds,
        _ => Aim.EvenDays,
    };
}

using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>Runs and close-downs to tasks with words, amounts and the waits they start.</summary>
internal sealed class TaskLayOut(Timetable table)
{
    private readonly Because because = new(table);
    private readonly IReadOnlyList<string>[] names = [.. table.Walked.Routes.Select(route => StepNames.Of(route.Route))];
    private readonly ILookup<int, int> waitsTo = Enumerable.Range(0, table.Posed.Problem.Waits.Length)
        .Where(w => table.Posed.Problem.Waits[w].Greatest is not null && !table.Posed.Overdue.Contains(w)).ToLookup(w => table.Posed.Problem.Waits[w].To);

    private readonly Dictionary<(int Route, int Step), List<Verdict.Needs>> needsSince = NeedsSince(table);
    private readonly ILookup<(int Route, int Step), Step> passiveAfter = PassiveAfter(table);

    /// <summary>The task of a run with a worker, without the mix it takes its paint from.</summary>
    public PlannedTask OfRun(int index)
    {
        var run = table.Runs[index];
        var route = table.RouteOf(run.Activity).Route;
        var (step, pass) = (table.StepOf(run.Activity)!, table.Posed.Activities[run.Activity].Pass);
        var use = table.Posed.Problem.Activities[run.Activity].Tool;
        return new PlannedTask
        {
            Id = FormattableString.Invariant($"{Kebab(route.Model.Name)}/{step.Index + 1}{(step.Work.Passes == 1 ? "" : FormattableString.Invariant($".{pass + 1}"))}/{run.FirstUnit + 1}"),
            Sort = TaskSort.Step,
            Step = names[table.Posed.Activities[run.Activity].Route][step.Index],
            ExactStart = table.Clock.InstantAt(run.Start),
            ExactEnd = table.Clock.InstantAt(run.End),
            ExactWorkStart = table.Clock.InstantAt(run.WorkStart),
            ExactWorkEnd = table.Clock.InstantAt(run.WorkEnd),
            Together = step.Work.Together,
            From = table.Shown(run.Start),
            To = table.Shown(run.End),
            Verb = step.Verb,
            Model = route.Model.Name,
            Kit = route.Model.Kit,
            FirstUnit = run.FirstUnit + 1,
            Units = run.Units,
            OfUnits = route.Model.Count,
            Coat = pass + 1,
            OfCoats = step.Work.Passes,
            Areas = route.Model.Areas.Count > 1 && step.Areas.Count == route.Model.Areas.Count ? ["all"] : step.Areas,
            Words = Instructions.Of(route.Model, step, pass),
            Paint = PaintOf(route.Model, step, run.Units, table.Batch.Bench.Cup),
            Tool = use is null ? null : ToolName(use.Tool, run.ToolNumber),
            CleanOutBefore = use is not null && table.CleanedOf(index) is { } held ? new CleanOut(ToolName(use.Tool, run.ToolNumber), held.Name, Clock.WholeMinutes(run.CleanOut)) : null,
            LoadedUntil = table.LoadedUntil(index) is { } until ? table.Shown(until) : null,
            Starts = Starts(run, step, pass),
            WhyNotEarlier = because.Of(index),
            FollowsOn = FollowsOn(index),
            NotLaterThan = NotLaterThan(run),
            Note = step.Note,
            Cautions = step.Cautions.Select(caution => caution.Name).Distinct().ToSequence(),
            Place = step.Place,
        };
    }

    /// <summary>The task of cleaning a tool at the end of a sitting.</summary>
    public PlannedTask OfCloseDown(CloseDown close)
    {
        var from = table.Shown(close.Start);
        var tool = ToolName(close.Tool, close.ToolNumber);
        var held = table.Posed.Tools.Load(close.Tool, close.Load);
        return new PlannedTask
        {
            Id = FormattableString.Invariant($"close-down/{Kebab(tool)}/{from.Date.Year:0000}-{from.Date.Month:00}-{from.Date.Day:00}T{from.Hour:00}{from.Minute:00}"),
            Sort = TaskSort.CloseDown,
            ExactStart = table.Clock.InstantAt(close.Start),
            ExactEnd = table.Clock.InstantAt(close.Start + close.Ticks),
            From = from,
            To = table.Shown(close.Start + close.Ticks),
            Verb = "",
            Model = "",
            Kit = "",
            FirstUnit = 0,
            Units = 0,
            OfUnits = 0,
            Areas = [],
            Words = $"Clean the {tool} out and put it away{(held is null ? "" : $" (it held {held.Name})")}",
            Tool = tool,
            WhyNotEarlier = "A tool is cleaned at the end of the sitting in which it was used.",
        };
    }

    /// <summary>What a task takes of the paint it lays, with one of its coats where they dry between; null if it lays none.</summary>
    public static PaintUse? PaintOf(Model model, Step step, int units, Volume? cup)
    {
        PaintUse? use = null;
        foreach (var lay in step.Lays)
        {
            if (lay.Layer.Paint is not { } paint)
                continue;
            var area = new SurfaceSize(model.Areas.Where(a => step.Areas.Contains(a.Name)).Sum(a => a.Size.SquareCentimetres));
            var need = PaintNeed.Of(lay.Layer with { Coats = Math.Max(1, lay.Layer.Coats / step.Work.Passes) }, area, model.Size, units, cup);
            use = use is null || use.Name != paint.Name
                ? use ?? new PaintUse(paint.Name, Math.Round(need.Millilitres, 1), need.Loads, null)
                : use with { Millilitres = Math.Round(use.Millilitres + need.Millilitres, 1), Loads = use.Loads + need.Loads };
        }

        // the painter may want to fill it more often than it takes
        var meant = (step.Work.Loads + step.Work.Passes - 1) / step.Work.Passes;
        return use is { Loads: > 0 } && meant > use.Loads ? use with { Loads = meant.Value } : use;
    }

    // The same hands come from the run before without a break, whether it is they or the tool in them that was busy.
    private bool FollowsOn(int index)
    {
        var before = table.Planned.Reasons[index] switch
        {
            Reason.WorkerBusy busy => table.Runs[busy.Run],
            Reason.ToolHeld held => table.Runs[held.Run],
            _ => null,
        };
        return before is not null && before.Worker == table.Runs[index].Worker && before.End == table.Runs[index].Start;
    }

    private string ToolName(int tool, int number)
    {
        var known = table.Posed.Problem.Tools[tool];
        return known.Count == 1 ? known.Name : FormattableString.Invariant($"{known.Name} {number + 1}");
    }

    private Sequence<WaitStarted> Starts(Run run, Step step, int pass)
    {
        var route = table.Posed.Activities[run.Activity].Route;
        var last = run.FirstUnit + run.Units - 1;
        var started = new Dictionary<string, WaitStarted>(StringComparer.Ordinal);
        var isLast = pass == step.Work.Passes - 1;
        foreach (var needs in needsSince.GetValueOrDefault((route, step.Index)) ?? [])
        {
            if (needs.SinceStart ? pass > 0 : !isLast)
                continue;
            var waiting = Waiting.Of(needs, table.Batch.Bench.Climate);
            if (waiting.ComfortableMinutes is not { } comfortable || waiting.LowMinutes is not { } low || comfortable <= 0)
                continue;
            var since = table.At(run.Activity, last, needs.SinceStart ? Edge.Start : Edge.Finish);
            Add(new WaitStarted(needs.For, table.ShownUntil(since + Clock.AtLeast(low)), table.ShownUntil(since + Clock.AtLeast(comfortable)), !needs.IsFromLabel));
        }

        if (!isLast)
            Add(NextCoat(run, step, pass));
        else if (RunsOn(run, step, last) is { } goesOn)
            Add(goesOn);
        foreach (var passive in passiveAfter[(route, step.Index)].Where(_ => isLast))
        {
            var over = table.ShownUntil(table.Finish(table.Posed.Routes[route].Last(passive.Index), last));
            Add(new WaitStarted(Phrases.Step(table.Walked.Routes[route].Route.Model, passive), over, over, !passive.Work.IsFromFile));
        }

        return started.Values.OrderBy(s => s.Comfortable.ToInstant()).ThenBy(s => s.For, StringComparer.Ordinal).ToSequence();

        void Add(WaitStarted wait)
        {
            if (!started.TryGetValue(wait.For, out var known) || wait.Comfortable.ToInstant() > known.Comfortable.ToInstant())
                started[wait.For] = wait;
        }
    }

    private WaitStarted NextCoat(Run run, Step step, int pass)
    {
        var since = table.Finish(run.Activity, run.FirstUnit + run.Units - 1);
        return new WaitStarted(
            FormattableString.Invariant($"coat {pass + 2}"),
            table.ShownUntil(since + Clock.AtLeast(Passing.Between(step, table.Batch.Bench, Workflows.Pace.Brisk))),
            table.ShownUntil(since + Clock.AtLeast(Passing.Between(step, table.Batch.Bench, Workflows.Pace.Comfortable))),
            !step.Lays.Any(lay => lay.Layer.HasLabelTimes));
    }

    // Until when a bath or a lamp goes on by itself after the hands are done.
    private WaitStarted? RunsOn(Run run, Step step, int last)
    {
        if (table.Posed.Problem.Activities[run.Activity].Unattended == 0)
            return null;
        var over = table.ShownUntil(table.At(run.Activity, last, Edge.Finish));
        return new WaitStarted("ends by itself", over, over, !step.Work.IsFromFile);
    }

    // How far the whole run could slip before the tightest greatest wait that ends at it breaks.
    private ZonedDateTime? NotLaterThan(Run run)
    {
        long? slack = null;
        foreach (var w in waitsTo[run.Activity])
        {
            var wait = table.Posed.Problem.Waits[w];
            for (var k = run.FirstUnit; k < run.FirstUnit + run.Units; k++)
            {
                var left = table.At(wait.From, k, wait.FromEdge) + wait.Greatest!.Value - table.At(wait.To, k, wait.ToEdge);
                slack = Math.Min(slack ?? left, left);
            }
        }

        return slack is { } ticks ? table.Shown(run.Start + ticks) : null;
    }

    private static Dictionary<(int Route, int Step), List<Verdict.Needs>> NeedsSince(Timetable table)
    {
        var since = new Dictionary<(int, int), List<Verdict.Needs>>();
        for (var r = 0; r < table.Walked.Routes.Count; r++)
        {
            foreach (var wait in table.Walked.Routes[r].Waits)
            {
                if (!since.TryGetValue((r, wait.Needs.Since), out var list))
                    since[(r, wait.Needs.Since)] = list = [];
                list.Add(wait.Needs);
            }
        }

        return since;
    }

    // Steps that only wait are no task; they are told with the step they follow.
    private static ILookup<(int Route, int Step), Step> PassiveAfter(Timetable table) =>
        Enumerable.Range(0, table.Walked.Routes.Count)
            .SelectMany(r => table.Walked.Routes[r].Order.Select(order => (r, order)))
            .Select(at => (at.r, at.order.Earlier, Later: table.Walked.Routes[at.r].Route.Steps[at.order.Later]))
            .Where(at => !table.Posed.Problem.Activities[table.Posed.Routes[at.r].First(at.Later.Index)].IsAttended)
            .ToLookup(at => (at.r, at.Earlier), at => at.Later);

    private static string Kebab(string name) => string.Join('-', name.ToLowerInvariant().Split(' ', StringSplitOptions.RemoveEmptyEntries));
}

using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>A schedule to a plan: dates, words, amounts, and what there is to say about it.</summary>
internal static class PlanLayOut
{
    /// <param name="table">The schedule.</param>
    /// <param name="trade">What the plugins brought.</param>
    /// <param name="done">What is taken as done; null if nothing.</param>
    public static Plan Of(Timetable table, Trade trade, DoneWork? done)
    {
        var batch = table.Batch;
        var paints = Paints(batch);
        var sittings = new SittingLayOut(table, paints);
        var days = sittings.Days();
        var finishes = Finishes(table);
        var tasks = days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks);
        var ofPlan = Walk.JudgePlan(table.Walked, trade, seen => PlanSeen.Of(table, seen));
        var mixes = days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Mixes);
        return new Plan
        {
            Batch = batch.Name,
            Zone = table.Zone,
            From = table.Shown(0),
            Pace = table.Pace,
            Days = days,
            Finishes = finishes,
            Masks = sittings.Masks,
            Shopping = Shopping.Of(batch, tasks, mixes, paints),
            Done = done,
            Findings =
            [
                .. TimeJudge.Judge(table.Walked, table.Known()),
                .. CoatJudge.Of(table),
                .. ofPlan,
                .. Silences(table.Walked, ofPlan),
            ],
            Measure = Measure(table, days),
            CriticalChain = Chain.Of(table),
            Assumptions = Assumptions.Of(table),
        };
    }

    // By name: what the file lists, and what steps lay that it does not.
    private static Dictionary<string, Paint> Paints(Batch batch)
    {
        var paints = new Dictionary<string, Paint>(StringComparer.Ordinal);
        foreach (var paint in batch.Paints.Concat(batch.Routes.SelectMany(r => r.Steps).SelectMany(s => s.Lays).Select(lay => lay.Layer.Paint).OfType<Paint>()))
            paints.TryAdd(paint.Name, paint);
        return paints;
    }

    private static Sequence<ModelFinish> Finishes(Timetable table)
    {
        var finishes = new List<ModelFinish>();
        for (var a = 0; a < table.Posed.Activities.Length; a++)
        {
            if (table.StepOf(a) is not null)
                continue;
            var r = table.Posed.Activities[a].Route;
            var route = table.Walked.Routes[r].Route;
            var passes = table.Posed.Routes[r];
            var lastHands = table.Runs.Where(run => run.Worker >= 0 && passes.Has(run.Activity))
                .Select(run => run.End).DefaultIfEmpty(table.Start(a, 0)).Max();
            long? cured = null;
            foreach (var step in Settling.Last(table.Walked.Routes[r]).Select(passes.Last))
            {
                var minutes = Settling.Minutes(table.StepOf(step)!, DryingState.Cured, table.Batch.Bench.Climate, table.Pace);
                if (minutes > 0)
                    cured = Math.Max(cured ?? long.MinValue, table.Finish(step) + Clock.AtLeast(minutes));
            }

            finishes.Add(new ModelFinish(
                route.Model.Name,
                route.Model.Kit,
                route.Model.Count,
                table.ShownUntil(lastHands),
                table.ShownUntil(table.ReadyAt(a)),
                route.Due?.By.InZoneLeniently(table.Zone),
                cured is { } tick ? table.ShownUntil(Math.Max(tick, table.ReadyAt(a))) : null,
                route.Model.Purpose));
        }

        return finishes.ToSequence();
    }

    private static PlanMeasure Measure(Timetable table, Sequence<PlannedDay> days)
    {
        var bound = table.Planned.Bound;
        var schedule = table.Planned.Schedule;
        // of a sitting under way what is left
        var open = Math.Max(0, bound.OpenTicks - Over(table));
        return new PlanMeasure(
            days.SelectMany(day => day.Sittings).Sum(sitting => sitting.AttendedMinutes),
            Clock.WholeMinutes(open),
            Clock.WholeMinutes(Math.Max(0, open - bound.GapOpenTicks)),
            table.ShownUntil(bound.Finish),
            bound.GapIntervals,
            bound.IsBestAsParted,
            Enumerable.Range(0, table.Runs.Count).Count(run => table.CleanedOf(run) is not null) + schedule.CloseDowns.Length,
            table.Planned.StoppedEarly,
            table.Batch.Aims[0]);
    }

    // Open ticks before the plan begins.
    private static long Over(Timetable table)
    {
        var (over, until) = (0L, long.MinValue);
        foreach (var open in table.Posed.Problem.Workers.SelectMany(worker => worker.Open.Open).OrderBy(open => open.Start))
        {
            over += Math.Max(0, Math.Min(open.End, 0) - Math.Max(open.Start, until));
            until = Math.Max(until, open.End);
        }

        return over;
    }

    // Each silence with its reason, also one whose rule never spoke.
    private static IEnumerable<Finding> Silences(Walked walked, Sequence<Finding> ofPlan)
    {
        foreach (var finding in walked.Findings.Where(finding => finding.Silenced is not null))
            yield return finding;
        var spoken = walked.Findings.Concat(ofPlan).Where(finding => finding.Silenced is not null).ToList();
        var written = walked.Batch.Silences.Select(silence => (silence, Model: (string?)null))
            .Concat(walked.Batch.Routes.SelectMany(route => route.Silences.Concat(route.Steps.SelectMany(step => step.Silences)).Select(silence => (silence, Model: (string?)route.Model.Name))));
        foreach (var (silence, model) in written.DistinctBy(at => at.silence.Place))
        {
            if (spoken.Any(f => f.Rule == silence.Rule && f.Silenced == silence.Reason))
                continue;
            yield return new Finding
            {
                Rule = silence.Rule,
                Level = Level.Note,
                Place = silence.Place,
                Model = model,
                Message = $"'{silence.Rule}' is silenced here.",
                Silenced = silence.Reason,
            };
        }
    }
}

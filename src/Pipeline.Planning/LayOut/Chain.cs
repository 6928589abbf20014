using System.Globalization;
using Pipeline.Abstractions;
using Pipeline.Scheduling;

namespace Pipeline.Planning;

/// <summary>The chain of tasks and waits that makes the plan as long as it is, first to last.</summary>
internal static class Chain
{
    /// <summary>
    /// One line for each task that waits for something to dry or comes after another, one for each stretch of a sitting in which hands
    /// simply go from one task to the next.
    /// </summary>
    public static Sequence<string> Of(Timetable table) =>
        table.Planned.CriticalRuns.IsEmpty || table.IsPast(table.Planned.CriticalRuns[^1]) ? [] : Of(table, Back(table, table.Planned.CriticalRuns[^1]));

    /// <summary>The runs from the first cause to a run, each held back by the one before it.</summary>
    public static IReadOnlyList<int> Back(Timetable table, int run)
    {
        var because = new Because(table);
        var chain = new List<int> { run };
        var seen = new HashSet<int> { run };
        while (Earlier(table, because, chain[^1], seen) is { } before && seen.Add(before))
            chain.Add(before);

        chain.Reverse();
        return chain;
    }

    /// <summary>The run that decides when a model is ready, by its own activity at the end: its last layers', or where that is later the hands' last.</summary>
    public static int LastOf(Timetable table, int ready)
    {
        var r = table.Posed.Activities[ready].Route;
        var last = Enumerable.Range(0, table.Runs.Count).Where(run => table.Posed.Activities[table.Runs[run].Activity].Route == r && table.Runs[run].Activity != ready).ToList();
        return last.Count == 0 || table.Start(ready, 0) > last.Max(run => table.Runs[run].End) ? table.RunOf(ready, 0) : last.MaxBy(run => (table.Runs[run].End, -run));
    }

    // What nothing that has been done holds back, or only what comes later, is followed on to what came before it.
    private static int? Earlier(Timetable table, Because because, int run, HashSet<int> seen)
    {
        if (because.Before(run) is { } before && table.Runs[before].Start <= table.Runs[run].Start && !seen.Contains(before))
            return before;
        return table.Planned.Reasons[run] is Reason.Fact or Reason.Pinned or Reason.NotBefore ? null : because.Precursor(run, seen);
    }

    /// <summary>A chain of runs in words.</summary>
    public static Sequence<string> Of(Timetable table, IEnumerable<int> chain)
    {
        var because = new Because(table);
        var lines = new List<string>();
        var stretch = new List<int>();
        int? before = null;
        foreach (var run in chain)
        {
            if (stretch.Count > 0 && !GoesOn(table, stretch[^1], run))
                End();
            stretch.Add(run);
        }

        if (stretch.Count > 0)
            End();
        return lines.ToSequence();

        void End()
        {
            var (first, last) = (table.Runs[stretch[0]], table.Runs[stretch[^1]]);
            var reason = $"{because.Of(stretch[0])}{Link(table, because, before, stretch[0])}";
            lines.Add(stretch.Count == 1
                ? $"{(table.StepOf(first.Activity) is null ? table.SaidUntil(table.ReadyAt(first.Activity)) : table.Said(first.Start))} – {What(table, stretch[0])}. {reason}"
                : string.Create(CultureInfo.InvariantCulture, $"{table.Said(first.Start)}–{table.Said(last.End, first.Start)} – {stretch.Count} tasks without a break, from {What(table, stretch[0])} to {What(table, stretch[^1])}. {reason}"));
            before = stretch[^1];
            stretch.Clear();
        }
    }

    // What a reason does not name is led back to what came before it: that is said, too.
    private static string Link(Timetable table, Because because, int? before, int run)
    {
        if (before is not { } earlier || because.Before(run) == earlier)
            return "";
        return table.Posed.Problem.Waits.Any(wait => wait.From == table.Runs[earlier].Activity && wait.To == table.Runs[run].Activity)
            ? $" It also comes after {because.Task(earlier, run)}."
            : $" Before it the same hands did {because.Task(earlier, run)}.";
    }

    private static bool GoesOn(Timetable table, int before, int run) =>
        table.Planned.Reasons[run] is Reason.WorkerBusy or Reason.UnitOrder or Reason.ToolHeld or Reason.ClosingDown
        && table.Runs[before].Worker == table.Runs[run].Worker
        && table.SittingAt(table.Runs[before].Start) == table.SittingAt(table.Runs[run].Start);

    private static string What(Timetable table, int run)
    {
        var activity = table.Runs[run].Activity;
        var model = table.RouteOf(activity).Route.Model;
        var units = Phrases.Units(table.Runs[run].FirstUnit + 1, table.Runs[run].Units, model.Count);
        return table.StepOf(activity) is { } step
            ? $"{model.Name}{(units.Length > 0 && table.Runs[run].Units < model.Count ? $", {units}" : "")}: {Instructions.Of(model, step, table.Posed.Activities[activity].Pass)}"
            : $"{model.Name} is ready";
    }
}

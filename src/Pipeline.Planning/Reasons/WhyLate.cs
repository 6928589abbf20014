using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>Why a model is late and what would help with that, in words.</summary>
internal sealed class WhyLate(Timetable table)
{
    private readonly Because because = new(table);

    /// <summary>Whole sentences; both empty of a model that is in time, the second also where no more than the usual can be said.</summary>
    /// <param name="ready">The model, by its own activity at the end.</param>
    public (string Why, string Helps) Of(int ready)
    {
        var route = table.Posed.Activities[ready].Route;
        if (table.Walked.Routes[route].Route.Due is not { } due || table.Clock.TickAt(due.By.InZoneLeniently(table.Zone).ToInstant()) is var by && table.ReadyAt(ready) <= by)
            return ("", "");
        if (by <= 0)
            return ($"That is past when the plan begins, {Phrases.MomentAndYear(table.Shown(0))}.", "Move the due time, or plan from an earlier moment.");
        var chain = new ChainTime(table, because, Chain.Back(table, Chain.LastOf(table, ready)), ready);
        // what dries alone takes longer than there is, however many sit at the bench and when
        var dries = chain.Drying > by;
        if (chain.Longest is { } longest && (dries || longest.Ticks * 2 >= chain.Span))
            return ($"{Proved(by)}{Named(longest.Run, longest.Ticks)}", Helps(longest.Run, withSittings: !dries));
        var last = Enumerable.Range(0, table.Runs.Count)
            .Where(run => table.Posed.Activities[table.Runs[run].Activity] is { Step: not null } posed && posed.Route == route)
            .MaxBy(run => table.Runs[run].End);
        return ($"{Proved(by)}Last comes {because.Name(last, last)}, {table.Said(table.Runs[last].Start)}. {because.Of(last)}", "");
    }

    // The bound is that of the last finish of all: it proves something only where everything is due by then.
    private string Proved(long by)
    {
        var isAllDue = table.Posed.Activities.Count(posed => posed.Step is null) == table.Posed.Problem.Dues.Count(other => other.By <= by);
        return isAllDue && table.Planned.Bound.Finish > by ? "No plan with these sittings can do it all in time. " : "";
    }

    private string Named(int run, long ticks)
    {
        var name = because.Name(run, run);
        return table.StepOf(table.Runs[run].Activity) is null ? $"The longest wait comes last. {because.Of(run)}"
            : IsByItself(run) ? $"The longest wait is {name}, {table.Said(table.Runs[run].Start)}: it takes {Phrases.About(Clock.Minutes(ticks))}."
            : $"The longest wait is before {name}, {table.Said(table.Runs[run].Start)}. {because.Of(run)}";
    }

    private string Helps(int run, bool withSittings)
    {
        var parts = new List<string>();
        if (withSittings)
            parts.Add("add a sitting");
        if (!IsByItself(run) && because.WaitBefore(run) is { } wait)
        {
            if (table.StepOf(wait.From) is { } from && from.Lays.Any())
                parts.Add($"choose what dries sooner for {because.Name(table.RunOf(wait.From, 0), run)}");
            if (table.StepOf(wait.To) is null ? table.Pace == Pace.Comfortable : WaysOut.Shortened(table, wait) is { Minutes: >= 1 })
            {
                var name = table.StepOf(wait.To) is null ? "" : because.Name(run, run);
                parts.Add($"{(name.Length == 0 ? "plan at a brisk pace" : $"let {name} follow at the low drying figure ('pace: brisk')")} and read what it risks");
            }
        }

        parts.Add("begin earlier");
        return $"{Phrases.Capital(string.Join(", ", parts))}, or move the due time.";
    }

    private bool IsByItself(int run) => table.Runs[run].Worker < 0 && table.StepOf(table.Runs[run].Activity) is not null;
}

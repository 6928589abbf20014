using NodaTime;
using Pipeline.Planning;

namespace Pipeline.Reports;

/// <summary>What the text and the Markdown report both say of two plans, in the same words.</summary>
internal static class ComparisonFacts
{
    /// <summary>How the last finish changes.</summary>
    public static (string Words, Tone Tone) Ready(PlanComparison both)
    {
        var before = both.Finishes.Select(finish => finish.Before).Max();
        var after = both.Finishes.Select(finish => finish.After).Max();
        if (before is not { } was || after is not { } now)
            return ("One of the plans has nothing to finish.", Tone.Plain);
        return was == now
            ? ($"All ready by {Moment(both, now)}, as before.", Tone.Plain)
            : ($"All ready by {Moment(both, now)} instead of {Moment(both, was)}: {Later(now - was)}.", now > was ? Tone.Warning : Tone.Good);
    }

    /// <summary>What the second plan takes as done, in one line; null if nothing.</summary>
    public static string? Done(PlanComparison both) => both.Done is { } done
        ? $"Done until {Moment(both, done.Until)}: {Amounts.Counted(done.Tasks.Count, "task")}. Compared is what was left then."
        : null;

    /// <summary>How many tasks are where they were, moved, new or gone.</summary>
    public static string Counts(PlanComparison both)
    {
        if (both.IsSame)
            return $"Nothing is different: {Amounts.Counted(both.Unmoved, "task")}, all where they were.";
        var elsewhere = both.Moves.Count(move => move.IsToAnotherSitting);
        var slides = both.Moves.Count(move => move.IsSlide);
        var parts = new List<string> { $"{Amounts.Counted(both.Unmoved, "task")} {(both.Unmoved == 1 ? "is where it was" : "are where they were")}" };
        Add(elsewhere, "in another sitting");
        Add(both.Moves.Count - elsewhere - slides, "otherwise in the same one");
        Add(slides, "a few minutes off");
        Add(both.Added.Count, "new");
        Add(both.Gone.Count, "gone");
        return string.Join(", ", parts) + ".";

        void Add(int count, string how)
        {
            if (count > 0)
                parts.Add(FormattableString.Invariant($"{count} {how}"));
        }
    }

    /// <summary>A figure before and after: <c>12, was 14: 2 fewer</c>.</summary>
    public static IEnumerable<(string What, string Before, string After, string Difference)> Costs(PlanComparison both)
    {
        yield return ("hands at work", Moments.Hours(both.AttendedMinutes.Before), Moments.Hours(both.AttendedMinutes.After), More(both.AttendedMinutes, minutes => Moments.Hours(minutes), "less"));
        yield return ("sittings", Plain(both.Sittings.Before), Plain(both.Sittings.After), More(both.Sittings, Plain, "fewer"));
        yield return ("clean-outs", Plain(both.CleanOuts.Before), Plain(both.CleanOuts.After), More(both.CleanOuts, Plain, "fewer"));
    }

    /// <summary>A model's finish before and after, what that means, and its due time.</summary>
    public static (string Before, string After, string Difference, Tone Tone) Finish(PlanComparison both, FinishChange finish)
    {
        var (was, now) = (finish.Before is { } before ? Moment(both, before) : "-", finish.After is { } after ? Moment(both, after) : "-");
        var difference = (finish.Before, finish.After) switch
        {
            (null, _) => "new",
            (_, null) => "gone",
            var (from, to) when from == to => "as before",
            var (from, to) => Later(to.Value - from.Value),
        };
        var isLate = finish.Due is { } due && finish.After > due;
        return (was, now, isLate ? $"{difference}, LATE by {Moments.Margin((long)Math.Ceiling((finish.After!.Value - finish.Due!.Value).TotalMinutes))}" : difference, isLate ? Tone.Error : Tone.Plain);
    }

    /// <summary>Which units a task takes: <c>Line diver, no. 1-3 of 5</c>.</summary>
    public static string Who(WrittenTask task) => task.OfUnits == 1 ? task.Model
        : task.Units == task.OfUnits ? FormattableString.Invariant($"{task.Model}, all {task.Units}")
        : task.Units == 1 ? FormattableString.Invariant($"{task.Model}, no. {task.FirstUnit} of {task.OfUnits}")
        : FormattableString.Invariant($"{task.Model}, no. {task.FirstUnit}-{task.FirstUnit + task.Units - 1} of {task.OfUnits}");

    /// <summary>What is different besides the time: <c>was no. 1-2, by Ana</c>; empty if nothing is.</summary>
    public static string Otherwise(TaskMove move)
    {
        var parts = new List<string>();
        if (move.Before.FirstUnit != move.After.FirstUnit || move.Before.Units != move.After.Units)
            parts.Add(FormattableString.Invariant($"was no. {move.Before.FirstUnit}-{move.Before.FirstUnit + move.Before.Units - 1}"));
        if (move.Before.Painter != move.After.Painter)
            parts.Add($"{move.After.Painter} instead of {move.Before.Painter}");
        return string.Join("; ", parts);
    }

    /// <summary>A moment in the zone of the plans.</summary>
    public static string Moment(PlanComparison both, Instant instant) => Moments.Full(Floor(instant).InZone(both.Zone));

    /// <summary>When a task was: the time alone where it is still in the same sitting.</summary>
    public static string Was(PlanComparison both, TaskMove move) =>
        move.IsToAnotherSitting ? Moment(both, move.Before.Start) : Moments.Time(Floor(move.Before.Start).InZone(both.Zone));

    // A start is shown as the minute it lies in.
    private static Instant Floor(Instant instant) => Instant.FromUnixTimeSeconds(instant.ToUnixTimeSeconds() / 60 * 60);

    private static string Later(Duration by)
    {
        var minutes = (long)Math.Round(Math.Abs(by.TotalMinutes), MidpointRounding.AwayFromZero);
        return $"{Moments.Length(minutes)} {(by > Duration.Zero ? "later" : "sooner")}";
    }

    private static string More(Figures figures, Func<int, string> said, string less) => figures.Difference switch
    {
        0 => "as before",
        > 0 => $"{said(figures.Difference)} more",
        _ => $"{said(-figures.Difference)} {less}",
    };

    private static string Plain(int number) => number.ToString(System.Globalization.CultureInfo.InvariantCulture);
}

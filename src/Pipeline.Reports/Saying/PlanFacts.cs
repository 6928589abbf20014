using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Planning;
using Pipeline.Workflows;

namespace Pipeline.Reports;

/// <summary>What the text and the Markdown report both say of a plan, in the same words.</summary>
internal static class PlanFacts
{
    /// <summary>Closes every report that shows a caution.</summary>
    private const string CautionsAreGeneral =
        "Cautions are general information, not a safety assessment: the product's label and safety data sheet, local rules and trained advice come first.";

    /// <summary>What the asterisk behind a time means.</summary>
    private const string DefaultFigure = "* by the usual figure of the paint's family, not the label's. What the label says, written in the file, goes before it.";

    private const string TwoTimes = "A wait has two times: the earliest by the low figure, and the better one, nine tenths of the high figure, from which on nothing is at risk.";

    private const string FollowsOn = "A task without 'why now' starts when the hands are free from the one above it.";

    /// <summary>The stretch of days: <c>Mon 30 Nov to Sat 12 Dec 2026</c>.</summary>
    public static string Dates(Plan plan)
    {
        if (plan.Days.IsEmpty)
            return Moments.DayAndYear(plan.From.Date);
        var (first, last) = (plan.Days[0].Date, plan.Days[^1].Date);
        return first == last ? Moments.DayAndYear(first)
            : first.Year == last.Year ? $"{Moments.Day(first)} to {Moments.DayAndYear(last)}"
            : $"{Moments.DayAndYear(first)} to {Moments.DayAndYear(last)}";
    }

    /// <summary>What being ready means: of pieces for display alone that they can be handled.</summary>
    public static string ReadyWord(Plan plan) =>
        plan.Finishes.All(finish => finish.Purpose == Purpose.Display) ? "can be handled" : "ready";

    /// <summary>When all is ready, and whether that is in time; tone says how to colour it.</summary>
    public static (string Words, Tone Tone) Ready(Plan plan)
    {
        if (plan.Finishes.IsEmpty)
            return ("Nothing is to be done.", Tone.Plain);
        var pieces = Amounts.Counted(plan.Finishes.Sum(f => (long)f.Units), "piece");
        var last = plan.Finishes.Aggregate((a, b) => b.Ready.ToInstant() > a.Ready.ToInstant() ? b : a).Ready;
        var ready = $"{pieces} ready by {Moments.Full(last)}";
        var tightest = plan.Finishes.Where(f => f.Due is not null).OrderBy(Spare).FirstOrDefault();
        if (tightest is null)
            return ($"{ready}; no due time is set.", Tone.Plain);
        var late = plan.Finishes.Count(f => f.Due is not null && Spare(f) < 0);
        return late == 0
            ? ($"{ready}, in time with {Moments.Margin(Spare(tightest))} to spare.", Tone.Good)
            : ($"{ready}. LATE: {Amounts.Counted(late, "model")} after the due time, by up to {Moments.Margin(-Spare(tightest))}.", Tone.Error);
    }

    /// <summary>Minutes from ready to due; negative if late. Only for a finish that is due.</summary>
    public static long Spare(ModelFinish finish) => Moments.Minutes(finish.Ready, finish.Due ?? finish.Ready);

    /// <summary><c>4 h 50 min</c>, <c>LATE by 1 d 2 h</c>, or nothing where nothing is due.</summary>
    public static (string Words, Tone Tone) Margin(ModelFinish finish) => finish.Due is null ? ("", Tone.Plain)
        : Spare(finish) switch
        {
            < 0 and var late => ($"LATE by {Moments.Margin(-late)}", Tone.Error),
            var spare => (Moments.Margin(spare), Tone.Good),
        };

    /// <summary>How much work it is, in one line.</summary>
    public static string Size(Plan plan) => plan.Days.IsEmpty && plan.Done is not null ? "Nothing is left for the hands to do."
        : $"{Sittings(plan)}, {Moments.Hours(plan.Measure.AttendedMinutes)} of work, "
        + $"{Amounts.Counted(plan.Measure.CleanOuts, "clean-out")}.";

    // Two who sit there at the same time sit in one sitting.
    private static string Sittings(Plan plan)
    {
        var painters = plan.Days.SelectMany(day => day.Sittings).GroupBy(sitting => sitting.From.ToInstant()).Select(sitting => sitting.Count()).ToList();
        var shared = painters.Where(count => count > 1).Order().ToList();
        var many = shared.Count == 0 ? ""
            : shared[0] == shared[^1] ? FormattableString.Invariant($" ({shared.Count} with {shared[0]} painters)")
            : FormattableString.Invariant($" ({shared.Count} with {shared[0]} to {shared[^1]} painters)");
        return Amounts.Counted(painters.Count, "sitting") + many;
    }

    /// <summary>What is taken as done, in one line: <c>Done until Wed 2 Dec 22:00: 14 tasks, as one.json had them.</c>; null if nothing is.</summary>
    public static string? Done(Plan plan) => plan.Done is not { } done ? null
        : $"Done until {Moments.Full(done.Until.InZone(plan.Zone))}: {Amounts.Counted(done.Tasks.Count, "task")}, as {(done.AsIn is { } name ? Visible.Line(name) : "the plan before")} had {(done.Tasks.Count == 1 ? "it" : "them")}.{(plan.Days.IsEmpty ? "" : " What follows is what is left.")}";

    /// <summary>What has become of the plan before, in one line; null if there was none to stay close to.</summary>
    public static string? Kept(Plan plan) => plan.Days.IsEmpty && plan.Done is not null ? null
        : plan.Kept is { } kept ? $"Against the plan before{(plan.Done is null ? "" : ", of what is left")}: {Amounts.Uncapital(ComparisonFacts.Counts(kept))}"
        : null;

    /// <summary>That the plan begins in the past, in one line; null if it does not.</summary>
    public static string? Past(Plan plan) => plan.DaysPast == 0 ? null
        : FormattableString.Invariant($"It begins {Amounts.Counted(plan.DaysPast, "day")} before it was asked for; nothing is taken as done since.");

    /// <summary>The pace and the zone.</summary>
    public static string Pace(Plan plan) =>
        $"Times are of {Visible.Line(plan.Zone.Id)}; drying is planned {(plan.Pace == Workflows.Pace.Brisk ? "briskly, to the low figures" : "to the comfortable end")}.";

    /// <summary>What stands over the ways out.</summary>
    public static string WaysOutHead(Plan plan) => plan.WaysOut.All(way => way.LateMinutes == 0)
        ? "each was planned anew; cheapest first"
        : plan.WaysOut.Any(way => way.LateMinutes == 0) ? "each was planned anew; what gets it done in time first"
        : "nothing that was tried gets all of it done in time; these come nearest";

    /// <summary>A way out and what comes of it: <c>One more sitting, Sun 6 Dec 15:00–17:15: all in time, ready by Sat 12 Dec 15:07.</c></summary>
    public static (string Words, Tone Tone) WayOut(WayOut way)
    {
        var outcome = way.LateMinutes == 0 ? $"{(way.Change is Change.LeaveOut ? "the rest" : "all")} in time, ready by {Moments.Full(way.Ready)}" : $"ready by {Moments.Full(way.Ready)}, still late by {Moments.Margin(way.LateMinutes)}";
        return ($"{Amounts.Capital(Visible.Line(way.Words))}: {outcome}{(way.FillsSittings ? ", with full sittings" : "")}.", way.LateMinutes == 0 ? Tone.Plain : Tone.Warning);
    }

    /// <summary>How full a sitting is: <c>42 of 75 min</c>, and where the day may have less than its sittings hold <c>42 of 75 min, 100 for the day</c>.</summary>
    public static string Filled(PlannedSitting sitting) =>
        FormattableString.Invariant($"{sitting.AttendedMinutes} of {Moments.Minutes(sitting.From, sitting.To)} min{(sitting.MostPerDayMinutes is { } most ? FormattableString.Invariant($", {most} for the day") : "")}");

    /// <summary>What is free at the end of a sitting, and why: <c>59 min: everything that is left has to wait</c>.</summary>
    public static string Free(FreeTime free) => $"{Moments.Length(free.Minutes)}: {free.Because switch
    {
        FreeBecause.AllWaits => "everything that is left has to wait",
        FreeBecause.Decided => "what does not have to wait is set for later",
        FreeBecause.HasShare { IsEven: true } => "more work here would not keep the days even",
        FreeBecause.HasShare => "there is as much work as a day may have",
        FreeBecause.CouldBegin could => $"{Visible.Line(could.Task)} could be {(could.ForSome ? "done on some of the pieces" : "begun")}, but {could.Why switch
        {
            WhyNotBegun.NothingSooner => "nothing would be ready sooner",
            WhyNotBegun.NothingFound => "no plan was found that ends sooner by it",
            WhyNotBegun.StaysClose => "the plan stays close to the one before",
            _ => "an early finish does not come first here",
        }}",
        _ => "what could still be begun would not be finished",
    }}";

    /// <summary>How good the plan is, in sentences.</summary>
    public static IEnumerable<string> Goodness(Plan plan)
    {
        var measure = plan.Measure;
        yield return $"Hands are busy for {Moments.Hours(measure.AttendedMinutes)}; until everything is ready the bench is open for {Moments.Hours(measure.OpenMinutes)}. {Proved(plan)}";
        if (measure.StoppedEarly)
            yield return $"The search was stopped early; a longer one may find {Better(measure.FirstAim)}.";
    }

    // What is ready while nobody sits at the bench might be so within the same hours sooner.
    private static string Proved(Plan plan)
    {
        var measure = plan.Measure;
        if (plan.Finishes.All(finish => finish.Ready.ToInstant() <= measure.NoneReadyBefore.ToInstant()))
            return "No plan can be ready sooner.";
        var before = $"No plan can be ready before {Moments.Full(measure.NoneReadyBefore)}";
        return measure.GapEvenings == 0 ? $"{before}: none is ready a sitting sooner."
            : $"{before}, at most {Amounts.Counted(measure.GapEvenings, "sitting")} sooner{(measure.FirstAim == BatchAim.FinishSoon ? "" : ", if an early finish were asked for first")}{(measure.IsBestAsParted ? ", and only by parting lots in other places than here" : "")}.";
    }

    private static string Better(BatchAim first) => first switch
    {
        BatchAim.EvenDays => "a plan with evener days, which come first here",
        BatchAim.FewChanges => "a plan with fewer clean-outs, which come first here",
        BatchAim.ShortMasks => "a plan with masks on for less long, which comes first here",
        _ => "a shorter plan",
    };

    /// <summary>What is to be bought, and what it says of the stock.</summary>
    public static (string Words, Tone Tone) Stock(ShoppingItem item) => item.StockMillilitres switch
    {
        null => ("check", Tone.Strong),
        var stock when stock >= item.NeedMillilitres => ("enough", Tone.Quiet),
        var stock => ($"buy {Amounts.Volume(item.NeedMillilitres - stock.Value)}", Tone.Warning),
    };

    /// <summary>Shopping in the order of use to the painter: what is short, what is not known, what is enough.</summary>
    public static IEnumerable<ShoppingItem> ShortFirst(this IEnumerable<ShoppingItem> items) =>
        items.OrderBy(item => item.StockMillilitres is null ? 1 : item.StockMillilitres >= item.NeedMillilitres ? 2 : 0);

    /// <summary>What to take out: plain things in one line, whatever has a purpose in a line of its own.</summary>
    public static IEnumerable<string> TakeOut(PlannedSitting sitting)
    {
        var plain = sitting.TakeOut.Where(thing => !thing.Contains(": ", StringComparison.Ordinal)).ToList();
        if (plain.Count > 0)
            yield return string.Join(", ", plain);
        foreach (var thing in sitting.TakeOut.Where(thing => thing.Contains(": ", StringComparison.Ordinal)))
            yield return thing;
    }

    /// <summary>The clean-out a task begins with: <c>the airbrush of old brass first, 12 of these 40 min</c>.</summary>
    public static string CleanFirst(PlannedTask task, CleanOut clean) => Visible.Line(FormattableString.Invariant(
        $"the {clean.Tool} of {clean.Of} first, {clean.Minutes} of these {Moments.Minutes(task.From, task.To)} min"));

    /// <summary>What to do with a tool that paint would dry in: <c>flush the airbrush: it stands until 20:07, and old brass dries on the tip</c>.</summary>
    public static string StandsLoaded(PlannedTask task, ZonedDateTime until) => Visible.Line(
        $"flush the {task.Tool}: it stands until {Moments.Time(until)}, and {task.Paint?.Name ?? "the paint"} dries on the tip");

    /// <summary>Why a task does not start earlier; null where it only follows the task above it, which <see cref="Remarks"/> says once for all.</summary>
    /// <param name="task">The task.</param>
    /// <param name="whyBefore">The reason last shown in the sitting; it is not shown twice in a row.</param>
    public static string? WhyNow(PlannedTask task, string? whyBefore) =>
        task.Sort == TaskSort.CloseDown || task.FollowsOn || task.WhyNotEarlier.Length == 0 ? null
        : task.WhyNotEarlier == whyBefore ? "as above"
        : task.WhyNotEarlier;

    /// <summary>When a wait's low figure is reached, seen from a day: <c>19:40</c>.</summary>
    public static string Earliest(WaitStarted wait, LocalDate seenFrom) => Moments.From(seenFrom, wait.Earliest) + (HasOneTime(wait) ? Star(wait) : "");

    /// <summary>When it is comfortable: <c>better Fri 16:46*</c>; empty where that is the same.</summary>
    public static string Better(WaitStarted wait, LocalDate seenFrom) => HasOneTime(wait) ? "" : $"better {Moments.From(seenFrom, wait.Comfortable)}{Star(wait)}";

    /// <summary>A wait in one line: <c>recoatable 19:40, better 19:55*</c>.</summary>
    public static string Wait(WaitStarted wait, LocalDate seenFrom) =>
        $"{Visible.Line(wait.For)} {Earliest(wait, seenFrom)}{(HasOneTime(wait) ? "" : $", {Better(wait, seenFrom)}")}";

    private static bool HasOneTime(WaitStarted wait) => wait.Earliest.ToInstant() == wait.Comfortable.ToInstant();

    private static string Star(WaitStarted wait) => wait.IsDefault ? "*" : "";

    /// <summary>Findings by the task they are shown at: the first one of their place.</summary>
    public static ILookup<string, Finding> Beside(Plan plan)
    {
        var first = new Dictionary<Place, string>();
        foreach (var task in plan.Days.SelectMany(day => day.Sittings).SelectMany(s => s.Tasks))
        {
            if (task.Place is not null)
                first.TryAdd(task.Place, task.Id);
        }

        return plan.Findings.Speaking().Where(f => first.ContainsKey(f.Place)).GravestFirst().ToLookup(f => first[f.Place]);
    }

    /// <summary>Findings that no task of the plan stands for, gravest first.</summary>
    public static IReadOnlyList<Finding> NotBeside(Plan plan)
    {
        var places = plan.Days.SelectMany(day => day.Sittings).SelectMany(s => s.Tasks).Select(t => t.Place).ToHashSet();
        return [.. plan.Findings.Speaking().Where(f => !places.Contains(f.Place)).GravestFirst()];
    }

    /// <summary>What the signs on the page mean, and what stands under every page with cautions.</summary>
    public static IEnumerable<string> Remarks(Plan plan)
    {
        var sittings = plan.Days.SelectMany(day => day.Sittings).ToList();
        if (PutBack(plan) is { } back)
            yield return back;
        if (sittings.SelectMany(s => s.Tasks).Any(task => task.FollowsOn))
            yield return FollowsOn;
        if (sittings.SelectMany(s => s.Tasks).SelectMany(t => t.Starts).Any(wait => !HasOneTime(wait)))
            yield return TwoTimes;
        if (sittings.SelectMany(s => s.Tasks).SelectMany(t => t.Starts).Any(wait => wait.IsDefault))
            yield return DefaultFigure;
        if (sittings.Any(s => !s.Cautions.IsEmpty))
            yield return CautionsAreGeneral;
    }

    // That an hour comes twice, if the page says a time of it.
    private static string? PutBack(Plan plan)
    {
        var tasks = plan.Days.SelectMany(day => day.Sittings).SelectMany(sitting => sitting.Tasks).ToList();
        var told = tasks.SelectMany(task => task.Starts.SelectMany(wait => new[] { wait.Earliest, wait.Comfortable }).Append(task.From).Append(task.To))
            .Concat(plan.Finishes.Select(finish => finish.Ready)).Where(TwiceShown.Is).ToList();
        if (told.Count == 0)
            return null;
        var back = TwiceShown.PutBack(told[0]);
        var (before, after) = (plan.Zone.GetZoneInterval(back - Duration.Epsilon), plan.Zone.GetZoneInterval(back));
        var (from, to) = (back.WithOffset(after.WallOffset), back.WithOffset(before.WallOffset));
        return $"The clocks go back on {Moments.Day(to.Date)}: {Moments.Clock(from.TimeOfDay)} to {Moments.Clock(to.TimeOfDay)} comes twice, first as {before.Name}, then as {after.Name}.";
    }
}

using NodaTime;
using Pipeline.Abstractions;
using Pipeline.Surfaces;
using Pipeline.Workflows;

namespace Pipeline.Planning;

/// <summary>
/// Judges waits where both times are known: steps pinned with <c>at</c>, a plan, work ticked off.
/// Below the low figure is an error, up to the comfortable end a warning, beyond that silence; past a limit a warning, past a hard limit
/// an error. A wait is judged unit by unit and speaks once, of the unit that fares worst.
/// </summary>
public static class TimeJudge
{
    // Times are exact to half a minute; a wait missed by less than this has been kept.
    private const double Tolerance = 1e-6;

    /// <summary>What the waits of a batch say to the times known.</summary>
    public static Sequence<Finding> Judge(Walked walked, KnownTimes times)
    {
        ArgumentNullException.ThrowIfNull(walked);
        ArgumentNullException.ThrowIfNull(times);
        var errors = walked.Findings.Where(finding => finding is { Level: Level.Error, Silenced: null }).Select(finding => finding.Place).ToHashSet();
        var findings = new List<Finding>();
        for (var r = 0; r < walked.Routes.Count; r++)
        {
            var missed = new List<(RuledWait Wait, Missed Missed)>();
            foreach (var wait in walked.Routes[r].Waits)
            {
                if (Worst(walked.Batch.Bench, r, wait.Needs, times) is { } worst)
                    missed.Add((wait, worst));
            }

            findings.AddRange(missed.Where(each => !IsToldBySharper(each, missed, errors, walked.Routes[r].Route)).Select(each => Say(walked, r, each.Wait, each.Missed)));
        }

        return findings.OrderBy(f => f.Place).ToSequence();
    }

    /// <summary>
    /// What can be said of pinned steps before any plan is made: waits between two of them, and a pin that the work and the shortest
    /// waits after an earlier pin leave no time for.
    /// </summary>
    public static Sequence<Finding> JudgePins(Walked walked)
    {
        ArgumentNullException.ThrowIfNull(walked);
        if (walked.Routes.All(route => route.Route.Pins.IsEmpty))
            return [];
        var times = Pinned.Times(walked);
        var direct = Judge(walked, times);
        return direct.Concat(Pinned.OutOfReach(walked, times, direct)).OrderBy(f => f.Place).ToSequence();
    }

    /// <summary>
    /// All that can be said of a walked batch before any plan is made: what the walk found, what the waits and the rules of plans say of pinned
    /// steps, and of one cause the sharpest.
    /// </summary>
    public static Sequence<Finding> BeforePlan(Walked walked, Trade trade)
    {
        ArgumentNullException.ThrowIfNull(walked);
        var ofPins = JudgePins(walked);
        var late = ofPins.Where(finding => finding.Rule is not null).Select(finding => finding.Place).ToHashSet();
        return Sharpest.Of(walked.Findings.Without(finding => finding.GivesWay && late.Contains(finding.Place))
            .Concat(ofPins)
            .Concat(JudgeDecided(walked, trade)))
            .ToSequence();
    }

    private static Sequence<Finding> JudgeDecided(Walked walked, Trade trade)
    {
        return walked.Routes.All(route => route.Route.Pins.IsEmpty) ? [] : Walk.JudgePlan(walked, trade, batch => DecidedSeen.Of(walked, batch));
    }

    private sealed record Missed(Level Level, double ElapsedMinutes, KnownTime Earlier, KnownTime Later, bool IsTooLate, double BeyondMinutes);

    private static Missed? Worst(Bench bench, int route, Verdict.Needs needs, KnownTimes times)
    {
        if (!times.Knows(route, needs.Since) || !times.Knows(route, needs.Step))
            return null;
        var waiting = Waiting.Of(needs, bench.Climate);
        var later = times.Of(route, needs.Step);
        Missed? worst = null;
        foreach (var (unit, since) in times.Of(route, needs.Since))
        {
            if (!later.TryGetValue(unit, out var until) || (since.IsDone && until.IsDone))
                continue;
            var from = needs.SinceStart ? since.Start : since.Finish;
            var to = needs.ToFinish ? until.Finish : until.Start;
            var elapsed = (to - from).TotalMinutes;
            if (Zone(waiting, elapsed) is not var (level, tooLate, beyond))
                continue;
            var missed = new Missed(Gentler(level, needs.Gravest), elapsed, since, until, tooLate, beyond);
            if (worst is null || missed.Level > worst.Level || (missed.Level == worst.Level && missed.BeyondMinutes > worst.BeyondMinutes))
                worst = missed;
        }

        return worst;
    }

    private static (Level Level, bool TooLate, double Beyond)? Zone(Waiting waiting, double elapsed)
    {
        if (waiting.WithinMinutes is { } within && elapsed >= 0 && elapsed <= within + Tolerance)
            return null;
        if (waiting.LowMinutes is { } low && elapsed < low - Tolerance)
            return (Level.Error, false, low - elapsed);
        if (waiting.ComfortableMinutes is { } comfortable && elapsed < comfortable - Tolerance)
            return (Level.Warning, false, comfortable - elapsed);
        if (waiting.HardLimitMinutes is { } hard && elapsed > hard + Tolerance)
            return (Level.Error, true, elapsed - hard);
        if (waiting.LimitMinutes is { } limit && elapsed > limit + Tolerance)
            return (Level.Warning, true, elapsed - limit);
        return null;
    }

    // One rule speaks once of a step and an area, of what is gravest and takes longest; and some rules give way to others.
    private static bool IsToldBySharper((RuledWait Wait, Missed Missed) one, List<(RuledWait Wait, Missed Missed)> missed, HashSet<Place> errors, Route route)
    {
        var needs = one.Wait.Needs;
        if (needs.GivesWay && errors.Contains(route.Steps[needs.Step].Place))
            return true;
        foreach (var other in missed)
        {
            var others = other.Wait.Needs;
            if (others.Step != needs.Step || ReferenceEquals(other.Wait, one.Wait))
                continue;
            if (needs.GivesWay && !others.GivesWay && others.Since == needs.Since)
                return true;
            if (other.Wait.Rule == one.Wait.Rule && other.Missed.IsTooLate == one.Missed.IsTooLate && others.Areas.Any(needs.Areas.Contains)
                && (other.Missed.Level, other.Missed.BeyondMinutes, -others.Since).CompareTo((one.Missed.Level, one.Missed.BeyondMinutes, -needs.Since)) > 0)
                return true;
        }

        return false;
    }

    private static Level Gentler(Level level, Level gravest) => level < gravest ? level : gravest;

    private static Finding Say(Walked walked, int routeIndex, RuledWait wait, Missed missed)
    {
        var route = walked.Routes[routeIndex].Route;
        var needs = wait.Needs;
        var earlier = route.Steps[needs.Since];
        var later = route.Steps[needs.Step];
        var zone = walked.Batch.Bench.Zone;
        var waiting = Waiting.Of(needs, walked.Batch.Bench.Climate);
        var related = new List<Related>
        {
            new(earlier.Place, $"{Phrases.Step(route.Model, earlier)}, {Phrases.Moment(needs.SinceStart ? missed.Earlier.Start : missed.Earlier.Finish, zone)}"),
        };
        related.AddRange(needs.Related.Where(p => p.Step != needs.Since && p.Step >= 0 && p.Step < route.Steps.Count).Select(p => new Related(route.Steps[p.Step].Place, p.Message)));
        return new Finding
        {
            Rule = wait.Rule,
            Level = missed.Level,
            Place = later.Place,
            Model = route.Model.Name,
            Areas = needs.Areas,
            Message = $"{Elapsed(route.Model, earlier, later, missed)}; {Needed(needs, waiting, missed)}. {Since(missed, needs, earlier, route.Model, zone)}{needs.Message}",
            Remedy = needs.Remedy,
            Related = related.ToSequence(),
            Mend = needs.Mend,
        };
    }

    private static string Elapsed(Model model, Step earlier, Step later, Missed missed)
    {
        var unit = model.Count > 1 ? $" on no. {missed.Earlier.Unit + 1}" : "";
        var between = $"'{Phrases.Step(model, earlier)}' and '{Phrases.Step(model, later)}'{unit}";
        if (missed.ElapsedMinutes < 0)
            return $"'{Phrases.Step(model, later)}'{unit} comes {Phrases.Duration(-missed.ElapsedMinutes)} before '{Phrases.Step(model, earlier)}' is done";
        return missed.IsTooLate
            ? $"{Phrases.Duration(missed.ElapsedMinutes)} between {between}"
            : $"Only {Phrases.Duration(missed.ElapsedMinutes)} between {between}";
    }

    // What has been done cannot be put off to come nearer.
    private static string Since(Missed missed, Verdict.Needs needs, Step earlier, Model model, DateTimeZone zone) => missed.Earlier.IsDone && missed.IsTooLate
        ? $"'{Phrases.Step(model, earlier)}' was done {Phrases.Moment(needs.SinceStart ? missed.Earlier.Start : missed.Earlier.Finish, zone)}, and the plan takes this up as soon as it finds room. "
        : "";

    private static string Needed(Verdict.Needs needs, Waiting waiting, Missed missed)
    {
        var source = needs.IsFromLabel ? "as the label or the file says" : "a usual figure, not the label's";
        if (missed.IsTooLate)
        {
            var hard = waiting.HardLimitMinutes is { } limit ? $", never more than {Phrases.Duration(limit)}" : "";
            return $"at most {Phrases.Duration(waiting.LimitMinutes ?? 0)}{hard} ({source})";
        }

        var climate = waiting.Factor is > 0.995 and < 1.005 ? "" : FormattableString.Invariant($", {waiting.Factor:0.##} times the usual in this bench's climate");
        var within = waiting.WithinMinutes is { } open ? $"within {Phrases.Duration(open)}, or after " : "";
        return $"{needs.For} takes {within}{Phrases.Range(waiting.LowMinutes ?? 0, waiting.HighMinutes ?? 0)} ({source}{climate})";
    }
}
